package io.github.wattledger.cli.profile;

import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Finds numbers with a decimal comma, which TOML does not know. The parser would only say that it met a comma. */
final class DecimalCommas {
    private static final Pattern LINE = Pattern.compile("\\s*([A-Za-z0-9_-]+)\\s*=\\s*([+-]?\\d+),(\\d+)\\s*(?:#.*)?");

    private DecimalCommas() {}

    /** Adds a problem for each such line of a text that is not TOML. */
    static void report(String text, Problems problems) {
        List<String> lines = text.lines().toList();
        for (int i = 0; i < lines.size(); i++) {
            Matcher line = LINE.matcher(lines.get(i));
            if (line.matches()) {
                problems.add(
                        i + 1,
                        line.group(1) + ": write the decimals with a point: " + line.group(2) + "." + line.group(3));
            }
        }
    }
}
