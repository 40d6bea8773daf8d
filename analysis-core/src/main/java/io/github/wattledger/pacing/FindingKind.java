package io.github.wattledger.pacing;

import java.util.Locale;

/**
 * What can be wrong with the pacing of a ride, each kind with the detector that looks for it. Equally weighty findings are
 * reported in this order.
 */
@SuppressWarnings("ImmutableEnumChecker") // A detector has no state.
public enum FindingKind {
    /** The opening was ridden harder than the whole could be, and harder than the rest was. */
    OVER_HARD_START(new OverHardStart()),
    /** Power and heart rate fell together. */
    ENERGY_CRASH(new EnergyCrash()),
    /** Power fell from early to late on comparable ground. */
    FADE(new Fade()),
    /** A long stretch near threshold early in an event that is too long for it. */
    THRESHOLD_RIDING_EARLY(new ThresholdRidingEarly()),
    /** Repeated short efforts far above threshold. */
    SURGES(new Surges()),
    /** Heart rate rose at equal power. */
    DRIFT(new Drift()),
    /** The whole ride was easier than the rider can hold. */
    UNDER_PACED(new UnderPaced()),
    /** The end was ridden clearly harder than what came before. */
    LATE_RESERVE(new LateReserve()),
    /** Stops that took longer than {@link JudgementLimit#STOP_SECONDS}. */
    STOPPED_TIME(new StoppedTime()),
    /** The top gear was too short. */
    SPUN_OUT(new GearsThatDidNotReach(GearsThatDidNotReach.End.TOP)),
    /** The lowest gear was too tall for the climbs. */
    OVER_GEARED(new GearsThatDidNotReach(GearsThatDidNotReach.End.LOWEST));

    private final Detector detector;

    FindingKind(Detector detector) {
        this.detector = detector;
    }

    Detector detector() {
        return detector;
    }

    /**
     * Whether it is a mistake of the rider. A drift is none: a heart that beats faster at equal power costs no time by itself,
     * and heat, fluid lost or little sleep are behind it as often as the pacing.
     */
    public boolean isMistake() {
        return this != DRIFT;
    }

    /** The kind's fixed word for programs and reports, lower case with hyphens. */
    public String id() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
