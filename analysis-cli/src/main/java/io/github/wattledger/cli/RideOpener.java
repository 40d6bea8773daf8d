package io.github.wattledger.cli;

import io.github.wattledger.ReviewOptions;
import io.github.wattledger.Reviewer;
import io.github.wattledger.RideReview;
import io.github.wattledger.intake.OpenedRide;
import io.github.wattledger.read.ReadOptions;
import io.github.wattledger.read.RideInput;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.rider.Rider;
import java.io.InputStream;
import org.jspecify.annotations.Nullable;

/** Reviews rides through the core. What was opened for a question is kept for the next: standard input comes only once. */
final class RideOpener implements ReviewCommand.Core {
    private final InputStream standardInput;
    private @Nullable NamedRide last;
    private @Nullable OpenedRide opened;

    RideOpener(InputStream standardInput) {
        this.standardInput = standardInput;
    }

    @Override
    public RideReview review(NamedRide ride, Rider rider, ReviewOptions options) throws UnreadableRideException {
        return Reviewer.review(
                opened(ride, options.reading(), options.selection().sessionIndex()), rider, options);
    }

    @Override
    public OpenedRide open(NamedRide ride, ReadOptions reading, @Nullable Integer sessionIndex)
            throws UnreadableRideException {
        return opened(ride, reading, sessionIndex);
    }

    @Override
    public RideInput input(NamedRide ride) throws UnreadableRideException {
        return ride.input(standardInput);
    }

    private OpenedRide opened(NamedRide ride, ReadOptions reading, @Nullable Integer sessionIndex)
            throws UnreadableRideException {
        OpenedRide kept = opened;
        if (kept == null || !ride.equals(last)) {
            kept = ride.open(reading, sessionIndex, standardInput);
            opened = kept;
            last = ride;
        }
        return kept;
    }
}
