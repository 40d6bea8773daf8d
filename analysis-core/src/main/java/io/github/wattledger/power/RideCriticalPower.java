package io.github.wattledger.power;

import io.github.wattledger.power.CriticalPower.Form;
import io.github.wattledger.ride.Decimals;
import io.github.wattledger.ride.Outcome;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Series;
import io.github.wattledger.rider.Bounds;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * Whether a ride carries a fit of critical power. A ride shows what was done, not what could have been done, so a fit to
 * its bests is believed only when nothing speaks against the efforts having been maximal.
 */
public final class RideCriticalPower {
    /**
     * Durations read from a ride's curve, seconds: those that riders test themselves over, among them the 3, 7 and 12
     * minutes of Karsten et al. 2015.
     */
    private static final int[] CURVE_SECONDS = {180, 300, 420, 480, 720, 1200, 1800};

    /**
     * A curve that ends before 12 minutes is not fitted: trials all under 10 minutes overestimate critical power, and
     * two of 12 to 20 minutes correct that (Mattioni Maturana et al. 2018, J Sci Med Sport 21:742).
     */
    private static final int LEAST_LONGEST_SECONDS = 720;

    /**
     * Largest standard error of critical power, as a fraction of it. Field tests repeat laboratory ones within 4.5 %
     * (Karsten et al. 2015, Eur J Appl Physiol 115:197); a fit that is itself worse than this adds nothing.
     */
    private static final double LARGEST_ERROR = 0.05;

    /**
     * Largest standard error of W′, as a fraction of it. Group standard deviations are 18 to 26 % of the mean: an error
     * above that says nothing.
     */
    private static final double LARGEST_W_PRIME_ERROR = 0.25;

    /**
     * Least W′ over critical power, seconds. In the 14 trained men of Mitchell et al. 2018 the ratio lies between 38 and
     * 75 s, in the group of Vinetti et al. 2019 at 90 s. An effort that lies below what a longer one and this limit call
     * for was not maximal: it was a part of the longer one, or easy.
     */
    private static final double LEAST_W_PRIME_SECONDS = 25;

    /**
     * Largest W′ over critical power, seconds; the sources are those of the least one. A fit above it means that the long
     * efforts were not maximal, or that short ones were ridden between rests.
     */
    private static final double MOST_W_PRIME_SECONDS = 115;

    /**
     * A fit this far below a threshold known from elsewhere shows that the efforts were not maximal: critical power lies
     * at or above the power of an hour, and one standard error of a field test is 4.5 % (Karsten et al. 2015).
     */
    private static final double LEAST_OF_THRESHOLD = 0.955;

    /**
     * How far the three forms with two parameters may lie apart, as a fraction of critical power. On the six riders of
     * Mitchell et al. 2018 in this project's tests it is 0.3 to 2.4 %; where the choice of the form moves the result by
     * more than a field test repeats (4.5 %), the efforts lie on no hyperbola.
     */
    private static final double WIDEST_FORMS = 0.05;

    /**
     * How far below empty the W′ balance of the ride itself may fall, as a share of W′. At the end of eight all-out
     * races, where 0 would be right, the model stood at −2.7 ± 2.0 kJ (Bartram et al. 2022, Int J Sports Physiol Perform
     * 17:170): two standard deviations below is a third of a W′ of 20 kJ. On 16 real rides not known to be tests
     * a fit through all their bests of 3 to 30 minutes was overdrawn by half of W′ and more; this limit was set with
     * those rides in view.
     */
    private static final double DEEPEST_OVERDRAFT = 1 / 3.0;

    private static final double JOULES_PER_KILOJOULE = 1000;
    private static final double SECONDS_PER_MINUTE = 60;

    private RideCriticalPower() {}

