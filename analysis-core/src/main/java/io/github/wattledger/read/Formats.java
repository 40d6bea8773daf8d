package io.github.wattledger.read;

import io.github.wattledger.read.csv.CsvFormat;
import io.github.wattledger.read.fit.FitFormat;
import io.github.wattledger.read.gpx.GpxFormat;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.ServiceLoader;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** The known formats, those from outside this library first, so that one of them may also replace one of ours. */
final class Formats {
    private final List<RideFormat> formats;

    /**
     * The formats to ask, in this order: those that the caller gave, those from outside that are registered, our own. A
     * program with several class loaders may run us on a thread whose context class loader does not see this library, or
     * that has none; our own formats do not depend on it.
     *
     * @param given formats that the caller handed over
     */
    Formats(List<RideFormat> given) {
        List<RideFormat> all = new ArrayList<>();
        given.forEach(format -> all.add(new ForeignFormat(format)));
        registered().forEach(format -> all.add(new ForeignFormat(format)));
        all.add(new FitFormat());
        all.add(new GpxFormat());
        all.add(new CsvFormat());
        formats = List.copyOf(all);
    }

    /** Formats registered where this library lies, and in addition where the thread's context class loader looks. */
    private static Collection<RideFormat> registered() {
        Map<Class<?>, RideFormat> found = new LinkedHashMap<>();
        List<ClassLoader> loaders = new ArrayList<>();
        loaders.add(Thread.currentThread().getContextClassLoader());
        loaders.add(Formats.class.getClassLoader());
        for (ClassLoader loader : loaders) {
            if (loader != null && seesThisLibrary(loader)) {
                for (RideFormat format : ServiceLoader.load(RideFormat.class, loader)) {
                    found.putIfAbsent(format.getClass(), format);
                }
            }
        }
        return found.values();
    }

    /** Whether a format that the loader finds is one of ours, and not of another copy of this library. */
    private static boolean seesThisLibrary(ClassLoader loader) {
        try {
            return loader.loadClass(RideFormat.class.getName()) == RideFormat.class;
        } catch (ClassNotFoundException e) {
            return false;
        }
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
