package io.github.wattledger.pacing;

import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import org.jspecify.annotations.Nullable;

/**
 * How long the race is that a part under review belongs to: it decides the power that could be held, and how much of the part
 * is the race's opening.
 *
 * @param movingSeconds moving time of the race, seconds
 * @param openingSeconds moving seconds of the part that belong to the opening of the race
 */
public record RaceLength(int movingSeconds, int openingSeconds) {
    /** A part of at least this share of the riding is the race itself: the rest of the file is the way there and back. */
    private static final double RACE_SHARE = 0.5;

    /** The opening of the part, which nobody planned. */
    public Opening opening() {
        return Opening.unplanned(openingSeconds);
    }

    /** The raced part of a ride is the race. */
    public static RaceLength of(Ride ride, RacedPart part) {
        int moving = part.movingSeconds(ride);
        return new RaceLength(moving, openingSeconds(moving));
    }

    /**
     * A part that somebody chose: a lap or an hour of a race keeps the race's length, so that its target is that of the whole.
     *
     * @param whole the whole recording
     * @param chosen the chosen part of it
     * @param thresholdPowerW threshold power by which the way there and back is set apart, watts, or null
     */
    public static RaceLength ofPart(Ride whole, Ride chosen, @Nullable Double thresholdPowerW) {
        RacedPart raced = RacedPart.find(whole, thresholdPowerW);
        int racedSeconds = raced.movingSeconds(whole);
        int chosenSeconds = chosen.countSeconds(SecondState.RIDING);
        if (chosenSeconds >= RACE_SHARE * racedSeconds) {
            return new RaceLength(chosenSeconds, openingSeconds(chosenSeconds));
        }
        int from = (int) (chosen.start().getEpochSecond() - whole.start().getEpochSecond());
        int before = from <= raced.interval().fromSecond()
                ? 0
                : whole.countSeconds(
                        SecondState.RIDING, new Interval(raced.interval().fromSecond(), from));
        return new RaceLength(racedSeconds, Math.max(0, openingSeconds(racedSeconds) - before));
    }

    private static int openingSeconds(int movingSeconds) {
        return (int) Opening.secondsOf(movingSeconds);
    }
}
