package io.github.wattledger.cli.report;

import io.github.wattledger.RideReview;
import io.github.wattledger.clean.QualityNote;
import io.github.wattledger.clean.RecordingSummary;
import io.github.wattledger.clean.RecordingSummary.ChannelSummary;
import io.github.wattledger.intake.FileInspection;
import io.github.wattledger.intake.RideSource;
import io.github.wattledger.load.RideLoad;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import java.util.List;

/** Inspections with invented numbers. */
public final class SampleInspections {
    private SampleInspections() {}

    /** A race by the same invented recorder as in {@link SampleReviews#race()}, and a damaged session without a sample. */
    public static FileInspection race() {
        RideReview race = SampleReviews.race();
        RideReview unknown = SampleReviews.nothingKnown();
        return new FileInspection(
                "pinewood-coast-160.fit",
                "FIT",
                1_234_567,
                "0123456789abcdef".repeat(4),
                List.of(new QualityNote("cut-short", null, "The file breaks off at byte 1234000")),
                List.of(
                        new FileInspection.Session(
                                race.source(),
                                new RecordingSummary(
                                        25_860,
                                        1.0,
                                        241,
                                        List.of(
                                                new ChannelSummary(Channel.POWER, 25_740, 99.54, 0.0, 903.0),
                                                new ChannelSummary(Channel.DISTANCE, 25_860, 100.0, 0.0, 163_400.0),
                                                new ChannelSummary(Channel.LATITUDE, 25_860, 100.0, -1.234567, 1.3),
                                                new ChannelSummary(Channel.TEMPERATURE, 25_860, 100.0, 8.5, 21.0),
                                                new ChannelSummary(Channel.LEFT_SHARE, 25_000, 96.7, 0.413, 0.62),
                                                new ChannelSummary(Channel.RESPIRATION, 0, 0.0, null, null)),
                                        List.of(new Interval(4_000, 4_075), new Interval(9_000, 9_045)),
                                        List.of(new Interval(12_000, 12_240)),
                                        7),
                                race.quality(),
                                withoutThreshold(race.load()),
                                race.deviceTotals(),
                                race.ride()),
                        new FileInspection.Session(
                                new RideSource(
                                        null,
                                        null,
                                        null,
                                        null,
                                        null,
                                        unknown.source().startTime(),
                                        null,
                                        1),
                                new RecordingSummary(0, null, null, List.of(), List.of(), List.of(), 0),
                                unknown.quality(),
                                unknown.load(),
                                null,
                                Ride.builder(unknown.source().startTime(), 600).build())));
    }

    private static RideLoad withoutThreshold(RideLoad load) {
        return new RideLoad(
                load.elapsedSeconds(),
                load.timerSeconds(),
                load.movingSeconds(),
                load.stoppedSeconds(),
                load.distanceM(),
                load.ascentM(),
                load.workKJ(),
                load.averagePowerW(),
                load.normalizedPowerW(),
                null,
                null,
                load.variabilityIndex(),
                load.averageHeartRateBpm(),
                load.maximumHeartRateBpm(),
                load.averageCadenceRpm(),
                load.averageSpeedMps(),
                load.efficiencyWPerBeat(),
                load.decouplingPercent(),
                List.of(),
                List.of());
    }
}
