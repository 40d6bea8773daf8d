package io.github.wattledger.cli.report;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.RideReview;
import io.github.wattledger.cli.report.html.HtmlReport;
import io.github.wattledger.cli.report.text.TextReport;
import io.github.wattledger.cli.report.words.Units;
import io.github.wattledger.pacing.Verdict;
import io.github.wattledger.testing.SampleReviews;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * What the text report says of a finding, of the rider and of the recording, the page says in the same words. The
 * sentences are taken from the text itself, its lines joined again, and looked for in the page without its tags.
 */
class OneWordingTest {
    private static final Pattern FINDING = Pattern.compile("(?ms)^ {1,2}\\d+\\. (.*?)(?=^ {1,2}\\d+\\. |\\z)");
    private static final Pattern HEADING =
            Pattern.compile("^(?<title>[^(]+) \\((?<severity>\\w+)\\), (?<from>[\\d:]+) to (?<to>[\\d:]+),"
                    + " (?<where>km [\\d.]+ to [\\d.]+|km not known|no distance in this file) ");

    static Stream<RideReview> reviews() {
        return Stream.of(
                SampleReviews.race(),
                SampleReviews.pricedRace(),
                SampleReviews.raceWithOwnFinding(),
                SampleReviews.nothingKnown(),
                SampleReviews.race(Verdict.UNEVEN, SampleReviews.everyKind(), List.of()));
    }

    @ParameterizedTest
    @MethodSource("reviews")
    void eachSentenceOfAFindingStandsInThePage(RideReview review) throws IOException {
        String text = text(review);
        String page = page(review);
        int findings = 0;
        for (String part : List.of("WHAT STANDS OUT", "WHAT OWN DETECTORS FOUND")) {
            Matcher finding = FINDING.matcher(part(text, part));
            while (finding.find()) {
                findings++;
                String words = joined(finding.group(1));
                Matcher heading = HEADING.matcher(words);
                assertThat(heading.find()).as(words).isTrue();
                assertThat(page)
                        .contains(heading.group("title"), heading.group("severity"), heading.group("where"))
                        .contains(heading.group("from") + " to " + heading.group("to"));
                assertThat(page).contains(spoken(words.substring(heading.end())));
            }
        }
        assertThat(findings)
                .isEqualTo(review.pacing().findings().size()
                        + review.pacing().ownFindings().size());
    }

    @ParameterizedTest
    @MethodSource("reviews")
    void eachSentenceAboutRiderAndRecordingStandsInThePage(RideReview review) throws IOException {
        String text = text(review);
        String page = page(review);
        for (String part : List.of("WHAT COULD BE EXPECTED", "JUDGED BY", "THE RECORDING", "LEFT OUT")) {
            List<String> sentences = sentences(joined(part(text, part).replaceAll("(?m)^ {2}- ", "  ")));
            assertThat(sentences).as(part).isNotEmpty();
            assertThat(page).contains(sentences);
        }
        String caution = text.substring(text.lastIndexOf("\n\n"));
        assertThat(page).contains(joined(caution));
    }

    @Test
    void aLossHasTheSameNameAndRange() throws IOException {
        String account = part(text(SampleReviews.pricedRace()), "WHERE THE TIME WENT");
        Matcher loss = Pattern.compile("Lost: (.*?), (nothing|[^,]* min)\\.").matcher(account);
        String page = page(SampleReviews.pricedRace());
        int losses = 0;
        while (loss.find()) {
            losses++;
            String name = loss.group(1);
            assertThat(page).contains(name.substring(1), loss.group(2));
        }
        assertThat(losses)
                .isEqualTo(
                        SampleReviews.pricedRace().pacing().ledger().entries().size());
    }

    /** The sentences after a finding's heading; the page shows a price and how it was found side by side. */
    private static List<String> spoken(String words) {
        List<String> spoken = new ArrayList<>();
        for (String sentence : sentences(words)) {
            Matcher cost = Pattern.compile("Cost: (.*?) \\((.*)\\)\\.").matcher(sentence);
            if (cost.matches()) {
                spoken.addAll(List.of(cost.group(1), cost.group(2)));
            } else {
                spoken.add(sentence.replaceFirst("^Next time: ", ""));
            }
        }
        return spoken;
    }

    private static List<String> sentences(String words) {
        return Arrays.asList(words.split("(?<=[.!?]) (?=[A-Z])", -1));
    }

    /** The lines under a heading, up to the next one; empty without that heading. */
    private static String part(String text, String heading) {
        Matcher part = Pattern.compile("(?ms)^" + heading + "[^\n]*\n(.*?)(?=^\\S|\\z)")
                .matcher(text);
        return part.find() ? part.group(1) : "";
    }

    private static String joined(String lines) {
        return lines.strip().replaceAll("\\s+", " ");
    }

    private static String text(RideReview review) throws IOException {
        StringBuilder text = new StringBuilder();
        new TextReport(Units.METRIC).write(review, text);
        return text.toString();
    }

    /** The words of the page: no tags, no entities, one space between words. */
    private static String page(RideReview review) throws IOException {
        StringBuilder page = new StringBuilder();
        new HtmlReport(Units.METRIC).write(review, page);
        String body = page.substring(page.indexOf("<main>"), page.indexOf("</main>"));
        return joined(body.replaceAll("<[^>]*>", " ")
                .replace("&lt;", "<")
                .replace("&gt;", ">")
                .replace("&#34;", "\"")
                .replace("&#39;", "'")
                .replace("&amp;", "&"));
    }
}
