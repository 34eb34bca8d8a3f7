package dev.slowpoint.parameters;

import dev.slowpoint.food.Provenance;
import java.util.Collections;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;

/** A file of single values by name, with the columns {@code name,value,unit,mark,source,note}. */
public final class NamedValues {

    private final String file;
    private final SortedMap<String, CsvTable.Row> rows = new TreeMap<>();

    private NamedValues(String file) {
        this.file = file;
    }

    static NamedValues read(ParameterFiles files, String file) {
        NamedValues values = new NamedValues(file);
        for (CsvTable.Row row : files.table(file).rowsUniqueBy("name")) {
            row.text("value");
            row.text("unit");
            row.provenance();
            values.rows.put(row.text("name"), row);
        }
        return values;
    }

    /** The names of all values. */
    public SortedSet<String> names() {
        return Collections.unmodifiableSortedSet(new TreeSet<>(rows.keySet()));
    }

    /**
     * A number.
     *
     * @param name of the value
     * @param unit in which the caller takes it; refused if the file says another one
     */
    public double number(String name, String unit) {
        CsvTable.Row row = row(name);
        if (!row.text("unit").equals(unit)) {
            throw row.fault("unit", "must be '" + unit + "' for " + name + ", but is '" + row.text("unit") + "'");
        }
        return row.number("value");
    }

    /** A word: the id of something that stands in another file. */
    public String id(String name) {
        CsvTable.Row row = row(name);
        if (!row.text("unit").equals("id")) {
            throw row.fault("unit", "must be 'id' for " + name + ", but is '" + row.text("unit") + "'");
        }
        return row.text("value");
    }

    /** Where a value comes from. */
    public Provenance origin(String name) {
        return row(name).provenance();
    }

    /** A complaint about a value. */
    IllegalArgumentException fault(String name, String what) {
        return row(name).fault("value", what);
    }

    private CsvTable.Row row(String name) {
        CsvTable.Row row = rows.get(name);
        if (row == null) {
            throw new IllegalArgumentException(
                    file + " has no value named '" + name + "'. Maybe one of " + rows.keySet() + "?");
        }
        return row;
    }
}
