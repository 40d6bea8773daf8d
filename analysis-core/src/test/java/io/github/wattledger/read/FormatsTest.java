package io.github.wattledger.read;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.wattledger.cancel.CancelledException;
import io.github.wattledger.read.UnreadableRideException.Reason;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Recording;
import io.github.wattledger.ride.Samples;
import java.io.IOException;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.FutureTask;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Which formats are known does not depend on the thread that happens to read. */
class FormatsTest {
    private static final Path FIT = Path.of("..", "sample-rides", "even-paced.fit");
    private static final String NOTCHES = "NOTCHES 231 240\n";

    @TempDir
    Path folder;

    /** An invented format that no file of the class path registers. */
    public static final class Notches implements RideFormat {
        /** Found by {@link java.util.ServiceLoader} where a test registers it. */
        public Notches() {}

        @Override
        public String name() {
            return "Notches";
        }

        @Override
        public boolean recognizes(byte[] content) {
            return new String(content, StandardCharsets.UTF_8).startsWith("NOTCHES ");
        }

        @Override
        public ReadResult read(byte[] content, ReadRequest request) {
            Samples.Builder samples = Samples.builder();
            samples.at(0).set(Channel.POWER, 231);
            return new ReadResult(name(), List.of(Recording.of(samples.build())), List.of());
        }
    }

    @Test
    void aLoaderThatDoesNotSeeTheLibraryHidesNoFormat() throws Exception {
        try (URLClassLoader foreign = new URLClassLoader(new URL[0], ClassLoader.getPlatformClassLoader())) {
            assertThat(on(foreign, FormatsTest::formatOfAFitFile)).isEqualTo("FIT");
        }
    }

    @Test
    void noLoaderAtAllHidesNoFormat() throws Exception {
        assertThat(on(null, FormatsTest::formatOfAFitFile)).isEqualTo("FIT");
    }

    @Test
    void aLoaderWithACopyOfTheLibraryOfItsOwnHidesNoFormat() throws Exception {
        // Its formats are no formats of this copy; asking it for them would end in a ServiceConfigurationError.
        URL[] library = {
            RideFormat.class.getProtectionDomain().getCodeSource().getLocation(),
            registering(folder, "io.github.wattledger.read.FormatsTest$Notches")
        };
        try (URLClassLoader copy = new URLClassLoader(library, ClassLoader.getPlatformClassLoader())) {
            assertThat(copy.loadClass(RideFormat.class.getName())).isNotEqualTo(RideFormat.class);
            assertThat(on(copy, FormatsTest::formatOfAFitFile)).isEqualTo("FIT");
        }
    }

    @Test
    void aFormatThatTheContextLoaderSeesIsKnown() throws Exception {
        URL[] registered = {registering(folder, "io.github.wattledger.read.FormatsTest$Notches")};
        try (URLClassLoader host = new URLClassLoader(registered, FormatsTest.class.getClassLoader())) {
            assertThat(on(host, () -> read(ReadOptions.DEFAULT).format())).isEqualTo("Notches");
            assertThat(on(host, FormatsTest::formatOfAFitFile)).isEqualTo("FIT");
        }
    }

    @Test
    void aFormatThatIsGivenNeedsNoRegistration() throws UnreadableRideException {
        assertThatThrownBy(() -> read(ReadOptions.DEFAULT))
                .isInstanceOfSatisfying(
                        UnreadableRideException.class,
                        e -> assertThat(e.reason()).isEqualTo(Reason.UNKNOWN_FORMAT));
        ReadResult result = read(ReadOptions.DEFAULT.withFormats(List.of(new Notches())));
        assertThat(result.format()).isEqualTo("Notches");
        assertThat(result.recordings()).hasSize(1);
    }

    /** A reader that fails, each time in another way. */
    private static RideFormat failing(Function<ReadRequest, ReadResult> reading, BooleanSupplier recognizing) {
        return new RideFormat() {
            @Override
            public String name() {
                return "failing";
            }

            @Override
            public boolean recognizes(byte[] content) {
                return recognizing.getAsBoolean();
            }

            @Override
            public ReadResult read(byte[] content, ReadRequest request) {
                return reading.apply(request);
            }
        };
    }

    @Test
    void aReaderThatFailsMakesItsFileUnreadable() {
        RuntimeException failure = new IndexOutOfBoundsException("notch 7\nof 6");
        RideFormat format = failing(
                request -> {
                    throw failure;
                },
                () -> true);
        assertThatThrownBy(() -> read(ReadOptions.DEFAULT.withFormats(List.of(format))))
                .isInstanceOfSatisfying(
                        UnreadableRideException.class,
                        e -> assertThat(e.reason()).isEqualTo(Reason.READER_FAILED))
                .hasMessage(
                        "ride: could not be read: the reader without a name in FormatsTest, which is not the library's"
                                + " own, failed (java.lang.IndexOutOfBoundsException: notch 7); tell whoever wrote it")
                .hasRootCause(failure);
    }

    @Test
    void aReaderThatLacksALibraryOrReturnsNothingMakesItsFileUnreadable() {
        for (RideFormat format : List.of(
                failing(
                        request -> {
                            throw new NoClassDefFoundError("notches/Decoder");
                        },
                        () -> true),
                failing(request -> nothing(), () -> true))) {
            assertThatThrownBy(() -> read(ReadOptions.DEFAULT.withFormats(List.of(format))))
                    .isInstanceOfSatisfying(
                            UnreadableRideException.class,
                            e -> assertThat(e.reason()).isEqualTo(Reason.READER_FAILED));
        }
    }

    @SuppressWarnings("NullAway") // what a careless reader does
    private static ReadResult nothing() {
        return null;
    }

    @Test
    void aReaderThatCannotSayWhatItRecognizesKeepsNoOtherFromTheFile() throws UnreadableRideException {
        RideFormat format = failing(
                request -> {
                    throw new AssertionError();
                },
                () -> {
                    throw new IllegalStateException();
                });
        assertThat(read(ReadOptions.DEFAULT.withFormats(List.of(format, new Notches())))
                        .format())
                .isEqualTo("Notches");
    }

    @Test
    void aCancellationIsNoFailureOfTheReader() {
        RideFormat format = failing(
                request -> {
                    Thread.currentThread().interrupt();
                    request.cancellation().check();
                    return nothing();
                },
                () -> true);
        try {
            assertThatThrownBy(() -> read(ReadOptions.DEFAULT.withFormats(List.of(format))))
                    .isInstanceOf(CancelledException.class);
        } finally {
            Thread.interrupted();
        }
    }

    private static ReadResult read(ReadOptions options) throws UnreadableRideException {
        return RideFiles.read(RideInput.of(NOTCHES.getBytes(StandardCharsets.UTF_8), "ride"), options);
    }

    private static String formatOfAFitFile() throws UnreadableRideException {
        return RideFiles.read(FIT).format();
    }

    /** A folder that registers a format, as a jar does. */
    private static URL registering(Path folder, String format) throws IOException {
        Path services = Files.createDirectories(folder.resolve("META-INF/services"));
        Files.writeString(services.resolve(RideFormat.class.getName()), format + "\n");
        return folder.toUri().toURL();
    }

    /** What is done on a thread with this context class loader. */
    private static <T> T on(@Nullable ClassLoader loader, Callable<T> work) throws Exception {
        FutureTask<T> task = new FutureTask<>(work);
        Thread thread = new Thread(task);
        thread.setContextClassLoader(loader);
        thread.start();
        return task.get();
    }
}
