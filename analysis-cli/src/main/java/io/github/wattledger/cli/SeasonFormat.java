package io.github.wattledger.cli;

/** The forms in which a season or a comparison can be asked for. */
enum SeasonFormat {
    TEXT,
    JSON,
    HTML
}
