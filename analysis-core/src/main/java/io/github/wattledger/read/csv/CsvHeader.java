package io.github.wattledger.read.csv;

import io.github.wattledger.read.CsvColumns;
import io.github.wattledger.read.ReadNote;
import io.github.wattledger.read.Spelling;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.read.UnreadableRideException.Reason;
import io.github.wattledger.ride.Channel;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Finds the columns of a table by their headers: a name, with or without a unit. */
final class CsvHeader {
    /** {@code Speed (km/h)} or {@code Speed [km/h]}: the unit stands in brackets. */
    private static final Pattern WITH_UNIT = Pattern.compile("(.*?)[(\\[]([^)\\]]*)[)\\]]\\s*");

    private static final int LONGEST_LIST = 300;
    private static final String BALANCE_BYTE = "left_right_balance";

    /** A field of the public FIT profile, which is in metres per second. */
    private static final String FIT_SPEED = "enhanced_speed";

    private static final List<String> TIME_NAMES = List.of(
            "time",
            "timestamp",
            "date_time",
            "datetime",
            "utc_time",
            "elapsed",
            "elapsed_time",
            "seconds",
            "secs",
            "sec");

    /** For each channel the names it goes by, the better one first. */
    private static final Map<Channel, List<String>> NAMES = Map.ofEntries(
            Map.entry(Channel.POWER, List.of("power", "watts", "pwr")),
            Map.entry(Channel.HEART_RATE, List.of("heart_rate", "heartrate", "hr", "pulse")),
            Map.entry(Channel.CADENCE, List.of("cadence", "cad")),
            Map.entry(Channel.SPEED, List.of(FIT_SPEED, "speed", "velocity")),
            Map.entry(Channel.DISTANCE, List.of("distance", "dist", "km")),
            Map.entry(Channel.ALTITUDE, List.of("enhanced_altitude", "altitude", "elevation", "ele", "alt")),
            Map.entry(Channel.LATITUDE, List.of("latitude", "position_lat", "lat")),
            Map.entry(Channel.LONGITUDE, List.of("longitude", "position_long", "lon", "lng", "long")),
            Map.entry(Channel.TEMPERATURE, List.of("temperature", "temp")),
            Map.entry(Channel.LEFT_SHARE, List.of("left_share", BALANCE_BYTE)),
            Map.entry(Channel.ACCUMULATED_WORK, List.of("accumulated_work", "accumulated_power")),
            Map.entry(
                    Channel.RESPIRATION,
                    List.of("respiration", "enhanced_respiration_rate", "respiration_rate", "respiratory")),
            Map.entry(Channel.FRONT_TEETH, List.of("front_teeth")),
            Map.entry(Channel.REAR_TEETH, List.of("rear_teeth")));

    private static final Pattern NO_WORD = Pattern.compile("[^a-z0-9]+");
    private static final Pattern UNDERSCORE_AT_AN_END = Pattern.compile("^_|_$");

    private final List<String> headers;

    /** Taken apart once: a table may have a quarter of a million columns, and each channel looks through them. */
    private final List<String> baseNames = new ArrayList<>();

    private final List<@Nullable String> unitNames = new ArrayList<>();
    private final CsvColumns given;
    private final List<ReadNote> notes;
    private final List<CsvColumn> columns = new ArrayList<>();
    private final int timeIndex;
    private final int stateIndex;
    private final int lapIndex;

    private CsvHeader(List<String> headers, CsvColumns given, List<ReadNote> notes) {
        this.headers = headers;
        this.given = given;
        this.notes = notes;
        for (String header : headers) {
            baseNames.add(baseName(header));
            unitNames.add(unitName(header));
        }
        timeIndex = indexOfNamed("time", TIME_NAMES);
        stateIndex = indexOfNamed("state", List.of("state"));
        lapIndex = indexOfNamed("lap", List.of("lap"));
        for (Channel channel : Channel.values()) {
            CsvColumn column = column(channel);
            if (column != null) {
                columns.add(column);
            }
        }
    }

    static CsvHeader of(List<String> headers, CsvColumns given, List<ReadNote> notes) throws UnreadableRideException {
        CsvHeader header = new CsvHeader(headers, given, notes);
        for (Map.Entry<String, String> column : given.headers().entrySet()) {
            if (header.indexOf(column.getValue()) < 0) {
                throw new UnreadableRideException(
                        Reason.NO_SUCH_COLUMN, header.lacks(column.getKey(), column.getValue()));
            }
        }
        if (header.timeIndex() < 0) {
            throw new UnreadableRideException(
                    Reason.NOT_A_RECORDING,
                    "is a table without a time: no column is called time, timestamp or elapsed; name the right one with"
                            + " --column time=HEADER; its columns are " + header.listed());
        }
        if (header.columns.isEmpty()) {
            throw new UnreadableRideException(
                    Reason.NOT_A_RECORDING,
                    "is a table with a time, but no column for power, heart rate, speed or position; name the right one"
                            + " with, for instance, --column power=HEADER; its columns are " + header.listed());
        }
        return header;
    }

    private String lacks(String name, String wanted) {
        String meant = Spelling.nearest(wanted, headers);
        return "has no column \"" + wanted + "\" for the " + name
                + (meant == null ? "" : " (did you mean \"" + shortened(meant) + "\"?)") + "; its columns are "
                + listed();
    }

    /** The columns of channels, in the channels' order. */
    List<CsvColumn> columns() {
        return columns;
    }

