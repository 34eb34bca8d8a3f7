package dev.slowpoint.ops.access;

import dev.slowpoint.ops.StartRefused;
import java.util.Arrays;
import java.util.Locale;
import org.springframework.core.env.Environment;

/** How callers show who they are. */
enum AccessMode {
    /** Nobody has to; so only callers on the same machine are heard. */
    OPEN,
    /** By a key whose hash stands in a file. */
    KEYS,
    /** By a token that somebody else signs. */
    JWT;

    static final String PROPERTY = "slowpoint.access.mode";

    /**
     * The mode that is set; open if none is.
     *
     * @throws StartRefused if it is none of these
     */
    static AccessMode of(Environment environment) {
        String set = environment.getProperty(PROPERTY, "open");
        return Arrays.stream(values())
                .filter(mode -> mode.name().toLowerCase(Locale.ROOT).equals(set))
                .findFirst()
                .orElseThrow(() -> new StartRefused(
                        PROPERTY + " is '" + set + "', and there is no such mode.", "Set it to open, keys or jwt."));
    }
}
