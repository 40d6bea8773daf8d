package io.github.wattledger.cli.report.words;

import io.github.wattledger.pacing.Verdict;
import io.github.wattledger.season.PacingTrend;
import io.github.wattledger.season.SeasonRide;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * How a rider paces, in the few words that fit into a row of several riders.
 *
 * @param lastRace the day of the last race, or that there is none
 * @param verdict the verdict on it, or empty
 * @param cost what its mistakes cost, or empty
 * @param overHardStarts how many races were begun much too hard, earlier and later ones; or that they are too few
 * @param meanCost what mistakes cost in a race, earlier and later ones; or that it is not known
 */
public record RiderPacingWords(String lastRace, String verdict, String cost, String overHardStarts, String meanCost) {
    private static final String NOT_KNOWN = "not known";

    /** The words for the rider of a season. */
    public static RiderPacingWords of(PacingTrend pacing) {
        SeasonRide last = lastRace(pacing.rides());
        String day = last == null ? "no race" : last.day().toString();
        String verdict =
                last == null ? "" : PlainText.capital(last.judgement().verdict().words());
        String cost = last == null ? "" : SeasonWords.price(last.judgement());
        PacingTrend.Half earlier = pacing.earlier();
        PacingTrend.Half later = pacing.later();
        return earlier == null || later == null
                ? new RiderPacingWords(
                        day, verdict, cost, "fewer than " + PacingTrend.LEAST_RACES + " races", NOT_KNOWN)
                : new RiderPacingWords(
                        day,
                        verdict,
                        cost,
                        starts(earlier) + ", then " + starts(later),
                        meanCost(earlier.costMinutes(), later.costMinutes()));
    }

    /** The last ride that was judged as a race, or null. */
    private static @Nullable SeasonRide lastRace(List<SeasonRide> inTimeOrder) {
        SeasonRide last = null;
        for (SeasonRide ride : inTimeOrder) {
            last = ride.judgement().verdict() == Verdict.NOT_JUDGED ? last : ride;
        }
        return last;
    }

    private static String starts(PacingTrend.Half half) {
        return half.overHardStarts() + " of " + half.raceCount();
    }

    private static String meanCost(@Nullable Double earlier, @Nullable Double later) {
        return earlier == null || later == null
                ? NOT_KNOWN
                : Figures.decimal(earlier, 1) + ", then " + Figures.minutes(later);
    }
}
