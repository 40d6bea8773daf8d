package io.github.wattledger.cli.fuzz;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;

/** Changes a table or a GPX file as a broken export, an editor or a spreadsheet would. */
final class TextDamage {
    private static final Pattern NUMBER = Pattern.compile("-?\\d+(\\.\\d+)?");
    private static final Pattern TIME = Pattern.compile("\\d{4}-\\d\\d-\\d\\dT\\d\\d:\\d\\d:\\d\\d(\\.\\d+)?Z?");

    private static final List<String> NUMBERS = List.of(
            "",
            "0",
            "-0",
            "-1",
            "1",
            "NaN",
            "nan",
            "Infinity",
            "-Infinity",
            "null",
            "--",
            "1e308",
            "-1e308",
            "1e999",
            "1e-320",
            "99999",
            "-99999",
            "65535",
            "4294967295",
            "999999999999999999999",
            "1,5",
            "1.234,5",
            "0x1F",
            "+7",
            "1e3",
            "\u0663",
            "12 W",
            "\"",
            "<",
            "&",
            "&#0;",
            ";",
            ",",
            "\t");

    private static final List<String> TIMES = List.of(
            "",
            "0",
            "1970-01-01T00:00:00Z",
            "1989-12-31T00:00:00Z",
            "2107-12-31T23:59:59Z",
            "2026-02-30T10:00:00Z",
            "2026-04-08T16:30:00",
            "2026-04-08 16:30:00",
            "2026-04-08T16:30:00+14:00",
            "2026-04-08T24:00:00Z",
            "9999-12-31T23:59:59Z",
            "-9999-01-01T00:00:00Z",
            "1775665800",
            "1775665800000",
            "16:30:00",
            "08.04.2026 16:30",
            "2026-04-08T16:30:00.999999999Z",
            "1e18");

    private static final List<String> INSERTS = List.of(
            "\u0000",
            "\n",
            "\r",
            "\r\n\r\n",
            "\"",
            "\"\"",
            "'",
            "<",
            ">",
            "<!--",
            "-->",
            "]]>",
            "<![CDATA[",
            "&amp;",
            "&lt;",
            "&nothing;",
            "<trkseg>",
            "</trkseg>",
            "</trk><trk>",
            "<trkpt lat=\"91\" lon=\"181\">",
            "</trkpt>",
            "<extensions>",
            "<?xml version=\"1.0\" encoding=\"UTF-16\"?>",
            "<!DOCTYPE gpx [<!ENTITY a \"b\">]>",
            "<type>running</type>",
            "<name><script>alert(1)</script></name>",
            "time,power\n",
            "#",
            "=1+1",
            "\ufeff",
            "\u202e",
            "\ud83d\udeb2",
            ",,,,,,,,",
            ";;;;",
            "lap",
            "state");

    private final Random random;
    private final List<String> done;
    private List<String> lines;

    private TextDamage(Random random, String text, List<String> done) {
        this.random = random;
        this.done = done;
        this.lines = new ArrayList<>(Arrays.asList(text.split("\n", -1)));
    }

    /**
     * A changed file.
     *
     * @param done receives what was changed
     */
    static byte[] of(Random random, String text, List<String> done) {
        TextDamage damage = new TextDamage(random, text, done);
        int changes = 1 + random.nextInt(3);
        for (int i = 0; i < changes; i++) {
            damage.change();
        }
        String changed = String.join("\n", damage.lines);
        Charset[] charsets = {StandardCharsets.UTF_16, StandardCharsets.UTF_16LE, StandardCharsets.ISO_8859_1};
        boolean isReencoded = random.nextInt(25) == 0;
        Charset charset = isReencoded ? charsets[random.nextInt(charsets.length)] : StandardCharsets.UTF_8;
        if (isReencoded) {
            done.add("encoded as " + charset);
        }
        return changed.getBytes(charset);
    }

    private void change() {
        switch (random.nextInt(12)) {
            case 0, 1 -> replaceOne(NUMBER, NUMBERS);
            case 2, 3 -> replaceInARun();
            case 4 -> scaleInARun();
            case 5 -> replaceOne(TIME, TIMES);
            case 6 -> removeRun();
            case 7 -> repeatRun();
            case 8 -> moveRun();
            case 9 -> insert();
            case 10 -> replaceEverywhere();
            default -> changeHead();
        }
    }

    private int anyLine() {
        return random.nextInt(lines.size());
    }

    private static List<MatchResult> found(Pattern pattern, String line) {
        return pattern.matcher(line).results().toList();
    }

    private static String with(String line, MatchResult place, String word) {
        return line.substring(0, place.start()) + word + line.substring(place.end());
    }

