package io.github.wattledger.testing;

import io.github.wattledger.course.Course;
import io.github.wattledger.replay.Replay;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Series;
import io.github.wattledger.rig.Rig;
import java.time.Instant;

/**
 * A race on a flat road in still air, at steady speeds: 20 km in a bunch, then 80 km alone. Speeds follow from an own
 * balance of forces: 84 kg, drag area 0.32 m2, density 1.2 kg/m3, efficiency 0.976, bearings 0.091 + 0.0087 v newtons
 * (Martin et al. 1998).
 */
public final class FlatBunchRace {
    /** The power that the rider could hold, watts. */
    public static final double TARGET_W = 200;

    private static final double MASS_KG = 84;
    private static final double DRAG_AREA_M2 = 0.32;
    private static final double SPOKES_M2 = 0.0044;
    private static final double DENSITY_KG_PER_M3 = 1.2;
    /** Where the standard atmosphere has that density. */
    private static final double ALTITUDE_M = 214;

    private static final double BUNCH_M = 20_000;
    private static final double ALONE_M = 80_000;

    private final Ride ride;
    private final Interval bunch;
    private final double rolling;
    private final double bunchMps;
    private final double aloneMps;

    /**
     * A race.
     *
     * @param bunchW power in the bunch, watts
     * @param saving what the bunch saved, a share of the lone drag
     * @param aloneW power afterwards, watts
     * @param rolling coefficient of rolling resistance
     */
    public FlatBunchRace(double bunchW, double saving, double aloneW, double rolling) {
        this.rolling = rolling;
        this.bunchMps = speedMps(bunchW, 1 - saving, rolling);
        this.aloneMps = speedMps(aloneW, 1, rolling);
        int bunchSeconds = (int) Math.round(BUNCH_M / bunchMps);
        int seconds = bunchSeconds + (int) Math.round(ALONE_M / aloneMps);
        this.bunch = new Interval(0, bunchSeconds);
        this.ride = Ride.builder(Instant.EPOCH, seconds)
                .channel(Channel.POWER, Series.generate(seconds, second -> second < bunchSeconds ? bunchW : aloneW))
                .channel(Channel.SPEED, Series.generate(seconds, second -> second < bunchSeconds ? bunchMps : aloneMps))
                .channel(
                        Channel.DISTANCE,
                        Series.generate(
                                seconds,
                                second -> Math.min(second, bunchSeconds) * bunchMps
                                        + Math.max(0, second - bunchSeconds) * aloneMps))
                .channel(Channel.ALTITUDE, Series.generate(seconds, second -> ALTITUDE_M))
                .build();
    }

    /** The recorded ride. */
    public Ride ride() {
        return ride;
    }

    /** The seconds in the bunch. */
    public Interval bunch() {
        return bunch;
    }

    /** Speed in the bunch, m/s. */
    public double bunchMps() {
        return bunchMps;
    }

    /** Speed alone, m/s. */
    public double aloneMps() {
        return aloneMps;
    }

    /** The rig that was ridden, with another drag area as the tool may take it to be. */
    public Rig rig(double dragAreaFactor) {
        Rig wheels = Rig.of(MASS_KG, DRAG_AREA_M2, rolling);
        return new Rig(
                MASS_KG,
                DRAG_AREA_M2 * dragAreaFactor - SPOKES_M2,
                rolling,
                wheels.wheelRadiusM(),
                wheels.wheelInertiaKgM2(),
                wheels.driveEfficiency(),
                SPOKES_M2);
    }

    /** The replay of this race, with another drag area as the tool may take it to be. */
    public Replay replay(double dragAreaFactor) {
        return Replay.of(ride, Course.of(ride).orElseThrow(), rig(dragAreaFactor))
                .orElseThrow(AssertionError::new);
    }

    /** The steady speed at a power, m/s, by halving. */
    public static double speedMps(double watts, double dragShare, double rolling) {
        double slow = 0.5;
        double fast = 40;
        for (int step = 0; step < 60; step++) {
            double v = (slow + fast) / 2;
            double neededW = v
                    * (DENSITY_KG_PER_M3 / 2 * DRAG_AREA_M2 * dragShare * v * v
                            + MASS_KG * 9.80665 * rolling
                            + 0.091
                            + 0.0087 * v);
            if (neededW > 0.976 * watts) {
                fast = v;
            } else {
                slow = v;
            }
        }
        return (slow + fast) / 2;
    }
}
