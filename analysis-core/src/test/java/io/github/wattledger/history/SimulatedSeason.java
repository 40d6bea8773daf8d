package io.github.wattledger.history;

import io.github.wattledger.rider.Rider;
import io.github.wattledger.rider.ThresholdHistory;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;

/**
 * A year of a rider whose ability is known: 80 easy rides and some hard long ones. Threshold 180 to 340 W that moves by up to
 * a tenth over the year, exponent 0.06 to 0.25 with a bend, five dated thresholds each wrong by 3 %, form of 2 %. It shares nothing with
 * the rule under test but the definition of a power law.
 *
 * @param rider what the rider says: dated thresholds
 * @param naming the same rider, who also names the hard long rides
 * @param rides the rides of the year
 * @param thresholdW the true threshold of the last day, watts
 * @param exponent the true exponent
 * @param bend the true bend
 */
record SimulatedSeason(
        Rider rider, Rider naming, List<PastRide> rides, double thresholdW, double exponent, double bend) {
    static final LocalDate FIRST = LocalDate.of(2025, 1, 1);
    static final int LAST_DAY = 345;
    private static final int[] TESTED = {0, 90, 180, 270, 345};
    private static final int EASY_RIDES = 80;

    /** The share of hard long rides in which a fade, an energy crash or a drift is found, as the trials had it. */
    private static final double WITNESS_SHARE = 2 / 3.0;

    static LocalDate lastDay() {
        return FIRST.plusDays(LAST_DAY);
    }

    static SimulatedSeason of(long seed, int hardRides) {
        Random random = new Random(seed);
        double middleW = 180 + 160 * random.nextDouble();
        double exponent = 0.06 + 0.19 * random.nextDouble();
        double bend = 0.012 * random.nextGaussian();
        double slope = -0.1 + 0.2 * random.nextDouble();
        List<ThresholdHistory.Entry> entries = new ArrayList<>();
        for (int day : TESTED) {
            double tested = thresholdW(middleW, slope, day) * Math.exp(0.03 * random.nextGaussian());
            entries.add(new ThresholdHistory.Entry(FIRST.plusDays(day), tested, null));
        }
        Rider rider = Rider.UNKNOWN.withThresholds(new ThresholdHistory(entries));
        List<PastRide> rides = new ArrayList<>();
        for (int i = 0; i < EASY_RIDES; i++) {
            double hours = Math.min(6, Math.max(0.7, Math.exp(Math.log(1.7) + 0.45 * random.nextGaussian())));
            int day = random.nextInt(LAST_DAY);
            double most = powerW(thresholdW(middleW, slope, day), exponent, bend, Math.max(hours, 1));
            rides.add(PastRide.of(FIRST.plusDays(day), hours, most * (0.55 + 0.27 * random.nextDouble())));
        }
        Set<LocalDate> hard = new HashSet<>();
        for (int i = 0; i < hardRides; i++) {
            double hours = 3 + 4 * random.nextDouble();
            int day = random.nextInt(LAST_DAY);
            double most = powerW(thresholdW(middleW, slope, day), exponent, bend, hours);
            double shortfall = -Math.abs(0.05 * random.nextGaussian())
                    + 0.02 * random.nextGaussian()
                    + 0.012 * random.nextGaussian();
            PastRide ride = PastRide.of(FIRST.plusDays(day), hours, most * Math.exp(shortfall));
            rides.add(random.nextDouble() < WITNESS_SHARE ? ride.showingLimit() : ride);
            hard.add(FIRST.plusDays(day));
        }
        return new SimulatedSeason(
                rider, rider.withAllOutDays(hard), rides, thresholdW(middleW, slope, LAST_DAY), exponent, bend);
    }

    private static double thresholdW(double middleW, double slope, int day) {
        return middleW * (1 + slope * (2.0 * day / 365 - 1));
    }

    private static double powerW(double thresholdW, double exponent, double bend, double hours) {
        double log = Math.log(hours);
        return thresholdW * Math.exp(-exponent * log - bend / 2 * log * log);
    }

    /** What the rider can truly hold on the last day, watts. */
    double truthW(double hours) {
        return powerW(thresholdW, exponent, bend, hours);
    }
}
