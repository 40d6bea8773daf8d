package io.github.wattledger.season;

import io.github.wattledger.intake.Known;
import io.github.wattledger.intake.Origin;
import java.io.Serializable;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The threshold in force beside what the bests of the last 90 days imply.
 *
 * @param inForceW threshold power in force on the season's last day, watts, or null when none is known
 * @param source where it comes from, or null
 * @param impliedW what the efforts imply, watts, or null without 20 minutes of riding with little standing
 * @param effort the effort over riding seconds that implies it, or null
 * @param standing how the two compare
 * @param since the day of the first ride since which the threshold in force has always been too low, or null
 * @param tooHighPercent by how much stops within the effort may have raised it at most, percent; null without an effort
 */
public record ThresholdCheck(
        @Nullable Double inForceW,
        @Nullable Origin source,
        @Nullable Double impliedW,
        BestEfforts.@Nullable Effort effort,
        Standing standing,
        @Nullable LocalDate since,
        @Nullable Double tooHighPercent)
        implements Serializable {
    /** How a threshold compares with what efforts imply. */
    public enum Standing {
        /** Nothing speaks against it. */
        FITS,
        /** Efforts were higher than it allows. */
        LOOKS_LOW,
        /** No recent effort comes near it: it is too high, or there was no hard effort. */
        UNSUPPORTED,
        /** One of the two is not known. */
        UNKNOWN
    }

    /** From this share of the threshold on, efforts show that it is low; less lies within the accuracy of a meter. */
    static final double LOW_FROM = 1.03;
    /** Efforts below this share of the threshold do not support it. */
    static final double UNSUPPORTED_BELOW = 0.90;

    static ThresholdCheck of(List<SeasonRide> rides, BestEfforts recent, Judge judge, LocalDate asOf) {
        BestEfforts.RidingEffort riding = recent.thresholdEffort();
        Double impliedW = riding == null ? null : (Double) BestEfforts.implied(riding.best());
        Double tooHighPercent = riding == null ? null : (Double) riding.best().tooHighPercent();
        BestEfforts.Effort effort = riding == null
                ? null
                : new BestEfforts.Effort(
                        riding.best().seconds(), riding.best().watts(), false, riding.day(), riding.file());
        InForce inForce = inForce(rides, judge, asOf);
        Double watts = inForce.watts();
        if (watts == null || impliedW == null) {
            return new ThresholdCheck(
                    watts, inForce.source(), impliedW, effort, Standing.UNKNOWN, null, tooHighPercent);
        }
        boolean low = impliedW > LOW_FROM * watts;
        Standing standing =
                low ? Standing.LOOKS_LOW : impliedW < UNSUPPORTED_BELOW * watts ? Standing.UNSUPPORTED : Standing.FITS;
        return new ThresholdCheck(
                watts,
                inForce.source(),
                impliedW,
                effort,
                standing,
                low ? lowSince(rides, judge) : null,
                tooHighPercent);
    }

    private record InForce(@Nullable Double watts, @Nullable Origin source) {}

    /** The threshold that the rider or the profile gives for that day; otherwise the device's of the last ride with one. */
    private static InForce inForce(List<SeasonRide> rides, Judge judge, LocalDate day) {
        Known known = judge.thresholdPower(day);
        if (known != null) {
            return new InForce(known.value(), known.origin());
        }
        for (int i = rides.size() - 1; i >= 0; i--) {
            RideJudgement judgement = rides.get(i).judgement();
            if (judgement.thresholdSource() == Origin.DEVICE) {
                return new InForce(judgement.thresholdPowerW(), Origin.DEVICE);
            }
        }
        return new InForce(null, null);
    }

    private static @Nullable LocalDate lowSince(List<SeasonRide> rides, Judge judge) {
        LocalDate since = null;
        for (int last = rides.size() - 1; last >= 0; last--) {
            LocalDate day = rides.get(last).day();
            Double watts = inForce(rides.subList(0, last + 1), judge, day).watts();
            double implied = 0;
            for (int i = last; i >= 0 && rides.get(i).day().isAfter(day.minusDays(BestEfforts.RECENT_DAYS)); i--) {
                implied = Math.max(implied, BestEfforts.implied(rides.get(i)));
            }
            if (watts == null || implied <= LOW_FROM * watts) {
                return since;
            }
            since = day;
        }
        return since;
    }
}
