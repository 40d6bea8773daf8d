package io.github.wattledger.cli.profile;

import io.github.wattledger.read.Spelling;
import io.github.wattledger.rider.Bounds;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.tomlj.TomlArray;
import org.tomlj.TomlPosition;
import org.tomlj.TomlTable;

/**
 * One table of a profile. Whatever does not fit goes to the list of problems with its line and counts as absent, so that
 * reading goes on.
 */
final class ProfileTable {
    private static final int MOST_SHOWN = 40;
    private static final Pattern CLOCK = Pattern.compile("(\\d{1,3}):([0-5]\\d)(?::([0-5]\\d))?");

    private final TomlTable table;
    private final String name;
    private final int line;
    private final Problems problems;

    /**
     * A table, whose unknown keys are problems.
     *
     * @param name what stands before its keys in messages, empty for the file itself
     * @param line where it begins
     * @param known the keys it may have
     */
    ProfileTable(TomlTable table, String name, int line, Problems problems, List<String> known) {
        this(table, name, line, problems, known, Map.of());
    }

    /**
     * A table, whose unknown keys are problems.
     *
     * @param elsewhere keys that people write here, and what to write instead
     */
    ProfileTable(
            TomlTable table,
            String name,
            int line,
            Problems problems,
            List<String> known,
            Map<String, String> elsewhere) {
        this.table = table;
        this.name = name;
        this.line = line;
        this.problems = problems;
        for (String key : table.keySet()) {
            if (!known.contains(key)) {
                problem(key, "unknown key; " + hint(key, known, elsewhere));
            }
        }
    }

    private String hint(String key, List<String> known, Map<String, String> elsewhere) {
        String meant = Spelling.nearest(
                key, Stream.concat(known.stream(), elsewhere.keySet().stream()).toList());
        if (meant == null) {
            return "expected one of " + String.join(", ", known);
        }
        String instead = elsewhere.get(meant);
        return instead == null ? "did you mean " + named(meant) + "?" : "write " + instead;
    }

    /** In which line of the file it begins. */
    int line() {
        return line;
    }

    /** A number within bounds, or null when it is absent. */
    @Nullable Double number(String key, Bounds bounds) {
        Object value = value(key);
        if (value == null) {
            return null;
        }
        double number = value instanceof Number any ? any.doubleValue() : Double.NaN;
        if (!bounds.contains(number)) {
            problem(key, "expected a number from " + bounds + ", found " + shown(value));
            return null;
        }
        return number;
    }

    /**
     * A number, or numbers in brackets, each within bounds; empty when they are absent. One that does not fit takes the others
     * with it, since each has its place.
     */
    List<Double> numbers(String key, Bounds bounds) {
        Object value = value(key);
        if (!(value instanceof TomlArray array)) {
            Double number = number(key, bounds);
            return number == null ? List.of() : List.of(number);
        }
        List<Double> numbers = new ArrayList<>();
        for (Object each : array.toList()) {
            double number = each instanceof Number any ? any.doubleValue() : Double.NaN;
            if (!bounds.contains(number)) {
                problem(key, "expected numbers from " + bounds + ", found " + shown(each));
                return List.of();
            }
            numbers.add(number);
        }
        return numbers;
    }

    /** An elapsed time in whole seconds, or null when it is absent. */
    @Nullable Integer second(String key) {
        Object value = value(key);
        if (value == null) {
            return null;
        }
        if (value instanceof LocalTime time) {
            return time.toSecondOfDay();
        }
        Matcher clock = CLOCK.matcher(value instanceof String text ? text.strip() : "");
        if (!clock.matches()) {
            problem(
                    key,
                    "expected a time from the start in quotes, such as \"2:10:00\" or \"2:10\" (hours and minutes),"
                            + " found " + shown(value));
            return null;
        }
        int seconds = clock.group(3) == null ? 0 : Integer.parseInt(clock.group(3));
        return Integer.parseInt(clock.group(1)) * 3600 + Integer.parseInt(clock.group(2)) * 60 + seconds;
    }

    /** A whole number within bounds, or null when it is absent. */
    @Nullable Integer whole(String key, Bounds bounds) {
        Object value = value(key);
        return value == null ? null : whole(key, value, bounds);
    }

    /** Whole numbers within bounds, or null when they are absent. */
    @Nullable List<Integer> wholes(String key, Bounds bounds) {
        Object value = value(key);
        if (value == null) {
            return null;
        }
        if (!(value instanceof TomlArray array) || array.isEmpty()) {
            problem(key, "expected whole numbers in brackets, such as [11, 13, 15], found " + shown(value));
            return null;
        }
        List<Integer> numbers = new ArrayList<>();
        for (int i = 0; i < array.size(); i++) {
            Integer number = whole(key, array.get(i), bounds);
            if (number != null && numbers.contains(number)) {
                problem(key, number + " occurs twice");
            } else if (number != null) {
                numbers.add(number);
            }
        }
        return numbers.size() == array.size() ? numbers : null;
    }

