package io.github.wattledger.cancel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

class CancellationTest {
    @AfterEach
    void isNotInterruptedAnyMore() {
        Thread.interrupted();
    }

    @Test
    void anInterruptEndsTheWorkAndStays() {
        assertThatCode(Cancellation.ON_INTERRUPT::check).doesNotThrowAnyException();
        Thread.currentThread().interrupt();
        assertThatThrownBy(Cancellation.ON_INTERRUPT::check)
                .isInstanceOfSatisfying(
                        CancelledException.class,
                        e -> assertThat(e.reason()).isEqualTo(CancelledException.Reason.INTERRUPT));
        assertThat(Thread.currentThread().isInterrupted()).isTrue();
    }

    @Test
    void aDeadlineEndsTheWorkAndNotBefore() throws InterruptedException {
        Cancellation distant = Cancellation.within(Duration.ofDays(100_000_000_000L));
        assertThatCode(distant::check).doesNotThrowAnyException();
        Cancellation brief = Cancellation.within(Duration.ofMillis(1));
        Thread.sleep(2);
        assertThatThrownBy(brief::check)
                .isInstanceOfSatisfying(
                        CancelledException.class,
                        e -> assertThat(e.reason()).isEqualTo(CancelledException.Reason.DEADLINE))
                .hasMessage("the work took longer than the 0.001 s allowed");
    }

    @Test
    void withoutADeadlineOnlyAnInterruptEndsIt() {
        Cancellation cancellation = Cancellation.within(null);
        assertThatCode(cancellation::check).doesNotThrowAnyException();
        Thread.currentThread().interrupt();
        assertThatThrownBy(cancellation::check).isInstanceOf(CancelledException.class);
        assertThatCode(Cancellation.NEVER::check).doesNotThrowAnyException();
    }

    @Test
    void noTimeAtAllIsRefused() {
        assertThatIllegalArgumentException().isThrownBy(() -> Cancellation.within(Duration.ZERO));
        assertThatIllegalArgumentException().isThrownBy(() -> Cancellation.within(Duration.ofSeconds(-1)));
    }
}
