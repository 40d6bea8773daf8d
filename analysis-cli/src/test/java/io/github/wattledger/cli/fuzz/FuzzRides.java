package io.github.wattledger.cli.fuzz;

import io.github.wattledger.cli.fuzz.FitMessages.Message;
import io.github.wattledger.read.ReadOptions;
import io.github.wattledger.read.RideFiles;
import io.github.wattledger.read.RideInput;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Samples;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.Stream;
import java.util.zip.GZIPInputStream;

/**
 * The sound files that the fuzzing changes: parts of some minutes, and of about three quarters of an hour, which is what
 * is judged at all, of the sample rides and of real recordings where there are any; each as FIT, as a table and as GPX.
 */
final class FuzzRides {
    private static final int SHORT_RECORDS = 240;
    private static final int LONG_RECORDS = 2800;

    private static final Map<Channel, String> CSV_HEADERS = new TreeMap<>(Map.of(
            Channel.POWER, "power",
            Channel.HEART_RATE, "heart_rate",
            Channel.CADENCE, "cadence",
            Channel.SPEED, "speed (m/s)",
            Channel.DISTANCE, "distance (m)",
            Channel.ALTITUDE, "altitude",
            Channel.LATITUDE, "latitude",
            Channel.LONGITUDE, "longitude",
            Channel.TEMPERATURE, "temperature",
            Channel.ACCUMULATED_WORK, "accumulated_work"));

    private static final Map<Channel, String> GPX_NAMES = new TreeMap<>(Map.of(
            Channel.POWER, "power",
            Channel.HEART_RATE, "hr",
            Channel.CADENCE, "cad",
            Channel.SPEED, "speed",
            Channel.DISTANCE, "distance",
            Channel.TEMPERATURE, "atemp"));

    private final List<Seed> shortRides = new ArrayList<>();
    private final List<Seed> longRides = new ArrayList<>();

    private FuzzRides() {}

    /**
     * A sound file.
     *
     * @param name where it comes from
     * @param extension how its name ends
     * @param messages of a FIT file; none of another one
     * @param text of a table or a GPX file; empty for FIT
     */
    record Seed(String name, String extension, List<Message> messages, String text) {
        byte[] file() {
            return messages.isEmpty() ? text.getBytes(StandardCharsets.UTF_8) : FitMessages.file(messages);
        }
    }

    /**
     * Reads and cuts.
     *
     * @param folders of recordings; those that do not exist are left out
     */
    static FuzzRides of(Path... folders) throws IOException {
        FuzzRides rides = new FuzzRides();
        for (Path folder : folders) {
            if (Files.isDirectory(folder)) {
                try (Stream<Path> files = Files.walk(folder)) {
                    for (Path file : files.filter(Files::isRegularFile).sorted().toList()) {
                        rides.add(file);
                    }
                }
            }
        }
        if (rides.shortRides.isEmpty() || rides.longRides.isEmpty()) {
            throw new IOException("no recordings in " + Arrays.toString(folders));
        }
        return rides;
    }

    Seed any(Random random, boolean isLong) {
        List<Seed> seeds = isLong ? longRides : shortRides;
        return seeds.get(random.nextInt(seeds.size()));
    }

    private void add(Path file) throws IOException {
        String name = String.valueOf(file.getFileName());
        byte[] content = Files.readAllBytes(file);
        if (name.endsWith(".fit.gz")) {
            try (GZIPInputStream packed = new GZIPInputStream(new ByteArrayInputStream(content))) {
                content = packed.readAllBytes();
            }
        }
        if (name.endsWith(".csv") || name.endsWith(".gpx")) {
            addText(name, new String(content, StandardCharsets.UTF_8));
        } else if (name.endsWith(".fit") || name.endsWith(".fit.gz")) {
            addFit(name, FitMessages.of(content));
        }
    }

