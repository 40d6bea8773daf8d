package io.github.wattledger.cli;

import io.github.wattledger.pacing.Effort;
import io.github.wattledger.pacing.FindingKind;
import io.github.wattledger.plan.SurfaceStretch;
import io.github.wattledger.replay.Adjustment;
import io.github.wattledger.replay.Replay;
import io.github.wattledger.replay.WhatIf;
import io.github.wattledger.rig.Position;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** How the words of the command line become values. */
final class OptionValues {
    private static final Pattern NUMBER = Pattern.compile("[+-]?(\\d+\\.?\\d*|\\.\\d+)");
    private static final Pattern ELAPSED = Pattern.compile("(\\d{1,4}):([0-5]\\d)(?::([0-5]\\d))?");
    private static final Pattern LAPS = Pattern.compile("([1-9]\\d{0,5})(?:-([1-9]\\d{0,5}))?");
    private static final Pattern COUNT = Pattern.compile("0*[1-9]\\d{0,5}");
    private static final Pattern DISTANCE = Pattern.compile("(\\d+\\.?\\d*|\\.\\d+) *(km|mi)");
    private static final Pattern CHANGE = Pattern.compile("([+-]?)(\\d+\\.?\\d*|\\.\\d+)(%?)");
    private static final Pattern SHARE = Pattern.compile("(?:(\\d+\\.?\\d*|\\.\\d+)%-)?(\\d+\\.?\\d*|\\.\\d+)%");

    private OptionValues() {}

    /** A decimal number with a point; no exponent, no unit. */
    static final class PlainNumber implements ITypeConverter<Double> {
        @Override
        public Double convert(String value) {
            return Double.valueOf(
                    matched(NUMBER, value, "expected a number such as 71.5").group());
        }
    }

    /** Elapsed time, {@code H:MM:SS} or {@code H:MM}, as seconds. */
    static final class ElapsedTime implements ITypeConverter<Integer> {
        @Override
        public Integer convert(String value) {
            Matcher parts = matched(ELAPSED, value, "expected H:MM:SS or H:MM, for instance 1:05:00");
            int minutes = 60 * Integer.parseInt(parts.group(1)) + Integer.parseInt(parts.group(2));
            String seconds = parts.group(3);
            return 60 * minutes + (seconds == null ? 0 : Integer.parseInt(seconds));
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
                throw refused(EXPECTED, value);
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

    /** A length with its unit, {@code 160km} or {@code 200mi}, as metres. */
    static final class Distance implements ITypeConverter<Double> {
        private static final double METRES_PER_MILE = 1609.344; // international mile, 1959
        private static final double METRES_PER_KILOMETRE = 1000;

        @Override
        public Double convert(String value) {
            Matcher parts = matched(DISTANCE, value, "expected a distance such as 160km or 200mi");
            double unit = parts.group(2).equals("mi") ? METRES_PER_MILE : METRES_PER_KILOMETRE;
            return Double.parseDouble(parts.group(1)) * unit;
        }
    }

    /** A value ({@code 0.32}), a difference ({@code +10}, {@code -3}) or a share more or less ({@code +5%}). */
    static final class Change implements ITypeConverter<Adjustment> {
        private static final String EXPECTED = "expected a value such as 0.32, or a change such as +10, -3 or +5%";

        @Override
        public Adjustment convert(String value) {
            Matcher parts = matched(CHANGE, value, EXPECTED);
            boolean isSigned = !parts.group(1).isEmpty();
            boolean isPercent = !parts.group(3).isEmpty();
            if (isPercent && !isSigned) {
                throw refused(EXPECTED, value);
            }
            double amount = Double.parseDouble(parts.group(1) + parts.group(2));
            if (isPercent) {
                return Adjustment.times(1 + amount / 100);
            }
            return isSigned ? Adjustment.by(amount) : Adjustment.to(amount);
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
                throw refused(EXPECTED, value);
            }
            return parts.group(1) == null ? WhatIf.Extent.spread(to) : WhatIf.Extent.of(new Replay.Share(from, to));
        }
    }

    /** A part of a course and its rolling resistance, {@code 12-30=0.012}, kilometres. */
    static final class Surface implements ITypeConverter<SurfaceStretch> {
        private static final Pattern SURFACE = Pattern.compile("(\\d+\\.?\\d*)-(\\d+\\.?\\d*)=(\\d*\\.\\d+)");
        private static final double METRES_PER_KILOMETRE = 1000;

        @Override
        public SurfaceStretch convert(String value) {
            Matcher parts =
                    matched(SURFACE, value, "expected kilometres and a rolling resistance such as 12-30.5=0.012");
            try {
                return new SurfaceStretch(
                        METRES_PER_KILOMETRE * Double.parseDouble(parts.group(1)),
                        METRES_PER_KILOMETRE * Double.parseDouble(parts.group(2)),
                        Double.parseDouble(parts.group(3)));
            } catch (IllegalArgumentException e) {
                throw new TypeConversionException(e.getMessage());
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
                throw refused("expected a day such as 2026-08-31", value);
            }
        }
    }

    /** Lets a program and its commands take the words of those options whose value is one of a few. */
    static void registerWords(CommandLine program) {
        registerWords(program, Effort.class);
        registerWords(program, FindingKind.class);
        registerWords(program, InspectionFormat.class);
        registerWords(program, Position.class);
        registerWords(program, ReportFormat.class);
        registerWords(program, SeasonFormat.class);
    }

    private static <E extends Enum<E>> void registerWords(CommandLine program, Class<E> type) {
        program.registerConverter(type, value -> oneOf(type, value));
    }

    /** The constant of a word; its word is its name in lower case, with hyphens between its parts. */
    private static <E extends Enum<E>> E oneOf(Class<E> type, String value) {
        List<String> words = new ArrayList<>();
        for (E each : type.getEnumConstants()) {
            String word = each.name().toLowerCase(Locale.ROOT).replace('_', '-');
            if (word.equals(value)) {
                return each;
            }
            words.add(word);
        }
        int last = words.size() - 1;
        String all = String.join(", ", words.subList(0, last)) + " or " + words.get(last);
        throw refused((words.size() > 4 ? "expected one of " : "expected ") + all, value);
    }

    private static Matcher matched(Pattern pattern, String value, String expected) {
        Matcher matcher = pattern.matcher(value);
        if (!matcher.matches()) {
            throw refused(expected, value);
        }
        return matcher;
    }

    private static TypeConversionException refused(String expected, String value) {
        return new TypeConversionException(expected + ", got '" + value + "'");
    }
}
