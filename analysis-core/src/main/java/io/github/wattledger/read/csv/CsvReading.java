package io.github.wattledger.read.csv;

import io.github.wattledger.read.ReadNote;
import io.github.wattledger.read.ReadRequest;
import io.github.wattledger.read.ReadResult;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.read.UnreadableRideException.Reason;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.OptionalLong;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.jspecify.annotations.Nullable;

/** Reads one table, row by row. */
final class CsvReading {
    private static final int MOST_CELLS_NAMED = 5;

    private final ReadRequest request;
    private final List<ReadNote> notes = new ArrayList<>();
    private final List<String> badCells = new ArrayList<>();
    private int badCellCount;
    private int rowsWithoutTime;
    private long linesBefore;

    CsvReading(ReadRequest request) {
        this.request = request;
    }

    ReadResult read(CsvText text, String format) throws UnreadableRideException {
        linesBefore = text.linesBefore();
        CSVFormat csv = CSVFormat.DEFAULT
                .builder()
                .setDelimiter(text.delimiter())
                .setIgnoreSurroundingSpaces(true)
                .setIgnoreEmptyLines(true)
                .setLenientEof(true)
                .setTrailingData(true)
                .get();
        try (CSVParser parser = csv.parse(text.reader())) {
            Iterator<CSVRecord> rows = parser.iterator();
            CsvTable table = null;
            if (rows.hasNext()) {
                table = readRows(parser, rows);
            }
            if (table == null || table.size() == 0) {
                throw new UnreadableRideException(Reason.NOT_A_RECORDING, whyEmpty(table));
            }
            return new ReadResult(format, List.of(table.recording(notes)), notes);
        } catch (IOException | UncheckedIOException e) {
            throw new UnreadableRideException(
                    Reason.DAMAGED,
                    "is a table that cannot be taken apart into cells; export it again as comma-separated values",
                    e);
        }
    }

    private CsvTable readRows(CSVParser parser, Iterator<CSVRecord> rows) throws UnreadableRideException {
        List<String> headers =
                Arrays.stream(rows.next().values()).map(String::strip).toList();
        CsvHeader header = CsvHeader.of(headers, request.csvColumns(), notes);
        CsvClock clock = new CsvClock(header.header(header.timeIndex()).toLowerCase(Locale.ROOT));
        CsvTable table = new CsvTable(header.stateIndex() >= 0, header.lapIndex() >= 0);
        while (rows.hasNext()) {
            request.cancellation().check();
            CSVRecord row = rows.next();
            String cell = cell(row, header.timeIndex());
            OptionalLong time = clock.seconds(cell);
            if (time.isEmpty()) {
                rowsWithoutTime++;
                noteBadCell(parser, header.header(header.timeIndex()), cell);
                continue;
            }
            if (table.size() >= request.limits().maximumSamples()) {
                throw new UnreadableRideException(
                        Reason.TOO_LARGE,
                        String.format(
                                Locale.ROOT,
                                "holds more than %,d samples, the most that is read; split it first",
                                request.limits().maximumSamples()));
            }
            table.begin(time.getAsLong());
            for (CsvColumn column : header.columns()) {
                readCell(parser, row, column, table);
            }
            if (header.stateIndex() >= 0 && !table.setState(cell(row, header.stateIndex()))) {
                noteBadCell(parser, header.header(header.stateIndex()), cell(row, header.stateIndex()));
            }
            if (header.lapIndex() >= 0) {
                table.setLap(cell(row, header.lapIndex()));
            }
        }
        noteTimes(clock);
        noteBadCells();
        return table;
    }

    private void readCell(CSVParser parser, CSVRecord row, CsvColumn column, CsvTable table) {
        String cell = cell(row, column.index());
        if (cell.isEmpty()) {
            return;
        }
        double number = CsvNumber.parse(cell);
        double value = column.value(number);
        // A balance that does not say whose it is can be read and yet says nothing.
        if (Double.isNaN(value) && (Double.isNaN(number) || !column.isBalanceByte())) {
            noteBadCell(parser, column.header(), cell);
        }
        table.set(column.channel(), value);
    }

    private static String cell(CSVRecord row, int index) {
        return index < row.size() ? row.get(index).strip() : "";
    }

    private void noteBadCell(CSVParser parser, String header, String cell) {
        badCellCount++;
        if (badCells.size() < MOST_CELLS_NAMED) {
            badCells.add("line " + (parser.getCurrentLineNumber() + linesBefore) + ", column \""
                    + CsvText.printable(header) + "\": \"" + CsvText.printable(cell) + "\"");
        }
    }

    private void noteBadCells() {
        if (badCellCount == 0) {
            return;
        }
        String more = badCellCount > badCells.size()
                ? String.format(Locale.ROOT, "; and %,d more", badCellCount - badCells.size())
                : "";
        notes.add(new ReadNote(
                "bad-cells",
                String.format(
                        Locale.ROOT,
                        "%,d %s could not be read and %s missing: %s%s.",
                        badCellCount,
                        badCellCount == 1 ? "cell" : "cells",
                        badCellCount == 1 ? "is" : "are",
                        String.join("; ", badCells),
                        more)));
        if (rowsWithoutTime > 0) {
            notes.add(new ReadNote(
                    "rows-without-time",
                    String.format(Locale.ROOT, "%,d rows without a readable time were left out.", rowsWithoutTime)));
        }
    }

    private void noteTimes(CsvClock clock) {
        if (clock.kind() == CsvClock.Kind.LOCAL) {
            notes.add(new ReadNote("time-without-zone", "The times say no zone; they were taken as UTC."));
        } else if (clock.kind() == CsvClock.Kind.ELAPSED) {
            notes.add(new ReadNote(
                    "no-date",
                    "The times count from the start: neither the day nor the hour of the ride is known. Where a time"
                            + " must stand, as in a table of the seconds, it counts from 1970."));
        }
    }

    private String whyEmpty(@Nullable CsvTable table) {
        if (table == null) {
            return "is a table without a header";
        }
        return rowsWithoutTime == 0
                ? "is a table with a header and no row; nothing was recorded in it"
                : "is a table in which no row has a readable time: " + badCells.get(0);
    }
}
