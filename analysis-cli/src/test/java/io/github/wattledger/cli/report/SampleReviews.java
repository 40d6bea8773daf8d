package io.github.wattledger.cli.report;

import io.github.wattledger.RideReview;
import io.github.wattledger.clean.PowerSource;
import io.github.wattledger.clean.QualityNote;
import io.github.wattledger.clean.QualityReport;
import io.github.wattledger.course.Climb;
import io.github.wattledger.course.ClimbReview;
import io.github.wattledger.intake.RideSource;
import io.github.wattledger.intake.RiderOnDay;
import io.github.wattledger.load.RideLoad;
import io.github.wattledger.load.ZoneTime;
import io.github.wattledger.pacing.Advice;
import io.github.wattledger.pacing.Evidence;
import io.github.wattledger.pacing.Finding;
import io.github.wattledger.pacing.FindingKind;
import io.github.wattledger.pacing.Occasion;
import io.github.wattledger.pacing.OwnFinding;
import io.github.wattledger.pacing.PacingNumbers;
import io.github.wattledger.pacing.PacingReview;
import io.github.wattledger.pacing.Severity;
import io.github.wattledger.pacing.TimeLedger;
import io.github.wattledger.pacing.Verdict;
import io.github.wattledger.pacing.price.Cost;
import io.github.wattledger.power.Ability;
import io.github.wattledger.power.MeanMaximalCurve;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.DeviceTotals;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.RecordingDevice;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Series;
import io.github.wattledger.rider.Rider;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Reviews put together by hand: an invented race with everything known, and a ride with nothing known. */
public final class SampleReviews {
    private static final Instant START = Instant.parse("2026-06-14T04:00:12Z");
    private static final int ELAPSED = 27_060;
    private static final int MOVING = 25_320;

    private SampleReviews() {}

    /** Seven hours on coastal forest roads, started too hard. */
    public static RideReview race() {
        return race(
                Verdict.OVER_HARD_START,
                List.of(
                        overHardStart(new Cost.NotPriced("not priced yet")),
                        fade(new Cost.NotPriced("not priced yet")),
                        stoppedTime(new Cost.NotPriced("not priced yet"))),
                List.of());
    }

    /** The same race with prices; one of them says that it would not have been faster. */
    public static RideReview pricedRace() {
        return race(
                Verdict.OVER_HARD_START,
                List.of(
                        overHardStart(new Cost.Priced(3.96, 9.2, "replay: same work, same normalized power")),
                        fade(new Cost.Priced(0, 0, "it would not have been faster")),
                        stoppedTime(new Cost.NotPriced("a stop costs what it lasts"))),
                List.of(
                        new TimeLedger.Entry("over-hard-start", 3.96, 9.2),
                        new TimeLedger.Entry("fade", 0, 0),
                        new TimeLedger.Entry("against your ability (a guide)", 6.14, 6.14)));
    }

    /** The same race with a climb that was ridden twice, the second time 31 s slower and without power. */
    public static RideReview raceWithClimbs() {
        RideReview race = race();
        Climb first = new Climb(
                new Interval(900, 1_320), 9_000, 11_100, 105, 0.05, 0.0875, 420, 262.5, 158.25, 900, null, null);
        Climb second = new Climb(
                new Interval(9_900, 10_360), 62_000, 64_100, 105, 0.05, 0.0875, 451, null, null, 838.1375, null, null);
        return new RideReview(
                race.source(),
                race.rider(),
                race.quality(),
                race.load(),
                race.deviceTotals(),
                race.curve(),
                race.ability(),
                race.pacing(),
                race.ride(),
                race.reviewed(),
                List.of(
                        new ClimbReview(new Interval(1_200, 1_620), first, 264.0, 262.5 / 71.5, null, null),
                        new ClimbReview(new Interval(10_200, 10_660), second, null, null, 0, 31)),
                null);
    }

