package dev.slowpoint.parameters;

import dev.slowpoint.food.Mark;
import dev.slowpoint.food.Provenance;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import tools.jackson.core.JacksonException;
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

    /** What spreadsheets put before the text; no part of the first column's name. */
    private static final String BYTE_ORDER_MARK = "\uFEFF";

    private final String file;
    private final List<Row> rows;

    private CsvTable(String file, List<Row> rows) {
        this.file = file;
        this.rows = rows;
    }

    /** Reads a table whose first line names the columns; UTF-8, comma separated, quoted where needed. */
    static CsvTable read(String file, byte[] bytes) {
        List<Row> rows = new ArrayList<>();
        try (MappingIterator<Map<String, String>> lines = MAPPER.readerForMapOf(String.class)
                .with(CsvSchema.emptySchema().withHeader())
                .readValues(text(file, bytes))) {
            while (lines.hasNext()) {
                rows.add(new Row(file, rows.size() + 2, lines.next()));
            }
        } catch (JacksonException e) {
            throw new IllegalArgumentException(
                    file + " line " + (rows.size() + 2) + ": cannot be read as a row, " + e.getOriginalMessage(), e);
        }
        return new CsvTable(file, rows);
    }

    /** This table and the rows of another one with the same columns, which keep the name of their file. */
    CsvTable with(CsvTable more) {
        List<Row> all = new ArrayList<>(rows);
        Set<String> columns = rows.isEmpty() ? Set.of() : rows.get(0).cells().keySet();
        for (Row row : more.rows) {
            for (String column : row.cells().keySet()) {
                if (!columns.contains(column)) {
                    throw row.fault(column, "is no column of " + file + ", whose columns are " + columns);
                }
            }
            all.add(row);
        }
        return new CsvTable(file, all);
    }

    private static String text(String file, byte[] bytes) {
        try {
            String text = StandardCharsets.UTF_8
                    .newDecoder()
                    .onMalformedInput(CodingErrorAction.REPORT)
                    .decode(ByteBuffer.wrap(bytes))
                    .toString();
            return text.startsWith(BYTE_ORDER_MARK) ? text.substring(BYTE_ORDER_MARK.length()) : text;
        } catch (CharacterCodingException e) {
            throw new IllegalArgumentException(
                    file + " is not text in UTF-8. Maybe a spreadsheet saved it in another encoding?", e);
        }
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
            return word(words, column, text(column));
        }

        /** The constants of an enumeration that a cell names, joined by {@code |}; at least one. */
        <E extends Enum<E>> Set<E> wordSet(Class<E> words, String column) {
            text(column);
            Set<E> set = EnumSet.noneOf(words);
            for (String word : words(column)) {
                set.add(word(words, column, word));
            }
            return set;
        }

        private <E extends Enum<E>> E word(Class<E> words, String column, String word) {
            try {
                return Enum.valueOf(words, word.replace('-', '_').toUpperCase(Locale.ROOT));
            } catch (IllegalArgumentException e) {
                throw fault(column, "holds '" + word + "', which is none of " + List.of(words.getEnumConstants()));
            }
        }

        /** The words of a cell that are joined by {@code |}; none if it is empty. */
        List<String> words(String column) {
            Optional<String> cell = optionalText(column);
            if (cell.isEmpty()) {
                return List.of();
            }
            List<String> words = new ArrayList<>();
            for (String word : cell.get().split("\\|", -1)) {
                if (word.isBlank() || words.contains(word.strip())) {
                    throw fault(column, "holds '" + cell.get() + "', with an empty word or one that stands twice");
                }
                words.add(word.strip());
            }
            return words;
        }

        /** Whether a cell says {@code yes} or {@code no}. */
        boolean yes(String column) {
            return switch (text(column)) {
                case "yes" -> true;
                case "no" -> false;
                default -> throw fault(column, "holds '" + text(column) + "', which is neither yes nor no");
            };
        }

        /** The columns {@code mark} and {@code source}. */
        Provenance provenance() {
            return provenance("mark", "source");
        }

        /** A mark and a source from two columns. */
        Provenance provenance(String markColumn, String sourceColumn) {
            return new Provenance(word(Mark.class, markColumn), text(sourceColumn));
        }

        /** A complaint about a cell. */
        IllegalArgumentException fault(String column, String what) {
            return new IllegalArgumentException(file + " line " + line + ", column " + column + ": " + what);
        }
    }
}
