package io.github.wattledger.pacing;

import java.io.Serializable;
import java.util.List;
import java.util.Locale;

/**
 * What a ride was: a race, or something that must not be judged as one. A ride is called a race when it was hard for its
 * length, hardly stopped, was outdoors and has no laps of work and rest.
 *
 * @param reason why the ride was taken for what it was
 * @param evidence the numbers measured on the judged part, those that could be measured: {@code ridingHours}, {@code
 *     stoppedSharePercent} of the time between the first and the last riding second, {@code stopsOfTenSeconds} and {@code
 *     stopsOfAMinute} (how many lasted so long or longer), {@code stopsPerHour} (those of ten seconds, for each hour
 *     ridden), {@code normalizedPowerW}; with a known threshold {@code guideW}, {@code shareOfGuide} (normalized power over
 *     the guide) and {@code firstHalfShareOfGuide} (that of the first half of the riding time); of a session also {@code
 *     lapsOfWork} and {@code lapSeconds}, of a ride without position indoors {@code altitudeRangeM}
 * @param workLaps the equal laps of work of a session in time order; otherwise empty
 */
public record Occasion(Reason reason, Evidence evidence, List<WorkLap> workLaps) implements Serializable {
    /** What a ride can have been. */
    public enum Kind {
        /** A race: everything is judged. */
        RACE,
        /** Not a race, because the caller said so. */
        TRAINING,
        /** Too short to be judged. */
        TOO_SHORT,
        /** Training with laps of work and rest. */
        SESSION,
        /** A ride that went nowhere. */
        INDOOR,
        /** A ride with long or many stops. */
        OUTING,
        /** A ride that was not hard for its length. */
        EASY,
        /** A race or training: the recording does not show which. It is not judged as a race. */
        CANNOT_TELL;

        /** The kind's fixed word for programs, lower case with hyphens. */
        public String id() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }

        /** Whether parts of such a ride are compared with one another, which tells nothing of a session or a short ride. */
        boolean allowsRemarks() {
            return this == INDOOR || this == CANNOT_TELL || this == TRAINING;
        }
    }

    /** Why a ride is taken for what it is. */
    public enum Reason {
        /** The caller asked for a race. */
        ASKED_AS_RACE(Kind.RACE, "a race, as asked"),
        /** The caller asked for training. */
        ASKED_AS_TRAINING(Kind.TRAINING, "ridden as training"),
        /** Under 40 minutes were ridden. */
        UNDER_FORTY_MINUTES(Kind.TOO_SHORT, "under 40 minutes of moving time"),
        /** The rider named the day as one of a race. */
        RACE_DAY(Kind.RACE, "a race day of the rider"),
        /** The file holds three sports or more. The threshold may still be unknown. */
        SEVERAL_SPORTS(Kind.RACE, "one part of a race of several sports"),
        /** Equal laps of a round length, each harder than the laps before and after it. */
        LAPS_OF_WORK_AND_REST(Kind.SESSION, "a session with laps of work and rest"),
        /** The file names a sport that is ridden indoors. */
        INDOOR_SPORT(Kind.INDOOR, "an indoor ride"),
        /** The file holds neither position nor speed nor distance. */
        NOTHING_MOVED(Kind.INDOOR, "an indoor ride"),
        /** The file holds no position, and its altitude hardly changes. */
        NO_POSITION_AND_LEVEL(Kind.INDOOR, "an indoor ride"),
        /** The rider stood for a large share of the time. */
        LONG_STOPS(Kind.OUTING, "an outing with long stops"),
        /** The rider stopped often. */
        MANY_STOPS(Kind.OUTING, "an outing with many stops"),
        /** The ride has no power, so nothing shows how hard it was. */
        NO_POWER(Kind.CANNOT_TELL, "no power"),
        /** The threshold is not known, so nothing shows how hard the ride was for its rider. */
        THRESHOLD_NOT_KNOWN(Kind.CANNOT_TELL, "threshold power is not known"),
        /** Easy as a whole with a hard first half: a race that broke down, or a hard way out and an easy way home. */
        HARD_FIRST_HALF_ONLY(Kind.CANNOT_TELL, "race or training cannot be told apart: only the first half was hard"),
        /** Well below what could be held for so long. */
        BELOW_GUIDE(Kind.EASY, "not a race effort"),
        /** A long training ride with a few stops, or an under-paced race with stops. */
        BETWEEN_RACE_AND_TRAINING(Kind.CANNOT_TELL, "race or training cannot be told apart"),
        /** Hard for its length, with hardly a stop. */
        HARD_FOR_ITS_LENGTH(Kind.RACE, "hard for its length");

        private final Kind kind;
        private final String words;

        Reason(Kind kind, String words) {
            this.kind = kind;
            this.words = words;
        }

        /** The reason in words, one clause in lower case. */
        public String words() {
            return words;
        }

        /** What a ride is for this reason. */
        public Kind kind() {
            return kind;
        }
    }

    /**
     * A lap of work in a session.
     *
     * @param number its place among the laps of the reviewed ride, from 1
     * @param seconds its length
     * @param meanPowerW mean power over its seconds with power, watts
     */
    public record WorkLap(int number, int seconds, double meanPowerW) implements Serializable {}

    /** Copies the laps. */
    public Occasion {
        workLaps = List.copyOf(workLaps);
    }

    /** What the ride was. */
    public Kind kind() {
        return reason.kind();
    }

    /** Whether the ride is judged as a race. */
    public boolean isRace() {
        return kind() == Kind.RACE;
    }
}
