package dev.slowpoint.kit;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import tools.jackson.core.type.TypeReference;
import tools.jackson.databind.MappingIterator;
import tools.jackson.dataformat.csv.CsvMapper;
import tools.jackson.dataformat.csv.CsvSchema;

/**
 * One thing that a server has to do to keep the contract.
 *
 * @param id its name, which never changes and is never used again
 * @param layer the group of tests it belongs to
 * @param level whether a server must or should
 * @param untestable why no test can show it; empty where one does
 * @param text the requirement in one sentence
 * @param source what it rests on
 */
public record Requirement(
        String id, String layer, Level level, Optional<String> untestable, String text, String source) {

    /** How much depends on it (RFC 2119). */
    public enum Level {
        MUST,
        SHOULD
    }

    private static final String FILE = "/contract/requirements.csv";

    /** All of them, by id, in the order of the file. */
    public static final Map<String, Requirement> ALL = read();

    /** Those that the words name: layers, levels or ids. */
    static Set<String> named(List<String> words) {
        Set<String> named = new TreeSet<>();
        for (String word : words) {
            List<String> ids = ALL.values().stream()
                    .filter(requirement -> requirement.answersTo(word))
                    .map(Requirement::id)
                    .toList();
            if (ids.isEmpty()) {
                throw new IllegalArgumentException(word + " is no layer, level or id of a requirement");
            }
            named.addAll(ids);
        }
        return named;
    }

    private boolean answersTo(String word) {
        return word.equalsIgnoreCase(id) || word.equalsIgnoreCase(layer) || word.equalsIgnoreCase(level.name());
    }

    private static Map<String, Requirement> read() {
        Map<String, Requirement> all = new LinkedHashMap<>();
        try (InputStream in = Objects.requireNonNull(Requirement.class.getResourceAsStream(FILE), FILE);
                MappingIterator<Map<String, String>> rows = new CsvMapper()
                        .readerFor(new TypeReference<Map<String, String>>() {})
                        .with(CsvSchema.emptySchema().withHeader())
                        .readValues(in)) {
            while (rows.hasNext()) {
                Requirement requirement = of(rows.next());
                if (all.put(requirement.id, requirement) != null) {
                    throw new IllegalStateException(requirement.id + " is there twice");
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return Collections.unmodifiableMap(all);
    }

    private static Requirement of(Map<String, String> row) {
        return new Requirement(
                cell(row, "id"),
                cell(row, "layer"),
                Level.valueOf(cell(row, "level").toUpperCase(Locale.ROOT)),
                Optional.of(cell(row, "untestable")).filter(reason -> !reason.isEmpty()),
                cell(row, "text"),
                cell(row, "source"));
    }

    private static String cell(Map<String, String> row, String column) {
        return Objects.requireNonNull(row.get(column), () -> FILE + " has no " + column + " in " + row);
    }
}
