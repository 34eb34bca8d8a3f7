package dev.slowpoint.ops.access;

import java.util.regex.Pattern;

/**
 * What anybody may read: the page to try the service on, probes, the contract and its pages, and what problems mean. Everything else is closed, whether it
 * is there or not. Held against the path as it was sent, so that no way of writing another path passes for one of these.
 */
final class OpenPaths {

    private static final Pattern OPEN = Pattern.compile(
            "/(livez|readyz|openapi\\.(yaml|json)|(docs|swagger-ui|trial)(/[A-Za-z0-9][A-Za-z0-9._-]*)*|problems/[A-Za-z0-9_-]+)?");

    private OpenPaths() {}

    /** Whether anybody may read a path. */
    static boolean has(String sent) {
        return OPEN.matcher(sent).matches();
    }
}
