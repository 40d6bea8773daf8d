package io.github.wattledger.benchmark;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import java.util.Random;
import java.util.function.IntUnaryOperator;

/** Kinds of ride that tell an algorithm that lives on the shape of power from one that does not. */
public enum PowerShape {
    /** {@link SeededRide} as it is. */
    FOREST_ROADS {
        @Override
        Ride ride() {
            return SeededRide.twelveHours();
        }
    },
    /** Half a minute hard, half a minute easy, for twelve hours. */
    INTERVALS {
        @Override
        Ride ride() {
            Random random = new Random(SEED);
            return withPower(second -> (second / 30 % 2 == 0 ? 320 : 120) + random.nextInt(21) - 10);
        }
    },
    /** Two steady powers in turn, ten minutes each, for twelve hours. */
    TWO_POWERS {
        @Override
        Ride ride() {
            return withPower(second -> second / 600 % 2 == 0 ? 210 : 190);
        }
    },
    /** Power that rises and falls as a sine in whole watts, half an hour a wave, for twelve hours. */
    SINE {
        @Override
        Ride ride() {
            return withPower(second -> (int) Math.rint(200 + 80 * Math.sin(second * 2 * Math.PI / 1800)));
        }
    },
    /** Eleven days with one reading each 190 seconds, taken from {@link SeededRide} every eighth second. */
    GAPS {
        @Override
        Ride ride() {
            Ride seeded = SeededRide.twelveHours();
            int seconds = 11 * 86_400;
            Ride.Builder ride = Ride.builder(seeded.start(), seconds);
            for (Channel channel : seeded.channels()) {
                Series all = seeded.series(channel);
                ride.channel(
                        channel,
                        Series.generate(seconds, second -> second % 190 == 0 ? all.get(second / 190 * 8) : Double.NaN));
            }
            for (int second = 0; second < seconds; second++) {
                if (second % 190 != 0 || !seeded.series(Channel.POWER).isMeasured(second / 190 * 8)) {
                    ride.state(second, SecondState.MISSING);
                }
            }
            return ride.build();
        }
    };

    private static final long SEED = 20_261_127;

    abstract Ride ride();

    /** {@link SeededRide} with other power, in whole watts, wherever it has power. */
    private static Ride withPower(IntUnaryOperator watts) {
        Ride seeded = SeededRide.twelveHours();
        Ride.Builder ride = Ride.builder(seeded.start(), seeded.seconds());
        for (Channel channel : seeded.channels()) {
            ride.channel(channel, seeded.series(channel));
        }
        Series recorded = seeded.series(Channel.POWER);
        ride.channel(
                Channel.POWER,
                Series.generate(
                        seeded.seconds(),
                        second -> recorded.isMeasured(second) ? watts.applyAsInt(second) : Double.NaN));
        for (int second = 0; second < seeded.seconds(); second++) {
            ride.state(second, seeded.state(second));
        }
        return ride.build();
    }
}
