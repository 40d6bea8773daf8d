package io.github.wattledger.read.fit;

import com.garmin.fit.DeveloperField;
import com.garmin.fit.Mesg;
import com.garmin.fit.RecordMesg;
import io.github.wattledger.read.ReadNote;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Samples;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Power and heart rate that an add-on of the device writes into fields of its own. They are used where the file has no
 * field of the profile for them at all: two meters are not mixed. A field is known by the number of the profile's field
 * that its description names; where it names none, by its name and unit.
 */
final class FitDeveloperFields {
    private static final Set<String> POWER_NAMES = Set.of("power", "watts");
    private static final Set<String> POWER_UNITS = Set.of("w", "watt", "watts");
    private static final Set<String> HEART_RATE_NAMES = Set.of("heart rate", "heart_rate", "heartrate", "hr");
    private static final Set<String> HEART_RATE_UNITS = Set.of("bpm", "beats/min");
    private static final int LONGEST_NAME = 40;

    private final Map<Channel, Column> columns = new EnumMap<>(Channel.class);

    /** Remembers the fields of a record that matter. */
    void accept(Mesg record, int sampleIndex) {
        for (DeveloperField field : record.getDeveloperFields()) {
            Channel channel = channel(field);
            Double value = channel == null ? null : field.getDoubleValue();
            if (channel != null && value != null && Double.isFinite(value) && value >= 0) {
                columns.computeIfAbsent(channel, absent -> new Column(printableName(field)))
                        .add(sampleIndex, value);
            }
        }
    }

    private static @Nullable Channel channel(DeveloperField field) {
        if (!field.isDefined()) {
            return null;
        }
        int replaced = field.getNativeOverride();
        if (replaced == RecordMesg.PowerFieldNum) {
            return Channel.POWER;
        }
        if (replaced == RecordMesg.HeartRateFieldNum) {
            return Channel.HEART_RATE;
        }
        String name = lowerCase(field.getName());
        String units = lowerCase(field.getUnits());
        if (POWER_NAMES.contains(name) && POWER_UNITS.contains(units)) {
            return Channel.POWER;
        }
        return HEART_RATE_NAMES.contains(name) && HEART_RATE_UNITS.contains(units) ? Channel.HEART_RATE : null;
    }

    private static String lowerCase(@Nullable String text) {
        return text == null ? "" : text.strip().toLowerCase(Locale.ROOT);
    }

    private static String printableName(DeveloperField field) {
        String name = field.getName();
        return name == null ? "" : ReadNote.printable(name.strip(), LONGEST_NAME);
    }

    /** The samples with what they lack filled in from here, and a note for each channel that was. */
    Samples complete(Samples samples, List<ReadNote> notes) {
        Map<Channel, Column> wanted = new EnumMap<>(columns);
        wanted.keySet().removeIf(samples::has);
        if (wanted.isEmpty()) {
            return samples;
        }
        Samples.Builder completed = Samples.builder();
        for (int i = 0; i < samples.size(); i++) {
            completed.at(samples.epochSecond(i));
            for (Channel channel : samples.channels()) {
                completed.set(channel, samples.get(channel, i));
            }
            for (Map.Entry<Channel, Column> entry : wanted.entrySet()) {
                completed.set(entry.getKey(), entry.getValue().at(i));
            }
        }
        wanted.forEach((channel, column) -> notes.add(new ReadNote(
                "developer-field",
                "The file has no " + channel.label() + " of its own: it is taken from the developer field \""
                        + column.fieldName + "\".")));
        return completed.build();
    }

    /** A field's values by the index of the sample; read once, in order. */
    private static final class Column {
        private final String fieldName;
        private int[] sampleIndices = new int[256];
        private double[] values = new double[256];
        private int size;
        private int next;

        Column(String fieldName) {
            this.fieldName = fieldName;
        }

        void add(int sampleIndex, double value) {
            if (size == values.length) {
                sampleIndices = java.util.Arrays.copyOf(sampleIndices, size * 2);
                values = java.util.Arrays.copyOf(values, size * 2);
            }
            sampleIndices[size] = sampleIndex;
            values[size++] = value;
        }

        double at(int sampleIndex) {
            double value = Double.NaN;
            while (next < size && sampleIndices[next] <= sampleIndex) {
                if (sampleIndices[next] == sampleIndex) {
                    value = values[next];
                }
                next++;
            }
            return value;
        }
    }
}
