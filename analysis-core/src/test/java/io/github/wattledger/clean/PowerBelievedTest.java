package io.github.wattledger.clean;

import static io.github.wattledger.clean.NotedSeconds.noted;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.clean.Cleaning.Cleaned;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Recording;
import io.github.wattledger.ride.Samples;
import io.github.wattledger.ride.Series;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Each expectation is one sentence of the methods page on what is believed of power. */
class PowerBelievedTest {
    private static final long T0 = 1_781_413_200L;
    private static final double NAN = Double.NaN;

    private final Samples.Builder samples = Samples.builder();

    private Cleaned clean() {
        return Cleaning.clean(Recording.of(samples.build()));
    }

    @Nested
    class WorkCounter {
        private Cleaned counting(double joulesPerSampleJoule) {
            double counted = 0;
            for (int second = 0; second < 1000; second++) {
                double watts = 150 + second % 100;
                counted += watts * joulesPerSampleJoule;
                samples.at(T0 + second).set(Channel.POWER, watts).set(Channel.ACCUMULATED_WORK, Math.floor(counted));
            }
            return clean();
        }

        /** Two real recordings of one maker count 2.0 and 5.3 times what their samples add up to. */
        @ParameterizedTest
        @ValueSource(doubles = {0.5, 0.89, 1.11, 2.0, 5.3})
        void thatDisagreesWithTheSamplesIsNotBelieved(double factor) {
            Cleaned cleaned = counting(factor);
            assertThat(cleaned.quality().powerSource()).isEqualTo(PowerSource.SAMPLES);
            assertThat(cleaned.ride().series(Channel.POWER).get(500)).isEqualTo(150);
            assertThat(noted(cleaned, "work-counter-disagrees")).isEqualTo(1);
        }

        /** In 21 other real recordings the counter comes to 0.999 to 1.054 times the samples. */
        @ParameterizedTest
        @ValueSource(doubles = {0.91, 1.0, 1.054, 1.09})
        void thatAgreesToWithinATenthIsBelieved(double factor) {
            Cleaned cleaned = counting(factor);
            assertThat(cleaned.quality().powerSource()).isEqualTo(PowerSource.WORK_COUNTER);
            assertThat(cleaned.ride().series(Channel.POWER).get(500)).isCloseTo(150 * factor, within(1.0));
            assertThat(noted(cleaned, "work-counter-disagrees")).isZero();
        }

        @Test
        void isNotRefutedByOneWildReading() {
            double counted = 0;
            for (int second = 0; second < 1000; second++) {
                counted += 200;
                samples.at(T0 + second)
                        .set(Channel.POWER, second == 300 ? 60_000 : 200)
                        .set(Channel.ACCUMULATED_WORK, second == 600 ? 4e9 : counted);
            }
            assertThat(clean().quality().powerSource()).isEqualTo(PowerSource.WORK_COUNTER);
        }
    }

    /** A head unit that leaves the power out while the rider coasts: a real ride says 180 W so, and 188 without it. */
    @Nested
    class LeftOutWhileCoasting {
        private LeftOutWhileCoasting stretch(int from, int to, double cadence, double watts) {
            for (int second = from; second < to; second++) {
                samples.at(T0 + second).set(Channel.CADENCE, cadence).set(Channel.POWER, watts);
            }
            return this;
        }

        @Test
        void isZeroWhereCadenceZeroNeverComesWithPower() {
            Cleaned cleaned = stretch(0, 500, 90, 200)
                    .stretch(500, 600, 0, NAN)
                    .stretch(600, 620, NAN, NAN)
                    .stretch(620, 1000, 90, 200)
                    .clean();
            Series watts = cleaned.ride().series(Channel.POWER);
            assertThat(watts.get(550)).isZero();
            assertThat(watts.get(610)).as("without a cadence nothing is known").isNaN();
            assertThat(noted(cleaned, "power-left-out-coasting")).isEqualTo(100);
            assertThat(cleaned.quality().missingPowerSeconds()).isEqualTo(20);
        }

        @Test
        void isMissingWhereCadenceZeroAlsoComesWithPower() {
            Cleaned cleaned = stretch(0, 500, 90, 200)
                    .stretch(500, 600, 0, NAN)
                    .stretch(600, 620, 0, 0)
                    .stretch(620, 1000, 90, 200)
                    .clean();
            assertThat(cleaned.ride().series(Channel.POWER).get(550)).isNaN();
            assertThat(noted(cleaned, "power-left-out-coasting")).isZero();
        }

        @Test
        void isMissingWhereItIsAMatterOfAFewSeconds() {
            Cleaned cleaned = stretch(0, 500, 90, 200)
                    .stretch(500, 520, 0, NAN)
                    .stretch(520, 1000, 90, 200)
                    .clean();
            assertThat(cleaned.ride().series(Channel.POWER).get(510)).isNaN();
        }

        @Test
        void isNotDecidedByOneSecond() {
            Cleaned cleaned = stretch(0, 500, 90, 200)
                    .stretch(500, 800, 0, NAN)
                    .stretch(800, 801, 0, 150)
                    .stretch(801, 1000, 90, 200)
                    .clean();
            assertThat(cleaned.ride().series(Channel.POWER).get(550)).isZero();
        }

        /** A meter that fell silent, with the head unit's cadence with it: that is no coasting. */
        @Test
        void isMissingWhereMostMissingPowerComesWithoutCadenceZero() {
            Cleaned cleaned = stretch(0, 500, 90, 200)
                    .stretch(500, 600, 0, NAN)
                    .stretch(600, 900, 85, NAN)
                    .stretch(900, 1000, 90, 200)
                    .clean();
            assertThat(cleaned.ride().series(Channel.POWER).get(550)).isNaN();
        }

        private Cleaned clean() {
            return PowerBelievedTest.this.clean();
        }
    }
}