    /** The same race with another judgement. */
    public static RideReview race(Verdict verdict, List<Finding> findings, List<TimeLedger.Entry> entries) {
        return new RideReview(
                new RideSource(
                        "pinewood-coast-160.fit",
                        "FIT",
                        "0123456789abcdef".repeat(4),
                        "Acme Recorder 7",
                        "cycling",
                        START,
                        10_800,
                        0),
                onDay(Rider.UNKNOWN
                        .withThresholdPowerW(250)
                        .withThresholdHeartRateBpm(169)
                        .withMassKg(71.5)),
                new QualityReport(
                        25_860,
                        120,
                        14,
                        PowerSource.WORK_COUNTER,
                        List.of(
                                new QualityNote("spike", 14, "14 power samples above 2000 W were set missing"),
                                new QualityNote("no-left-share", null, "The left share of power was not recorded."))),
                load(),
                new DeviceTotals(
                        27_060.0, 25_980.0, null, 163_350.0, 1_822.0, 4_921.0, 189.0, 213.0, 0.852, 521.0, 148.0, 179.0,
                        81.0, null),
                curve(),
                new Ability(null, null, Ability.Source.GUIDE, null, 182.98, MOVING, null),
                new PacingReview(
                        verdict,
                        verdict == Verdict.NOT_JUDGED ? "not a race effort" : null,
                        new Interval(300, ELAPSED),
                        182.98,
                        findings,
                        new TimeLedger(
                                451,
                                422,
                                9,
                                18,
                                2,
                                entries,
                                entries.isEmpty() ? List.of() : List.of("The prices rest on typical values.")),
                        List.of(
                                "Climbs are not computed yet.",
                                "The first 5 min were set apart as not raced: 5-minute mean power stayed under 100 W."),
                        List.of(),
                        verdict == Verdict.NOT_JUDGED ? easy() : asked(),
                        List.of(),
                        0.84,
                        behind(verdict),
                        PacingNumbers.NONE),
                ride(),
                new Interval(0, ELAPSED),
                null,
                null);
    }

    /** The race with what a user's own detector found. */
    public static RideReview raceWithOwnFinding() {
        RideReview race = race();
        PacingReview pacing = race.pacing();
        OwnFinding own = new OwnFinding(
                "much-coasting",
                Severity.MODERATE,
                new Interval(300, ELAPSED),
                2_100.0,
                null,
                Evidence.none().with("sharePercent", 22.25).with("<b>odd</b>Name", 3),
                new Advice("Pedal <i>lightly</i> where it rolls", null, null));
        return new RideReview(
                race.source(),
                race.rider(),
                race.quality(),
                race.load(),
                race.deviceTotals(),
                race.curve(),
                race.ability(),
                new PacingReview(
                        pacing.verdict(),
                        pacing.verdictReason(),
                        pacing.judged(),
                        pacing.targetW(),
                        pacing.findings(),
                        pacing.ledger(),
                        pacing.leftOut(),
                        List.of(own),
                        pacing.occasion(),
                        pacing.remarks(),
                        pacing.secondHalfOverFirst(),
                        pacing.verdictRestsOn(),
                        pacing.numbers()),
                race.ride(),
                race.reviewed(),
                null,
                null);
    }

    /** A recording of positions alone, of which nothing is known. */
    public static RideReview nothingKnown() {
        return new RideReview(
                new RideSource(null, null, null, null, null, START, null, 0),
                onDay(Rider.UNKNOWN),
                new QualityReport(600, 0, 0, PowerSource.NONE, List.of()),
                new RideLoad(
                        600, 600, 600, 0, null, null, null, null, null, null, null, null, null, null, null, null, null,
                        null, List.of(), List.of()),
                null,
                MeanMaximalCurve.of(new double[0]),
                new Ability(null, null, null, null, null, 600, null),
                new PacingReview(
                        Verdict.NOT_JUDGED,
                        "no power in this file",
                        new Interval(0, 600),
                        null,
                        List.of(),
                        new TimeLedger(10, 10, 0, 0, 0, List.of(), List.of()),
                        List.of("Everything that rests on power."),
                        List.of(),
                        new Occasion(Occasion.Reason.NO_POWER, Evidence.none(), List.of()),
                        List.of(),
                        null,
                        null,
                        PacingNumbers.NONE),
                Ride.builder(START, 600).build(),
                new Interval(0, 600),
                null,
                null);
    }

