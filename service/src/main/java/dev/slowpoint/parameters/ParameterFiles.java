package dev.slowpoint.parameters;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Collections;
import java.util.HexFormat;
import java.util.Map;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * The files of one parameter set, as bytes. {@value #MANIFEST} is one of them and names the others, so that a file
 * cannot get lost unseen.
 */
public final class ParameterFiles {

    /** Names the files of a set, itself left out: columns {@code file} and {@code what}. */
    public static final String MANIFEST = "manifest.csv";

    private static final String FOLDER = "/parameters/";

    private final String version;
    private final SortedMap<String, byte[]> files;

    private ParameterFiles(String version, SortedMap<String, byte[]> files) {
        this.version = version;
        this.files = files;
    }

    /** The files of a released set, which the program carries with it. */
    public static ParameterFiles released(String version) {
        SortedMap<String, byte[]> files = new TreeMap<>();
        byte[] manifest = resource(version + "/" + MANIFEST);
        files.put(MANIFEST, manifest);
        for (CsvTable.Row row : CsvTable.read(MANIFEST, manifest).rowsUniqueBy("file")) {
            files.put(row.text("file"), resource(version + "/" + row.text("file")));
        }
        return new ParameterFiles(version, files);
    }

    /** A set from bytes by file name, wherever they come from. */
    public static ParameterFiles of(String version, Map<String, byte[]> files) {
        SortedMap<String, byte[]> copies = new TreeMap<>();
        files.forEach((name, bytes) -> copies.put(name, bytes.clone()));
        return new ParameterFiles(version, copies);
    }

    /** These files and those of an overlay, which stand in a folder of their own. */
    ParameterFiles with(Overlay overlay) {
        SortedMap<String, byte[]> all = new TreeMap<>(files);
        overlay.files().forEach((name, bytes) -> all.put(Overlay.FOLDER + name, bytes));
        return new ParameterFiles(version + "+" + overlay.name(), all);
    }

    /** The bytes of a file below the folder of all sets. */
    static byte[] resource(String path) {
        try (InputStream in = ParameterFiles.class.getResourceAsStream(FOLDER + path)) {
            if (in == null) {
                throw new IllegalArgumentException("there is no parameter file '" + path
                        + "'. Maybe the manifest names a file that was not added?");
            }
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException("parameter file '" + path + "' cannot be read", e);
        }
    }

    /** The version of the set. */
    public String version() {
        return version;
    }

    /** The names of all files, the manifest among them, in the order of their characters. */
    public SortedSet<String> names() {
        return Collections.unmodifiableSortedSet(new TreeSet<>(files.keySet()));
    }

    /** The bytes of one file. */
    public byte[] bytes(String file) {
        byte[] bytes = files.get(file);
        if (bytes == null) {
            throw new IllegalArgumentException("parameter set " + version + " has no file '" + file + "', only "
                    + files.keySet() + ". Maybe the manifest does not name it?");
        }
        return bytes.clone();
    }

    /** One file as a table, with the rows that an overlay adds to it at its end. */
    CsvTable table(String file) {
        CsvTable table = CsvTable.read(file, bytes(file));
        String added = Overlay.FOLDER + file;
        return files.containsKey(added) ? table.with(CsvTable.read(added, bytes(added))) : table;
    }

    /**
     * SHA-256 over the names and contents of all files, 64 lower-case hexadecimal digits: that of the text which lists,
     * in the order of the names, the SHA-256 of each file, two blanks, its name and a line feed. In the folder of a set
     * {@code LC_ALL=C sha256sum * | sha256sum} prints the same.
     */
    public String digest() {
        StringBuilder list = new StringBuilder();
        files.forEach((name, bytes) ->
                list.append(sha256(bytes)).append("  ").append(name).append('\n'));
        return sha256(list.toString().getBytes(StandardCharsets.UTF_8));
    }

    private static String sha256(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform must offer SHA-256", e);
        }
    }
}
