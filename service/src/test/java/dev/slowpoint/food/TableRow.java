package dev.slowpoint.food;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import tools.jackson.dataformat.csv.CsvMapper;
import tools.jackson.dataformat.csv.CsvSchema;

/** A row of a table of published values; prints as its first cells. */
record TableRow(Map<String, String> cells) {

    static List<TableRow> of(String file) {
        try (InputStream in = TableRow.class.getResourceAsStream("/food/" + file)) {
            return CsvMapper.builder()
                    .build()
                    .readerForMapOf(String.class)
                    .with(CsvSchema.emptySchema().withHeader())
                    .<Map<String, String>>readValues(Objects.requireNonNull(in, file))
                    .readAll()
                    .stream()
                    .map(TableRow::new)
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    String text(String column) {
        return Objects.requireNonNull(cells.get(column), column);
    }

    double number(String column) {
        return Double.parseDouble(text(column));
    }

    /** A composition in percent, of a table that counts fibre within the carbohydrate. */
    Composition composition() {
        double fibre = number("fibre_pct");
        return Composition.normalised(
                number("water_pct"),
                number("protein_pct"),
                number("fat_pct"),
                number("carbohydrate_with_fibre_pct") - fibre,
                fibre,
                number("ash_pct"));
    }

    @Override
    public String toString() {
        return String.join(" ", cells.values().stream().limit(3).toList());
    }
}
