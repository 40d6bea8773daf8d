package io.github.wattledger.season;

import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;

/** Reads the table {@code file}. */
final class FileRows {
    /** By the order of the paths, and not by the index of another column. */
    private static final String TABLE = " FROM file NOT INDEXED";

    private final StoreDatabase database;
    private final UntilChanged<Checked> all;

    FileRows(StoreDatabase database) {
        this.database = database;
        this.all = new UntilChanged<>(database, this::read);
    }

    /**
     * Files that were held against their check sums.
     *
     * @param sound those that are as they were written
     * @param areDamaged whether there are others
     */
    record Checked(List<FileRow> sound, boolean areDamaged) {
        Checked {
            sound = List.copyOf(sound);
        }
    }

    /** Every file. */
    Checked all() throws SQLException {
        return all.get();
    }

    private Checked read() throws SQLException {
        RowSums sums = new RowSums();
        List<FileRow> sound = new ArrayList<>();
        boolean[] areDamaged = {false};
        database.forEach("SELECT *" + TABLE, row -> {
            if (RowSums.isOf(row, sums.of(row))) {
                sound.add(file(row));
            } else {
                areDamaged[0] = true;
            }
        });
        return new Checked(sound, areDamaged[0]);
    }

    /**
     * The paths of files that are not as they were written, within a transaction: as bytes, since a path that was changed need
     * not be text any more.
     */
    List<byte[]> damagedPaths() throws SQLException {
        List<byte[]> paths = new ArrayList<>();
        database.forEach("SELECT CAST(path AS BLOB) AS path" + TABLE, row -> paths.add(row.bytes("path")));
        RowSums sums = new RowSums();
        List<byte[]> damaged = new ArrayList<>();
        int[] place = {0};
        database.forEach("SELECT *" + TABLE, row -> {
            byte[] path = paths.get(place[0]++);
            if (!RowSums.isOf(row, sums.of(row))) {
                damaged.add(path);
            }
        });
        return damaged;
    }

    private static FileRow file(StoreRow row) throws SQLException {
        return new FileRow(
                StoreRow.required(row.text("path")),
                StoreRow.required(row.text("name")),
                StoreRow.required(row.large("size_bytes")),
                StoreRow.required(row.large("modified_ns")),
                StoreRow.required(row.text("sha256")),
                StoreRow.required(row.whole("analysis_version")),
                row.text("problem"),
                StoreRow.required(row.whole("ride_count")));
    }
}
