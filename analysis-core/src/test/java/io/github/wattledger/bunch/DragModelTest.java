package io.github.wattledger.bunch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.bunch.RoadPieces.Span;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.rig.EnergyPiece;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Drag in a wind from anywhere, by the definition of a force against the air, and its slopes by differences. */
class DragModelTest {
    private static final Prior PRIOR = new Prior(0.34, 0.02, 7, 1.5, 1373);

    /** A piece at 10 m/s northwards and one eastwards. */
    private static DragModel model() {
        EnergyPiece north = new EnergyPiece(new Interval(0, 50), 0, 500, 0, 20, 0, 200, 10, 100, 1, 0);
        EnergyPiece east = new EnergyPiece(new Interval(50, 100), 500, 500, 0, 20, 0, 200, 10, 100, 0, 1);
        return new DragModel(new RoadPieces(List.of(north, east), 1.2, 1), PRIOR, List.of(new Span(1, 2)));
    }

    /** The rider meets 10 + 3 m/s from ahead and 4 m/s from the side: 13.60 m/s, of which 13 / 13.60 points backwards. */
    @Test
    void onlyThePartOfTheDragAlongTheRoadResists() {
        double[] numbers = {0.3, 7, 3, 4, 0, 0, 0.25};
        assertThat(model().loneDrag(numbers, 0)).isCloseTo(0.3 * 13 * Math.hypot(13, 4), within(1e-9));
        assertThat(model().loneDrag(numbers, 1)).isCloseTo(0.3 * 14 * Math.hypot(14, 3), within(1e-9));
        assertThat(model().expected(numbers, 1)).isCloseTo(0.75 * 0.3 * 14 * Math.hypot(14, 3) + 7, within(1e-9));
    }

    @Test
    void slopesAreThoseOfSmallDifferences() {
        double[] numbers = {0.3, 7, 1.5, -2, 0.4, 0.7, 0.25};
        for (int piece = 0; piece < 2; piece++) {
            double[] slope = model().slope(numbers, piece);
            for (int k = 0; k < numbers.length; k++) {
                double[] more = numbers.clone();
                double[] less = numbers.clone();
                more[k] += 1e-5;
                less[k] -= 1e-5;
                double difference = (model().expected(more, piece) - model().expected(less, piece)) / 2e-5;
                assertThat(slope[k]).isCloseTo(difference, within(1e-5));
            }
        }
    }

    /** The mean over both pieces of exp(-distance / 500 m), by small steps. */
    @Test
    void aSavingIsAsAlikeOverTwoPiecesAsItsMeansAre() {
        double same = 0;
        double next = 0;
        int steps = 400;
        for (int i = 0; i < steps; i++) {
            for (int j = 0; j < steps; j++) {
                double metres = 500.0 * (i - j) / steps;
                same += Math.exp(-Math.abs(metres) / 500) / steps / steps;
                next += Math.exp(-(500 + metres) / 500) / steps / steps;
            }
        }
        assertThat(Scatter.meansNear(500, 500, 0)).isCloseTo(same, within(1e-3));
        assertThat(Scatter.meansNear(500, 500, 500)).isCloseTo(next, within(1e-3));
    }
}