    /**
     * Critical power from one ride: from its bests of 3, 5, 7, 8, 12, 20 and 30 minutes as far as the ride goes, in the
     * form {@link Form#INVERSE_TIME}, and then held against the ride itself.
     *
     * <p>Left out are bests that missing seconds may have lowered, and bests that cannot have been maximal because a
     * longer one is too close to them: the best 8 minutes of a trial of 12 are no trial of their own. Where the longest
     * bests were not maximal, as after a longest trial of 20 minutes, the fit is tried without them, down to 12 minutes.
     * A fit is refused
     *
     * <ul>
     *   <li>when the ride is shorter than 12 minutes or holds no power,
     *   <li>when fewer than three efforts that span a factor of 3 are left, as in an even ride,
     *   <li>when its standard error is above 5 % of critical power or 25 % of W′,
     *   <li>when the three forms with two parameters lie more than 5 % of critical power apart: no hyperbola,
     *   <li>when W′ is more than 115 s of critical power (the longer efforts were not maximal),
     *   <li>when critical power is more than 4.5 % below a threshold power known from elsewhere,
     *   <li>when the W′ balance of the ride by the fit ({@link WPrimeBalance}, differential) falls more than a third of W′
     *       below empty: the rider did what the fit says nobody could, mostly because the bests were not begun rested.
     * </ul>
     *
     * <p>An ordinary ride or race hardly ever carries a fit; a ride with three or more all-out efforts of different
     * length and rest between them does. Without a known threshold a ride in which every effort fell short of maximal by
     * the same share looks like a weaker rider's: what is accepted is then a lower limit.
     *
     * @param curve the curve of that ride
     * @param thresholdPowerW threshold power known from elsewhere, watts, or null; never one estimated from this ride
     */
    public static Outcome<CriticalPowerFit> ofRide(
            Ride ride, MeanMaximalCurve curve, @Nullable Double thresholdPowerW) {
        return longestAccepted(curve, thresholdPowerW, fit -> heldAgainst(ride, fit));
    }

    /**
     * {@link #ofRide(Ride, MeanMaximalCurve, Double)} for one-second power.
     *
     * @param watts one-second power, watts; {@code NaN} is a missing second
     * @throws IllegalArgumentException when a reading or the threshold is out of range
     */
    public static Outcome<CriticalPowerFit> ofRide(Series watts, @Nullable Double thresholdPowerW) {
        if (thresholdPowerW != null) {
            Bounds.requireAboveZero("thresholdPowerW", thresholdPowerW);
        }
        Ride ride = Ride.ofWatts(watts);
        return ofRide(ride, MeanMaximalCurve.of(ride), thresholdPowerW);
    }

    /** {@link #ofRide(Series, Double)} for an array, which is copied. */
    public static Outcome<CriticalPowerFit> ofRide(double[] watts, @Nullable Double thresholdPowerW) {
        return ofRide(Series.of(watts), thresholdPowerW);
    }

    /** {@link #ofRide(Ride, MeanMaximalCurve, Double)} without holding the fit against the ride. */
    static Outcome<CriticalPowerFit> ofCurve(MeanMaximalCurve curve, @Nullable Double thresholdPowerW) {
        return longestAccepted(curve, thresholdPowerW, Outcome::of);
    }

    /** The first accepted fit, from the longest bests down; where there is none, the reason against all bests. */
    private static Outcome<CriticalPowerFit> longestAccepted(
            MeanMaximalCurve curve,
            @Nullable Double thresholdPowerW,
            Function<CriticalPowerFit, Outcome<CriticalPowerFit>> check) {
        if (curve.longestSeconds() < LEAST_LONGEST_SECONDS || !(curve.bestWatts(LEAST_LONGEST_SECONDS) > 0)) {
            return Outcome.refused("the ride holds no 12 minutes of power");
        }
        List<BestEffort> bests = new ArrayList<>();
        for (int seconds : CURVE_SECONDS) {
            if (seconds > curve.longestSeconds()) {
                continue;
            }
            MeanMaximalCurve.Window best = curve.bestWindow(seconds);
            if (!best.mayBeLow() && best.watts() > 0) {
                bests.add(new BestEffort(seconds, best.watts()));
            }
        }
        Outcome<CriticalPowerFit> first = null;
        for (int count = bests.size(); count > 0; count--) {
            if (bests.get(count - 1).seconds() < LEAST_LONGEST_SECONDS) {
                break;
            }
            Outcome<CriticalPowerFit> result = ofBests(bests.subList(0, count), thresholdPowerW);
            if (result instanceof Outcome.Of<CriticalPowerFit> fit) {
                result = check.apply(fit.value());
            }
            if (result instanceof Outcome.Of<CriticalPowerFit>) {
                return result;
            }
            first = first == null ? result : first;
        }
        return first != null
                ? first
                : Outcome.refused("seconds without power may have lowered the best 12 minutes and all longer ones");
    }

    private static Outcome<CriticalPowerFit> ofBests(List<BestEffort> bests, @Nullable Double thresholdPowerW) {
        List<BestEffort> perhapsMaximal = new ArrayList<>();
        for (BestEffort best : bests) {
            if (couldBeMaximal(best, bests)) {
                perhapsMaximal.add(best);
            }
        }
        if (CriticalPowerFit.of(perhapsMaximal, Form.INVERSE_TIME) instanceof Outcome.Of<CriticalPowerFit> fit) {
            String doubt = whyNotBelieved(fit.value(), thresholdPowerW);
            return doubt == null ? fit : Outcome.refused(doubt);
        }
        BestEffort shortest = bests.get(0);
        BestEffort longest = bests.get(bests.size() - 1);
        return Outcome.refused("the ride holds no three maximal efforts of different length: its best "
                + Decimals.of(shortest.seconds() / SECONDS_PER_MINUTE, 0) + " min were at "
                + Decimals.of(shortest.watts(), 0)
                + " W, its best " + Decimals.of(longest.seconds() / SECONDS_PER_MINUTE, 0) + " min at "
                + Decimals.of(longest.watts(), 0) + " W");
    }

