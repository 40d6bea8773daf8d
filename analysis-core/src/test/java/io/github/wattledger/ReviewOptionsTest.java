package io.github.wattledger;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.energy.Intake;
import io.github.wattledger.rider.RideNotes;
import java.util.List;
import org.junit.jupiter.api.Test;

class ReviewOptionsTest {
    private static final RideNotes SIXTY_THEN_FORTY =
            new RideNotes(null, null, null, null, List.of(60.0, 40.0), List.of(), List.of(), null);

    @Test
    void whatTheNotesSayWasEatenHoldsWhereNothingElseIsSaid() {
        ReviewOptions noted = ReviewOptions.WHOLE_RIDE.withNotes(SIXTY_THEN_FORTY);
        assertThat(noted.intakeOrNoted()).isEqualTo(new Intake(List.of(60.0, 40.0), true));
        assertThat(noted.withIntake(Intake.ofGramsPerHour(30)).intakeOrNoted()).isEqualTo(Intake.ofGramsPerHour(30));
    }

    @Test
    void withoutAnyWordNothingIsKnownOfWhatWasEaten() {
        assertThat(ReviewOptions.WHOLE_RIDE.intakeOrNoted()).isNull();
    }
}