    private void addFit(String name, List<Message> messages) {
        int records = (int) messages.stream().filter(Message::isRecord).count();
        if (records < SHORT_RECORDS) {
            return;
        }
        Random random = new Random(name.hashCode());
        for (int part = 0; part < 3; part++) {
            int from = random.nextInt(records - SHORT_RECORDS + 1);
            addAllFormats(name, FitMessages.cut(messages, from, SHORT_RECORDS, 1), shortRides);
        }
        if (records >= LONG_RECORDS) {
            int from = random.nextInt(records - LONG_RECORDS + 1);
            addAllFormats(name, FitMessages.cut(messages, from, LONG_RECORDS, 1), longRides);
            // A recorder that writes a record now and then.
            addAllFormats(name, FitMessages.cut(messages, from, LONG_RECORDS / 7, 7), longRides);
        }
    }

    private static void addAllFormats(String name, List<Message> messages, List<Seed> seeds) {
        Seed fit = new Seed(name, "fit", messages, "");
        // Twice as often as the other formats.
        seeds.add(fit);
        seeds.add(fit);
        Samples samples;
        try {
            samples = RideFiles.read(RideInput.of(fit.file(), name), ReadOptions.DEFAULT)
                    .recordings()
                    .get(0)
                    .samples();
        } catch (UnreadableRideException e) {
            return;
        }
        seeds.add(new Seed(name, "csv", List.of(), csv(samples)));
        seeds.add(new Seed(name, "gpx", List.of(), gpx(samples)));
    }

    /** The first lines and some from the middle, of a table; the same by points, of a GPX file. */
    private void addText(String name, String text) {
        String extension = name.substring(name.length() - 3);
        List<String> pieces = new ArrayList<>(
                extension.equals("csv")
                        ? Arrays.asList(text.split("(?<=\n)", -1))
                        : Arrays.asList(text.split("(?=<trkpt)|(?=</trkseg)", -1)));
        if (pieces.size() < SHORT_RECORDS + 2) {
            return;
        }
        int middle = pieces.size() / 2;
        List<String> kept = new ArrayList<>(List.of(pieces.get(0)));
        kept.addAll(pieces.subList(middle, Math.min(pieces.size() - 1, middle + SHORT_RECORDS)));
        kept.add(pieces.get(pieces.size() - 1));
        shortRides.add(new Seed(name, extension, List.of(), String.join("", kept)));
    }

    private static String csv(Samples samples) {
        StringBuilder text = new StringBuilder("time");
        CSV_HEADERS.values().forEach(header -> text.append(',').append(header));
        for (int i = 0; i < samples.size(); i++) {
            text.append('\n').append(Instant.ofEpochSecond(samples.epochSecond(i)));
            for (Channel channel : CSV_HEADERS.keySet()) {
                double value = samples.get(channel, i);
                text.append(',').append(Double.isNaN(value) ? "" : Double.toString(value));
            }
        }
        return text.append('\n').toString();
    }

    private static String gpx(Samples samples) {
        StringBuilder text = new StringBuilder("""
                <?xml version="1.0" encoding="UTF-8"?>
                <gpx version="1.1" creator="none" xmlns="http://www.topografix.com/GPX/1/1">
                <trk><name>a ride</name><type>cycling</type><trkseg>
                """);
        for (int i = 0; i < samples.size(); i++) {
            text.append("<trkpt lat=\"" + or(samples.get(Channel.LATITUDE, i), 55.5) + "\" lon=\""
                    + or(samples.get(Channel.LONGITUDE, i), 9.5) + "\">");
            if (!Double.isNaN(samples.get(Channel.ALTITUDE, i))) {
                text.append("<ele>").append(samples.get(Channel.ALTITUDE, i)).append("</ele>");
            }
            text.append("<time>")
                    .append(Instant.ofEpochSecond(samples.epochSecond(i)))
                    .append("</time><extensions>");
            for (Map.Entry<Channel, String> name : GPX_NAMES.entrySet()) {
                double value = samples.get(name.getKey(), i);
                if (!Double.isNaN(value)) {
                    text.append("<" + name.getValue() + ">" + value + "</" + name.getValue() + ">");
                }
            }
            text.append("</extensions></trkpt>\n");
        }
        return text.append("</trkseg></trk></gpx>\n").toString();
    }

    private static double or(double value, double otherwise) {
        return Double.isNaN(value) ? otherwise : value;
    }
}
