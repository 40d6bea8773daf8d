package io.github.wattledger.simulation;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;

/**
 * What a review of a written race should find, computed from the written samples by the definitions alone. Seconds
 * count from the first sample, pauses included; stretches are half-open.
 *
 * @param raceStartSecond first second of the race
 * @param openingEndSecond second after the opening: the first sixth of the moving time, 20 to 90 minutes
 * @param raceEndSecond second after the last sample
 * @param raceMovingSeconds recorded seconds of the race without standing
 * @param standingSeconds recorded seconds of the race at a standstill
 * @param pausedSeconds seconds of the race with the timer stopped
 * @param targetW threshold times hours of moving time to the power of -0.16
 * @param openingNormalizedPowerW normalized power of the opening
 * @param restNormalizedPowerW normalized power from the opening's end on
 * @param raceNormalizedPowerW normalized power of the race
 * @param openingExcessKJ sum over the opening of watts as written minus target
 * @param openingSecondsAboveThreshold seconds of the opening above threshold power
 * @param surgeCount stretches above 1.2 times threshold of 8 s or more
 * @param sixthMeanW mean power of each sixth of the moving time
 * @param sixthPedalledW mean power of each sixth over its seconds with power above 0 and a road between -1 and +1 %
 */
public record RaceTruth(
        int raceStartSecond,
        int openingEndSecond,
        int raceEndSecond,
        int raceMovingSeconds,
        int standingSeconds,
        int pausedSeconds,
        double targetW,
        double openingNormalizedPowerW,
        double restNormalizedPowerW,
        double raceNormalizedPowerW,
        double openingExcessKJ,
        int openingSecondsAboveThreshold,
        int surgeCount,
        List<Double> sixthMeanW,
        List<Double> sixthPedalledW) {
    private static final double ENDURANCE_EXPONENT = -0.16;
    private static final int SHORTEST_OPENING_S = 20 * 60;
    private static final int LONGEST_OPENING_S = 90 * 60;
    private static final double SURGE_FRACTION = 1.2;
    private static final int SURGE_SECONDS = 8;
    private static final double LEVEL_GRADE = 0.01;

    /** Copies the lists. */
    public RaceTruth {
        sixthMeanW = List.copyOf(sixthMeanW);
        sixthPedalledW = List.copyOf(sixthPedalledW);
    }

    /** The truth of a race as it was written down. */
    public static RaceTruth of(RideTape tape) {
        long zero = tape.startEpochSecond();
        List<RecordedSample> race = tape.samples().stream()
                .filter(sample -> sample.epochSecond() >= tape.raceStartEpochSecond())
                .toList();
        List<RecordedSample> moving = moving(race);
        double thresholdW = tape.scenario().rider().thresholdPowerW();
        double targetW = thresholdW * StrictMath.pow(moving.size() / 3600.0, ENDURANCE_EXPONENT);
        int openingSeconds = StrictMath.max(SHORTEST_OPENING_S, StrictMath.min(LONGEST_OPENING_S, moving.size() / 6));
        long openingEnd = moving.get(openingSeconds - 1).epochSecond() + 1;
        List<RecordedSample> opening = before(race, openingEnd);
        List<RecordedSample> rest = race.subList(opening.size(), race.size());
        int raceStart = (int) (tape.raceStartEpochSecond() - zero);
        int raceEnd = (int) (tape.endEpochSecond() + 1 - zero);
        return new RaceTruth(
                raceStart,
                (int) (openingEnd - zero),
                raceEnd,
                moving.size(),
                race.size() - moving.size(),
                raceEnd - raceStart - race.size(),
                targetW,
                FourthPowerMean.normalizedPowerW(opening),
                FourthPowerMean.normalizedPowerW(rest),
                FourthPowerMean.normalizedPowerW(race),
                excessKJ(opening, targetW),
                (int) opening.stream()
                        .filter(sample -> sample.powerW() > thresholdW)
                        .count(),
                surges(race, SURGE_FRACTION * thresholdW),
                sixths(moving, sample -> true),
                sixths(moving, sample -> sample.powerW() > 0 && isLevel(tape, sample)));
    }

    private static List<RecordedSample> moving(List<RecordedSample> race) {
        boolean[] standing = Standstill.flags(race);
        List<RecordedSample> moving = new ArrayList<>();
        for (int i = 0; i < race.size(); i++) {
            if (!standing[i]) {
                moving.add(race.get(i));
            }
        }
        return moving;
    }

    private static List<RecordedSample> before(List<RecordedSample> race, long endEpochSecond) {
        return race.stream()
                .filter(sample -> sample.epochSecond() < endEpochSecond)
                .toList();
    }

    private static double excessKJ(List<RecordedSample> samples, double targetW) {
        return samples.stream()
                        .filter(RecordedSample::hasPower)
                        .mapToDouble(sample -> sample.powerW() - targetW)
                        .sum()
                / 1000;
    }

    private static int surges(List<RecordedSample> race, double aboveW) {
        int count = 0;
        int run = 0;
        for (RecordedSample sample : race) {
            run = sample.powerW() > aboveW ? run + 1 : 0;
            count += run == SURGE_SECONDS ? 1 : 0;
        }
        return count;
    }

    private static boolean isLevel(RideTape tape, RecordedSample sample) {
        Scenario scenario = tape.scenario();
        double leadInM = scenario.leadIn().equals(Scenario.LeadIn.NONE)
                ? 0
                : scenario.course().leadInM();
        return StrictMath.abs(scenario.course().gradeAt(sample.distanceM() - leadInM)) < LEVEL_GRADE;
    }

    private static List<Double> sixths(List<RecordedSample> moving, Predicate<RecordedSample> chosen) {
        List<Double> means = new ArrayList<>();
        for (int sixth = 0; sixth < 6; sixth++) {
            means.add(moving.subList(moving.size() * sixth / 6, moving.size() * (sixth + 1) / 6).stream()
                    .filter(RecordedSample::hasPower)
                    .filter(chosen)
                    .mapToDouble(RecordedSample::powerW)
                    .average()
                    .orElse(Double.NaN));
        }
        return means;
    }
}