    private @Nullable Integer whole(String key, Object value, Bounds bounds) {
        if (value instanceof Long number && bounds.contains(number)) {
            return Math.toIntExact(number);
        }
        problem(key, "expected a whole number from " + bounds + ", found " + shown(value));
        return null;
    }

    /** A day, or null when it is absent. */
    @Nullable LocalDate day(String key) {
        Object value = value(key);
        if (value == null || value instanceof LocalDate) {
            return (LocalDate) value;
        }
        problem(key, "expected a day such as 2026-03-01, without quotes, found " + shown(value));
        return null;
    }

    /** Days; none when they are absent. */
    Set<LocalDate> days(String key) {
        Object value = value(key);
        Set<LocalDate> days = new HashSet<>();
        if (value == null) {
            return days;
        }
        if (!(value instanceof TomlArray array)) {
            problem(key, "expected days in brackets, such as [2026-05-16, 2026-06-14], found " + shown(value));
            return days;
        }
        for (int i = 0; i < array.size(); i++) {
            if (array.get(i) instanceof LocalDate day) {
                days.add(day);
            } else {
                problem(key, "expected days such as 2026-06-14, without quotes, found " + shown(array.get(i)));
            }
        }
        return days;
    }

    /** A word or more, or null when it is absent. */
    @Nullable String words(String key) {
        Object value = value(key);
        if (value == null) {
            return null;
        }
        if (value instanceof String text && !text.isBlank()) {
            return text;
        }
        problem(key, "expected words in quotes, found " + shown(value));
        return null;
    }

    /** A table within this one, or null when it is absent. */
    @Nullable ProfileTable table(String key, List<String> known) {
        Object value = value(key);
        if (value == null) {
            return null;
        }
        if (value instanceof TomlTable inner) {
            return new ProfileTable(inner, named(key), line(key), problems, known);
        }
        problem(key, "expected a table [" + named(key) + "], found " + shown(value));
        return null;
    }

    /** The tables of an array, or null when it is absent. */
    @Nullable List<ProfileTable> tables(String key, List<String> known) {
        Object value = value(key);
        if (value == null) {
            return null;
        }
        List<ProfileTable> tables = new ArrayList<>();
        if (value instanceof TomlArray array) {
            for (int i = 0; i < array.size(); i++) {
                if (array.get(i) instanceof TomlTable inner) {
                    int at = lineOf(inner, array.inputPositionOf(i));
                    tables.add(new ProfileTable(inner, named(key), at, problems, known));
                }
            }
            if (tables.size() == array.size() && !tables.isEmpty()) {
                return tables;
            }
        }
        problem(key, "expected tables with " + String.join(" and ", known) + ", found " + shown(value));
        return null;
    }

    /**
     * Where an array's table begins. The parser places one in braces at the end of what comes before it, which can be a
     * line too high; its first key is placed rightly. One under a heading in brackets begins in the first column.
     */
    private static int lineOf(TomlTable inner, TomlPosition position) {
        return position.column() == 1 || inner.isEmpty()
                ? position.line()
                : inner.keySet().stream()
                        .mapToInt(key -> inner.inputPositionOf(List.of(key)).line())
                        .min()
                        .orElse(position.line());
    }

    /** Whether a key is there, well or badly written. */
    boolean has(String key) {
        return value(key) != null;
    }

    /** Reports that a key is missing, unless it is there. */
    void require(String key, String expected) {
        if (!has(key)) {
            problem("expected " + key + ", " + expected + "; it is missing");
        }
    }

    /** Reports a problem of one key. */
    void problem(String key, String text) {
        problems.add(line(key), named(key) + ": " + text);
    }

    /** Reports a problem of the table as a whole. */
    void problem(String text) {
        problems.add(line, (name.isEmpty() ? "" : name + ": ") + text);
    }

    private @Nullable Object value(String key) {
        return table.get(List.of(key));
    }

    private int line(String key) {
        return table.contains(List.of(key))
                ? table.inputPositionOf(List.of(key)).line()
                : line;
    }

    private String named(String key) {
        return name.isEmpty() ? key : name + "." + key;
    }

    private static String shown(Object value) {
        if (value instanceof TomlArray) {
            return "a list in brackets";
        }
        if (value instanceof TomlTable) {
            return "a table";
        }
        if (value instanceof Double number && Double.isFinite(number)) {
            return BigDecimal.valueOf(number).stripTrailingZeros().toPlainString();
        }
        String text = value.toString();
        String cut = text.length() <= MOST_SHOWN ? text : text.substring(0, MOST_SHOWN) + "...";
        return value instanceof String ? '"' + cut + '"' : cut;
    }
}