    private void replaceOne(Pattern pattern, List<String> words) {
        int at = anyLine();
        List<MatchResult> found = found(pattern, lines.get(at));
        if (!found.isEmpty()) {
            String word = words.get(random.nextInt(words.size()));
            lines.set(at, with(lines.get(at), found.get(random.nextInt(found.size())), word));
            done.add("line " + at + " has \"" + word + "\"");
        }
    }

    private int runLength() {
        return 1 + random.nextInt(random.nextInt(4) == 0 ? lines.size() : 40);
    }

    /** The same column of many lines, each with one word or each with another one. */
    private void replaceInARun() {
        int from = anyLine();
        int length = runLength();
        int column = random.nextInt(16);
        String word = NUMBERS.get(random.nextInt(NUMBERS.size()));
        boolean isSame = random.nextBoolean();
        for (int at = from; at < Math.min(lines.size(), from + length); at++) {
            List<MatchResult> found = found(NUMBER, lines.get(at));
            if (column < found.size()) {
                String each = isSame ? word : String.valueOf(random.nextInt(1 << (1 + random.nextInt(20))) - 100);
                lines.set(at, with(lines.get(at), found.get(column), each));
            }
        }
        done.add("number " + column + " of " + length + " lines from " + from + (isSame ? ": " + word : ": any"));
    }

    /** Another unit, or a decimal point that moved. */
    private void scaleInARun() {
        int from = anyLine();
        int length = random.nextBoolean() ? lines.size() : runLength();
        int column = 5 + random.nextInt(10);
        double[] factors = {0, 0.001, 0.1, 0.2778, 1.609, 3.6, 10, 1000, 1e6, -1};
        double factor = factors[random.nextInt(factors.length)];
        for (int at = from; at < Math.min(lines.size(), from + length); at++) {
            List<MatchResult> found = found(NUMBER, lines.get(at));
            if (column < found.size()) {
                MatchResult place = found.get(column);
                double scaled = Double.parseDouble(place.group()) * factor;
                lines.set(at, with(lines.get(at), place, String.valueOf(scaled)));
            }
        }
        done.add("number " + column + " of " + length + " lines from " + from + " times " + factor);
    }

    private List<String> run(int from, int length) {
        return lines.subList(from, Math.min(lines.size(), from + length));
    }

    private void removeRun() {
        int from = anyLine();
        int length = runLength();
        run(from, length).clear();
        if (lines.isEmpty()) {
            lines.add("");
        }
        done.add(length + " lines from " + from + " removed");
    }

    private void repeatRun() {
        int from = anyLine();
        List<String> copy = new ArrayList<>(run(from, runLength()));
        int to = anyLine();
        lines.addAll(to, copy);
        done.add(copy.size() + " lines from " + from + " repeated at " + to);
    }

    private void moveRun() {
        int from = anyLine();
        List<String> run = run(from, runLength());
        List<String> moved = new ArrayList<>(run);
        run.clear();
        int to = lines.isEmpty() ? 0 : anyLine();
        lines.addAll(to, moved);
        done.add(moved.size() + " lines from " + from + " moved to " + to);
    }

    private void insert() {
        int at = anyLine();
        String line = lines.get(at);
        int place = random.nextInt(line.length() + 1);
        String word = INSERTS.get(random.nextInt(INSERTS.size()));
        String repeated = random.nextInt(10) == 0 ? word.repeat(1 + random.nextInt(3000)) : word;
        lines.set(at, line.substring(0, place) + repeated + line.substring(place));
        done.add(repeated.length() + " characters inserted in line " + at + ": " + word);
    }

    private void replaceEverywhere() {
        String[][] words = {
            {",", ";"},
            {",", "\t"},
            {".", ","},
            {"Z", ""},
            {"T", " "},
            {"trkpt", "rtept"},
            {"time", "Time"},
            {"ele", "elev"},
            {"<", "< "},
            {"\"", "'"},
            {"2026-", "2107-"},
            {"2026-", "1989-"},
            {"distance", "power"},
            {"power", "distance"}
        };
        String[] word = words[random.nextInt(words.length)];
        lines.replaceAll(line -> line.replace(word[0], word[1]));
        done.add("\"" + word[0] + "\" became \"" + word[1] + "\"");
    }

    private void changeHead() {
        String head = lines.get(0);
        List<String> parts = new ArrayList<>(Arrays.asList(head.split(",", -1)));
        int at = random.nextInt(parts.size());
        switch (random.nextInt(4)) {
            case 0 -> parts.set(at, parts.get(random.nextInt(parts.size())));
            case 1 -> parts.remove(at);
            case 2 -> parts.add(at, "power");
            default -> parts.set(at, parts.get(at) + " (mph)");
        }
        lines.set(0, String.join(",", parts));
        done.add("the first line became " + lines.get(0));
    }
}
