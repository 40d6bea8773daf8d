package io.github.wattledger.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Input that is no ride: one line on standard error, status 3, nothing on standard output. */
class UnreadableInputTest {
    @TempDir
    Path folder = Path.of("");

    private void assertRefused(Path input, String because) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int status = Main.run(
                new String[] {"review", input.toString()},
                new PrintStream(out, true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8));
        assertThat(out.size()).isZero();
        assertThat(err.toString(StandardCharsets.UTF_8).lines().toList())
                .singleElement()
                .asString()
                .contains(input.toString(), because);
        assertThat(status).isEqualTo(ExitStatus.UNREADABLE_INPUT.code());
    }

    private Path file(byte[] content) throws IOException {
        return Files.write(folder.resolve("ride.fit"), content);
    }

    @Test
    void aWrongPath() {
        assertRefused(folder.resolve("nowhere.fit"), "there is no such file; check the path");
    }

    @Test
    void aFolder() {
        assertRefused(
                folder, "is a folder; name one file in it; 'wattledger season " + folder + "' reviews all rides in it");
    }

    @Test
    void aTextFileNamedFit() throws IOException {
        assertRefused(file("Dear coach,\nhere is my ride.\n".getBytes(StandardCharsets.UTF_8)), "not a recording");
    }

    @Test
    void zeroBytes() throws IOException {
        assertRefused(file(new byte[0]), "is empty (0 bytes); copy it from the device again");
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void randomBytes(long seed) throws IOException {
        byte[] content = new byte[20_000];
        new Random(seed).nextBytes(content);
        assertRefused(file(content), "not a recording");
    }

    @Test
    void aFitHeaderAndThenRandomBytes() throws IOException {
        byte[] content = new byte[20_000];
        new Random(4).nextBytes(content);
        byte[] header = {14, 0x20, (byte) 0x8B, 8, 0x10, 0x4E, 0, 0, '.', 'F', 'I', 'T', 0, 0};
        System.arraycopy(header, 0, content, 0, header.length);
        assertRefused(file(content), "ride.fit");
    }

    @Test
    void noReadPermission() throws IOException {
        Path secret = file(new byte[] {1, 2, 3});
        Files.setPosixFilePermissions(secret, PosixFilePermissions.fromString("---------"));
        assumeFalse(Files.isReadable(secret), "this user may read everything: nothing to test");
        assertRefused(secret, "no permission to read it; check its owner and mode");
    }
}
