package io.github.wattledger.read;

import java.util.ArrayList;
import java.util.List;
import java.util.ServiceLoader;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** The known formats, those from outside this library first, so that one of them may also replace one of ours. */
final class Formats {
    private static final String OURS = Formats.class.getPackageName() + ".";

    private final List<RideFormat> formats;

    Formats() {
        List<RideFormat> ours = new ArrayList<>();
        List<RideFormat> all = new ArrayList<>();
        for (RideFormat format : ServiceLoader.load(RideFormat.class)) {
            (format.getClass().getPackageName().startsWith(OURS) ? ours : all).add(format);
        }
        all.addAll(ours);
        formats = List.copyOf(all);
    }

    /** The first format that recognizes the content, or null. */
    @Nullable RideFormat of(byte[] content) {
        for (RideFormat format : formats) {
            if (format.recognizes(content)) {
                return format;
            }
        }
        return null;
    }

    /** How the files of all formats end. */
    Set<String> fileEndings() {
        Set<String> endings = new TreeSet<>();
        formats.forEach(format -> endings.addAll(format.fileEndings()));
        return endings;
    }

    /** The names, for messages. */
    String names() {
        return formats.stream().map(RideFormat::name).collect(Collectors.joining(", "));
    }
}
