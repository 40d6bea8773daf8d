package io.github.wattledger.cli;

import io.github.wattledger.cli.report.words.Units;
import io.github.wattledger.energy.Intake;
import io.github.wattledger.intake.RidePlace;
import io.github.wattledger.plan.SurfaceStretch;
import io.github.wattledger.read.CsvColumns;
import io.github.wattledger.replay.Replay;
import io.github.wattledger.replay.WhatIf;
import io.github.wattledger.rider.Bounds;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/**
 * How the words of the command line become values; {@link NumberOptions} has the numbers with a unit. A refusal says what
 * is expected: {@link UsageMessages} puts the option and what was typed before it.
 */
final class OptionValues {
    private static final double METRES_PER_MILE = 1609.344; // international mile, 1959
    private static final double METRES_PER_KILOMETRE = 1000;
    private static final Bounds ROAD_KM = new Bounds(0.1, 10_000);

    /** {@code 1:30:00} and {@code 1:30}. */
    private static final Pattern CLOCK = Pattern.compile("(\\d{1,4}):([0-5]\\d)(?::([0-5]\\d))?");

    /** {@code 2h30}. */
    private static final Pattern HOURS_MINUTES = Pattern.compile("(?i)(\\d{1,4}) *h *([0-5]\\d|[0-5]?\\d(?= *m)) *m?");

    /** {@code 2h}, {@code 2h 5min 10s}, {@code 90min}. */
    private static final Pattern SPELLED =
            Pattern.compile("(?i)(?=\\d)(?:(\\d{1,4}) *h)? *(?:(\\d{1,6}) *min)? *(?:(\\d{1,6}) *s)?");

    private static final Pattern LAPS = Pattern.compile("([1-9]\\d{0,5})(?:-([1-9]\\d{0,5}))?");
    private static final Pattern COUNT = Pattern.compile("0*[1-9]\\d{0,5}");
    private static final Pattern DISTANCE = Pattern.compile("(?i)(\\d{1,9}\\.?\\d{0,9}|\\.\\d{1,9}) *(km|mi)");
    private static final Pattern SHARE = Pattern.compile("(?:(\\d+\\.?\\d*|\\.\\d+)%-)?(\\d+\\.?\\d*|\\.\\d+)%");

    private static final Pattern PERCENT = Pattern.compile("(\\d{1,3}\\.?\\d{0,6}|\\.\\d{1,6}) *%");

    private static final Pattern SURFACE =
            Pattern.compile("(?i)(\\d{1,5}\\.?\\d{0,3}) *(km|mi)?-(\\d{1,5}\\.?\\d{0,3}) *(km|mi)?=(\\d?\\.\\d{1,9})");
    private static final Pattern GRAMS = Pattern.compile("(?i)(\\d{1,3}(?:\\.\\d{1,3})?) *g?");

    private OptionValues() {}

    /** A place in a recording: elapsed time, or a distance with its unit. */
    static final class Place implements ITypeConverter<RidePlace> {
        @Override
        public RidePlace convert(String value) {
            String typed = value.strip();
            Matcher distance = DISTANCE.matcher(typed);
            if (distance.matches()) {
                return new RidePlace.AtDistance(metres(distance));
            }
            Integer seconds = seconds(typed);
            if (seconds != null) {
                return new RidePlace.AtSecond(seconds);
            }
            throw new TypeConversionException(
                    "expected a time such as 1:30:00 or 2h30, or a distance such as 40km or 25mi");
        }
    }

    /** How long something takes, {@code 7:30} or {@code 45min}, in seconds. */
    static final class Seconds implements ITypeConverter<Integer> {
        @Override
        public Integer convert(String value) {
            Integer seconds = seconds(value.strip());
            if (seconds == null) {
                throw new TypeConversionException("expected a time such as 7:30 (hours and minutes) or 45min");
            }
            return seconds;
        }
    }

    /**
     * A part of a course and its rolling resistance, {@code 12-30=0.012} or {@code 7.5-19mi=0.012}: kilometres where no unit
     * is written; one unit that is written holds for both places.
     */
    static final class Surface implements ITypeConverter<SurfaceStretch> {
        private static RefusedValue refused() {
            return new RefusedValue(units -> "expected two places, the nearer one first, and a rolling resistance,"
                    + " such as " + (units == Units.IMPERIAL ? "7.5-19mi=0.012" : "12-30.5=0.012"));
        }

        @Override
        public SurfaceStretch convert(String value) {
            Matcher parts = SURFACE.matcher(value.strip());
            if (!parts.matches()) {
                throw refused();
            }
            String first = parts.group(2);
            String second = parts.group(4);
            try {
                return new SurfaceStretch(
                        metres(parts.group(1), first == null ? second : first),
                        metres(parts.group(3), second == null ? first : second),
                        Double.parseDouble(parts.group(5)));
            } catch (Bounds.OutOfBoundsException e) {
                throw new TypeConversionException(
                        "rolling resistance: " + Unit.NONE.expected(Bounds.ROLLING_RESISTANCE, Units.METRIC));
            } catch (IllegalArgumentException e) {
                throw refused();
            }
        }
    }

    /** One lap or a range of laps. */
    static final class Laps implements ITypeConverter<LapRange> {
        private static final String EXPECTED = "expected a lap such as 3 or a range such as 3-7, counted from 1";

        @Override
        public LapRange convert(String value) {
            Matcher parts = matched(LAPS, value, EXPECTED);
            int first = Integer.parseInt(parts.group(1));
            int last = parts.group(2) == null ? first : Integer.parseInt(parts.group(2));
            if (last < first) {
                throw new TypeConversionException(EXPECTED);
            }
            return new LapRange(first, last);
        }
    }

