package io.github.wattledger.read;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.wattledger.ride.Recording;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.zip.GZIPOutputStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

class RideFilesTest {
    private static final byte[] RIDE = bytes("time,power\n2024-05-04T07:00:00Z,200\n2024-05-04T07:00:01Z,201\n");
    private static final byte[] GPX = bytes("<gpx><trk><trkseg><trkpt lat=\"1\" lon=\"2\"><time>2024-05-04T07:00:00Z"
            + "</time><speed>1</speed><distance>0</distance></trkpt></trkseg></trk></gpx>");
    private static final ReadLimits SMALL = new ReadLimits(1_000_000, 1_000, 10, 5_000_000);

    @TempDir
    Path folder;

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private static byte[] gzip(byte[] content) {
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (GZIPOutputStream out = new GZIPOutputStream(packed)) {
            out.write(content);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return packed.toByteArray();
    }

    private static byte[] zip(Map<String, byte[]> files) {
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (ZipOutputStream out = new ZipOutputStream(packed)) {
            for (Map.Entry<String, byte[]> file : files.entrySet()) {
                out.putNextEntry(new ZipEntry(file.getKey()));
                out.write(file.getValue());
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return packed.toByteArray();
    }

    private static ReadResult read(byte[] content) throws UnreadableRideException {
        return RideFiles.read(RideInput.of(content, "ride"), ReadOptions.DEFAULT.withLimits(SMALL));
    }

    private static List<String> texts(ReadResult result) {
        return result.notes().stream().map(ReadNote::text).toList();
    }

    private static void assertRefused(byte[] content, String message) {
        assertThatThrownBy(() -> read(content))
                .isInstanceOf(UnreadableRideException.class)
                .hasMessage(message);
    }

    @Nested
    class Messages {
        @Test
        void sayWhyAFileCannotBeOpened() {
            Path missing = folder.resolve("none.fit");
            assertThatThrownBy(() -> RideFiles.read(missing))
                    .isInstanceOf(UnreadableRideException.class)
                    .hasMessage(missing + ": there is no such file; check the path");
            assertThatThrownBy(() -> RideFiles.read(folder))
                    .isInstanceOf(UnreadableRideException.class)
                    .hasMessage(folder + ": is a folder; name one file in it");
        }

        @Test
        void sayThatAFileIsTooLarge() throws IOException {
            Path large = Files.write(folder.resolve("large.fit"), new byte[1_234_567]);
            assertThatThrownBy(() -> RideFiles.read(large, ReadOptions.DEFAULT.withLimits(SMALL)))
                    .isInstanceOf(UnreadableRideException.class)
                    .hasMessage(large + ": has 1.2 MB, more than the 1.0 MB that are read; is it a ride?");
        }

        @Test
        void sayThatThereIsNothingToRead() {
            assertRefused(new byte[0], "ride: is empty (0 bytes); copy it from the device again");
            assertThatThrownBy(() -> read(bytes("hello")))
                    .isInstanceOf(UnreadableRideException.class)
                    .hasMessageMatching("ride: is not a recording in a known format \\(.*FIT, GPX, CSV\\); "
                            + "export the ride from the device or its app again");
        }
    }

    @Nested
    class Gzip {
        @Test
        void isUnpackedWithoutANote() throws UnreadableRideException {
            assertThat(read(gzip(RIDE))).isEqualTo(read(RIDE));
        }

        @Test
        void mayItselfHoldAZipFile() throws UnreadableRideException {
            assertThat(read(gzip(zip(Map.of("a.csv", RIDE)))).recordings())
                    .isEqualTo(read(RIDE).recordings());
        }

        @Test
        void thatIsCutShortIsReadUpToThere() throws UnreadableRideException {
            // The last 8 bytes are the checksum and the length.
            byte[] packed = gzip(RIDE);
            ReadResult result = read(Arrays.copyOf(packed, packed.length - 8));
            assertThat(result.recordings()).isEqualTo(read(RIDE).recordings());
            assertThat(texts(result).get(0))
                    .isEqualTo("The gzip file is damaged or cut short; the " + RIDE.length
                            + " bytes before the damage were read.");
        }

        @Test
        void thatIsCutShortBeforeAnythingIsRefused() {
            assertRefused(
                    Arrays.copyOf(gzip(RIDE), 11),
                    "ride: is a gzip file with nothing in it; copy it from the device again");
        }

        @Test
        void thatUnpacksToTooMuchIsRefused() {
            assertRefused(
                    gzip(new byte[1_000_001]),
                    "ride: unpacks to more than 1.0 MB, the most that is read; is it a ride?");
        }
    }

    @Nested
    class Zip {
        @Test
        void withOneRideIsThatRide() throws UnreadableRideException {
            ReadResult result = read(zip(Map.of("2024/may/a.csv", RIDE)));
            assertThat(result.format()).isEqualTo("CSV");
            assertThat(result.recordings()).isEqualTo(read(RIDE).recordings());
            assertThat(texts(result)).containsExactly("Read from the archive: 2024/may/a.csv.");
        }

        @Test
        void withSeveralRidesHoldsASessionForEachAndNamesWhatItPassesOver() throws UnreadableRideException {
            Map<String, byte[]> files = new LinkedHashMap<>();
            files.put("rides/", new byte[0]);
            files.put("rides/a.csv", RIDE);
            files.put("rides/b.gpx.gz", gzip(GPX));
            files.put("photo.jpg", new byte[] {1, 2, 3});
            files.put("empty.fit", new byte[0]);
            ReadResult result = read(zip(files));
            assertThat(result.format()).isEqualTo("CSV, GPX");
            assertThat(result.recordings()).extracting(Recording::sessionIndex).containsExactly(0, 1);
            assertThat(texts(result).get(0))
                    .isEqualTo("The archive holds 2 rides: session 1 is rides/a.csv, session 2 is rides/b.gpx.gz.");
            assertThat(texts(result).get(1))
                    .startsWith("Passed over in the archive: photo.jpg (is not a recording in a known format (")
                    .endsWith("), empty.fit (is empty (0 bytes); copy it from the device again).");
        }

        @Test
        void withoutARideIsRefused() {
            assertThatThrownBy(() -> read(zip(Map.of("a.bin", new byte[] {1}))))
                    .isInstanceOf(UnreadableRideException.class)
                    .hasMessageStartingWith(
                            "ride: is an archive without a readable ride: a.bin (is not a recording in a known format (");
            assertRefused(
                    zip(Map.of("folder/", new byte[0])),
                    "ride: is an archive without a file; export the ride " + "again");
        }

        @Test
        void thatIsCutShortIsReadUpToThere() throws UnreadableRideException {
            Map<String, byte[]> files = new LinkedHashMap<>();
            files.put("a.csv", RIDE);
            files.put("b.csv", RIDE);
            byte[] packed = zip(files);
            int second = new String(packed, StandardCharsets.ISO_8859_1).indexOf("b.csv");
            ReadResult result = read(Arrays.copyOf(packed, second + 8));
            assertThat(result.recordings()).isEqualTo(read(RIDE).recordings());
            assertThat(texts(result).get(0))
                    .isEqualTo("The zip archive is damaged or cut short; what comes before the damage was read.");
        }

        @Test
        void withTooManyEntriesIsRefused() {
            Map<String, byte[]> files = new LinkedHashMap<>();
            for (int i = 0; i < 11; i++) {
                files.put(i + ".csv", RIDE);
            }
            assertRefused(
                    zip(files),
                    "ride: is an archive of more than 10 entries, the most that is read; unpack it and name one file");
        }

        @Test
        void thatUnpacksToTooMuchIsRefused() {
            Map<String, byte[]> files = new LinkedHashMap<>();
            for (int i = 0; i < 6; i++) {
                files.put(i + ".csv", new byte[900_000]);
            }
            assertRefused(zip(files), "ride: unpacks to more than 5.0 MB, the most that is read; is it a ride?");
        }

        @Test
        void passesOverAFileThatIsTooLarge() throws UnreadableRideException {
            Map<String, byte[]> files = new LinkedHashMap<>();
            files.put("film.mp4", new byte[1_000_001]);
            files.put("a.csv", RIDE);
            ReadResult result = read(zip(files));
            assertThat(result.recordings()).isEqualTo(read(RIDE).recordings());
            assertThat(texts(result)).contains("Passed over in the archive: film.mp4 (larger than 1.0 MB).");
        }

        @Test
        void withTooManySamplesInAllIsRefused() {
            StringBuilder ride = new StringBuilder("time,power\n");
            for (int i = 0; i < 600; i++) {
                ride.append(i).append(",200\n");
            }
            Map<String, byte[]> files = new LinkedHashMap<>();
            files.put("a.csv", bytes(ride.toString()));
            files.put("b.csv", bytes(ride.toString()));
            assertRefused(
                    zip(files),
                    "ride: holds more than 1,000 samples in all its files, the most that is read; unpack it and name "
                            + "one file");
        }

        @Test
        void inAZipInAZipIsPassedOver() throws UnreadableRideException {
            Map<String, byte[]> files = new LinkedHashMap<>();
            files.put("deep.zip", zip(Map.of("deeper.zip", zip(Map.of("a.csv", RIDE)))));
            files.put("a.csv", RIDE);
            ReadResult result = read(zip(files));
            assertThat(result.recordings()).hasSize(1);
            assertThat(texts(result))
                    .contains("Passed over in the archive: deep.zip (is an archive without a readable ride: deeper.zip "
                            + "(is an archive in an archive in an archive; unpack it and name one file)).");
        }

        @Test
        void doesNotLetANameSpeakToTheTerminal() throws UnreadableRideException {
            assertThat(texts(read(zip(Map.of("a\u001B[31m.csv", RIDE)))))
                    .containsExactly("Read from the archive: a?[31m.csv.");
        }
    }

    @Test
    void limitsMustBeSane() {
        assertThatThrownBy(() -> new ReadLimits(0, 1, 1, 1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new ReadLimits(1L << 31, 1, 1, 1)).isInstanceOf(IllegalArgumentException.class);
    }

    /** A device file says that its size is 0 and never ends. */
    @Test
    @EnabledOnOs({OS.LINUX, OS.MAC})
    void boundsWhatItReadsOfAFileThatNeverEnds() {
        ReadLimits limits = new ReadLimits(1_000_000, 1000, 10, 1_000_000);
        assertThatThrownBy(() -> RideInput.of(Path.of("/dev/zero")).content(limits))
                .isInstanceOf(UnreadableRideException.class)
                .hasMessage("/dev/zero: has more than the 1.0 MB that are read; is it a ride?");
    }
}