    private static Outcome<CriticalPowerFit> heldAgainst(Ride ride, CriticalPowerFit fit) {
        double lowestJ = WPrimeBalance.of(ride, fit.criticalPowerW(), fit.wPrimeJ(), WPrimeBalance.Model.DIFFERENTIAL)
                .minimumJ();
        return lowestJ >= -DEEPEST_OVERDRAFT * fit.wPrimeJ()
                ? Outcome.of(fit)
                : Outcome.refused(format(
                        "the ride goes beyond what its own best efforts allow (%.0f W and %.1f kJ would have been"
                                + " overdrawn by %.1f kJ): they were not begun rested, or not all-out",
                        fit.criticalPowerW(), fit.wPrimeKJ(), -lowestJ / JOULES_PER_KILOJOULE));
    }

    /** Whether no longer effort shows that a rider could have done better in this one. */
    private static boolean couldBeMaximal(BestEffort effort, List<BestEffort> efforts) {
        for (BestEffort longer : efforts) {
            double leastW = longer.watts()
                    * (1 + LEAST_W_PRIME_SECONDS / effort.seconds())
                    / (1 + LEAST_W_PRIME_SECONDS / longer.seconds());
            if (longer.seconds() > effort.seconds() && effort.watts() < leastW) {
                return false;
            }
        }
        return true;
    }

    /** Why the efforts of a ride do not carry this fit to them; null when they do. */
    private static @Nullable String whyNotBelieved(CriticalPowerFit fit, @Nullable Double thresholdPowerW) {
        if (fit.wPrimeJ() / fit.criticalPowerW() > MOST_W_PRIME_SECONDS) {
            BestEffort shortest = fit.efforts().get(0);
            BestEffort longest = fit.efforts().get(fit.efforts().size() - 1);
            return format(
                    "its long efforts were not maximal: best %.0f min %.0f W, but best %.0f min %.0f W",
                    shortest.seconds() / SECONDS_PER_MINUTE,
                    shortest.watts(),
                    longest.seconds() / SECONDS_PER_MINUTE,
                    longest.watts());
        }
        if (thresholdPowerW != null && fit.criticalPowerW() < LEAST_OF_THRESHOLD * thresholdPowerW) {
            return format(
                    "the ride holds no maximal efforts: its best ones point to %.0f W, below the threshold of %.0f W",
                    fit.criticalPowerW(), thresholdPowerW);
        }
        if (!(fit.criticalPowerErrorW() <= LARGEST_ERROR * fit.criticalPowerW()
                && fit.wPrimeErrorJ() <= LARGEST_W_PRIME_ERROR * fit.wPrimeJ())) {
            return format(
                    "its best efforts do not lie on one curve: critical power %.0f W with an error of %.0f W,"
                            + " W' %.1f kJ with an error of %.1f kJ",
                    fit.criticalPowerW(),
                    fit.criticalPowerErrorW(),
                    fit.wPrimeKJ(),
                    fit.wPrimeErrorJ() / JOULES_PER_KILOJOULE);
        }
        return formsApart(fit) <= WIDEST_FORMS
                ? null
                : "its best efforts do not lie on one curve: critical power depends on the way of fitting it";
    }

    /**
     * Highest less lowest critical power of the forms with two parameters, over the one of this fit; {@code NaN} when a
     * form cannot be fitted.
     */
    private static double formsApart(CriticalPowerFit fit) {
        double lowest = fit.criticalPowerW();
        double highest = fit.criticalPowerW();
        for (Form form : List.of(Form.WORK_TIME, Form.TIME_ON_POWER)) {
            CriticalPowerFit other =
                    CriticalPowerFit.of(fit.efforts(), form).found().orElse(null);
            if (other == null) {
                return Double.NaN;
            }
            lowest = Math.min(lowest, other.criticalPowerW());
            highest = Math.max(highest, other.criticalPowerW());
        }
        return (highest - lowest) / fit.criticalPowerW();
    }

    private static String format(String format, Object... arguments) {
        return String.format(Locale.ROOT, format, arguments);
    }
}
