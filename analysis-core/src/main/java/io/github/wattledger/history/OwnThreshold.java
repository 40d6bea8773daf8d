package io.github.wattledger.history;

import java.io.Serializable;
import java.time.LocalDate;

/**
 * Threshold power as the rider's own efforts of the last 90 days show it.
 *
 * @param watts the greatest threshold that a ride implies, and 3 % more since efforts in rides fall short, watts
 * @param impliedW what the ride implies, watts
 * @param day the day of that ride
 * @param ride what the ride is called
 */
public record OwnThreshold(double watts, double impliedW, LocalDate day, String ride) implements Serializable {
    /** Days before a day whose efforts speak for its threshold. */
    static final int DAYS_BEFORE = 90;

    /** Days after an earlier ride whose efforts speak for the threshold of that ride's day, too. */
    static final int DAYS_AFTER = 45;

    /** The best effort of training falls short of what the rider could do by about so much. */
    static final double SHORTFALL = 1.03;

    static OwnThreshold of(PastRide ride, double impliedW) {
        return new OwnThreshold(SHORTFALL * impliedW, impliedW, ride.day(), ride.name());
    }
}
