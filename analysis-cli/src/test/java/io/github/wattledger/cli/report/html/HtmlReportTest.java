package io.github.wattledger.cli.report.html;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.cli.report.words.Units;
import io.github.wattledger.testing.SampleReviews;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.Base64;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class HtmlReportTest {
    private static String page() throws IOException {
        StringBuilder text = new StringBuilder();
        new HtmlReport(Units.METRIC).write(SampleReviews.pricedRace(), text);
        return text.toString();
    }

    @Test
    void theSameReviewGivesTheSameCharacters() throws IOException {
        assertThat(page()).isEqualTo(page());
    }

    @Test
    void nothingIsAskedOfANetwork() throws IOException {
        assertThat(page())
                .doesNotContainPattern("(?i)<(script|img|link|iframe|source|image)[^>]*\\s(src|href)=")
                .doesNotContainPattern("(?i)\\s(src|href|action|xlink:href)=\"(?!#)")
                .doesNotContainPattern("(?i)@import|url\\((?!#)");
    }

    @Test
    void thePolicyNamesTheDigestOfEachScriptAndStyle() throws Exception {
        String page = page();
        Matcher policy = Pattern.compile("Content-Security-Policy\" content=\"([^\"]*)\"")
                .matcher(page);
        assertThat(policy.find()).isTrue();
        String words = policy.group(1).replace("&#39;", "'");
        assertThat(words).startsWith("default-src 'none'").doesNotContain("unsafe");
        Matcher element = Pattern.compile("<(?:script|style)>(.*?)</(?:script|style)>", Pattern.DOTALL)
                .matcher(page);
        int count = 0;
        while (element.find()) {
            byte[] digest =
                    MessageDigest.getInstance("SHA-256").digest(element.group(1).getBytes(StandardCharsets.UTF_8));
            assertThat(words).contains("'sha256-" + Base64.getEncoder().encodeToString(digest) + "'");
            count++;
        }
        assertThat(count).isEqualTo(3); // style, chart library, own script
    }

    @Test
    void theChartLibrarysLicenceIsInThePage() throws IOException {
        assertThat(page()).contains("Copyright (c)", "Permission is hereby granted, free of charge", "uPlot");
    }

    @Test
    void noTemplatePassesAnythingUnescaped() throws IOException {
        try (Stream<Path> templates = Files.list(Path.of("src/main/jte"))) {
            List<Path> files = templates.toList();
            assertThat(files)
                    .isNotEmpty()
                    .allSatisfy(file -> assertThat(Files.readString(file))
                            .as(file.toString())
                            .doesNotContain("$unsafe")
                            .doesNotContain("style=\""));
        }
    }

    @Test
    void whatADetectorOfOnesOwnFoundIsShown() throws IOException {
        StringBuilder page = new StringBuilder();
        new HtmlReport(Units.METRIC).write(SampleReviews.raceWithOwnFinding(), page);
        assertThat(page)
                .contains(
                        "What own detectors found", "Much coasting", "data-path=\"pacing.ownFindings[0].startSeconds\"")
                .contains("Pedal &lt;i&gt;lightly")
                .doesNotContain("<i>lightly", "<b>odd");
        assertThat(page()).doesNotContain("own detectors");
    }
}