    public static Finding overHardStart(Cost cost) {
        return new Finding(
                FindingKind.OVER_HARD_START,
                Severity.MAJOR,
                new Interval(300, 4_520),
                2_100.0,
                31_249.0,
                Evidence.none()
                        .with("openingNormalizedPowerW", 252.3)
                        .with("restNormalizedPowerW", 201.2)
                        .with("targetW", 182.98)
                        .with("excessWorkKJ", 291.4)
                        .with("minutesAboveThreshold", 41.2)
                        .with("openingSeconds", 4_220)
                        .with("openingHeartRateBpm", 164.1)
                        .with("thresholdHeartRateFraction", 0.971),
                cost,
                new Advice("Hold the first 70 min at 200 W or less, and let the group go.", 200.0, null),
                null);
    }

    public static Finding fade(Cost cost) {
        return new Finding(
                FindingKind.FADE,
                Severity.MODERATE,
                new Interval(4_520, ELAPSED),
                31_249.0,
                163_400.0,
                Evidence.none()
                        .with("earlyPowerW", 205)
                        .with("latePowerW", 176.1)
                        .with("lossPercent", 14.1)
                        .with("slopePercentPerHour", -2.9)
                        .with("comparedBlocks", 18),
                cost,
                new Advice("A steadier opening is the cure; eat from the first hour on", null, null),
                null);
    }

    public static Finding stoppedTime(Cost cost) {
        return new Finding(
                FindingKind.STOPPED_TIME,
                Severity.MINOR,
                new Interval(12_010, 12_550),
                null,
                null,
                Evidence.none()
                        .with("stopCount", 4)
                        .with("longerThanSeconds", 60)
                        .with("totalMinutes", 22.5)
                        .with("longestMinutes", 9),
                cost,
                new Advice("Plan two stops and fill both bottles at each.", null, null),
                null);
    }

    private static RiderOnDay onDay(Rider rider) {
        return RiderOnDay.of(rider, RecordingDevice.UNKNOWN, LocalDate.of(2026, 6, 14));
    }

    private static RideLoad load() {
        return new RideLoad(
                ELAPSED,
                25_980,
                MOVING,
                540,
                163_400.0,
                1_840.0,
                4_913.4,
                190.0,
                214.0,
                0.856,
                526.34567,
                1.12631578947,
                148.2,
                179.0,
                82.4,
                6.4534,
                1.446,
                7.2,
                List.of(
                        new ZoneTime("recovery", 0, 137.5, 5_172),
                        new ZoneTime("endurance", 137.5, 187.5, 9_051),
                        new ZoneTime("tempo", 187.5, 225.0, 6_465),
                        new ZoneTime("threshold", 225, 262.5, 3_103),
                        new ZoneTime("VO2max", 262.5, 300.0, 1_293),
                        new ZoneTime("anaerobic", 300, 375.0, 646),
                        new ZoneTime("neuromuscular", 375, null, 130)),
                List.of(
                        new ZoneTime("recovery", 0, 114.92, 1_000),
                        new ZoneTime("endurance", 114.92, 140.27, 8_000),
                        new ZoneTime("tempo", 140.27, 158.86, 11_000),
                        new ZoneTime("threshold", 158.86, 177.45, 5_000),
                        new ZoneTime("VO2max", 177.45, null, 0)));
    }

    /** 5 s at 600 W, 55 s at 300 W, 240 s at 250 W, 400 s at 200 W. */
    private static MeanMaximalCurve curve() {
        double[] watts = new double[700];
        Arrays.fill(watts, 0, 5, 600);
        Arrays.fill(watts, 5, 60, 300);
        Arrays.fill(watts, 60, 300, 250);
        Arrays.fill(watts, 300, 700, 200);
        return MeanMaximalCurve.of(watts);
    }

