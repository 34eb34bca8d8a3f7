package dev.slowpoint.api;

import io.swagger.v3.oas.models.headers.Header;
import io.swagger.v3.oas.models.media.JsonSchema;
import io.swagger.v3.oas.models.media.Schema;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.springframework.http.HttpHeaders;

/** The headers of answers, as the contract tells of them: each is a component of its own. */
enum ContractHeader {
    NO_STORE(
            "NoStore",
            HttpHeaders.CACHE_CONTROL,
            "Not to be kept: the same question is answered anew, with the same bytes.",
            "no-store",
            true),
    FRESH("Fresh", HttpHeaders.CACHE_CONTROL, "For how many seconds it may be kept unasked.", "max-age=3600", true),
    TAG(
            "EntityTag",
            HttpHeaders.ETAG,
            "Names these bytes in this representation and language; send it back in `If-None-Match`.",
            "\"6e9f36c5931cba41177c8be8\"",
            true),
    VARY("Vary", HttpHeaders.VARY, "Which headers of the request chose this answer.", "Accept-Language", true),
    LANGUAGE("ContentLanguage", HttpHeaders.CONTENT_LANGUAGE, "The language of the sentences.", "en", true),
    NOSNIFF(
            "ContentTypeOptions",
            ContentTypeGuard.HEADER,
            "To be taken as what `Content-Type` says, and as nothing else.",
            ContentTypeGuard.VALUE,
            true),
    RETRY_AFTER("RetryAfter", HttpHeaders.RETRY_AFTER, "Seconds to wait before asking again.", 1, true),
    CHALLENGE(
            "Challenge",
            HttpHeaders.WWW_AUTHENTICATE,
            "How to show who asks (RFC 6750).",
            "Bearer realm=\"slowpoint\"",
            true),
    INCIDENT(
            "Incident",
            ProblemAdvice.INCIDENT,
            "Names this failure in the log of the service: to be given to whoever runs it. Absent where the failure"
                    + " lies before the service could log it.",
            "7b0f5a9e-3d0c-4b57-9c0b-0d8f4a1f6f11",
            false),
    TYPES(
            "AnsweredTypes",
            HttpHeaders.ACCEPT,
            "The media types that are answered with.",
            "application/json, application/cbor",
            false),
    READ_TYPES(
            "ReadTypes",
            HttpHeaders.ACCEPT,
            "The media types that are read. Absent where the type is read, but not its coding or charset.",
            "application/json, application/cbor",
            false),
    STREAM_SET(
            "ParameterSetUsed",
            "Slowpoint-Parameter-Set",
            "The parameter set that answers; only with a stream, whose table has no place for it.",
            "2026.1",
            false),
    STREAM_DIGEST(
            "DigestUsed",
            "Slowpoint-Digest",
            "The start of the digest of that set; only with a stream.",
            "1080c205f548fa40",
            false),
    TABLE(
            "TableMade",
            "Slowpoint-Table",
            "What the table was computed from and how it was checked; only with `text/csv`.",
            "parameterSet=2026.1, digest=1080c205f548fa40, checkedPoints=400, rounds=1",
            false),
    TABLE_ERRORS(
            "TableErrors",
            "Slowpoint-Table-Errors",
            "How far each column lies from plans, as in the JSON answer; only with `text/csv`.",
            "safe;greatestS=188;greatestPercent=2.1;usualS=174;usualPercent=1.6;needlesslyNeverPercent=0.0",
            false),
    TABLE_NOTICES(
            "TableNotices",
            "Slowpoint-Table-Notices",
            "Codes of the warnings and cautions; only with `text/csv`.",
            "KEEP_UNDER_WATER, ESTIMATE_NOT_GUARANTEE",
            false),
    PAGE_POLICY(
            "ContentSecurityPolicy",
            "Content-Security-Policy",
            "What the page may load: nothing but its own style; only with `text/html`.",
            "default-src 'none'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
            false),
    PAGE_REFERRER(
            "ReferrerPolicy",
            "Referrer-Policy",
            "What the page tells of itself; only with `text/html`.",
            "no-referrer",
            false),
    DEPRECATION(
            "Deprecation",
            DeprecationHeaders.DEPRECATION,
            "Since when the operation, or the parameter set that was pinned, is deprecated (RFC 9745): seconds since 1970"
                    + " behind an `@`. Only if it is.",
            "@1798761600",
            false),
    SUNSET(
            "Sunset",
            DeprecationHeaders.SUNSET,
            "From when on it may be gone (RFC 8594); never before `Deprecation`. Only if it is deprecated and that is"
                    + " known.",
            "Mon, 01 Jan 2029 00:00:00 GMT",
            false),
    DEPRECATION_LINK(
            "DeprecationLink",
            HttpHeaders.LINK,
            "What to do instead, with `rel=\"deprecation\"` (RFC 9745). Only if something is deprecated.",
            "</v1/parameter-sets/2026.1>; rel=\"deprecation\"",
            false);

    /** On every problem. */
    static final List<ContractHeader> OF_PROBLEMS = List.of(NO_STORE, VARY, LANGUAGE, NOSNIFF);

    /** On what is deprecated. */
    static final List<ContractHeader> OF_DEPRECATED = List.of(DEPRECATION, SUNSET, DEPRECATION_LINK);

    private final String component;
    private final String field;
    private final String description;
    private final Object example;
    private final boolean always;

    ContractHeader(String component, String field, String description, Object example, boolean always) {
        this.component = component;
        this.field = field;
        this.description = description;
        this.example = example;
        this.always = always;
    }

    /** Its name on the wire. */
    String field() {
        return field;
    }

    /** Where the contract refers to it. */
    Header reference() {
        return new Header().$ref("#/components/headers/" + component);
    }

    /** All of them, by the names of their components. */
    static Map<String, Header> components() {
        Map<String, Header> components = new TreeMap<>();
        for (ContractHeader header : values()) {
            Schema<Object> value = new JsonSchema();
            if (header.example instanceof Integer) {
                value.typesItem("integer").format("int32").minimum(BigDecimal.valueOf(1));
                value.setMaximum(BigDecimal.valueOf(60));
                value.addExtension("x-unit", "s");
            } else {
                value.typesItem("string");
            }
            value.setExamples(List.of(header.example));
            components.put(
                    header.component,
                    new Header()
                            .description(header.description)
                            .required(header.always)
                            .schema(value));
        }
        return components;
    }
}
