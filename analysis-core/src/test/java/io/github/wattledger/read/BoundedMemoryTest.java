package io.github.wattledger.read;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.testing.RawFit;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryMXBean;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.locks.LockSupport;
import java.util.zip.GZIPOutputStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Large and hostile files, each read by a Java of its own that has 256 MB of heap and no more. */
class BoundedMemoryTest {
    private static final int MEGABYTE = 1_000_000;

    @TempDir
    Path folder;

    /** Reads a file and prints what became of it, with the most heap that was in use. */
    static final class Reader {
        private Reader() {}

        /** The file is the one argument. */
        public static void main(String[] arguments) {
            MemoryMXBean memory = ManagementFactory.getMemoryMXBean();
            AtomicLong most = new AtomicLong();
            Thread sampler = new Thread(() -> {
                while (true) {
                    most.accumulateAndGet(memory.getHeapMemoryUsage().getUsed(), Math::max);
                    LockSupport.parkNanos(2 * MEGABYTE);
                }
            });
            sampler.setDaemon(true);
            sampler.start();
            String outcome;
            try {
                ReadResult result = RideFiles.read(Path.of(arguments[0]));
                outcome = result.recordings().get(0).samples().size() + " samples";
            } catch (UnreadableRideException e) {
                outcome = String.valueOf(e.getMessage());
            }
            System.out.println(
                    outcome + " [at most " + most.get() / MEGABYTE + " MB of heap in use, garbage included]");
        }
    }

    private static String read(Path file) throws IOException, InterruptedException {
        String classPath = System.getProperty("surefire.test.class.path", System.getProperty("java.class.path"));
        Path java = Path.of(System.getProperty("java.home"), "bin", "java");
        Process process = new ProcessBuilder(
                        java.toString(), "-Xmx256m", "-cp", classPath, Reader.class.getName(), file.toString())
                .redirectErrorStream(true)
                .start();
        String output = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor(2, TimeUnit.MINUTES)).isTrue();
        assertThat(process.exitValue()).as(output).isZero();
        System.out.println(file.getFileName() + ": " + output.strip());
        return output;
    }

    @Test
    void fiftyMegabytesOfGpx() throws IOException, InterruptedException {
        Path file = folder.resolve("long.gpx");
        int points = 160_000;
        try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(file))) {
            write(out, "<gpx xmlns=\"http://www.topografix.com/GPX/1/1\" version=\"1.1\"><trk><trkseg>\n");
            for (int i = 0; i < points; i++) {
                write(
                        out,
                        "<trkpt lat=\"" + (55 + i * 1e-5) + "\" lon=\"9.512345678901234\">\n  <ele>"
                                + i % 100 + "</ele>\n  <time>" + Instant.ofEpochSecond(1_714_806_000L + i) + "</time>\n"
                                + "  <extensions>\n    <power>" + (150 + i % 100) + "</power>\n"
                                + "    <x:TrackPointExtension xmlns:x=\"http://example.org/xmlschemas/TrackPoint/v1\">\n"
                                + "      <x:hr>" + (120 + i % 40) + "</x:hr>\n      <x:cad>" + (80 + i % 20)
                                + "</x:cad>\n"
                                + "      <x:atemp>14</x:atemp>\n      <x:speed>8.25</x:speed>\n"
                                + "    </x:TrackPointExtension>\n  </extensions>\n</trkpt>\n");
            }
            write(out, "</trkseg></trk></gpx>");
        }
        assertThat(Files.size(file)).isGreaterThan(50L * MEGABYTE);
        assertThat(read(file)).startsWith(points + " samples");
    }

    @Test
    void twoHundredThousandRecordsOfFit() throws IOException, InterruptedException {
        RawFit fit = RawFit.littleEndian()
                .define(
                        0,
                        RawFit.RECORD,
                        253,
                        4,
                        RawFit.UINT32,
                        7,
                        2,
                        RawFit.UINT16,
                        3,
                        1,
                        RawFit.UINT8,
                        4,
                        1,
                        RawFit.UINT8,
                        0,
                        4,
                        RawFit.SINT32,
                        1,
                        4,
                        RawFit.SINT32,
                        5,
                        4,
                        RawFit.UINT32,
                        2,
                        2,
                        RawFit.UINT16,
                        6,
                        2,
                        RawFit.UINT16);
        for (int i = 0; i < 200_000; i++) {
            fit.data(0, 1_100_000_000L + i, 200, 140, 85, 660_000_000L + i, 110_000_000L, 800L * i, 3000, 8000);
        }
        assertThat(read(Files.write(folder.resolve("long.fit"), fit.file()))).startsWith("200000 samples");
    }

    @Test
    void aZipFileOfZeros() throws IOException, InterruptedException {
        Path file = folder.resolve("bomb.zip");
        try (ZipOutputStream out = new ZipOutputStream(Files.newOutputStream(file))) {
            for (int i = 0; i < 7; i++) {
                out.putNextEntry(new ZipEntry(i + ".fit"));
                writeZeros(out, 90);
            }
        }
        assertThat(Files.size(file)).isLessThan(MEGABYTE);
        assertThat(read(file))
                .contains("bomb.zip: unpacks to more than 512.0 MB, the most that is read; is it a ride?");
    }

    @Test
    void aGzipFileOfZeros() throws IOException, InterruptedException {
        Path file = folder.resolve("bomb.gz");
        try (OutputStream out = new GZIPOutputStream(Files.newOutputStream(file))) {
            writeZeros(out, 300);
        }
        assertThat(read(file)).contains("bomb.gz: unpacks to more than 100.0 MB, the most that is read; is it a ride?");
    }

    @Test
    void aGzipFileThatUnpacksToALargeBrokenFitFile() throws IOException, InterruptedException {
        Path file = folder.resolve("broken.fit.gz");
        try (OutputStream out = new GZIPOutputStream(Files.newOutputStream(file))) {
            out.write(new byte[] {12, 0x20, 100, 0, 1, 0, 0, 0, '.', 'F', 'I', 'T'});
            writeZeros(out, 99);
        }
        assertThat(read(file)).contains("is a damaged FIT file with no sample before the damage");
    }

    private static void write(OutputStream out, String text) throws IOException {
        out.write(text.getBytes(StandardCharsets.UTF_8));
    }

    private static void writeZeros(OutputStream out, int megabytes) throws IOException {
        byte[] zeros = new byte[MEGABYTE];
        for (int i = 0; i < megabytes; i++) {
            out.write(zeros);
        }
    }
}
