package dev.slowpoint.api;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/**
 * Every problem and every fault the service can answer with. The codes, statuses and types are part of the contract and
 * never change. What they are called, why they happen and what to do about it stands in the message bundles.
 */
enum ProblemCode {
    BAD_REQUEST(400),
    EMPTY_BODY(400),
    MALFORMED_BODY(400),
    TRAILING_CONTENT(400),
    NESTING_TOO_DEEP(400),
    LIMIT_EXCEEDED(400),
    UNKNOWN_FIELD(400),
    DUPLICATE_FIELD(400),
    MISSING_FIELD(400),
    NULL_VALUE(400),
    WRONG_TYPE(400),
    NOT_FINITE(400),
    NOT_WHOLE(400),
    OUT_OF_RANGE(400),
    WRONG_NUMBER_OF_ITEMS(400),
    UNKNOWN_WORD(400),
    WRONG_PATTERN(400),
    SIZE_MISSING(400),
    SIZE_NOT_OF_SHAPE(400),
    SIZES_CONTRADICT(400),
    MEMBER_MISSING(400),
    MEMBER_NOT_OF_STEP(400),
    TIMES_NOT_RISING(400),
    FIELDS_EXCLUDE_EACH_OTHER(400),
    ONE_OF_REQUIRED(400),
    COMPANION_MISSING(400),
    LENGTHS_DIFFER(400),
    TIMES_NOT_ASCENDING(400),
    IDS_NOT_UNIQUE(400),
    RANGE_REVERSED(400),
    SUM_NOT_WHOLE(400),
    UNKNOWN_PARAMETER(400),
    UNAUTHENTICATED(401),
    FORBIDDEN(403),
    NOT_FOUND(404),
    METHOD_NOT_ALLOWED(405),
    NOT_ACCEPTABLE(406),
    REQUEST_TIMEOUT(408, true),
    BODY_TOO_LARGE(413),
    URI_TOO_LONG(414),
    UNSUPPORTED_MEDIA_TYPE(415),
    TOO_MANY_REQUESTS(429, true),
    HEADERS_TOO_LARGE(431),

    UNKNOWN_FOOD(422),
    MASS_DOES_NOT_FIT(422),
    UNKNOWN_RULE(422),
    UNKNOWN_PARAMETER_SET(422),
    FORM_NOT_ALLOWED(422),
    NON_INTACT_TOO_COOL(422),
    STUFFED_TOO_COOL(422),
    SPROUTS_TOO_COOL(422),
    ABOVE_BOILING_POINT(422),
    START_NOT_BELOW_BATH(422),
    START_TOO_WARM(422),
    BATH_TOO_COOL(422),
    CORE_ABOVE_BATH(422),
    PURPOSE_NEEDS_COOKED(422),
    SETPOINT_NEEDED(422),
    NO_SETPOINT_FITS(422),
    SETPOINTS_REVERSED(422),
    TOO_MANY_SETPOINTS(422),
    LOAD_NEEDS_COVERED_FACES(422),
    TOO_MANY_BANDS(422),
    START_ACROSS_FREEZING(422),
    QUANTITY_NOT_MODELLED(422),
    BUDGET_TOO_SMALL(422),
    TABLE_WITHOUT_TIMES(422),
    TABLE_NOT_SAFE_SIDED(422),
    ARRANGEMENT_NEEDS_FLAT(422),
    NO_FACE_IN_WATER(422),
    CHAIN_NEEDS_FREE_PACK(422),
    CHILL_NEEDS_COVERED_FACES(422),
    NO_USABLE_READINGS(422),
    ASPECT_NEEDS_CORE(422),
    UNHEATED_WITHOUT_BATH(422),
    FOUND_NOT_BELOW_BATH(422),
    AFTER_NOW(422),
    EVENTS_NOT_IN_ORDER(422),
    EVENTS_OVERLAP(422),
    WATER_UNKNOWN(422),
    READING_IMPOSSIBLE(422),
    UNKNOWN_TEXTURE_CLASS(422),
    REQUEST_REFUSED(422),

    INTERNAL_ERROR(500),
    NOT_IMPLEMENTED(501),
    OVERLOADED(503, true),
    OUT_OF_TIME(503, true),
    ISSUER_UNREACHABLE(503, true),
    VERSION_NOT_SUPPORTED(505);

    private final int status;
    private final boolean retryable;

    ProblemCode(int status) {
        this(status, false);
    }

    ProblemCode(int status, boolean retryable) {
        this.status = status;
        this.retryable = retryable;
    }

    /** The code in kebab-case or as it stands here. */
    static Optional<ProblemCode> find(String spelled) {
        return Arrays.stream(values())
                .filter(code -> code.name().equals(spelled) || code.slug().equals(spelled))
                .findFirst();
    }

    /** What a bare HTTP status means here. */
    static ProblemCode ofStatus(int status) {
        return switch (status) {
            case 401 -> UNAUTHENTICATED;
            case 403 -> FORBIDDEN;
            case 404 -> NOT_FOUND;
            case 405 -> METHOD_NOT_ALLOWED;
            case 406 -> NOT_ACCEPTABLE;
            case 408 -> REQUEST_TIMEOUT;
            case 413 -> BODY_TOO_LARGE;
            case 414 -> URI_TOO_LONG;
            case 415 -> UNSUPPORTED_MEDIA_TYPE;
            case 429 -> TOO_MANY_REQUESTS;
            case 431 -> HEADERS_TOO_LARGE;
            case 501 -> NOT_IMPLEMENTED;
            case 503 -> OVERLOADED;
            case 505 -> VERSION_NOT_SUPPORTED;
            default -> status < 500 ? BAD_REQUEST : INTERNAL_ERROR;
        };
    }

    /** The code in kebab-case, as in its type. */
    String slug() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** The path that names and explains the problem. */
    String type() {
        return "/problems/" + slug();
    }

    int status() {
        return status;
    }

    /** Whether the same request may succeed later. */
    boolean retryable() {
        return retryable;
    }
}
