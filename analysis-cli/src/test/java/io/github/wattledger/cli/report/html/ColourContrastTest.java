package io.github.wattledger.cli.report.html;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/**
 * The contrast of the pages' colours in light, in dark and on paper: what an accessibility check leaves open for letters
 * in drawings is decided here. Relative luminance and the ratios 4.5 (text) and 3 (marks) are those of the Web Content
 * Accessibility Guidelines 2.2, success criteria 1.4.3 and 1.4.11, level AA.
 */
class ColourContrastTest {
    private static final Pattern SCHEME = Pattern.compile(":root \\{(.*?)\\}", Pattern.DOTALL);
    private static final Pattern COLOUR = Pattern.compile("--([a-z-]+): #([0-9a-f]{6}|[0-9a-f]{3})\\b");

    private static final List<String> TEXT = List.of("ink", "quiet", "link");
    private static final List<String> BEHIND_TEXT = List.of("paper", "lit", "shade");
    private static final List<String> LINES =
            List.of("power", "heart", "balance", "guide", "threshold", "ground", "hatch");
    private static final List<String> BEHIND_LINES = List.of("paper", "lit", "guide-fill", "ground-fill");
    private static final List<String> EFFORTS =
            List.of("effort-below", "effort-within", "effort-above", "effort-threshold");

    /** Light, dark and paper; what a scheme does not say it takes from the light one. */
    private static List<Map<String, Integer>> schemes() {
        List<Map<String, Integer>> schemes = new ArrayList<>();
        Matcher scheme = SCHEME.matcher(Assets.own("page.css"));
        while (scheme.find()) {
            Map<String, Integer> colours = new HashMap<>(schemes.isEmpty() ? Map.of() : schemes.get(0));
            Matcher colour = COLOUR.matcher(scheme.group(1));
            while (colour.find()) {
                String hex = colour.group(2);
                colours.put(
                        colour.group(1),
                        Integer.parseInt(hex.length() == 6 ? hex : hex.replaceAll("([0-9a-f])", "$1$1"), 16));
            }
            schemes.add(colours);
        }
        return schemes;
    }

    private static double luminance(int colour) {
        return 0.2126 * linear(colour >> 16) + 0.7152 * linear(colour >> 8) + 0.0722 * linear(colour);
    }

    private static double linear(int channel) {
        double share = (channel & 0xFF) / 255.0;
        return share <= 0.04045 ? share / 12.92 : Math.pow((share + 0.055) / 1.055, 2.4);
    }

    private static double contrast(int one, int other) {
        double lighter = Math.max(luminance(one), luminance(other));
        double darker = Math.min(luminance(one), luminance(other));
        return (lighter + 0.05) / (darker + 0.05);
    }

    private static void assertContrast(List<String> over, List<String> under, double least) {
        assertThat(schemes()).hasSize(3);
        for (Map<String, Integer> colours : schemes()) {
            for (String one : over) {
                for (String other : under) {
                    assertThat(colours).containsKeys(one, other);
                    assertThat(contrast(requireNonNull(colours.get(one)), requireNonNull(colours.get(other))))
                            .as(one + " over " + other + " in scheme "
                                    + schemes().indexOf(colours))
                            .isGreaterThanOrEqualTo(least);
                }
            }
        }
    }

    /** By the guidelines black on white is 21:1; the grey #767676 is the lightest that has 4.5:1 on white. */
    @Test
    void contrastIsThatOfTheGuidelines() {
        assertThat(contrast(0x000000, 0xFFFFFF)).isCloseTo(21, within(1e-9));
        assertThat(contrast(0x767676, 0xFFFFFF)).isGreaterThanOrEqualTo(4.5);
        assertThat(contrast(0x777777, 0xFFFFFF)).isLessThan(4.5);
    }

    @Test
    void textCanBeRead() {
        assertContrast(TEXT, BEHIND_TEXT, 4.5);
        assertContrast(List.of("paper"), List.of("ink"), 4.5);
    }

    /** Values beside a drawing lie on paper; a number that stands in one has a rim of paper. */
    @Test
    void linesAndFillingsCanBeSeen() {
        assertContrast(LINES, BEHIND_LINES, 3);
        assertContrast(EFFORTS, List.of("paper"), 3);
    }
}
