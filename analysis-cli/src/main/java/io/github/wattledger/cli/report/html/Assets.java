package io.github.wattledger.cli.report.html;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Base64;

/** Scripts and styles that are copied into a page, and the policy that allows these and nothing else. */
final class Assets {
    private static final String CHARTS = "/META-INF/resources/webjars/uplot/1.6.30/";

    private Assets() {}

    static String own(String name) {
        return read(name);
    }

    static String chartScript() {
        return read(CHARTS + "dist/uPlot.iife.min.js");
    }

    static String chartStyle() {
        return read(CHARTS + "dist/uPlot.min.css");
    }

    static String chartLicence() {
        return read(CHARTS + "LICENSE");
    }

    /**
     * The policy of a page: it may run these scripts and use this style, and may load nothing at all.
     *
     * @param style the text of the style element
     * @param scripts the texts of the script elements
     */
    static String policy(String style, String... scripts) {
        StringBuilder policy = new StringBuilder("default-src 'none'; base-uri 'none'; form-action 'none'; style-src ");
        policy.append(digest(style));
        if (scripts.length > 0) {
            policy.append("; script-src");
            for (String script : scripts) {
                policy.append(' ').append(digest(script));
            }
        }
        return policy.toString();
    }

    private static String digest(String text) {
        try {
            byte[] hash = MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
            return "'sha256-" + Base64.getEncoder().encodeToString(hash) + "'";
        } catch (NoSuchAlgorithmException e) {
            throw new AssertionError("every Java platform has SHA-256", e);
        }
    }

    private static String read(String name) {
        try (InputStream in = Assets.class.getResourceAsStream(name)) {
            if (in == null) {
                throw new AssertionError("not on the class path: " + name);
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8).replace("\r\n", "\n");
        } catch (IOException e) {
            throw new UncheckedIOException(name, e);
        }
    }
}
