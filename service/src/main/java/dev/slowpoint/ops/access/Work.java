package dev.slowpoint.ops.access;

import java.util.Map;

/**
 * What a request takes of an allowance, in units of one cook plan. Orders of magnitude by judgement (the guide to
 * access tells how), not the work itself: that is not known before it is done, and how much of it goes on at once is
 * bounded by itself.
 */
final class Work {

    /** The dearest request there is. */
    static final int MOST = 20;

    private static final int LEAST = 1;

    private static final Map<String, Integer> DEARER = Map.of(
            "/v1/load-plans", 5, "/v1/process-windows", 10, "/v1/portion-sheets", MOST, "/v1/lookup-tables", MOST);

    private Work() {}

    /** The units of a request to a path as it is matched: decoded, without parameters. */
    static int of(String path) {
        return DEARER.getOrDefault(path, LEAST);
    }
}
