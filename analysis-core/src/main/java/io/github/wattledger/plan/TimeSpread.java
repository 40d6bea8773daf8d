package io.github.wattledger.plan;

import io.github.wattledger.power.SustainablePower;
import io.github.wattledger.ride.Series;
import io.github.wattledger.rig.Measure;
import io.github.wattledger.rig.RigChoice;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** How far the time of a plan can be off: each uncertain input alone at its ends, the caps staying as they are. */
final class TimeSpread {
    private static final double EXPONENT = PowerPlanner.USUAL_EXPONENT;

    /** A wind that nobody foresees, and how far a forecast is off, m/s at the height of the rider. Own choices. */
    private static final double UNKNOWN_WIND_MPS = 3;

    private static final double FORECAST_OFF_MPS = 1.5;
    private static final int DIRECTIONS = 8;

    /** From here on the ascent of a file and of the organiser do not agree. */
    private static final double ASCENT_OFF_FRACTION = 0.15;

    private final PlanRoad road;
    private final Conditions day;
    private final Series watts;
    private final PowerLimits limits;
    private final double seconds;
    private final List<PlanInfluence> found = new ArrayList<>();

    /** @param watts the plan's power for each piece */
    TimeSpread(PlanRoad road, Conditions day, Series watts, PowerLimits limits) {
        this.road = road;
        this.day = day;
        this.watts = watts;
        this.limits = limits;
        this.seconds = secondsIn(day);
    }

    /** All influences, the widest first. */
    List<PlanInfluence> of(RigChoice rig, Measure density, PlanTarget target, PlanOptions options, double ascentM) {
        if (target.origin() == PlanTarget.Origin.SUSTAINABLE) {
            addPower(target, options.temperatureC());
        }
        Measure rider = rig.riderKg();
        Measure bicycle = rig.bicycleKg();
        double lightKg = day.massKg() - Math.hypot(rider.value() - rider.low(), bicycle.value() - bicycle.low());
        double heavyKg = day.massKg() + Math.hypot(rider.high() - rider.value(), bicycle.high() - bicycle.value());
        add(PlanInfluence.Input.MASS, lightKg, heavyKg, day.withMassKg(lightKg), day.withMassKg(heavyKg));
        Measure area = rig.dragAreaM2();
        add(
                PlanInfluence.Input.DRAG_AREA,
                area.low(),
                area.high(),
                day.withDragAreaM2(area.low()),
                day.withDragAreaM2(area.high()));
        Measure rolling = rig.rollingResistance();
        add(
                PlanInfluence.Input.ROLLING_RESISTANCE,
                rolling.low(),
                rolling.high(),
                day.withRollingFactor(rolling.low() / rolling.value()),
                day.withRollingFactor(rolling.high() / rolling.value()));
        add(
                PlanInfluence.Input.AIR_DENSITY,
                density.low(),
                density.high(),
                day.withDensity(density.low()),
                day.withDensity(density.high()));
        addWind(options.windMps());
        addAscent(options.organiserAscentM(), ascentM);
        found.removeIf(each -> each.spreadSeconds() == 0);
        found.sort(Comparator.comparingDouble(PlanInfluence::spreadSeconds).reversed());
        return List.copyOf(found);
    }

    private double secondsIn(Conditions other) {
        return road.planner(other, limits, EXPONENT).ridden(watts).seconds();
    }

    private void add(PlanInfluence.Input input, double low, double high, Conditions atLow, Conditions atHigh) {
        if (low < high) {
            found.add(PlanInfluence.of(input, low, high, secondsIn(atLow) - seconds, secondsIn(atHigh) - seconds));
        }
    }

    private void addPower(PlanTarget target, @Nullable Double temperatureC) {
        SustainablePower sustainable = target.sustainable();
        double low = sustainable.lowW() * Heat.leastFactor(temperatureC);
        PowerPlanner planner = road.planner(day, limits, EXPONENT);
        found.add(PlanInfluence.of(
                PlanInfluence.Input.SUSTAINABLE_POWER,
                low,
                sustainable.highW(),
                planner.ridden(scaled(low / sustainable.watts())).seconds() - seconds,
                planner.ridden(scaled(sustainable.highW() / sustainable.watts()))
                                .seconds()
                        - seconds));
    }

    private Series scaled(double factor) {
        return Series.generate(watts.size(), piece -> factor * watts.get(piece));
    }

    private void addWind(@Nullable Double forecastMps) {
        double low = forecastMps == null ? 0 : Math.max(0, forecastMps - FORECAST_OFF_MPS);
        double high = forecastMps == null ? UNKNOWN_WIND_MPS : forecastMps + FORECAST_OFF_MPS;
        double faster = Double.POSITIVE_INFINITY;
        double slower = Double.NEGATIVE_INFINITY;
        if (forecastMps == null) {
            for (int direction = 0; direction < DIRECTIONS; direction++) {
                double off = secondsIn(day.withWind(high, 2 * Math.PI * direction / DIRECTIONS)) - seconds;
                faster = Math.min(faster, off);
                slower = Math.max(slower, off);
            }
        } else {
            faster = secondsIn(day.withWind(low, day.windFromRadians())) - seconds;
            slower = secondsIn(day.withWind(high, day.windFromRadians())) - seconds;
        }
        found.add(PlanInfluence.of(PlanInfluence.Input.WIND, low, high, faster, slower));
    }

    private void addAscent(@Nullable Double organiserM, double ascentM) {
        if (organiserM == null || ascentM <= 0 || Math.abs(ascentM / organiserM - 1) <= ASCENT_OFF_FRACTION) {
            return;
        }
        double factor = Math.max(0.5, Math.min(2, organiserM / ascentM));
        double off = secondsIn(day.withGradeFactor(factor)) - seconds;
        found.add(PlanInfluence.of(
                PlanInfluence.Input.ASCENT, Math.min(ascentM, organiserM), Math.max(ascentM, organiserM), 0, off));
    }

    /**
     * The range of a time: the deviations added as squares, as independent errors add.
     *
     * @param influences what can be off
     * @param ridden the time, seconds
     */
    static TimeRange around(double ridden, List<PlanInfluence> influences) {
        double faster = 0;
        double slower = 0;
        for (PlanInfluence each : influences) {
            faster += each.fasterSeconds() * each.fasterSeconds();
            slower += each.slowerSeconds() * each.slowerSeconds();
        }
        return new TimeRange(ridden, ridden - Math.sqrt(faster), ridden + Math.sqrt(slower));
    }
}
