package io.github.wattledger.cli.report.html;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DaysTest {
    private static final Pattern LABEL =
            Pattern.compile("<text class=\"foot([^\"]*)\" x=\"([\\d.]+)%\"[^>]*>([^<]*)</text>");

    /** A label under a chart: where it stands, percent of the width, and whether a telephone leaves it out. */
    private record Label(double percent, boolean isFine, String words) {}

    private static List<Label> labels(LocalDate first, LocalDate last) {
        Svg svg = new Svg();
        Days.foot(new Plot(svg, 0, 100, Days.scale(first, last), Scale.fromZero(1)), first, last);
        List<Label> labels = new ArrayList<>();
        Matcher label = LABEL.matcher(svg.done().toString());
        while (label.find()) {
            labels.add(
                    new Label(Double.parseDouble(label.group(2)), label.group(1).contains("fine"), label.group(3)));
        }
        return labels;
    }

    @Test
    void manyYearsAreNamedByTheYearAlone() {
        assertThat(labels(LocalDate.of(2011, 6, 26), LocalDate.of(2026, 4, 24)))
                .extracting(Label::words)
                .containsExactly("2012", "2014", "2016", "2018", "2020", "2022", "2024", "2026");
    }

    @Test
    void aSeasonIsNamedByItsMonths() {
        assertThat(labels(LocalDate.of(2026, 3, 1), LocalDate.of(2026, 9, 30)))
                .extracting(Label::words)
                .containsExactly("Mar 2026", "Apr", "May", "Jun", "Jul", "Aug", "Sep");
    }

    /**
     * "Jan 2012" at 12 pixels is some 50 wide. The drawing is about 290 wide on the narrowest telephone and 600 where the
     * fine labels come back, so neighbours need 17 % and 8 % of the width.
     */
    @ParameterizedTest
    @CsvSource({"40", "100", "200", "365", "500", "900", "2000", "4000", "5400", "9000"})
    void noLabelReachesTheNext(int days) {
        for (int shift = 0; shift < 365; shift += 13) {
            LocalDate first = LocalDate.of(2012, 1, 2).plusDays(shift);
            List<Label> all = labels(first, first.plusDays(days));
            assertThat(all).isNotEmpty();
            assertApart(all, 8);
            assertApart(all.stream().filter(label -> !label.isFine()).toList(), 17);
        }
    }

    private static void assertApart(List<Label> labels, double leastPercent) {
        for (int i = 1; i < labels.size(); i++) {
            double least = labels.get(i).words().length() > 5
                            || labels.get(i - 1).words().length() > 5
                    ? leastPercent
                    : leastPercent * 0.7;
            assertThat(labels.get(i).percent() - labels.get(i - 1).percent())
                    .as(labels.get(i - 1).words() + " and " + labels.get(i).words())
                    .isGreaterThan(least);
        }
    }
}
