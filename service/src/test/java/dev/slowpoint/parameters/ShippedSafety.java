package dev.slowpoint.parameters;

import dev.slowpoint.safety.SafetyKnowledge;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;

/** The safety files as shipped, for tests of other packages. */
public final class ShippedSafety {

    /** What the files say. */
    public static final SafetyKnowledge KNOWLEDGE = SafetyFiles.read(file -> CsvTable.read(file, bytes(file)));

    private ShippedSafety() {}

    static byte[] bytes(String file) {
        try (InputStream in = ShippedSafety.class.getResourceAsStream("/parameters/2026.1/" + file)) {
            if (in == null) {
                throw new IllegalStateException("no resource " + file);
            }
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
