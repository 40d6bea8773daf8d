package io.github.wattledger.power;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A file of certified numbers: lines that begin with a name, comments that begin with {@code #}. */
record CertifiedFit(String name, List<String> lines) {
    static CertifiedFit read(String file) {
        try (@Nullable InputStream in = CertifiedFit.class.getResourceAsStream("/certified/" + file)) {
            if (in == null) {
                throw new IllegalArgumentException("no certified file " + file);
            }
            String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            return new CertifiedFit(
                    file,
                    text.lines()
                            .filter(line -> !line.startsWith("#") && !line.isBlank())
                            .toList());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The numbers of the first line of that name; none when there is no such line. */
    double[] numbers(String key) {
        List<double[]> all = all(key);
        return all.isEmpty() ? new double[0] : all.get(0);
    }

    List<double[]> all(String key) {
        return lines.stream()
                .filter(line -> line.startsWith(key + " "))
                .map(line -> numbersOf(line.substring(key.length())))
                .toList();
    }

    static double[] numbersOf(String text) {
        return Arrays.stream(text.strip().split("\\s+"))
                .mapToDouble(Double::parseDouble)
                .toArray();
    }
}
