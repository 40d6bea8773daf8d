package examples;

import io.github.wattledger.read.ReadNote;
import io.github.wattledger.read.ReadRequest;
import io.github.wattledger.read.ReadResult;
import io.github.wattledger.read.RideFormat;
import io.github.wattledger.read.Timestamps;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.read.UnreadableRideException.Reason;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Recording;
import io.github.wattledger.ride.Samples;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import java.util.Set;

/**
 * The reader of {@code docs/adding-a-reader.md}: the invented format "Tally" is text whose first line is {@code TALLY}
 * and the time of the start, and each line after it the watts and beats of one second, a dash for what is missing.
 */
// region reader
public final class TallyFormat implements RideFormat {
    private static final String MAGIC = "TALLY ";

    /** A format without state. */
    public TallyFormat() {}

    @Override
    public String name() {
        return "Tally";
    }

    @Override
    public Set<String> fileEndings() {
        return Set.of("tally");
    }

    @Override
    public boolean recognizes(byte[] content) {
        return new String(content, 0, Math.min(content.length, MAGIC.length()), StandardCharsets.UTF_8).equals(MAGIC);
    }

    @Override
    public ReadResult read(byte[] content, ReadRequest request) throws UnreadableRideException {
        List<String> lines = new String(content, StandardCharsets.UTF_8).lines().toList();
        OptionalLong start = Timestamps.epochSecond(lines.get(0).substring(MAGIC.length()));
        if (start.isEmpty()) {
            throw new UnreadableRideException(
                    Reason.NOT_A_RECORDING, "has no time in its first line; write it as 2024-05-04T07:00:00Z");
        }
        List<ReadNote> notes = new ArrayList<>();
        Samples.Builder samples = Samples.builder();
        for (int i = 1; i < lines.size(); i++) {
            request.cancellation().check();
            String[] cells = lines.get(i).split(" ", -1);
            if (cells.length != 2 || !isReading(cells[0]) || !isReading(cells[1])) {
                notes.add(ReadNote.damage("damaged", "Line " + (i + 1) + " is broken.", samples.build()));
                break;
            }
            if (samples.size() == request.limits().maximumSamples()) {
                throw new UnreadableRideException(
                        Reason.TOO_LARGE,
                        "holds more than " + request.limits().maximumSamples() + " samples; split it first");
            }
            samples.at(start.getAsLong() + i - 1)
                    .set(Channel.POWER, reading(cells[0]))
                    .set(Channel.HEART_RATE, reading(cells[1]));
        }
        if (samples.size() == 0) {
            throw new UnreadableRideException(Reason.DAMAGED, "holds no second that can be read");
        }
        return new ReadResult(name(), List.of(Recording.of(samples.build())), notes);
    }

    private static boolean isReading(String cell) {
        return cell.equals("-") || cell.matches("\\d{1,4}");
    }

    private static double reading(String cell) {
        return cell.equals("-") ? Double.NaN : Double.parseDouble(cell);
    }
}
// endregion
