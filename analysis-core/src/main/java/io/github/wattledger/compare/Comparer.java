package io.github.wattledger.compare;

import io.github.wattledger.intake.OpenedRide;
import io.github.wattledger.read.ReadOptions;
import io.github.wattledger.read.RideInput;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.read.UnreadableRideException.Reason;
import java.util.ArrayList;
import java.util.List;

/** The door for rides over one course that are to be held against one another. Stateless and safe for many threads. */
public final class Comparer {
    private Comparer() {}

    /**
     * Compares recorded files, their bytes or streams of them; the first cycling session of each is taken.
     *
     * @param inputs two or more; each of the others is held against the first
     * @param fromM where the compared part begins, metres from the start of the first recording
     * @param toM where it ends, metres; {@code Double.POSITIVE_INFINITY} for the end of the course
     * @throws UnreadableRideException when nothing could be read from a file, or it shares no course with the first; its
     *     message is one line for people that begins with the name of the input
     * @throws IllegalArgumentException when there are fewer than two
     */
    public static RideComparison compare(List<RideInput> inputs, ReadOptions readOptions, double fromM, double toM)
            throws UnreadableRideException {
        if (inputs.size() < 2) {
            throw new IllegalArgumentException(inputs.size() + " files, expected 2 or more");
        }
        RideComparison.Compared reference = read(inputs.get(0), readOptions);
        TimedRide timed = new TimedRide(reference.ride());
        List<RideComparison.Against> others = new ArrayList<>();
        for (RideInput input : inputs.subList(1, inputs.size())) {
            RideComparison.Compared other = read(input, readOptions);
            CourseComparison comparison = CourseComparison.of(timed, other.ride(), fromM, toM)
                    .orElseThrow(
                            reason -> new UnreadableRideException(Reason.NOT_SUITABLE, input.name() + ": " + reason));
            others.add(new RideComparison.Against(other, comparison));
        }
        return new RideComparison(reference, others);
    }

    private static RideComparison.Compared read(RideInput input, ReadOptions options) throws UnreadableRideException {
        OpenedRide opened = OpenedRide.of(input, options, null);
        return new RideComparison.Compared(opened.source(), opened.ride());
    }
}
