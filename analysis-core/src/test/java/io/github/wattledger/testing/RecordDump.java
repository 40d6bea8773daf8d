package io.github.wattledger.testing;

import io.github.wattledger.read.RideFiles;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Recording;
import io.github.wattledger.ride.Samples;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/** Writes what our reader makes of each FIT file in a folder as a table: one side of docs/compare-decoders. */
public final class RecordDump {
    private static final List<Channel> CHANNELS = List.of(
            Channel.POWER, Channel.HEART_RATE, Channel.CADENCE, Channel.DISTANCE, Channel.ALTITUDE, Channel.SPEED);

    private RecordDump() {}

    /** The folder of recordings and the folder of tables are the arguments. */
    public static void main(String[] arguments) throws IOException {
        Path recordings = Path.of(arguments[0]);
        Path tables = Files.createDirectories(Path.of(arguments[1]));
        try (Stream<Path> files = Files.walk(recordings)) {
            for (Path file : files.filter(each -> each.toString().endsWith(".fit"))
                    .sorted()
                    .toList()) {
                String name = recordings.relativize(file).toString().replace('/', '~');
                Files.writeString(tables.resolve(name + ".csv"), table(file));
            }
        }
    }

    private static String table(Path file) {
        StringBuilder text = new StringBuilder("timestamp,power,heartRate,cadence,distance,altitude,speed\n");
        try {
            for (Recording recording : RideFiles.read(file).recordings()) {
                Samples samples = recording.samples();
                for (int i = 0; i < samples.size(); i++) {
                    text.append(samples.epochSecond(i) - RawFit.EPOCH_SECOND);
                    for (Channel channel : CHANNELS) {
                        double value = samples.get(channel, i);
                        text.append(Double.isNaN(value) ? "," : String.format(Locale.ROOT, ",%.6f", value));
                    }
                    text.append('\n');
                }
            }
        } catch (UnreadableRideException e) {
            return "refused: " + e.getMessage() + "\n";
        }
        return text.toString();
    }
}
