package io.github.wattledger.simulation.trial;

import io.github.wattledger.simulation.Scenario;
import java.util.List;

/** A mistake put into a race. Places are metres from the start line; stretches are half-open. */
sealed interface Mistake {
    /** What it is meant to be; whether it is large enough to be one is for {@link TrialTruth} to say. */
    MistakeKind kind();

    /** Where it begins. */
    double fromM();

    /** Where it ends. */
    double toM();

    /**
     * A stretch ridden at another level than the rest.
     *
     * @param factor by what the sensible power is multiplied
     * @param rampM over which length the level changes at the start of the stretch, part of it
     */
    record Level(MistakeKind kind, double fromM, double toM, double factor, double rampM) implements Mistake {
        double factorAt(double distanceM) {
            if (distanceM < fromM || distanceM >= toM) {
                return 1;
            }
            double share = rampM > 0 ? Math.min(1, (distanceM - fromM) / rampM) : 1;
            return 1 + (factor - 1) * share;
        }
    }

    /**
     * A level that falls while the heart falls more than the power explains.
     *
     * @param level the fall of power
     * @param heartFraction by how much heart rate lies below what the power asks for, as a fraction
     */
    record Crash(Level level, double heartFraction) implements Mistake {
        @Override
        public MistakeKind kind() {
            return MistakeKind.ENERGY_CRASH;
        }

        @Override
        public double fromM() {
            return level.fromM();
        }

        @Override
        public double toM() {
            return level.toM();
        }
    }

    /**
     * Stretches ridden at one power whatever the ground.
     *
     * @param watts that power
     */
    record Bouts(MistakeKind kind, List<Stretch> stretches, double watts) implements Mistake {
        @Override
        public double fromM() {
            return stretches.get(0).fromM();
        }

        @Override
        public double toM() {
            return stretches.get(stretches.size() - 1).toM();
        }
    }

    /** A stretch of road. */
    record Stretch(double fromM, double toM) {}

    /**
     * A heart that beats faster from hour to hour at the same power.
     *
     * @param perHour rise per hour, as a fraction
     * @param toM the finish
     */
    record HeartDrift(double perHour, double toM) implements Mistake {
        @Override
        public MistakeKind kind() {
            return MistakeKind.DRIFT;
        }

        @Override
        public double fromM() {
            return 0;
        }
    }

    /** Halts on the way. */
    record Standing(List<Scenario.Stop> stops) implements Mistake {
        private static final double BRAKING_M = 50;

        @Override
        public MistakeKind kind() {
            return MistakeKind.STOPPED_TIME;
        }

        @Override
        public double fromM() {
            return stops.get(0).distanceM() - BRAKING_M;
        }

        @Override
        public double toM() {
            return stops.get(stops.size() - 1).distanceM() + BRAKING_M;
        }
    }
}
