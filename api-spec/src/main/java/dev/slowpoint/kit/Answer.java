package dev.slowpoint.kit;

import io.restassured.http.Headers;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;

/** What the subject answered. */
public final class Answer {

    /** The media type of every problem, whatever was accepted. */
    public static final String PROBLEM = "application/problem+json";

    private final int status;
    private final Headers headers;
    private final byte[] bytes;

    private final Exchange exchange;

    Answer(int status, Headers headers, byte[] bytes, Exchange exchange) {
        this.status = status;
        this.headers = headers;
        this.bytes = bytes;
        this.exchange = exchange;
    }

    Exchange exchange() {
        return exchange;
    }

    public int status() {
        return status;
    }

    public byte[] bytes() {
        return bytes.clone();
    }

    public String text() {
        return new String(bytes, StandardCharsets.UTF_8);
    }

    /** A header; where it was sent in several lines, they are joined by commas (RFC 9110, section 5.2). */
    public Optional<String> header(String name) {
        return headers.hasHeaderWithName(name)
                ? Optional.of(String.join(", ", headers.getValues(name)))
                : Optional.empty();
    }

    /** The media type without its parameters; empty text where none was sent. */
    public String mediaType() {
        return header("Content-Type")
                .map(type -> type.replaceFirst(";.*", "").strip())
                .orElse("");
    }

    /** The body as a tree, read as its media type says. */
    public JsonNode tree() {
        Wire wire = mediaType().equals(Wire.CBOR.mediaType()) ? Wire.CBOR : Wire.JSON;
        try {
            return wire.read(bytes);
        } catch (JacksonException e) {
            throw new AssertionError(
                    "The answer says that it is " + mediaType() + " and cannot be read as that: "
                            + e.getOriginalMessage(),
                    e);
        }
    }

    /** What stands at a JSON pointer of the body; a missing node where nothing does. */
    public JsonNode at(String pointer) {
        return tree().at(pointer);
    }

    /** This answer, when it has the status that is asked for. */
    public Answer expect(int expected) {
        if (status != expected) {
            throw new AssertionError("The status is " + status + ", expected " + expected);
        }
        return this;
    }

    /** This answer, when it is a problem of this status. */
    public Answer refused(int expected) {
        expect(expected);
        if (!mediaType().equals(PROBLEM)) {
            throw new AssertionError("A problem has the media type " + PROBLEM + ", not " + mediaType());
        }
        return this;
    }
}
