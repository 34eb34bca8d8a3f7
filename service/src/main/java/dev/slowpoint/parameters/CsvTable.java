package dev.slowpoint.parameters;

import dev.slowpoint.food.Mark;
import dev.slowpoint.food.Provenance;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import tools.jackson.databind.MappingIterator;
import tools.jackson.dataformat.csv.CsvMapper;
import tools.jackson.dataformat.csv.CsvReadFeature;
import tools.jackson.dataformat.csv.CsvSchema;

/**
 * A table of a parameter set, as text. Every complaint names the file, the row and the column, because the people who
 * edit these files are food technologists.
 */
final class CsvTable {

    private static final CsvMapper MAPPER =
            CsvMapper.builder().enable(CsvReadFeature.FAIL_ON_MISSING_COLUMNS).build();

    private final List<Row> rows;

    private CsvTable(List<Row> rows) {
        this.rows = rows;
    }

    /** Reads a table whose first line names the columns; UTF-8, comma separated, quoted where needed. */
    static CsvTable read(String file, byte[] bytes) {
        List<Row> rows = new ArrayList<>();
        try (MappingIterator<Map<String, String>> lines = MAPPER.readerForMapOf(String.class)
                .with(CsvSchema.emptySchema().withHeader())
                .readValues(new String(bytes, StandardCharsets.UTF_8))) {
            while (lines.hasNext()) {
                rows.add(new Row(file, rows.size() + 2, lines.next()));
            }
        }
        return new CsvTable(rows);
    }

    /** The rows in the order of the file. */
    List<Row> rows() {
        return rows;
    }

    /** The rows, refused if two share the text of a column. */
    List<Row> rowsUniqueBy(String column) {
        Set<String> seen = new HashSet<>();
        for (Row row : rows) {
            if (!seen.add(row.text(column))) {
                throw row.fault(column, "stands twice");
            }
        }
        return rows;
    }

    /**
     * One row.
     *
     * @param file name of the file
     * @param line number of the row, counting the heading as the first
     * @param cells text by column
     */
    record Row(String file, int line, Map<String, String> cells) {

        /** The text of a cell that must not be empty. */
        String text(String column) {
            return optionalText(column).orElseThrow(() -> fault(column, "must not be empty"));
        }

        /** The text of a cell, if there is one. */
        Optional<String> optionalText(String column) {
            String cell = cells.get(column);
            if (cell == null) {
                throw fault(column, "is no column of this file");
            }
            return cell.isBlank() ? Optional.empty() : Optional.of(cell.strip());
        }

        /** The finite number in a cell that must not be empty. */
        double number(String column) {
            return optionalNumber(column).orElseThrow(() -> fault(column, "must not be empty"));
        }

        /** The finite number in a cell, if there is one. */
        OptionalDouble optionalNumber(String column) {
            Optional<String> cell = optionalText(column);
            if (cell.isEmpty()) {
                return OptionalDouble.empty();
            }
            try {
                double value = Double.parseDouble(cell.get());
                if (Double.isFinite(value)) {
                    return OptionalDouble.of(value);
                }
            } catch (NumberFormatException e) {
                throw fault(column, "holds '" + cell.get() + "', which is no number");
            }
            throw fault(column, "holds '" + cell.get() + "', which is not finite");
        }

        /** The constant of an enumeration that a cell names, in lower or upper case, words joined by - or _. */
        <E extends Enum<E>> E word(Class<E> words, String column) {
            String cell = text(column);
            try {
                return Enum.valueOf(words, cell.replace('-', '_').toUpperCase(Locale.ROOT));
            } catch (IllegalArgumentException e) {
                throw fault(column, "holds '" + cell + "', which is none of " + List.of(words.getEnumConstants()));
            }
        }

        /** The columns {@code mark} and {@code source}. */
        Provenance provenance() {
            return new Provenance(word(Mark.class, "mark"), text("source"));
        }

        /** A complaint about a cell. */
        IllegalArgumentException fault(String column, String what) {
            return new IllegalArgumentException(file + " line " + line + ", column " + column + ": " + what);
        }
    }
}
