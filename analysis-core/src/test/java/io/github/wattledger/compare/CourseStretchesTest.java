package io.github.wattledger.compare;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.compare.CourseStretches.Span;
import io.github.wattledger.course.Course;
import io.github.wattledger.ride.Series;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Stretches by hand, on points 100 m apart. The grade of a piece is that of the 500 m around it; climbs and descents are 2
 * % and more; at least 1 km or a sixtieth of the course, at most 5 km or a tenth of it.
 */
class CourseStretchesTest {
    /** Pieces of 100 m: so many, so many metres up each. */
    private static Course course(double... countsAndRises) {
        List<Double> altitude = new ArrayList<>();
        altitude.add(100.0);
        for (int i = 0; i < countsAndRises.length; i += 2) {
            for (int piece = 0; piece < countsAndRises[i]; piece++) {
                altitude.add(altitude.get(altitude.size() - 1) + countsAndRises[i + 1]);
            }
        }
        return Course.of(
                100,
                Series.of(altitude.stream().mapToDouble(Double::doubleValue).toArray()));
    }

    private static List<Span> stretches(Course course) {
        return CourseStretches.of(course, 0, 100, 0, course.pieces());
    }

    private static double grade(Span span) {
        return requireNonNull(span.meanGrade());
    }

    @Test
    void withoutAltitudeTheyAreEqualPartsOfUnknownGround() {
        // 12 km make three parts of 4 km, 100 km ten of 10 km.
        assertThat(CourseStretches.of(null, 0, 100, 0, 120))
                .containsExactly(
                        new Span(Ground.UNKNOWN, 0, 40, null),
                        new Span(Ground.UNKNOWN, 40, 80, null),
                        new Span(Ground.UNKNOWN, 80, 120, null));
        assertThat(CourseStretches.of(null, 0, 100, 0, 1000)).hasSize(10).allMatch(span -> span.pieces() == 100);
        assertThat(CourseStretches.of(null, 0, 100, 7, 57)).containsExactly(new Span(Ground.UNKNOWN, 7, 57, null));
    }

    @Test
    void climbsAndDescentsBeginWhereTheWayAroundIsTwoPercent() {
        // 3 km level, 3 km up at 6 %, 3 km down at 5.5 %, 3 km level. From 200 m before to 200 m after piece 28 it is
        // 1.2 %,
        // of piece 29 2.4 %. Of pieces 59 and 60, on the top, it is 1.4 and -0.9 %: 200 m too short to be told of,
        // whose
        // 0.25 % is nearer to the climb's 5.8 % than to the descent's -5.3 %. Of piece 90 it is -2.2 %, of 91 -1.1 %.
        List<Span> found = stretches(course(30, 0, 30, 6, 30, -5.5, 30, 0));
        assertThat(found)
                .extracting(Span::ground, Span::from, Span::to)
                .containsExactly(
                        tuple(Ground.FLAT, 0, 29),
                        tuple(Ground.CLIMB, 29, 61),
                        tuple(Ground.DESCENT, 61, 91),
                        tuple(Ground.FLAT, 91, 120));
        assertThat(grade(found.get(0))).isCloseTo(0, within(1e-12));
        // 30 x 6 - 5.5 m over 3,200 m; 29 x 5.5 m over 3,000 m.
        assertThat(grade(found.get(1))).isCloseTo(174.5 / 3200, within(1e-12));
        assertThat(grade(found.get(2))).isCloseTo(-159.5 / 3000, within(1e-12));
        assertThat(grade(found.get(3))).isCloseTo(0, within(1e-12));
    }

    @Test
    void aShortOneJoinsTheNextWhereThatIsNearerInGrade() {
        // Up at 5.5 %, down at 6 %: the 200 m of the top fall by 0.25 %, nearer to -5.8 % than to 5.3 %.
        assertThat(stretches(course(30, 0, 30, 5.5, 30, -6, 30, 0)))
                .extracting(Span::ground, Span::from, Span::to)
                .containsExactly(
                        tuple(Ground.FLAT, 0, 29),
                        tuple(Ground.CLIMB, 29, 59),
                        tuple(Ground.DESCENT, 59, 91),
                        tuple(Ground.FLAT, 91, 120));
    }

    @Test
    void underAKilometreIsNoStretchOfItsOwn() {
        // 600 m at 6 % are 800 m of climb by the way around: the level road goes on, in three parts of its 12 km.
        assertThat(stretches(course(50, 0, 6, 6, 64, 0)))
                .extracting(Span::ground, Span::from, Span::to)
                .containsExactly(tuple(Ground.FLAT, 0, 40), tuple(Ground.FLAT, 40, 80), tuple(Ground.FLAT, 80, 120));
        // The same at the very start, and at the very end.
        assertThat(stretches(course(6, 6, 34, 0)))
                .extracting(Span::ground, Span::from, Span::to)
                .containsExactly(tuple(Ground.FLAT, 0, 40));
        assertThat(stretches(course(34, 0, 6, 6)))
                .extracting(Span::ground, Span::from, Span::to)
                .containsExactly(tuple(Ground.FLAT, 0, 40));
    }

    @Test
    void underASixtiethOfALongCourseIsNone() {
        // 1.5 km at 6 % is a climb of 12 km, but none of 120 km, where stretches are 2 km and more.
        assertThat(stretches(course(50, 0, 15, 6, 55, 0)))
                .extracting(Span::ground)
                .contains(Ground.CLIMB);
        assertThat(stretches(course(500, 0, 15, 6, 685, 0)))
                .extracting(Span::ground)
                .containsOnly(Ground.FLAT);
    }

    @Test
    void aLongClimbIsCutIntoEqualParts() {
        // 8 km at 4 % between two level kilometres. From 200 m before to 200 m after piece 9 it is 1.6 %, of piece 10
        // 2.4 %;
        // at the top the same. A kilometre is long enough to be told of, 8 km are not 5: two parts.
        List<Span> found = stretches(course(10, 0, 80, 4, 10, 0));
        assertThat(found)
                .extracting(Span::ground, Span::from, Span::to)
                .containsExactly(
                        tuple(Ground.FLAT, 0, 10),
                        tuple(Ground.CLIMB, 10, 50),
                        tuple(Ground.CLIMB, 50, 90),
                        tuple(Ground.FLAT, 90, 100));
        assertThat(grade(found.get(1))).isCloseTo(0.04, within(1e-12));
        assertThat(grade(found.get(2))).isCloseTo(0.04, within(1e-12));
    }

    @Test
    void startWhereTheComparisonStarts() {
        // The course begins a kilometre before the first point.
        Course course = course(40, 0, 30, 6, 30, 0);
        assertThat(CourseStretches.of(course, 1000, 100, 0, 90))
                .extracting(Span::ground, Span::from, Span::to)
                .containsExactly(tuple(Ground.FLAT, 0, 29), tuple(Ground.CLIMB, 29, 61), tuple(Ground.FLAT, 61, 90));
    }

    /** By hand: 600 m up and 600 m down at 5 % are 30 m; a steady rise of 1 % is no climb. */
    @Test
    void theClimbsThatAMeanGradeHidesAreCounted() {
        Course rolling = course(20, 0, 6, 5, 6, -5, 20, 0);
        Span whole = new Span(Ground.FLAT, 0, 52, 0.0);
        assertThat(CourseStretches.climbedM(rolling, 0, 100, whole)).isEqualTo(30, within(1e-6));
        assertThat(CourseStretches.climbedM(course(52, 1), 0, 100, whole)).isZero();
    }
}
