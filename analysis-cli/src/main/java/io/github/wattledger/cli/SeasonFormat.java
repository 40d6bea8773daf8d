package io.github.wattledger.cli;

import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** The forms in which a season can be asked for. */
enum SeasonFormat {
    TEXT,
    JSON;

    /** By its word. */
    static final class Word implements ITypeConverter<SeasonFormat> {
        @Override
        public SeasonFormat convert(String value) {
            return switch (value) {
                case "text" -> TEXT;
                case "json" -> JSON;
                default -> throw new TypeConversionException("expected text or json, got '" + value + "'");
            };
        }
    }
}
