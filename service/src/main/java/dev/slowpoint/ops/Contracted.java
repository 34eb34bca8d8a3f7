package dev.slowpoint.ops;

import jakarta.servlet.http.HttpServletRequest;

/** Which requests are for the operations of the contract. */
final class Contracted {

    /** Where the operations live. */
    static final String ROOT = "/v1/";

    private Contracted() {}

    /** Whether a request is for one. By its path as it is matched, decoded, so that no way of writing it passes by. */
    static boolean is(HttpServletRequest request) {
        return request.getServletPath().startsWith(ROOT);
    }
}
