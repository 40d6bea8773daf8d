package io.github.wattledger.read;

import io.github.wattledger.ride.Channel;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * Which columns of a CSV file to take for what, where their names alone do not say so.
 *
 * @param headers from what is wanted, one of {@link #names()}, to the column's header in the file, for instance from
 *     {@code power} to {@code Pwr (W)}
 */
public record CsvColumns(Map<String, String> headers) implements Serializable {
    /** No column is named: all are found by their headers. */
    public static final CsvColumns BY_NAME = new CsvColumns(Map.of());

    /** @throws IllegalArgumentException when something is wanted that no CSV file is read for */
    public CsvColumns {
        Map<String, String> copy = new LinkedHashMap<>();
        headers.forEach((name, header) -> {
            if (!names().contains(name)) {
                throw new IllegalArgumentException(
                        "column \"" + name + "\", expected one of " + String.join(", ", names()));
            }
            copy.put(name, header);
        });
        headers = java.util.Collections.unmodifiableMap(copy);
    }

    /** All that a column can be taken for: {@code time}, {@code state}, {@code lap}, and each channel's name. */
    public static List<String> names() {
        List<String> names = new ArrayList<>(List.of("time", "state", "lap"));
        for (Channel channel : Channel.values()) {
            names.add(channel.name().toLowerCase(Locale.ROOT));
        }
        return List.copyOf(names);
    }
}
