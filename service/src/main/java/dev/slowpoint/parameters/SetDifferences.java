package dev.slowpoint.parameters;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * What differs between two parameter sets, cell by cell. Rows are told apart by the fewest leading columns that name each
 * of them once in both sets; their order does not matter. Cells are compared as text, so that 1.0 and 1.00 differ.
 */
public final class SetDifferences {

    /** What happened to a row, from the older set to the newer one. */
    public enum Change {
        ADDED,
        REMOVED,
        CHANGED
    }

    /**
     * One cell that changed, or one row that came or went.
     *
     * @param table file it stands in
     * @param change what happened
     * @param key cells that name the row, joined by {@code /}
     * @param column of the cell; empty for a whole row
     * @param before text of the cell; empty where there was none
     * @param after text of the cell; empty where there is none
     * @param source of the row, in the newer set where it has the row; empty where the table names none
     */
    public record Difference(
            String table,
            Change change,
            String key,
            Optional<String> column,
            Optional<String> before,
            Optional<String> after,
            Optional<String> source) {}

    /**
     * How many rows of a table differ.
     *
     * @param table file
     * @param added rows that only the newer set has
     * @param removed rows that only the older set has
     * @param changed rows that both have, with other cells; none of the three where only the writing differs
     */
    public record Count(String table, int added, int removed, int changed) {}

    private static final String SOURCE = "source";

    private final List<Count> counts = new ArrayList<>();
    private final List<Difference> differences = new ArrayList<>();

    private SetDifferences(ParameterFiles before, ParameterFiles after) {
        SortedSet<String> names = new TreeSet<>(before.names());
        names.addAll(after.names());
        for (String name : names) {
            if (!before.names().contains(name)
                    || !after.names().contains(name)
                    || !Arrays.equals(before.bytes(name), after.bytes(name))) {
                compare(name, rows(before, name), rows(after, name));
            }
        }
    }

    /** What differs in a newer set from an older one. */
    public static SetDifferences between(ParameterFiles before, ParameterFiles after) {
        return new SetDifferences(before, after);
    }

    /** The tables whose files differ, in the order of their names. */
    public List<Count> counts() {
        return List.copyOf(counts);
    }

    /** All differences, by table; in each table those of the newer set in its order, then the rows that are gone. */
    public List<Difference> all() {
        return List.copyOf(differences);
    }

    private static List<Map<String, String>> rows(ParameterFiles files, String name) {
        return files.names().contains(name)
                ? files.table(name).rows().stream().map(CsvTable.Row::cells).toList()
                : List.of();
    }

    private void compare(String table, List<Map<String, String>> before, List<Map<String, String>> after) {
        List<String> key = key(before, after);
        Map<String, Map<String, String>> known = named(before, key);
        int added = 0;
        int changed = 0;
        for (Map.Entry<String, Map<String, String>> row : named(after, key).entrySet()) {
            Map<String, String> old = known.remove(row.getKey());
            if (old == null) {
                differences.add(row(table, Change.ADDED, row.getKey(), row.getValue()));
                added++;
            } else {
                changed += cells(table, row.getKey(), old, row.getValue()) ? 1 : 0;
            }
        }
        known.forEach((name, row) -> differences.add(row(table, Change.REMOVED, name, row)));
        counts.add(new Count(table, added, known.size(), changed));
    }

    private static Difference row(String table, Change change, String key, Map<String, String> row) {
        return new Difference(
                table, change, key, Optional.empty(), Optional.empty(), Optional.empty(), cell(row, SOURCE));
    }

    private boolean cells(String table, String key, Map<String, String> before, Map<String, String> after) {
        Set<String> columns = new LinkedHashSet<>(after.keySet());
        columns.addAll(before.keySet());
        boolean differ = false;
        for (String column : columns) {
            Optional<String> old = cell(before, column);
            Optional<String> now = cell(after, column);
            if (!old.equals(now)) {
                differences.add(
                        new Difference(table, Change.CHANGED, key, Optional.of(column), old, now, cell(after, SOURCE)));
                differ = true;
            }
        }
        return differ;
    }

    private static Optional<String> cell(Map<String, String> row, String column) {
        return Optional.ofNullable(row.get(column)).map(String::strip).filter(text -> !text.isEmpty());
    }

    /** The fewest leading columns that name each row once, on both sides; all that both have where none do. */
    private static List<String> key(List<Map<String, String>> before, List<Map<String, String>> after) {
        List<String> columns = new ArrayList<>(columns(after.isEmpty() ? before : after));
        if (!before.isEmpty()) {
            columns.retainAll(columns(before));
        }
        for (int size = 1; size < columns.size(); size++) {
            List<String> leading = columns.subList(0, size);
            if (unique(before, leading) && unique(after, leading)) {
                return leading;
            }
        }
        return columns;
    }

    private static Set<String> columns(List<Map<String, String>> rows) {
        return rows.isEmpty() ? Set.of() : rows.get(0).keySet();
    }

    private static boolean unique(List<Map<String, String>> rows, List<String> columns) {
        Set<String> seen = new HashSet<>();
        return rows.stream().allMatch(row -> seen.add(name(row, columns)));
    }

    private static String name(Map<String, String> row, List<String> columns) {
        return columns.stream().map(column -> cell(row, column).orElse("")).collect(Collectors.joining("/"));
    }

    /** The rows by their names; those that share all their cells are numbered. */
    private static Map<String, Map<String, String>> named(List<Map<String, String>> rows, List<String> key) {
        Map<String, Map<String, String>> named = new LinkedHashMap<>();
        for (Map<String, String> row : rows) {
            String name = name(row, key);
            String unique = name;
            for (int number = 2; named.containsKey(unique); number++) {
                unique = name + " #" + number;
            }
            named.put(unique, row);
        }
        return named;
    }
}
