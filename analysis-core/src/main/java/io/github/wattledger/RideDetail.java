package io.github.wattledger;

import io.github.wattledger.load.Decoupling;
import io.github.wattledger.load.RollingMean;
import io.github.wattledger.power.Ability;
import io.github.wattledger.power.AbilityEvidence;
import io.github.wattledger.power.ModelCurve;
import io.github.wattledger.power.SustainablePower;
import io.github.wattledger.power.WPrimeBalance;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Series;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a drawn report shows of a ride, second by second and line by line, beyond the numbers of its review. Every series
 * lies on the axis of the whole recording.
 *
 * @param power30sW trailing mean of 30 seconds of power, watts; {@code NaN} without power and while paused
 * @param power180sW trailing mean of 180 seconds of power, watts, by which a stretch of road is called easy or hard;
 *     {@code NaN} without power and while paused
 * @param wPrimeBalanceKJ what was left of W′ at the end of each second of the reviewed part, kilojoules, {@code NaN}
 *     outside it; null while critical power or W′ is not known
 * @param sustainable the power that could be expected with its range, or null
 * @param wattsPerBeat watts a heartbeat of the reviewed part by blocks of 20 minutes, on the axis of the whole recording; empty
 *     without power or heart rate
 * @param models lines of the models of power against duration, possibly none
 */
public record RideDetail(
        Series power30sW,
        Series power180sW,
        @Nullable Series wPrimeBalanceKJ,
        @Nullable SustainablePower sustainable,
        List<Decoupling.Block> wattsPerBeat,
        List<ModelCurve> models)
        implements Serializable {
    private static final int SHORT_SECONDS = 30;
    private static final int LONG_SECONDS = 180;

    /** How hard a stretch was against what could be held for the whole. */
    public enum Band {
        /** Under the range of the sustainable power. */
        BELOW,
        /** Within the range of the sustainable power. */
        WITHIN,
        /** Over the range of the sustainable power, but not over threshold power. */
        ABOVE,
        /** Over the range of the sustainable power, and over threshold power as well. */
        ABOVE_THRESHOLD
    }

    /** Copies the lists. */
    public RideDetail {
        wattsPerBeat = List.copyOf(wattsPerBeat);
        models = List.copyOf(models);
    }

    /** The detail of a review. */
    public static RideDetail of(RideReview review) {
        Ride ride = review.ride();
        Series ridden = ride.timerSeries(Channel.POWER);
        return new RideDetail(
                RollingMean.trailing(ridden, SHORT_SECONDS),
                RollingMean.trailing(ridden, LONG_SECONDS),
                balance(review),
                review.ability().evidence() == null
                        ? null
                        : review.ability().evidence().sustainable(),
                wattsPerBeat(review),
                models(review));
    }

    /**
     * How hard a power is for this ride.
     *
     * @param watts the power, watts, or {@code NaN} where it was not measured
     * @param thresholdPowerW threshold power, watts, or null
     * @return null without a power or without a sustainable power
     */
    public @Nullable Band band(double watts, @Nullable Double thresholdPowerW) {
        if (sustainable == null || Double.isNaN(watts)) {
            return null;
        }
        if (watts < sustainable.lowW()) {
            return Band.BELOW;
        }
        if (watts <= sustainable.highW()) {
            return Band.WITHIN;
        }
        return thresholdPowerW != null && watts > thresholdPowerW ? Band.ABOVE_THRESHOLD : Band.ABOVE;
    }

    private static @Nullable Series balance(RideReview review) {
        AbilityEvidence evidence = review.ability().evidence();
        WPrimeBalance balance = evidence == null ? null : evidence.balance();
        if (balance == null || !review.ride().has(Channel.POWER)) {
            return null;
        }
        Interval reviewed = review.reviewed();
        Series joules = balance.balanceJ();
        return Series.generate(
                review.ride().seconds(),
                second -> reviewed.contains(second) ? joules.get(second - reviewed.fromSecond()) / 1000 : Double.NaN);
    }

    private static List<Decoupling.Block> wattsPerBeat(RideReview review) {
        Interval reviewed = review.reviewed();
        return Decoupling.byBlock(review.ride().part(reviewed)).stream()
                .map(block -> new Decoupling.Block(
                        block.stretch().shifted(reviewed.fromSecond()),
                        block.wattsPerBeat(),
                        block.decouplingPercent()))
                .toList();
    }

    private static List<ModelCurve> models(RideReview review) {
        List<ModelCurve> models = new ArrayList<>();
        Ability ability = review.ability();
        Ability.Source source = ability.source();
        Double criticalPowerW = ability.criticalPowerW();
        Double wPrimeKJ = ability.wPrimeKJ();
        if (source != null && source.isGiven() && criticalPowerW != null && wPrimeKJ != null) {
            models.add(ModelCurve.given(criticalPowerW, wPrimeKJ * 1000));
        } else if (ability.evidence() != null) {
            ability.evidence().criticalPower().found().map(ModelCurve::of).ifPresent(models::add);
        }
        Double thresholdPowerW = review.rider().thresholdPowerW();
        if (thresholdPowerW != null && source != null && source.isGuide() && ability.sustainablePowerW() != null) {
            int longest = Math.max(ability.forSeconds(), review.curve().longestSeconds());
            ModelCurve.guide(thresholdPowerW, longest).ifPresent(models::add);
        }
        return models;
    }
}
