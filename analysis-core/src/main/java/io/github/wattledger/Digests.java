package io.github.wattledger;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.concurrent.CompletableFuture;

/** Digests by which a file is known again. */
final class Digests {
    private Digests() {}

    /** {@link #sha256} on a thread of its own, while the caller reads the content: of a cold start, a twentieth. */
    static CompletableFuture<String> besideSha256(byte[] content) {
        return CompletableFuture.supplyAsync(() -> sha256(content), work -> {
            Thread thread = new Thread(work, "wattledger-digest");
            thread.setDaemon(true);
            thread.start();
        });
    }

    /** SHA-256 in lower-case hexadecimal. */
    static String sha256(byte[] content) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(content));
        } catch (NoSuchAlgorithmException e) {
            throw new AssertionError("every Java platform has SHA-256", e);
        }
    }
}