    /** The column of the time. */
    int timeIndex() {
        return timeIndex;
    }

    /** The column that says what happened in a second, or -1. */
    int stateIndex() {
        return stateIndex;
    }

    /** The column of the lap, or -1. */
    int lapIndex() {
        return lapIndex;
    }

    String header(int index) {
        return headers.get(index);
    }

    private int indexOfNamed(String name, List<String> names) {
        String header = given.headers().get(name);
        return header != null ? indexOf(header) : indexOfAny(names);
    }

    private int indexOfAny(List<String> names) {
        for (String name : names) {
            String inSeconds = name + "_s";
            for (int i = 0; i < headers.size(); i++) {
                String base = baseNames.get(i);
                if (base.equals(name) || base.equals(inSeconds)) {
                    return i;
                }
            }
        }
        return -1;
    }

    /** The column of exactly this header, but for case and surrounding blanks; or -1. */
    private int indexOf(String header) {
        for (int i = 0; i < headers.size(); i++) {
            if (headers.get(i).equalsIgnoreCase(header.strip())) {
                return i;
            }
        }
        return -1;
    }

    private @Nullable CsvColumn column(Channel channel) {
        String header = given.headers().get(channel.name().toLowerCase(Locale.ROOT));
        if (header != null) {
            int index = indexOf(header);
            return index < 0 ? null : givenColumn(channel, index);
        }
        for (String name : NAMES.getOrDefault(channel, List.of())) {
            for (int i = 0; i < headers.size(); i++) {
                CsvColumn column = namedColumn(channel, name, i);
                if (column != null) {
                    return column;
                }
            }
        }
        return null;
    }

    private CsvColumn givenColumn(Channel channel, int index) {
        String header = headers.get(index);
        String unitName = unitNames.get(index);
        CsvUnit unit = unitName == null ? unitAtEnd(channel, baseNames.get(index)) : CsvUnit.named(channel, unitName);
        if (unit == null) {
            notes.add(new ReadNote(
                    "unit-assumed",
                    "The column \"" + shortened(header) + "\" names no known unit; taken as " + unitOf(channel) + "."));
            unit = CsvUnit.SAME;
        }
        return column(channel, index, unit);
    }

    private @Nullable CsvColumn namedColumn(Channel channel, String name, int index) {
        String base = baseNames.get(index);
        if (!base.startsWith(name)) {
            return null;
        }
        String header = headers.get(index);
        String unitName = unitNames.get(index);
        if (unitName == null && base.startsWith(name + "_")) {
            CsvUnit unit = CsvUnit.named(channel, base.substring(name.length() + 1));
            return unit == null ? null : column(channel, index, unit);
        }
        if (!base.equals(name)) {
            return null;
        }
        if (unitName != null) {
            CsvUnit unit = CsvUnit.named(channel, unitName);
            if (unit == null) {
                notes.add(new ReadNote(
                        "unit-unknown",
                        "The column \"" + shortened(header) + "\" has a unit that is not known for " + channel.label()
                                + "; it was left out."));
                return null;
            }
            return column(channel, index, unit);
        }
        if (name.equals("km")) {
            return column(channel, index, new CsvUnit(1000, 0, 1));
        }
        if (channel == Channel.SPEED && !name.equals(FIT_SPEED)) {
            notes.add(new ReadNote(
                    "unit-assumed",
                    "The column \"" + shortened(header) + "\" names no unit; taken as " + unitOf(channel) + "."));
        }
        return column(channel, index, CsvUnit.SAME);
    }

    private CsvColumn column(Channel channel, int index, CsvUnit unit) {
        String header = headers.get(index);
        boolean balanceByte =
                channel == Channel.LEFT_SHARE && baseNames.get(index).equals(BALANCE_BYTE);
        return new CsvColumn(channel, index, shortened(header), unit, balanceByte);
    }

    private static @Nullable CsvUnit unitAtEnd(Channel channel, String base) {
        for (int cut = base.indexOf('_'); cut >= 0; cut = base.indexOf('_', cut + 1)) {
            CsvUnit unit = CsvUnit.named(channel, base.substring(cut + 1));
            if (unit != null) {
                return unit;
            }
        }
        return null;
    }

    private static String unitOf(Channel channel) {
        return channel.unit().isEmpty() ? "a plain number" : channel.unit();
    }

    /** The unit in a header's brackets, or null. */
    private static @Nullable String unitName(String header) {
        Matcher matcher = WITH_UNIT.matcher(header);
        return matcher.matches() ? words(matcher.group(2).replace("%", "percent")) : null;
    }

    /** A header's name without the unit in brackets: lower-case words with underscores between. */
    static String baseName(String header) {
        Matcher matcher = WITH_UNIT.matcher(header);
        return words(matcher.matches() ? matcher.group(1) : header);
    }

    private static String words(String text) {
        String joined = NO_WORD.matcher(text.toLowerCase(Locale.ROOT)).replaceAll("_");
        return UNDERSCORE_AT_AN_END.matcher(joined).replaceAll("");
    }

    private static String shortened(String header) {
        return CsvText.printable(header);
    }

    private String listed() {
        String all =
                headers.stream().limit(LONGEST_LIST).map(CsvHeader::shortened).collect(Collectors.joining(", "));
        return all.length() > LONGEST_LIST ? all.substring(0, LONGEST_LIST) + " ..." : all;
    }
}
