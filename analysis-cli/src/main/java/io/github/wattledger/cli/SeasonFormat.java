package io.github.wattledger.cli;

/** The forms in which a season, a comparison or a what-if can be asked for. */
enum SeasonFormat {
    TEXT,
    JSON,
    HTML
}