    /** The number of a session, counted from 1, as an index. */
    static final class SessionNumber implements ITypeConverter<Integer> {
        @Override
        public Integer convert(String value) {
            return Integer.parseInt(
                            matched(COUNT, value, "expected a number from 1").group())
                    - 1;
        }
    }

    /** The length of a road with its unit, {@code 160km} or {@code 200mi}, as metres. */
    static final class Distance implements ITypeConverter<Double> {
        @Override
        public Double convert(String value) {
            double metres = metres(matched(DISTANCE, value, "expected a distance such as 160km or 200mi"));
            if (!ROAD_KM.contains(metres / METRES_PER_KILOMETRE)) {
                throw new RefusedValue(units -> Unit.KILOMETRE.expected(ROAD_KM, units));
            }
            return metres;
        }
    }

    /** How many rides are reviewed at once. */
    static final class Workers implements ITypeConverter<Integer> {
        private static final int MOST = 1024;
        private static final String EXPECTED = "expected 1 to " + MOST;

        @Override
        public Integer convert(String value) {
            int workers = Integer.parseInt(matched(COUNT, value, EXPECTED).group());
            if (workers > MOST) {
                throw new TypeConversionException(EXPECTED);
            }
            return workers;
        }
    }

    /** A share of the distance ({@code 25%}) or a part of the distance ({@code 75%-100%}). */
    static final class ShareOfDistance implements ITypeConverter<WhatIf.Extent> {
        private static final String EXPECTED =
                "expected a share of the distance such as 25%, or a part such as 75%-100%";

        @Override
        public WhatIf.Extent convert(String value) {
            Matcher parts = matched(SHARE, value, EXPECTED);
            double from = parts.group(1) == null ? 0 : Double.parseDouble(parts.group(1)) / 100;
            double to = Double.parseDouble(parts.group(2)) / 100;
            if (!(from < to && to <= 1)) {
                throw new TypeConversionException(EXPECTED);
            }
            return parts.group(1) == null ? WhatIf.Extent.spread(to) : WhatIf.Extent.of(new Replay.Share(from, to));
        }
    }

    /** A share of something, {@code 40%}, as a fraction from 0 to 1. */
    static final class Share implements ITypeConverter<Double> {
        private static final String EXPECTED = "expected a share from 0% to 100%, for instance 40%";

        @Override
        public Double convert(String value) {
            double share = Double.parseDouble(matched(PERCENT, value, EXPECTED).group(1)) / 100;
            if (share > 1) {
                throw new TypeConversionException(EXPECTED);
            }
            return share;
        }
    }

    /** What was eaten: grams an hour, or grams hour by hour between slashes: a comma could be one of decimals. */
    static final class Eaten implements ITypeConverter<Intake> {
        private static final String EXPECTED = "expected grams of carbohydrate an hour from "
                + (int) Bounds.EATEN_G_PER_HOUR.low() + " to " + (int) Bounds.EATEN_G_PER_HOUR.high()
                + ", for instance 55, or hour by hour as in 60/60/40";

        @Override
        public Intake convert(String value) {
            if (value.contains(",")) {
                throw new TypeConversionException(
                        "write the decimals with a point and the hours with a slash, such as 62.5 or 60/60/40");
            }
            List<Double> grams = new ArrayList<>();
            for (String hour : value.split("/", -1)) {
                grams.add(Double.parseDouble(matched(GRAMS, hour, EXPECTED).group(1)));
            }
            try {
                return new Intake(grams, true);
            } catch (IllegalArgumentException e) {
                throw new TypeConversionException(EXPECTED);
            }
        }
    }

    /** The zone of a clock, for instance {@code Europe/Lisbon}. */
    static final class Zone implements ITypeConverter<ZoneId> {
        @Override
        public ZoneId convert(String value) {
            try {
                return ZoneId.of(value);
            } catch (DateTimeException e) {
                throw new TypeConversionException("no such time zone, expected for instance Europe/Lisbon");
            }
        }
    }

    /** A day, for instance {@code 2026-08-31}. */
    static final class Day implements ITypeConverter<LocalDate> {
        @Override
        public LocalDate convert(String value) {
            try {
                return LocalDate.parse(value);
            } catch (DateTimeException e) {
                throw new TypeConversionException("expected a day such as 2026-08-31");
            }
        }
    }

    /** What {@code --column} can begin with, for the shell's completion. */
    static final class ColumnNames implements Iterable<String> {
        @Override
        public Iterator<String> iterator() {
            return CsvColumns.names().stream().map(name -> name + "=").iterator();
        }
    }

    /** A time in any of its forms as seconds; null where it is none. */
    static @Nullable Integer seconds(String typed) {
        for (Pattern form : List.of(CLOCK, HOURS_MINUTES, SPELLED)) {
            Matcher time = form.matcher(typed);
            if (time.matches()) {
                return seconds(time);
            }
        }
        return null;
    }

    /** The groups are hours, minutes and, where the form has them, seconds. */
    private static int seconds(Matcher time) {
        int seconds = 0;
        int unit = 3600;
        for (int group = 1; group <= time.groupCount(); group++) {
            seconds += time.group(group) == null ? 0 : unit * Integer.parseInt(time.group(group));
            unit /= 60;
        }
        return seconds;
    }

    private static double metres(Matcher distance) {
        return metres(distance.group(1), distance.group(2));
    }

    private static double metres(String number, @Nullable String unit) {
        return Double.parseDouble(number) * ("mi".equalsIgnoreCase(unit) ? METRES_PER_MILE : METRES_PER_KILOMETRE);
    }

    private static Matcher matched(Pattern pattern, String value, String expected) {
        Matcher matcher = pattern.matcher(value.strip());
        if (!matcher.matches()) {
            throw new TypeConversionException(expected);
        }
        return matcher;
    }
}
