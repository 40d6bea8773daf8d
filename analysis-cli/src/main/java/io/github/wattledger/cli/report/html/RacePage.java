package io.github.wattledger.cli.report.html;

import io.github.wattledger.RideDetail;
import io.github.wattledger.RideReview;
import io.github.wattledger.RiderContext;
import io.github.wattledger.clean.PowerSource;
import io.github.wattledger.clean.QualityReport;
import io.github.wattledger.cli.report.AbilityText;
import io.github.wattledger.cli.report.Figures;
import io.github.wattledger.cli.report.Lines;
import io.github.wattledger.cli.report.PlainText;
import io.github.wattledger.cli.report.RideWords;
import io.github.wattledger.cli.report.VerdictSentence;
import io.github.wattledger.pacing.PacingReview;
import io.github.wattledger.pacing.Verdict;
import io.github.wattledger.ride.Channel;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Everything the template of a ride's page shows, in the order in which it is shown.
 *
 * @param frame what every page has
 * @param season where the season's page is, or null
 * @param name the file's name, or words for it
 * @param circumstances when, what and with which device
 * @param verdict the verdict in a word or two
 * @param sentence the verdict in a sentence
 * @param hasPower whether there is power at all
 * @param hasDistance whether the axis can be one of distance
 * @param judged which part was judged, or empty when all was
 * @param noFindings what to say when nothing stands out
 */
public record RacePage(
        Frame frame,
        @Nullable String season,
        String name,
        String circumstances,
        String verdict,
        String sentence,
        boolean hasPower,
        boolean hasDistance,
        List<Facts.Fact> facts,
        boolean hasDevice,
        Account account,
        String judged,
        Timeline timeline,
        List<FindingRow> findings,
        String noFindings,
        List<FindingRow> ownFindings,
        Efforts efforts,
        List<String> ability,
        Zones powerZones,
        Zones heartRateZones,
        Climbs climbs,
        Blocks blocks,
        @Nullable Markup track,
        boolean isTrackGraded,
        GearTable gears,
        List<String> judgedBy,
        List<String> quality,
        List<String> leftOut) {
    static RacePage of(RideReview review, @Nullable String season) {
        RideDetail detail = RideDetail.of(review);
        Track track = Track.of(review.ride());
        TimelineDrawing drawing = new TimelineDrawing(review, detail);
        boolean hasDistance = review.ride().has(Channel.DISTANCE);
        boolean hasPower = review.ride().has(Channel.POWER);
        String file = review.source().file();
        String name = file == null ? "A ride" : PlainText.of(file);
        PacingReview pacing = review.pacing();
        return new RacePage(
                Frame.withCharts(name),
                season,
                name,
                RideWords.circumstances(review.source()),
                Account.capital(pacing.verdict().words()),
                withoutVerdict(VerdictSentence.of(review)),
                hasPower,
                hasDistance,
                Facts.of(review),
                review.deviceTotals() != null,
                Account.of(pacing),
                RideWords.judged(review),
                Timeline.of(review, detail, drawing, track),
                FindingRow.of(pacing, drawing.lanes(), hasDistance),
                pacing.verdict() == Verdict.NOT_JUDGED
                        ? "Nothing: the pacing was not judged."
                        : "Nothing in the pacing stands out.",
                FindingRow.ofOwn(pacing, hasDistance),
                Efforts.of(review, detail),
                ability(review),
                Zones.of(review.load().powerZones(), "load.powerZones", "W", "power-bar", noPowerZones(review)),
                Zones.of(
                        review.load().heartRateZones(),
                        "load.heartRateZones",
                        "bpm",
                        "heart-bar",
                        noHeartRateZones(review)),
                Climbs.of(review, detail),
                Blocks.of(review, detail),
                track == null ? null : track.draw(review, detail),
                detail.sustainable() != null && hasPower,
                GearTable.of(review),
                judgedBy(review.rider()),
                quality(review.quality()),
                pacing.leftOut().stream().map(PlainText::sentence).toList());
    }

    /** The sentence that stands under the verdict as a heading need not repeat it. */
    private static String withoutVerdict(String sentence) {
        int colon = sentence.indexOf(": ");
        return colon < 0 ? sentence : Account.capital(sentence.substring(colon + 2));
    }

    private static List<String> ability(RideReview review) {
        List<String> lines = new ArrayList<>();
        new AbilityText(review).write(new Lines() {
            @Override
            public void heading(String title) {
                // The page has its own.
            }

            @Override
            public void line(String words) {
                lines.add(words);
            }
        });
        return lines;
    }

    private static String noPowerZones(RideReview review) {
        if (!review.ride().has(Channel.POWER)) {
            return "No power in this file.";
        }
        return review.rider().thresholdPowerW() == null
                ? "Not computed: threshold power is not known."
                : "Not computed.";
    }

    private static String noHeartRateZones(RideReview review) {
        if (!review.ride().has(Channel.HEART_RATE)) {
            return "No heart rate in this file.";
        }
        return review.rider().thresholdHeartRateBpm() == null
                ? "Not computed: threshold heart rate is not known."
                : "Not computed.";
    }

    private static List<String> judgedBy(RiderContext rider) {
        List<String> lines = new ArrayList<>();
        Double power = rider.thresholdPowerW();
        RiderContext.ThresholdSource source = rider.thresholdPowerSource();
        if (power == null || source == null) {
            lines.add("Threshold power: " + (power == null ? "not known." : Figures.watts(power) + "."));
        } else {
            lines.add(
                    switch (source) {
                        case GIVEN -> "Threshold power: " + Figures.watts(power) + ", as given.";
                        case PROFILE -> "Threshold power: " + Figures.watts(power) + ", from the rider profile.";
                        case DEVICE ->
                            "Threshold power: " + Figures.watts(power)
                                    + ", as set on the device. Check that it is up to date.";
                        case ESTIMATED ->
                            "Threshold power: at least " + Figures.watts(power)
                                    + ", estimated from the efforts in this ride.";
                    });
        }
        Double heartRate = rider.thresholdHeartRateBpm();
        lines.add("Threshold heart rate: " + (heartRate == null ? "not known" : Figures.beats(heartRate)) + ".");
        Double mass = rider.massKg();
        lines.add("Mass: " + (mass == null ? "not known" : Figures.decimal(mass, 1) + " kg") + ".");
        return lines;
    }

    private static List<String> quality(QualityReport quality) {
        List<String> lines = new ArrayList<>();
        lines.add("Recorded seconds: " + quality.recordedSeconds() + "; seconds without power: "
                + (quality.powerSource() == PowerSource.NONE
                        ? "all, for there is no power in this file"
                        : Integer.toString(quality.missingPowerSeconds()))
                + "; samples repaired: " + quality.repairedSamples() + ".");
        switch (quality.powerSource()) {
            case WORK_COUNTER -> lines.add("Power is taken from the work counter of the power meter.");
            case SAMPLES -> lines.add("Power is taken from the one-second samples.");
            case NONE -> {
                // Said in the line above.
            }
        }
        quality.notes().forEach(note -> lines.add(PlainText.sentence(note.text())));
        return lines;
    }
}
