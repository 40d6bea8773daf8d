package io.github.wattledger.table;

/** Whether the table library is there: it is an optional dependency. */
final class TableLibrary {
    private TableLibrary() {}

    /**
     * Returns where tables can be made.
     *
     * @throws IllegalStateException when the library is not on the class path; the message says what to add
     */
    static void require() {
        try {
            Class.forName("tech.tablesaw.api.Table", false, TableLibrary.class.getClassLoader());
        } catch (ClassNotFoundException e) {
            throw new IllegalStateException(
                    "a table needs the library Tablesaw, which is not on the class path; add"
                            + " tech.tablesaw:tablesaw-core and io.github.classgraph:classgraph to the dependencies of the"
                            + " program; a season can be written with SeasonCsv, which does without them",
                    e);
        }
    }
}
