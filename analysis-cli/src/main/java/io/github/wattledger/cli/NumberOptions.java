package io.github.wattledger.cli;

import io.github.wattledger.plan.PlanOptions;
import io.github.wattledger.replay.Adjustment;
import io.github.wattledger.rider.Bounds;
import picocli.CommandLine.ITypeConverter;

/** The numbers that options take, each with its unit and its bounds. The parser makes each from its class. */
final class NumberOptions {
    /** Watts of a steady effort. Own choice: what a recorder can show of a strong rider's sprint. */
    static final Bounds STEADY_POWER_W = new Bounds(1, 2500);

    /** Metres climbed on a road that nobody recorded; how much its length allows is the core's to say. */
    static final Bounds ASCENT_M = new Bounds(0, 1_000_000);

    private static final double PA_PER_HPA = 100;
    private static final double KMH_PER_MPS = 3.6;

    private static final Bounds FASTEST_KMH =
            new Bounds(PlanOptions.FASTEST_MPS.low() * KMH_PER_MPS, PlanOptions.FASTEST_MPS.high() * KMH_PER_MPS);

    private static final Bounds PRESSURE_HPA =
            new Bounds(Bounds.PRESSURE_PA.low() / PA_PER_HPA, Bounds.PRESSURE_PA.high() / PA_PER_HPA);

    private NumberOptions() {}

    static final class ThresholdPower implements ITypeConverter<Double> {
        @Override
        public Double convert(String value) {
            return Unit.WATT.number(value, Bounds.THRESHOLD_POWER_W);
        }
    }

    static final class ThresholdHeartRate implements ITypeConverter<Double> {
        @Override
        public Double convert(String value) {
            return Unit.BEATS_PER_MINUTE.number(value, Bounds.THRESHOLD_HEART_RATE_BPM);
        }
    }

    static final class RiderMass implements ITypeConverter<Double> {
        @Override
        public Double convert(String value) {
            return Unit.KILOGRAM.number(value, Bounds.RIDER_MASS_KG);
        }
    }

    static final class BicycleMass implements ITypeConverter<Double> {
        @Override
        public Double convert(String value) {
            return Unit.KILOGRAM.number(value, Bounds.BIKE_MASS_KG);
        }
    }

    static final class DragArea implements ITypeConverter<Double> {
        @Override
        public Double convert(String value) {
            return Unit.SQUARE_METRE.number(value, Bounds.DRAG_AREA_M2);
        }
    }

    static final class RollingResistance implements ITypeConverter<Double> {
        @Override
        public Double convert(String value) {
            return Unit.NONE.number(value, Bounds.ROLLING_RESISTANCE);
        }
    }

    static final class SteadyPower implements ITypeConverter<Double> {
        @Override
        public Double convert(String value) {
            return Unit.WATT.number(value, STEADY_POWER_W);
        }
    }

    static final class Ascent implements ITypeConverter<Double> {
        @Override
        public Double convert(String value) {
            return Unit.METRE.number(value, ASCENT_M);
        }
    }

    static final class Temperature implements ITypeConverter<Double> {
        @Override
        public Double convert(String value) {
            return Unit.CELSIUS.number(value, Bounds.TEMPERATURE_C);
        }
    }

    static final class Altitude implements ITypeConverter<Double> {
        @Override
        public Double convert(String value) {
            return Unit.METRE.number(value, Bounds.ALTITUDE_M);
        }
    }

    /** A pressure as pascals; it is typed in hectopascals. */
    static final class Pressure implements ITypeConverter<Double> {
        @Override
        public Double convert(String value) {
            return PA_PER_HPA * Unit.HECTOPASCAL.number(value, PRESSURE_HPA);
        }
    }

    static final class AirDensity implements ITypeConverter<Double> {
        @Override
        public Double convert(String value) {
            return Unit.KILOGRAM_PER_CUBIC_METRE.number(value, Bounds.AIR_DENSITY_KG_PER_M3);
        }
    }

    static final class OtherDragArea implements ITypeConverter<Adjustment> {
        @Override
        public Adjustment convert(String value) {
            return Unit.SQUARE_METRE.change(value, Bounds.DRAG_AREA_M2, "0.32, -0.02 or -20%");
        }
    }

    static final class OtherMass implements ITypeConverter<Adjustment> {
        @Override
        public Adjustment convert(String value) {
            return Unit.KILOGRAM.change(value, Bounds.RIDER_MASS_KG, "72, -3 or -5%", "160lb, -7lb or -5%");
        }
    }

    static final class OtherRollingResistance implements ITypeConverter<Adjustment> {
        @Override
        public Adjustment convert(String value) {
            return Unit.NONE.change(value, Bounds.ROLLING_RESISTANCE, "0.005, -0.001 or -10%");
        }
    }

    static final class OtherPower implements ITypeConverter<Adjustment> {
        @Override
        public Adjustment convert(String value) {
            return Unit.WATT.change(value, STEADY_POWER_W, "210, +10 or +5%");
        }
    }

    static final class PlannedPower implements ITypeConverter<Double> {
        @Override
        public Double convert(String value) {
            return Unit.WATT.number(value, PlanOptions.TARGET_W);
        }
    }

    static final class WindSpeed implements ITypeConverter<Double> {
        @Override
        public Double convert(String value) {
            return Unit.METRE_PER_SECOND.number(value, PlanOptions.WIND_MPS);
        }
    }

    static final class WindFrom implements ITypeConverter<Double> {
        @Override
        public Double convert(String value) {
            return Unit.DEGREE.number(value, PlanOptions.WIND_FROM_DEGREES);
        }
    }

    /** A speed as m/s; it is typed in km/h. */
    static final class FastestSpeed implements ITypeConverter<Double> {
        @Override
        public Double convert(String value) {
            return Unit.KILOMETRE_PER_HOUR.number(value, FASTEST_KMH) / KMH_PER_MPS;
        }
    }
}
