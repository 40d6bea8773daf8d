package io.github.wattledger.compare;

import io.github.wattledger.intake.OpenedRide;
import io.github.wattledger.read.ReadOptions;
import io.github.wattledger.read.UnreadableRideException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** The door for rides over one course that are to be held against one another. Stateless and safe for many threads. */
public final class Comparer {
    private Comparer() {}

    /**
     * Compares recorded files; the first cycling session of each is taken.
     *
     * @param files two or more; each of the others is held against the first
     * @param fromM where the compared part begins, metres from the start of the first recording
     * @param toM where it ends, metres; {@code Double.POSITIVE_INFINITY} for the end of the course
     * @throws UnreadableRideException when nothing could be read from a file, or it shares no course with the first; its
     *     message is one line for people that begins with the file
     * @throws IllegalArgumentException when there are fewer than two files
     */
    public static RideComparison compare(List<Path> files, ReadOptions readOptions, double fromM, double toM)
            throws UnreadableRideException {
        if (files.size() < 2) {
            throw new IllegalArgumentException(files.size() + " files, expected 2 or more");
        }
        RideComparison.Compared reference = read(files.get(0), readOptions);
        List<RideComparison.Against> others = new ArrayList<>();
        for (Path file : files.subList(1, files.size())) {
            RideComparison.Compared other = read(file, readOptions);
            CourseComparison comparison = CourseComparison.of(reference.ride(), other.ride(), fromM, toM)
                    .orElseThrow(reason -> new UnreadableRideException(file + ": " + reason));
            others.add(new RideComparison.Against(other, comparison));
        }
        return new RideComparison(reference, others);
    }

    private static RideComparison.Compared read(Path file, ReadOptions options) throws UnreadableRideException {
        OpenedRide opened = OpenedRide.of(file, options, null);
        return new RideComparison.Compared(opened.source(), opened.ride());
    }
}
