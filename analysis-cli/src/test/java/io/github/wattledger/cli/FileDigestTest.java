package io.github.wattledger.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The commands whose JSON names the SHA-256 (FIPS 180-4) of the file; the platform's own digest is the judge. */
class FileDigestTest {
    private static final String FILE = "../sample-rides/even-paced.fit";

    @ParameterizedTest
    @ValueSource(strings = {"review " + FILE, "what-if " + FILE + " --with-power +10", "compare " + FILE + " " + FILE})
    void jsonNamesIt(String words) throws IOException, NoSuchAlgorithmException {
        byte[] digest = MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(Path.of(FILE)));
        String json = Outcome.of((words + " --format json").split(" ")).out();
        assertThat(json.replace(" ", ""))
                .contains("\"sha256\":\"" + HexFormat.of().formatHex(digest) + "\"");
    }
}
