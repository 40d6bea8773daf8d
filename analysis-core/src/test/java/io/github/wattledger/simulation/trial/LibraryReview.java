package io.github.wattledger.simulation.trial;

import io.github.wattledger.ReviewOptions;
import io.github.wattledger.Reviewer;
import io.github.wattledger.RideReview;
import io.github.wattledger.clean.Cleaning;
import io.github.wattledger.course.Course;
import io.github.wattledger.pacing.Effort;
import io.github.wattledger.pacing.Finding;
import io.github.wattledger.pacing.TimeLedger;
import io.github.wattledger.pacing.Verdict;
import io.github.wattledger.pacing.price.Cost;
import io.github.wattledger.replay.Adjustment;
import io.github.wattledger.replay.WhatIf;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Recording;
import io.github.wattledger.ride.RecordingDevice;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.rider.Rider;
import io.github.wattledger.rig.Position;
import io.github.wattledger.rig.RigChoice;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** The library as the trial sees it: every call into it is here, and its words are turned into plain values. */
final class LibraryReview {
    private final TrialRace race;
    private final Recording recording;
    private final Rider rider;

    LibraryReview(TrialRace race) {
        this.race = race;
        Rider known = Rider.UNKNOWN.withMassKg(race.rider().massKg());
        rider = race.thresholdGiven() ? known.withThresholdPowerW(race.rider().thresholdPowerW()) : known;
        Recording written = race.tape().toRecording();
        recording = race.thresholdGiven() ? written : withoutThreshold(written);
    }

    /**
     * What a review says.
     *
     * @param headline the verdict
     * @param targetW the power expected of the rider, {@code NaN} where none is
     * @param accusations what it finds wrong
     * @param wholeLowMinutes what all of it cost, lower end; {@code NaN} where no line says so
     * @param wholeHighMinutes upper end
     */
    record Judged(
            String headline,
            double targetW,
            List<Accusation> accusations,
            double wholeLowMinutes,
            double wholeHighMinutes) {
        Optional<Accusation> of(MistakeKind kind) {
            return accusations.stream()
                    .filter(each -> each.kind().equals(kind.name()))
                    .findFirst();
        }

        boolean isRace() {
            return !headline.equals(Verdict.NOT_JUDGED.name());
        }
    }

    /**
     * A finding.
     *
     * @param kind its name
     * @param when its seconds
     * @param lowMinutes lower end of its price, {@code NaN} where it has none
     * @param highMinutes upper end
     * @param evidence what it rests on, for people
     */
    record Accusation(
            String kind, String severity, Interval when, double lowMinutes, double highMinutes, String evidence) {}

    /** The range of an answer, minutes saved. */
    record Saved(double lowMinutes, double minutes, double highMinutes) {}

    /** What is said of the race when told that it is one. */
    Judged asRace() {
        return judged(Effort.RACE);
    }

    /** What is said of the race when the review has to find out whether it is one. */
    Judged unasked() {
        return judged(Effort.AUTO);
    }

    private Judged judged(Effort effort) {
        RideReview review = Reviewer.review(recording, rider, ReviewOptions.WHOLE_RIDE.withEffort(effort));
        Double target = review.pacing().targetW();
        List<Accusation> accusations = review.pacing().findings().stream()
                .map(LibraryReview::accusation)
                .toList();
        Optional<TimeLedger.Entry> whole = review.pacing().ledger().allAtOnce();
        return new Judged(
                review.pacing().verdict().name(),
                target == null ? Double.NaN : target,
                accusations,
                whole.map(TimeLedger.Entry::minutesLow).orElse(Double.NaN),
                whole.map(TimeLedger.Entry::minutesHigh).orElse(Double.NaN));
    }

    private static Accusation accusation(Finding finding) {
        boolean priced = finding.cost() instanceof Cost.Priced;
        Cost.Priced price = finding.cost() instanceof Cost.Priced each ? each : new Cost.Priced(0, 0, "no price");
        String evidence = finding.evidence().entries().stream()
                .map(entry -> entry.name() + "=" + Math.round(entry.value() * 1000) / 1000.0)
                .collect(Collectors.joining(" "));
        return new Accusation(
                finding.kind().name(),
                finding.severity().id(),
                finding.when(),
                priced ? price.lowMinutes() : Double.NaN,
                priced ? price.highMinutes() : Double.NaN,
                evidence);
    }

    /** Minutes that another drag area and mass would save on this race. */
    Saved saved(double dragFactor, double riderKgMore) {
        Ride ride = Cleaning.clean(recording).ride();
        Course course = Course.of(ride).orElse(null);
        RigChoice rig = RigChoice.ofNoRide(race.rider().massKg(), null, null, null, Position.HOODS)
                .estimatedFrom(ride, course);
        WhatIf.Change change = WhatIf.Change.NOTHING;
        change = dragFactor == 1 ? change : change.withDragAreaM2(Adjustment.times(dragFactor));
        change = riderKgMore == 0 ? change : change.withRiderKg(Adjustment.by(riderKgMore));
        WhatIf.Answer answer = WhatIf.replayed(ride, course, rig, change).orElseThrow(AssertionError::new);
        return new Saved(answer.lowMinutes(), answer.savedMinutes(), answer.highMinutes());
    }

    private static Recording withoutThreshold(Recording written) {
        RecordingDevice device = written.device();
        RecordingDevice other =
                new RecordingDevice(device.name(), null, null, device.maximumHeartRateBpm(), device.riderMassKg());
        return new Recording(
                written.samples(),
                written.timerEvents(),
                written.laps(),
                written.totals(),
                other,
                written.sport(),
                written.sessionIndex(),
                written.utcOffsetSeconds());
    }
}
