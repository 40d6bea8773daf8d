package io.github.wattledger.cli.report.html;

import io.github.wattledger.RideDetail;
import io.github.wattledger.RideReview;
import io.github.wattledger.RideSplits;
import io.github.wattledger.clean.QualityReport;
import io.github.wattledger.cli.report.words.AbilityWords;
import io.github.wattledger.cli.report.words.BunchWords;
import io.github.wattledger.cli.report.words.FindingWords;
import io.github.wattledger.cli.report.words.HeadlineWords;
import io.github.wattledger.cli.report.words.LoadWords;
import io.github.wattledger.cli.report.words.NotesWords;
import io.github.wattledger.cli.report.words.OccasionWords;
import io.github.wattledger.cli.report.words.PlainText;
import io.github.wattledger.cli.report.words.ProposedBunchWords;
import io.github.wattledger.cli.report.words.RecordingWords;
import io.github.wattledger.cli.report.words.RemarkWords;
import io.github.wattledger.cli.report.words.RideWords;
import io.github.wattledger.cli.report.words.RiderWords;
import io.github.wattledger.cli.report.words.Units;
import io.github.wattledger.cli.report.words.ZoneWords;
import io.github.wattledger.pacing.Finding;
import io.github.wattledger.pacing.PacingReview;
import io.github.wattledger.pacing.Severity;
import io.github.wattledger.pacing.Verdict;
import io.github.wattledger.plan.PlanReview;
import io.github.wattledger.ride.Channel;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * Everything the template of a ride's page shows, in the order in which it is shown.
 *
 * @param frame what every page has
 * @param distanceUnit the unit of distances
 * @param season where the season's page is, or null
 * @param name event and rider where they are known, and the file's name or words for it
 * @param circumstances when, what and with which device
 * @param verdict the verdict in a word or two
 * @param minutes what all mistakes cost together, a sentence, or empty
 * @param sentence what the verdict rests on
 * @param besides what the first lines say of a bunch and of what had been agreed, possibly nothing
 * @param occasion what the ride was taken for, and why
 * @param nextTime the weightiest mistakes, whose advice stands in the head
 * @param whyCapsDiffer why the caps in it differ; empty where there are not several
 * @param notKnown what is not known of the ride, a sentence
 * @param hasTemperature whether a temperature was recorded
 * @param hasPower whether there is power at all
 * @param hasDistance whether the axis can be one of distance
 * @param judged which part was judged, or empty when all was
 * @param noFindings what to say when nothing stands out
 * @param bunch whether it was worth staying with the bunch, empty where the rider says nothing of one
 * @param proposedBunch whether it looks like a bunch, empty where the rider says whether there was one
 * @param remarks what stands out in a ride that was no race
 */
public record RacePage(
        Frame frame,
        String distanceUnit,
        @Nullable String season,
        String name,
        String circumstances,
        String verdict,
        String minutes,
        String sentence,
        List<String> besides,
        String occasion,
        List<FindingRow> nextTime,
        String whyCapsDiffer,
        String notKnown,
        boolean hasPower,
        boolean hasDistance,
        List<Facts.Fact> facts,
        @Nullable String loadDoubt,
        boolean hasTemperature,
        boolean hasDevice,
        Account account,
        String judged,
        Timeline timeline,
        List<FindingRow> findings,
        String noFindings,
        List<String> bunch,
        List<String> proposedBunch,
        List<RemarkWords> remarks,
        List<FindingRow> ownFindings,
        Splits splits,
        Efforts efforts,
        List<String> ability,
        Zones powerZones,
        Zones heartRateZones,
        Climbs climbs,
        Blocks blocks,
        @Nullable Markup track,
        boolean isTrackGraded,
        GearTable gears,
        EnergyTable energy,
        @Nullable AgainstPlan againstPlan,
        List<String> judgedBy,
        List<String> notes,
        List<String> quality,
        List<String> leftOut) {
    private static final int MOST_IN_THE_HEAD = 3;

    static RacePage of(RideReview review, Units units, @Nullable String season, @Nullable PlanReview plan) {
        RideDetail detail = RideDetail.of(review);
        RideSplits splits = RideSplits.of(review);
        Track track = Track.of(review.ride());
        TimelineDrawing drawing = new TimelineDrawing(review, detail, units);
        boolean hasDistance = review.ride().has(Channel.DISTANCE);
        boolean hasPower = review.ride().has(Channel.POWER);
        String name = RideWords.title(review);
        PacingReview pacing = review.pacing();
        List<FindingRow> findings = FindingRow.of(review, drawing.lanes(), units);
        return new RacePage(
                Frame.withCharts(HeadlineWords.title(review)),
                units.distance().symbol(),
                season,
                name,
                RideWords.circumstances(review.source(), review.quality()),
                HeadlineWords.verdict(review),
                HeadlineWords.minutes(review),
                HeadlineWords.sentence(review),
                HeadlineWords.besides(review),
                OccasionWords.of(review),
                nextTime(pacing, findings),
                HeadlineWords.whyCapsDiffer(review),
                HeadlineWords.notKnown(review),
                hasPower,
                hasDistance,
                Facts.of(review, units),
                LoadWords.doubt(review),
                !Facts.temperatures(review, units).isEmpty(),
                review.deviceTotals() != null,
                Account.of(pacing, units),
                RideWords.judged(review),
                Timeline.of(review, detail, drawing, track, units),
                findings,
                pacing.verdict() == Verdict.NOT_JUDGED ? RemarkWords.none(review) : FindingWords.none(review),
                BunchWords.of(pacing),
                ProposedBunchWords.of(pacing),
                RemarkWords.of(review, units),
                FindingRow.ofOwn(review, units),
                Splits.of(review, splits, units),
                Efforts.of(review, detail),
                AbilityWords.of(review),
                Zones.of(
                        review.load().powerZones(),
                        "load.powerZones",
                        "W",
                        "power-bar",
                        ZoneWords.noPowerZones(review)),
                Zones.of(
                        review.load().heartRateZones(),
                        "load.heartRateZones",
                        "bpm",
                        "heart-bar",
                        ZoneWords.noHeartRateZones(review)),
                Climbs.of(review, detail, splits, units),
                Blocks.of(review, detail),
                track == null ? null : track.draw(review, detail),
                detail.sustainable() != null && hasPower,
                GearTable.of(review, units),
                EnergyTable.of(review),
                AgainstPlan.of(plan, units),
                RiderWords.judgedBy(review, units),
                NotesWords.of(review),
                quality(review.quality(), units),
                pacing.leftOut().stream().map(PlainText::sentence).toList());
    }

    /** What is a mere observation gives no advice for next time, unless the verdict rests on it. */
    private static List<FindingRow> nextTime(PacingReview pacing, List<FindingRow> rows) {
        return IntStream.range(0, rows.size())
                .filter(i -> {
                    Finding finding = pacing.findings().get(i);
                    return finding.severity() != Severity.OBSERVATION || finding.kind() == pacing.verdictRestsOn();
                })
                .mapToObj(rows::get)
                .limit(MOST_IN_THE_HEAD)
                .toList();
    }

    private static List<String> quality(QualityReport quality, Units units) {
        List<String> lines = new ArrayList<>(RecordingWords.summary(quality));
        lines.addAll(RecordingWords.notes(quality.notes(), units));
        return lines;
    }
}