    private static Ride ride() {
        Ride.Builder ride = Ride.builder(START, ELAPSED);
        for (Channel channel :
                List.of(Channel.POWER, Channel.HEART_RATE, Channel.CADENCE, Channel.DISTANCE, Channel.ALTITUDE)) {
            ride.channel(channel, Series.generate(ELAPSED, second -> second % 100));
        }
        return ride.build();
    }

    /** The review with another source. */
    public static RideReview named(RideReview review, @Nullable String file, @Nullable String device) {
        RideSource source = review.source();
        return new RideReview(
                new RideSource(
                        file,
                        source.format(),
                        source.sha256(),
                        device,
                        source.sport(),
                        source.startTime(),
                        source.utcOffsetSeconds(),
                        source.sessionIndex()),
                review.rider(),
                review.quality(),
                review.load(),
                review.deviceTotals(),
                review.curve(),
                review.ability(),
                review.pacing(),
                review.ride(),
                review.reviewed(),
                null,
                null);
    }

    /** A finding of most kinds, with the numbers that a detector gives. */
    public static List<Finding> everyKind() {
        return List.of(
                overHardStart(new Cost.NotPriced("not priced yet")),
                fade(new Cost.NotPriced("another reason")),
                stoppedTime(new Cost.NotPriced("not priced yet")),
                finding(
                        FindingKind.THRESHOLD_RIDING_EARLY,
                        Evidence.none()
                                .with("longestSeconds", 840)
                                .with("meanPowerW", 244)
                                .with("thresholdFraction", 0.976)
                                .with("totalSeconds", 2_000)
                                .with("stretchCount", 3)),
                finding(
                        FindingKind.SURGES,
                        Evidence.none()
                                .with("count", 42)
                                .with("totalSeconds", 700)
                                .with("workAboveThresholdKJ", 91)
                                .with("workAboveThresholdKJPerHour", 13)
                                .with("wPrimeSharePerHour", 0.62)
                                .with("longestSeconds", 55)
                                .with("highestMeanW", 512)),
                finding(
                        FindingKind.DRIFT,
                        Evidence.none()
                                .with("heartRateOverPredictedPercent", 4.4)
                                .with("actualHeartRateBpm", 151)
                                .with("predictedHeartRateBpm", 144.6)
                                .with("bpmPer100W", 31)
                                .with("decouplingPercent", 7.2)),
                finding(
                        FindingKind.UNDER_PACED,
                        Evidence.none()
                                .with("normalizedPowerW", 160)
                                .with("targetW", 183)
                                .with("shareOfTargetPercent", 87.4)),
                finding(
                        FindingKind.LATE_RESERVE,
                        Evidence.none()
                                .with("lastSixthNormalizedPowerW", 221)
                                .with("restNormalizedPowerW", 195)
                                .with("gainPercent", 13.3)));
    }

    /** A finding without a place or a price. */
    public static Finding finding(FindingKind kind, Evidence evidence) {
        return new Finding(
                kind,
                Severity.MINOR,
                new Interval(0, 100),
                null,
                null,
                evidence,
                new Cost.NotPriced("not priced yet"),
                new Advice("Ride on.", null, null),
                null);
    }

    private static Occasion asked() {
        return new Occasion(Occasion.Reason.ASKED_AS_RACE, Evidence.none(), List.of());
    }

    private static Occasion easy() {
        return new Occasion(
                Occasion.Reason.BELOW_GUIDE,
                Evidence.none()
                        .with("ridingHours", 7.033)
                        .with("normalizedPowerW", 131)
                        .with("shareOfGuide", 0.716),
                List.of());
    }

    private static @Nullable FindingKind behind(Verdict verdict) {
        return switch (verdict) {
            case OVER_HARD_START -> FindingKind.OVER_HARD_START;
            case FADED -> FindingKind.FADE;
            case UNEVEN -> FindingKind.SURGES;
            case UNDER_PACED -> FindingKind.UNDER_PACED;
            case NEGATIVE_SPLIT -> FindingKind.LATE_RESERVE;
            case EVEN, NOT_JUDGED -> null;
        };
    }
}
