package io.github.wattledger.cli;

import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** The forms in which a season can be asked for. */
enum SeasonFormat {
    TEXT,
    JSON,
    HTML;

    /** By its word. */
    static final class Word implements ITypeConverter<SeasonFormat> {
        @Override
        public SeasonFormat convert(String value) {
            return switch (value) {
                case "text" -> TEXT;
                case "json" -> JSON;
                case "html" -> HTML;
                default -> throw new TypeConversionException("expected text, json or html, got '" + value + "'");
            };
        }
    }
}
