package io.github.wattledger.bunch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.bunch.BunchProposal.Level;
import io.github.wattledger.course.Course;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.rig.Position;
import io.github.wattledger.rig.Rig;
import io.github.wattledger.rig.RigChoice;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** The level of a whole ride. */
class LevelDragTest {
    private static Course course(Ride ride) {
        return Course.of(ride).orElseThrow();
    }

    private static RigChoice rig(@Nullable Double dragAreaM2, Position position) {
        return RigChoice.ofNoRide(73.0, 11.0, dragAreaM2, null, position);
    }

    private static @Nullable Level level(BalancedRide balanced, @Nullable Double dragAreaM2, Position position) {
        Ride ride = balanced.ride();
        return LevelDrag.of(ride, course(ride), rig(dragAreaM2, position), BalancedRide.DENSITY);
    }

    /** Derived: 200 W carry this rig at 9.3158 m/s, and the balance gives its drag area back. */
    @Test
    void aSteadyRideAloneGivesTheDragAreaBack() {
        Ride ride = new BalancedRide(30, 9.3158).ride();
        assertThat(ride.series(Channel.POWER).get(100)).isCloseTo(200, within(0.05));
        Rig rig = Rig.of(84, 0.3156, 0.005);
        assertThat(LevelDrag.mostM2(ride, course(ride), rig, 1.2)).isCloseTo(0.320, within(0.0005));
    }

    /** 0.32 x (1 - 0.35) = 0.208 is 0.65 of the own 0.32, below the 0.80 that says bunch. */
    @Test
    void mostOfALoopInABunchShowsAgainstTheOwnDragArea() {
        Level level = Objects.requireNonNull(
                level(new BalancedRide(30, 9.3158).dragShare(kilometre -> 0.65), 0.3156, Position.HOODS));
        assertThat(level.mostDragAreaM2()).isCloseTo(0.208, within(0.0005));
        assertThat(level.isOwn()).isTrue();
        assertThat(level.comparedWithM2()).isCloseTo(0.32, within(1e-9));
        assertThat(level.isSheltered()).isTrue();
    }

    /** 0.32 x 0.85 is above 0.80 of it: not enough to accuse anybody. */
    @Test
    void aLittleShelterIsNoBunch() {
        Level level = Objects.requireNonNull(
                level(new BalancedRide(30, 9.3158).dragShare(kilometre -> 0.85), 0.3156, Position.HOODS));
        assertThat(level.isSheltered()).isFalse();
    }

    /** Without an own drag area only what nobody has alone, under 0.20 m2, says bunch. */
    @Test
    void withoutAnOwnDragAreaOnlyWhatNobodyHasAloneShows() {
        Level third = Objects.requireNonNull(
                level(new BalancedRide(30, 9.3158).dragShare(kilometre -> 0.65), null, Position.HOODS));
        assertThat(third.isOwn()).isFalse();
        assertThat(third.isSheltered()).isFalse();
        Level half = Objects.requireNonNull(
                level(new BalancedRide(30, 9.3158).dragShare(kilometre -> 0.55), null, Position.HOODS));
        assertThat(half.isSheltered()).isTrue();
    }

    @Test
    void onAeroBarsAnUnknownDragAreaSaysNothing() {
        assertThat(level(new BalancedRide(30, 9.3158).dragShare(kilometre -> 0.55), null, Position.AERO_BARS))
                .isNull();
    }

    /** 3 m/s from behind halve the drag of 10 m/s. */
    @Test
    void aCourseThatDoesNotComeBackSaysNothing() {
        assertThat(level(new BalancedRide(30, 9.3158).oneWay(), 0.3156, Position.HOODS))
                .isNull();
    }

    /** Ten minutes of level ground at 9.3158 m/s are 5.6 km; tops and hollows are level for some metres. */
    @Test
    void tooLittleLevelGroundSaysNothing() {
        BalancedRide hills =
                new BalancedRide(30, 9.3158).grade(kilometre -> kilometre < 4 ? 0 : kilometre % 2 == 0 ? 0.03 : -0.03);
        assertThat(level(hills, 0.3156, Position.HOODS)).isNull();
    }
}
