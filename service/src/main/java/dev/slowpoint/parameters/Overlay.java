package dev.slowpoint.parameters;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.regex.Pattern;

/**
 * Foods and rules of whoever runs the service, beside those of a released set. It adds rows and never changes one: all its
 * ids begin with {@value #PREFIX}, so that nothing published is replaced unseen and no later set can clash with it.
 *
 * <p>An overlay is a folder of files with the columns of the released ones. {@value #HEAD} names it and the set that it is
 * for.
 */
public final class Overlay {

    /** How every id of an overlay begins. */
    public static final String PREFIX = "own-";

    /** Names the overlay: columns {@code name,base,note}, one row. */
    static final String HEAD = "overlay.csv";

    /** Folder of its files among those of the set. */
    static final String FOLDER = "overlay/";

    /** Files that rows may be added to, with the column that names each row. */
    private static final Map<String, String> NAMING = Map.of(
            "foods.csv", "id",
            "rules.csv", "id",
            "requirements.csv", "id",
            "clauses.csv", "id",
            "inactivation.csv", "id",
            "tables.csv", "id",
            "treatment-tables.csv", "table");

    /** Columns whose ids must be the overlay's own too: nothing is added to a rule that was published. */
    private static final Map<String, String> BELONGING = Map.of("requirements.csv", "rule", "clauses.csv", "rules");

    private static final Pattern NAME = Pattern.compile("[a-z0-9]+(-[a-z0-9]+)*");
    private static final Pattern BLANKS = Pattern.compile(" +");

    /** What is shown to people is shown as it stands, so it holds no signs that mean something to a page or a sentence. */
    private static final Pattern PLAIN = Pattern.compile("[^<>{}&\"\\\\\\p{Cntrl}]*");

    private static final int LONGEST_NAME = 24;
    private static final int LONGEST_ID = 60;
    private static final long LONGEST_FILE = 1 << 20;

    private final CsvTable.Row head;
    private final SortedMap<String, byte[]> files;

    private Overlay(SortedMap<String, byte[]> files) {
        this.files = files;
        List<CsvTable.Row> rows = table(HEAD).rows();
        if (rows.size() != 1) {
            throw new IllegalArgumentException(FOLDER + HEAD + " must hold one row, but holds " + rows.size());
        }
        this.head = rows.get(0);
        if (!NAME.matcher(name()).matches() || name().length() > LONGEST_NAME) {
            throw head.fault(
                    "name",
                    "holds '" + name() + "', but must be words of small letters and digits joined by -, at most "
                            + LONGEST_NAME + " characters");
        }
        head.text("base");
        for (String file : files.keySet()) {
            if (!file.equals(HEAD)) {
                check(file);
            }
        }
    }

    /**
     * Reads a folder.
     *
     * @throws IllegalArgumentException at the first fault, naming file, line and column
     */
    public static Overlay read(Path folder) {
        SortedMap<String, byte[]> files = new TreeMap<>();
        try (DirectoryStream<Path> entries = Files.newDirectoryStream(folder)) {
            for (Path entry : entries) {
                String name = String.valueOf(entry.getFileName());
                // Mounted configuration keeps its versions in folders whose names begin so.
                if (!name.startsWith(".")) {
                    files.put(name, bytes(entry, name));
                }
            }
        } catch (IOException e) {
            throw new IllegalArgumentException("the folder of the overlay cannot be read: " + e, e);
        }
        return of(files);
    }

    /** An overlay from bytes by file name. */
    static Overlay of(Map<String, byte[]> files) {
        if (!files.containsKey(HEAD)) {
            throw new IllegalArgumentException(
                    "the folder of the overlay holds no " + HEAD + ", which names it and the set it is for");
        }
        for (String file : files.keySet()) {
            if (!file.equals(HEAD) && !NAMING.containsKey(file)) {
                throw new IllegalArgumentException(FOLDER + file + " is no file of an overlay; these are: " + HEAD
                        + ", " + String.join(", ", new TreeMap<>(NAMING).keySet()));
            }
        }
        return new Overlay(Collections.unmodifiableSortedMap(new TreeMap<>(files)));
    }

    private static byte[] bytes(Path file, String name) throws IOException {
        if (!Files.isRegularFile(file)) {
            throw new IllegalArgumentException(FOLDER + name + " is no file");
        }
        if (Files.size(file) > LONGEST_FILE) {
            throw new IllegalArgumentException(FOLDER + name + " is longer than " + LONGEST_FILE + " bytes");
        }
        try {
            return Files.readAllBytes(file);
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
    }

    private CsvTable table(String file) {
        byte[] bytes = files.get(file);
        return CsvTable.read(FOLDER + file, bytes == null ? new byte[0] : bytes);
    }

    private void check(String file) {
        String naming = String.valueOf(NAMING.get(file));
        for (CsvTable.Row row : table(file).rows()) {
            requireOwn(row, naming, row.text(naming));
            String belonging = BELONGING.get(file);
            if (belonging != null) {
                BLANKS.splitAsStream(row.text(belonging)).forEach(id -> requireOwn(row, belonging, id));
            }
            row.cells().keySet().stream()
                    .filter(column ->
                            !PLAIN.matcher(row.optionalText(column).orElse("")).matches())
                    .findFirst()
                    .ifPresent(column -> {
                        throw row.fault(column, "must hold none of < > { } & \" \\ and no control character");
                    });
        }
    }

    private static void requireOwn(CsvTable.Row row, String column, String id) {
        if (!id.startsWith(PREFIX) || !NAME.matcher(id).matches() || id.length() > LONGEST_ID) {
            throw row.fault(
                    column,
                    "holds '" + id + "', but ids of an overlay begin with " + PREFIX
                            + " and are words of small letters and digits joined by -, at most " + LONGEST_ID
                            + " characters");
        }
    }

    /** What it calls itself. */
    public String name() {
        return head.text("name");
    }

    /**
     * The set that it is for.
     *
     * @throws IllegalArgumentException if there is none
     */
    ParameterSet base(ParameterSets sets) {
        return sets.find(head.text("base"))
                .orElseThrow(() -> head.fault(
                        "base",
                        "names '" + head.text("base") + "', which is none of "
                                + sets.all().stream().map(ParameterSet::version).toList()));
    }

    /** Its files by name, as bytes. */
    SortedMap<String, byte[]> files() {
        return files;
    }

    /** The ids of its rules with the rows that name them. */
    List<CsvTable.Row> rules() {
        return files.containsKey("rules.csv")
                ? new ArrayList<>(table("rules.csv").rows())
                : List.of();
    }
}
