package io.github.wattledger.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.ride.Series;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Six numbers against the free optimum, and both against a ride with momentum whose physics are written here. */
class CapTableTest {
    private static final double TARGET_W = 187;
    private static final Conditions DAY = new Conditions(84, 0.36, 0.007, 1, 1.2, 0, 0, 1);
    private static final PowerLimits LIMITS = new PowerLimits(TARGET_W / 4, 0.95 * 250, 6 / 3.6, 16);

    private final PlanRoad road = PlanRoad.of(PlanCourses.hilly(), List.of());
    private final Series grades = Series.generate(road.pieces(), road::grade);
    private final PowerPlanner planner = road.planner(DAY, LIMITS, 4);
    private final PowerByPiece best = planner.best(TARGET_W);
    private final CapTable table = CapTable.of(grades, best, planner, TARGET_W);
    private final PowerByPiece ridden = planner.ridden(table.ofPieces(grades));

    /** Within 0.3 % of the optimum and never slower than constant power by 0.1 %, both at the table's own effort. */
    @Test
    void theTableIsNearlyAsFastAsTheOptimum() {
        assertThat(ridden.effortW()).isCloseTo(TARGET_W, within(0.01 * TARGET_W));
        double optimum = planner.best(ridden.effortW()).seconds();
        double constant = planner.constant(ridden.effortW()).seconds();
        assertThat(ridden.seconds()).isBetween(optimum * 0.9999, optimum * 1.003);
        assertThat(ridden.seconds()).isLessThan(constant * 1.001);
    }

    /** Putting pieces of like ground together changes the time of the optimum by less than a thousandth. */
    @Test
    void groupsOfLikeGroundGiveTheSameOptimum() {
        double grouped = road.grouped(DAY).planner(LIMITS, 4).best(TARGET_W).seconds();
        assertThat(grouped).isCloseTo(best.seconds(), within(0.001 * best.seconds()));
    }

    /** Momentum changes the time by less than 0.3 % (this project's methods). */
    @Test
    void momentumChangesLittle() {
        TableRide ride = TableRide.of(road, DAY, ridden.watts(), LIMITS.fastestMps());
        assertThat(ride.seconds()).isCloseTo(ridden.seconds(), within(0.003 * ridden.seconds()));
    }

    /**
     * The same ride in steps of a tenth of a second with the equation of Martin et al. 1998, J Appl Biomech 14:276-291,
     * written out here.
     */
    @Test
    void theRideAgreesWithAFinerOne() {
        double speed = 1.5;
        double atM = 0;
        long steps = 0;
        while (atM < 160_000) {
            int piece = Math.min(road.pieces() - 1, (int) (atM / road.pieceM()));
            double grade = road.grade(piece);
            double cosine = 1 / Math.sqrt(1 + grade * grade);
            double air = 0.5 * 1.2 * (0.36 + 0.0044) * speed * speed;
            double force = air + 84 * 9.80665 * cosine * (0.007 + grade) + 0.091 + 0.0087 * speed;
            double push = ridden.watts().get(piece) * 0.976 / speed;
            speed = Math.min(16, Math.max(0.5, speed + 0.1 * (push - force) / (84 + 0.14 / (0.311 * 0.311))));
            atM += 0.1 * speed;
            steps++;
        }
        TableRide ride = TableRide.of(road, DAY, ridden.watts(), LIMITS.fastestMps());
        assertThat(ride.seconds()).isCloseTo(steps / 10.0, within(0.001 * steps / 10.0));
    }
}
