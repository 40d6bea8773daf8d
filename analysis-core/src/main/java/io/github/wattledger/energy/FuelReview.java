package io.github.wattledger.energy;

import io.github.wattledger.pacing.Finding;
import io.github.wattledger.pacing.FindingKind;
import io.github.wattledger.pacing.PacingReview;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * What a reviewed ride asked of the body, and whether a rider who faded can have been short of carbohydrate. The numbers it
 * rests on are of adults: it is not for a rider who may be under 18.
 *
 * @param use energy and carbohydrate of the reviewed part; its hours are in seconds of the whole recording
 * @param intake what the rider says was eaten from the first second of the recording on, or null where nothing is said
 * @param lastThird the balance where the last third of the judged part begins, or null where the ride was no race or the
 *     energy used up to there is not known
 * @param findings the balance at the start of each finding that a shortage of carbohydrate could explain
 * @param guide the published range of intake for the duration, where an energy crash was found; null without one, and under
 *     an hour
 */
public record FuelReview(
        EnergyUse use,
        @Nullable Intake intake,
        @Nullable CarbohydrateBalance lastThird,
        List<FindingFuel> findings,
        @Nullable IntakeGuide guide)
        implements Serializable {
    private static final double SECONDS_PER_HOUR = 3600;

    /** The findings in which power fell, which an empty store can be behind. */
    private static final Set<FindingKind> POWER_FELL = EnumSet.of(FindingKind.ENERGY_CRASH, FindingKind.FADE);

    /** Copies the list. */
    public FuelReview {
        findings = List.copyOf(findings);
    }

    /**
     * Reviews the fuel of a ride.
     *
     * @param ride the whole recording
     * @param reviewed the seconds of it that were reviewed
     * @param pacing how well they were paced
     * @param thresholdPowerW threshold power, watts, above 0, or null where it is not known
     * @param intake what the rider says was eaten from the first second of the recording on, or null
     * @return empty without a threshold, or where power is missing
     */
    public static Optional<FuelReview> of(
            Ride ride,
            Interval reviewed,
            PacingReview pacing,
            @Nullable Double thresholdPowerW,
            @Nullable Intake intake) {
        if (thresholdPowerW == null) {
            return Optional.empty();
        }
        return EnergyUse.of(ride.part(reviewed), thresholdPowerW)
                .map(use -> new FuelReview(
                        use.later(reviewed.fromSecond()),
                        intake,
                        lastThird(ride, pacing, thresholdPowerW, intake),
                        fell(ride, pacing, thresholdPowerW, intake),
                        hasCrash(pacing) ? guide(use) : null));
    }

    private static @Nullable IntakeGuide guide(EnergyUse use) {
        return IntakeGuide.of(use.ridingSeconds() / SECONDS_PER_HOUR, use.carbohydrateGPerHour())
                .orElse(null);
    }

    private static boolean hasCrash(PacingReview pacing) {
        return pacing.findings().stream().anyMatch(finding -> finding.kind() == FindingKind.ENERGY_CRASH);
    }

    /** The balance at the start of a finding, or null where the finding has none. */
    public @Nullable CarbohydrateBalance at(Finding finding) {
        return findings.stream()
                .filter(each -> each.kind() == finding.kind()
                        && each.fromSecond() == finding.when().fromSecond())
                .map(FindingFuel::balance)
                .findFirst()
                .orElse(null);
    }

    /** Whether one of the words would be surer if the rider said what was eaten. */
    public boolean intakeWouldTell() {
        return findings.stream().anyMatch(each -> each.balance().intakeWouldTell());
    }

    private static @Nullable CarbohydrateBalance lastThird(
            Ride ride, PacingReview pacing, double thresholdPowerW, @Nullable Intake intake) {
        if (!pacing.occasion().isRace()) {
            return null;
        }
        Interval judged = pacing.judged();
        int second = judged.fromSecond() + 2 * judged.seconds() / 3;
        return CarbohydrateBalance.at(ride, second, thresholdPowerW, intake).orElse(null);
    }

    private static List<FindingFuel> fell(
            Ride ride, PacingReview pacing, double thresholdPowerW, @Nullable Intake intake) {
        List<FindingFuel> fell = new ArrayList<>();
        for (Finding finding : pacing.findings()) {
            int second = finding.when().fromSecond();
            if (POWER_FELL.contains(finding.kind()) && second > 0) {
                CarbohydrateBalance.at(ride, second, thresholdPowerW, intake)
                        .ifPresent(balance -> fell.add(new FindingFuel(finding.kind(), second, balance)));
            }
        }
        return fell;
    }
}
