package io.github.wattledger.cli;

import io.github.wattledger.pacing.Effort;
import io.github.wattledger.pacing.FindingKind;
import io.github.wattledger.replay.Adjustment;
import io.github.wattledger.replay.Replay;
import io.github.wattledger.replay.WhatIf;
import io.github.wattledger.rig.Position;
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
            if (!isNumber(unsigned)) {
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

    /** A kind of finding. */
    static final class FindingWord implements ITypeConverter<FindingKind> {
        @Override
        public FindingKind convert(String value) {
            StringBuilder kinds = new StringBuilder();
            for (FindingKind kind : FindingKind.values()) {
                if (kind.id().equals(value)) {
                    return kind;
                }
                kinds.append(kinds.length() == 0 ? "" : ", ").append(kind.id());
            }
            throw new TypeConversionException("expected one of " + kinds + ", got '" + value + "'");
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

    /** A length with its unit, {@code 160km} or {@code 200mi}, as metres. */
    static final class Distance implements ITypeConverter<Double> {
        private static final double METRES_PER_MILE = 1609.344; // international mile, 1959
        private static final double METRES_PER_KILOMETRE = 1000;

        @Override
        public Double convert(String value) {
            double unit = value.endsWith("mi") ? METRES_PER_MILE : value.endsWith("km") ? METRES_PER_KILOMETRE : 0;
            String number =
                    unit == 0 ? "" : value.substring(0, value.length() - 2).strip();
            if (!isNumber(number)) {
                throw new TypeConversionException("expected a distance such as 160km or 200mi, got '" + value + "'");
            }
            return Double.parseDouble(number) * unit;
        }
    }

    /** A value ({@code 0.32}), a difference ({@code +10}, {@code -3}) or a share more or less ({@code +5%}). */
    static final class Change implements ITypeConverter<Adjustment> {
        @Override
        public Adjustment convert(String value) {
            boolean isSigned = value.startsWith("+") || value.startsWith("-");
            boolean isPercent = value.endsWith("%");
            String number =
                    value.substring(isSigned ? 1 : 0, Math.max(isSigned ? 1 : 0, value.length() - (isPercent ? 1 : 0)));
            if (!isNumber(number) || (isPercent && !isSigned)) {
                throw new TypeConversionException(
                        "expected a value such as 0.32, or a change such as +10, -3 or +5%, got '" + value + "'");
            }
            double amount = Double.parseDouble(number) * (value.startsWith("-") ? -1 : 1);
            if (isPercent) {
                return Adjustment.times(1 + amount / 100);
            }
            return isSigned ? Adjustment.by(amount) : Adjustment.to(amount);
        }
    }

    /** So much of the distance ({@code 25%}) or a part of it ({@code 75%-100%}). */
    static final class ShareOfDistance implements ITypeConverter<WhatIf.Extent> {
        @Override
        public WhatIf.Extent convert(String value) {
            int dash = value.indexOf('-');
            double from = dash < 0 ? 0 : fraction(value.substring(0, dash));
            double to = fraction(value.substring(dash + 1));
            if (!(from >= 0 && from < to && to <= 1)) {
                throw new TypeConversionException(
                        "expected a share of the distance such as 25%, or a part such as 75%-100%, got '" + value
                                + "'");
            }
            return dash < 0 ? WhatIf.Extent.spread(to) : WhatIf.Extent.of(new Replay.Share(from, to));
        }

        private static double fraction(String text) {
            String number = text.endsWith("%") ? text.substring(0, text.length() - 1) : "";
            return isNumber(number) ? Double.parseDouble(number) / 100 : Double.NaN;
        }
    }

    /** How a rider sits. */
    static final class PositionWord implements ITypeConverter<Position> {
        @Override
        public Position convert(String value) {
            for (Position position : Position.values()) {
                if (position.id().equals(value)) {
                    return position;
                }
            }
            throw new TypeConversionException("expected hoods, drops or aero-bars, got '" + value + "'");
        }
    }

    /** Digits with at most one point. */
    private static boolean isNumber(String text) {
        int point = text.indexOf('.');
        return isDigits(point < 0 ? text : text.substring(0, point) + text.substring(point + 1));
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
