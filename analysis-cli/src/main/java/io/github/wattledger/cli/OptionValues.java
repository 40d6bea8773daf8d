package io.github.wattledger.cli;

import io.github.wattledger.pacing.Effort;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** How the words of the command line become values. Without regular expressions, which would cost start-up time. */
final class OptionValues {
    private static final int MOST_DIGITS = 6; // 999,999 laps or hours, and no overflow

    private OptionValues() {}

    /** A decimal number with a point; no exponent, no unit. */
    static final class PlainNumber implements ITypeConverter<Double> {
        @Override
        public Double convert(String value) {
            String unsigned = value.startsWith("-") || value.startsWith("+") ? value.substring(1) : value;
            int point = unsigned.indexOf('.');
            String digits = point < 0 ? unsigned : unsigned.substring(0, point) + unsigned.substring(point + 1);
            if (!isDigits(digits)) {
                throw new TypeConversionException("expected a number such as 71.5, got '" + value + "'");
            }
            return Double.valueOf(value);
        }
    }

    /** Elapsed time, {@code H:MM:SS} or {@code H:MM}, as seconds. */
    static final class ElapsedTime implements ITypeConverter<Integer> {
        @Override
        public Integer convert(String value) {
            int first = value.indexOf(':');
            int second = value.indexOf(':', first + 1);
            int minutesEnd = second < 0 ? value.length() : second;
            boolean wellFormed = first > 0
                    && isWhole(value.substring(0, first))
                    && isSixty(value.substring(first + 1, minutesEnd))
                    && (second < 0 || isSixty(value.substring(second + 1)));
            int hours = wellFormed ? Integer.parseInt(value.substring(0, first)) : -1;
            if (hours < 0 || hours > 9999) {
                throw new TypeConversionException(
                        "expected H:MM:SS or H:MM, for instance 1:05:00, got '" + value + "'");
            }
            int minutes = Integer.parseInt(value.substring(first + 1, minutesEnd));
            int seconds = second < 0 ? 0 : Integer.parseInt(value.substring(second + 1));
            return (hours * 60 + minutes) * 60 + seconds;
        }

        private static boolean isSixty(String text) {
            return text.length() == 2 && isDigits(text) && text.charAt(0) < '6';
        }
    }

    /** One lap or a range of laps. */
    static final class Laps implements ITypeConverter<LapRange> {
        @Override
        public LapRange convert(String value) {
            int dash = value.indexOf('-');
            String first = dash < 0 ? value : value.substring(0, dash);
            String last = dash < 0 ? value : value.substring(dash + 1);
            if (isWhole(first) && isWhole(last)) {
                LapRange laps = new LapRange(Integer.parseInt(first), Integer.parseInt(last));
                if (laps.first() >= 1 && laps.last() >= laps.first()) {
                    return laps;
                }
            }
            throw new TypeConversionException(
                    "expected a lap such as 3 or a range such as 3-7, counted from 1, got '" + value + "'");
        }
    }

    /** The number of a session, counted from 1, as an index. */
    static final class SessionNumber implements ITypeConverter<Integer> {
        @Override
        public Integer convert(String value) {
            int number = isWhole(value) ? Integer.parseInt(value) : 0;
            if (number < 1) {
                throw new TypeConversionException("expected a number from 1, got '" + value + "'");
            }
            return number - 1;
        }
    }

    /** Whether the ride is judged as a race. */
    static final class EffortWord implements ITypeConverter<Effort> {
        @Override
        public Effort convert(String value) {
            return switch (value) {
                case "auto" -> Effort.AUTO;
                case "race" -> Effort.RACE;
                case "training" -> Effort.TRAINING;
                default -> throw new TypeConversionException("expected auto, race or training, got '" + value + "'");
            };
        }
    }

    /** The form of the report. */
    static final class FormatWord implements ITypeConverter<ReportFormat> {
        @Override
        public ReportFormat convert(String value) {
            return switch (value) {
                case "text" -> ReportFormat.TEXT;
                case "json" -> ReportFormat.JSON;
                case "csv" -> ReportFormat.CSV;
                case "html" -> ReportFormat.HTML;
                default -> throw new TypeConversionException("expected text, json, csv or html, got '" + value + "'");
            };
        }
    }

    /** The form of an inspection. */
    static final class InspectionFormatWord implements ITypeConverter<InspectionFormat> {
        @Override
        public InspectionFormat convert(String value) {
            return switch (value) {
                case "text" -> InspectionFormat.TEXT;
                case "json" -> InspectionFormat.JSON;
                default -> throw new TypeConversionException("expected text or json, got '" + value + "'");
            };
        }
    }

    private static boolean isWhole(String text) {
        return text.length() <= MOST_DIGITS && isDigits(text);
    }

    private static boolean isDigits(String text) {
        for (int i = 0; i < text.length(); i++) {
            if (text.charAt(i) < '0' || text.charAt(i) > '9') {
                return false;
            }
        }
        return !text.isEmpty();
    }
}
