package dev.slowpoint.started;

import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Assumptions;

/**
 * Programs that some tests need beside a JDK and Maven. Where one is missing, the test is aborted with a reason; where the
 * environment says that all are there ({@code SLOWPOINT_ALL_TOOLS=true}), it fails.
 */
public final class Tools {

    private Tools() {}

    /** Where a program is. Aborts or fails the test if it is nowhere on the path. */
    public static Path need(String program) {
        for (String folder :
                Objects.requireNonNullElse(System.getenv("PATH"), "").split(File.pathSeparator, -1)) {
            Path found = Path.of(folder, program);
            if (Files.isRegularFile(found) && Files.isExecutable(found)) {
                return found;
            }
        }
        return missing(program + " is not on the path");
    }

    /** Aborts or fails the test. */
    public static <T> T missing(String reason) {
        if ("true".equals(System.getenv("SLOWPOINT_ALL_TOOLS"))) {
            return Assertions.fail(reason + ", and SLOWPOINT_ALL_TOOLS says that it is there");
        }
        return Assumptions.abort(reason);
    }
}
