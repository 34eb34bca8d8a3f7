package dev.slowpoint.parameters;

import dev.slowpoint.food.Mark;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Where the values of a parameter set come from, for people to read: each row of its files that names a source, and the
 * rows of an overlay behind those of the file that they are added to.
 *
 * @param overlay what the overlay says of itself; empty where there is none
 * @param tables the files that the manifest names, in its order
 */
public record Sources(Optional<Head> overlay, List<Table> tables) {

    private static final String MARK = "mark";
    private static final String SOURCE = "source";
    private static final String NOTE = "note";
    private static final String NAME = "name";
    private static final String UNIT = "unit";

    /** Copies the list. */
    public Sources {
        tables = List.copyOf(tables);
    }

    /**
     * What an overlay says of itself.
     *
     * @param name how it calls itself
     * @param base version of the set that it is for
     * @param note what it is for; may be empty
     */
    public record Head(String name, String base, String note) {}

    /**
     * One file.
     *
     * @param file its name
     * @param what it holds, in the words of the manifest
     * @param rows how many rows it has, with or without a source
     * @param entries what has a source, in the order of the file; empty if no row has one of its own
     */
    public record Table(String file, String what, int rows, List<Entry> entries) {

        /** Copies the list. */
        public Table {
            entries = List.copyOf(entries);
        }
    }

    /**
     * Values of one row that share a mark and a source.
     *
     * @param item what they are values of: the cells that tell the row from others, and its name
     * @param values the cells, in the order of the file; none where the row does no more than name something
     * @param mark how they are known
     * @param source author, year and table, or what they were fitted to
     * @param note what the file adds, told once for each row; may be empty
     * @param own whether an overlay added the row
     */
    public record Entry(String item, List<Cell> values, Mark mark, String source, String note, boolean own) {

        /** Copies the list. */
        public Entry {
            values = List.copyOf(values);
        }
    }

    /**
     * One cell.
     *
     * @param column its column
     * @param text what stands in it, as in the file
     */
    public record Cell(String column, String text) {}

    /** Reads them from files that were checked. */
    static Sources of(ParameterFiles files) {
        List<Table> tables = new ArrayList<>();
        for (CsvTable.Row row : CsvTable.read(ParameterFiles.MANIFEST, files.bytes(ParameterFiles.MANIFEST))
                .rows()) {
            String file = row.text("file");
            List<CsvTable.Row> rows = files.table(file).rows();
            tables.add(new Table(file, row.text("what"), rows.size(), entries(rows)));
        }
        return new Sources(head(files), tables);
    }

    private static Optional<Head> head(ParameterFiles files) {
        String file = Overlay.FOLDER + Overlay.HEAD;
        if (!files.names().contains(file)) {
            return Optional.empty();
        }
        CsvTable.Row row = files.table(file).rows().get(0);
        return Optional.of(new Head(
                row.text(NAME), row.text("base"), row.optionalText(NOTE).orElse("")));
    }

    private static List<Entry> entries(List<CsvTable.Row> rows) {
        List<Entry> entries = new ArrayList<>();
        if (rows.isEmpty() || !rows.get(0).cells().containsKey(SOURCE)) {
            return entries;
        }
        List<String> columns = List.copyOf(rows.get(0).cells().keySet());
        List<String> key = key(rows, columns);
        // A part of a row with a mark of its own: freezing_mark is that of all columns that begin with freezing_.
        List<String> parts = columns.stream()
                .filter(column -> column.endsWith("_" + MARK))
                .map(column -> column.substring(0, column.length() - MARK.length()))
                .toList();
        List<String> whole = columns.stream()
                .filter(column -> !key.contains(column)
                        && !Set.of(MARK, SOURCE, NOTE, NAME).contains(column)
                        && parts.stream().noneMatch(column::startsWith))
                .toList();
        for (CsvTable.Row row : rows) {
            String item = item(row, key);
            entries.add(entry(row, item, whole, ""));
            for (String part : parts) {
                List<String> own = columns.stream()
                        .filter(column ->
                                column.startsWith(part) && !column.equals(part + MARK) && !column.equals(part + SOURCE))
                        .toList();
                // Where there is no value, nothing is marked.
                if (own.stream().anyMatch(column -> row.optionalText(column).isPresent())) {
                    String name = part.substring(0, part.length() - 1);
                    entries.add(entry(row, item + ": " + name, own, part));
                }
            }
        }
        return entries;
    }

    private static Entry entry(CsvTable.Row row, String item, List<String> columns, String part) {
        List<Cell> cells = new ArrayList<>();
        for (String column : columns) {
            row.optionalText(column).ifPresent(text -> cells.add(new Cell(column, text)));
        }
        return new Entry(
                item,
                cells,
                row.word(Mark.class, part + MARK),
                row.text(part + SOURCE),
                part.isEmpty() && row.cells().containsKey(NOTE)
                        ? row.optionalText(NOTE).orElse("")
                        : "",
                row.file().startsWith(Overlay.FOLDER));
    }

    private static String item(CsvTable.Row row, List<String> key) {
        String item =
                key.stream().map(column -> row.optionalText(column).orElse("-")).collect(Collectors.joining(" / "));
        return row.cells().containsKey(NAME) && !key.contains(NAME) ? item + ", " + row.text(NAME) : item;
    }

    /** The fewest leading columns that tell all rows apart; no unit, which would not help people to. */
    private static List<String> key(List<CsvTable.Row> rows, List<String> columns) {
        int size = 1;
        while (size < columns.size() && !columns.get(size).equals(UNIT) && !unique(rows, columns.subList(0, size))) {
            size++;
        }
        return columns.subList(0, size);
    }

    private static boolean unique(List<CsvTable.Row> rows, List<String> columns) {
        Set<List<String>> seen = new HashSet<>();
        return rows.stream()
                .allMatch(row -> seen.add(columns.stream()
                        .map(column -> row.optionalText(column).orElse(""))
                        .toList()));
    }
}
