package io.github.wattledger.simulation;

import java.util.Random;

/** Turns the power a rider means to give into what the legs give each second: fatigue, unevenness, freewheeling. */
final class Pedalling {
    private static final double MEMORY = 0.75;
    private static final double WIDEST = 2.5;
    private static final int SHORTEST_FREEWHEEL_S = 2;
    private static final int LONGEST_FREEWHEEL_S = 6;
    private static final double DEBT_MEAN_SECONDS = 30;
    private static final double NO_FREEWHEEL_GRADE = 0.025;

    private final RidingStyle style;
    private final Fatigue fatigue;
    private final Random chance;

    private double unevenness;
    private int freewheelSecondsLeft;
    private double meanW;
    private double debtKJ;

    Pedalling(Scenario scenario) {
        style = scenario.style();
        fatigue = scenario.rider().fatigue();
        chance = new Random(scenario.seed());
    }

    /** The power of the next second of the race, watts. */
    double powerW(PacingPlan plan, PacingPlan.Moment moment) {
        double meantW = plan.powerW(moment) * fatigue.remainingShare(debtKJ, moment.racingSeconds());
        double givenW = uneven(meantW, moment.grade());
        meanW += (givenW - meanW) / DEBT_MEAN_SECONDS;
        debtKJ += StrictMath.max(0, meanW - fatigue.tolerableW()) / 1000;
        return givenW;
    }

    /** The power of the next second of rolling to the line, watts; it leaves no trace. */
    double easyPowerW(double meantW) {
        return uneven(meantW, 0);
    }

    /** What the hard efforts so far have left, kJ. */
    double debtKJ() {
        return debtKJ;
    }

    private double uneven(double meantW, double grade) {
        unevenness = MEMORY * unevenness
                + style.variationFraction() * StrictMath.sqrt(1 - MEMORY * MEMORY) * chance.nextGaussian();
        boolean wantsRest = chance.nextDouble() < style.freewheelsPerHour() / 3600;
        int restSeconds = SHORTEST_FREEWHEEL_S + chance.nextInt(LONGEST_FREEWHEEL_S - SHORTEST_FREEWHEEL_S + 1);
        if (wantsRest && grade < NO_FREEWHEEL_GRADE) {
            freewheelSecondsLeft = restSeconds;
        }
        if (freewheelSecondsLeft > 0) {
            freewheelSecondsLeft--;
            return 0;
        }
        double widest = WIDEST * style.variationFraction();
        return meantW * (1 + StrictMath.max(-widest, StrictMath.min(widest, unevenness)));
    }
}
