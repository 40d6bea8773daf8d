package io.github.wattledger.simulation.trial;

import java.util.Locale;

/** The kinds of courses of the trial. */
enum CourseFamily {
    FLAT(0.98, false),
    ROLLING(0.90, false),
    HILLY(0.72, true),
    MOUNTAIN(0.58, true),
    CLIMB_FIRST(0.78, true),
    CLIMB_LAST(0.78, true),
    HEAD_WIND_HOME(0.90, false),
    TAIL_WIND_HOME(0.90, false),
    GROUP(1.02, false),
    OFF_ROAD(0.60, true);

    private final double speedShare;
    private final boolean climbing;

    CourseFamily(double speedShare, boolean climbing) {
        this.speedShare = speedShare;
        this.climbing = climbing;
    }

    /** About how fast it is ridden, as a share of the speed on a level road: only the length of a race rests on it. */
    double speedShare() {
        return speedShare;
    }

    /** Whether prices on it count among those on climbing courses. */
    boolean isClimbing() {
        return climbing;
    }

    /** Whether even riding on it looks uneven to who compares raw power of the parts. */
    boolean isHard() {
        return switch (this) {
            case CLIMB_FIRST, CLIMB_LAST, HEAD_WIND_HOME, GROUP -> true;
            default -> false;
        };
    }

    /** For tables. */
    String words() {
        return name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
