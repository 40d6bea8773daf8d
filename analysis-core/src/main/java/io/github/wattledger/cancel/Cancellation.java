package io.github.wattledger.cancel;

import java.time.Duration;
import org.jspecify.annotations.Nullable;

/**
 * When a piece of work is to end before it is done. It is handed through to the long loops, which ask it; a metric by
 * itself is short and does not know it. Immutable, and safe for many threads.
 */
public final class Cancellation {
    /** Work that is never cancelled, not even by an interrupt. */
    public static final Cancellation NEVER = new Cancellation(false, null, 0);

    /** Work that ends when its thread is interrupted. */
    public static final Cancellation ON_INTERRUPT = new Cancellation(true, null, 0);

    private static final Duration LONGEST = Duration.ofNanos(Long.MAX_VALUE);

    private final boolean endsOnInterrupt;
    private final @Nullable Duration allowed;
    private final long startNs;

    private Cancellation(boolean endsOnInterrupt, @Nullable Duration allowed, long startNs) {
        this.endsOnInterrupt = endsOnInterrupt;
        this.allowed = allowed;
        this.startNs = startNs;
    }

    /**
     * Work that ends when its thread is interrupted, and at the latest after some time from now on.
     *
     * @param allowed how long it may take, above 0; null for no deadline
     * @throws IllegalArgumentException when the time is 0 or below
     */
    public static Cancellation within(@Nullable Duration allowed) {
        if (allowed == null) {
            return ON_INTERRUPT;
        }
        if (allowed.isZero() || allowed.isNegative()) {
            throw new IllegalArgumentException("a time of " + allowed + ", expected more than 0");
        }
        // The clock is read because the caller asked for a deadline; no number depends on it.
        return new Cancellation(true, allowed.compareTo(LONGEST) < 0 ? allowed : LONGEST, System.nanoTime());
    }

    /**
     * Ends the work where it is to end; otherwise does nothing. It takes some tens of nanoseconds, so that a loop may ask
     * for every sample.
     *
     * @throws CancelledException when the thread was interrupted, or the time is up
     */
    public void check() {
        if (endsOnInterrupt && Thread.currentThread().isInterrupted()) {
            throw new CancelledException(CancelledException.Reason.INTERRUPT, "the work was interrupted");
        }
        if (allowed != null && System.nanoTime() - startNs >= allowed.toNanos()) {
            throw new CancelledException(
                    CancelledException.Reason.DEADLINE, "the work took longer than the " + seconds() + " allowed");
        }
    }

    private String seconds() {
        return allowed == null ? "" : allowed.toMillis() / 1000.0 + " s";
    }
}
