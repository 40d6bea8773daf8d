package io.github.wattledger.replay;

import io.github.wattledger.replay.Influence.Input;
import io.github.wattledger.rig.Measure;
import io.github.wattledger.rig.OffTogether;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToDoubleFunction;

/**
 * How far the minutes of an answer can be off. Each input that is not known exactly is put at its lowest and at its
 * highest plausible value while the others stay, but for those that are off together with it; the deviations to either
 * side are added as squares, as those of independent errors are.
 *
 * @param lowMinutes lower end of the range
 * @param highMinutes upper end of the range
 * @param influences what the range is made of, in the order of {@link Input}
 */
record Uncertainty(double lowMinutes, double highMinutes, List<Influence> influences) {
    /** Published times are met within 4 %, full forward simulations within 5 %: the tests hold both. */
    private static final double MODEL_FRACTION = 0.05;

    /**
     * The numbers that one computation of the answer starts from.
     *
     * @param riderKg mass of the rider
     * @param bicycleKg mass of the bicycle
     * @param dragAreaM2 drag area as it is
     * @param positionRatio the factor by which the other position changes the drag area
     * @param rollingResistance coefficient of rolling resistance as it is
     * @param densityKgPerM3 density of the air as it is
     */
    record Inputs(
            double riderKg,
            double bicycleKg,
            double dragAreaM2,
            double positionRatio,
            double rollingResistance,
            double densityKgPerM3) {
        /** These numbers with one of them changed and what is off together with it. */
        private Inputs with(Input input, double value, OffTogether together) {
            double rider = input == Input.RIDER_MASS ? value : riderKg;
            double bicycle = input == Input.BICYCLE_MASS ? value : bicycleKg;
            double moreKg = rider + bicycle - riderKg - bicycleKg;
            double moreM2 = input == Input.DRAG_AREA ? value - dragAreaM2 : 0;
            double rolling = input == Input.ROLLING_RESISTANCE ? value : rollingResistance;
            return new Inputs(
                    rider,
                    bicycle,
                    dragAreaM2 + moreM2 + together.dragAreaM2PerKg() * moreKg,
                    input == Input.POSITION_RATIO ? value : positionRatio,
                    rolling + together.rollingResistancePerM2() * moreM2 + together.rollingResistancePerKg() * moreKg,
                    input == Input.AIR_DENSITY ? value : densityKgPerM3);
        }
    }

    /**
     * The range of an answer.
     *
     * @param savedMinutes the answer with the central inputs
     * @param ranges the inputs that can be off; one without a range is left out
     * @param together which of them are off together; a range of the rolling resistance is what is left beside that
     * @param brakes what the brakes do to the answer, or nothing
     * @param answer the minutes saved with other inputs
     */
    static Uncertainty of(
            double savedMinutes,
            Inputs central,
            Map<Input, Measure> ranges,
            OffTogether together,
            Optional<Influence> brakes,
            ToDoubleFunction<Inputs> answer) {
        List<Influence> influences = new ArrayList<>();
        for (Input input : Input.values()) {
            Measure range = ranges.get(input);
            if (range != null && range.hasRange()) {
                influences.add(new Influence(
                        input,
                        range,
                        answer.applyAsDouble(central.with(input, range.low(), together)),
                        answer.applyAsDouble(central.with(input, range.high(), together))));
            }
        }
        brakes.ifPresent(influences::add);
        Measure model = Measure.within(1, MODEL_FRACTION, Measure.Origin.TYPICAL);
        influences.add(new Influence(Input.MODEL, model, savedMinutes * model.low(), savedMinutes * model.high()));
        double below = 0;
        double above = 0;
        for (Influence each : influences) {
            double lowest = Math.min(each.savedAtLowMinutes(), each.savedAtHighMinutes());
            double highest = Math.max(each.savedAtLowMinutes(), each.savedAtHighMinutes());
            below += square(Math.min(0, lowest - savedMinutes));
            above += square(Math.max(0, highest - savedMinutes));
        }
        return new Uncertainty(savedMinutes - Math.sqrt(below), savedMinutes + Math.sqrt(above), influences);
    }

    private static double square(double value) {
        return value * value;
    }
}
