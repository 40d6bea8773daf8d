package io.github.wattledger.cli;

/** The forms in which an inspection can be asked for. */
enum InspectionFormat {
    TEXT,
    JSON
}
