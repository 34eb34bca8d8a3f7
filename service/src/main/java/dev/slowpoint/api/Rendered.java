package dev.slowpoint.api;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Duration;
import java.util.HexFormat;
import org.jspecify.annotations.Nullable;
import org.springframework.http.CacheControl;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;

/**
 * An answer that never changes while the service runs: written once in each representation, with a strong entity tag made
 * of its bytes. The framework answers 304 when a client names that tag.
 */
final class Rendered {

    private static final Duration FRESH = Duration.ofHours(1);

    private final ResponseEntity<byte[]> json;
    private final ResponseEntity<byte[]> cbor;

    Rendered(Record answer) {
        this.json = answer(Wire.JSON.write(answer), Wire.JSON.mediaType());
        this.cbor = answer(Wire.CBOR.write(answer), Wire.CBOR.mediaType());
    }

    /** The answer for an {@code Accept} header that has been found acceptable before; JSON among equals. */
    ResponseEntity<byte[]> as(@Nullable String accept) {
        return Accepted.of(accept)
                        .best(Wire.JSON.mediaType(), Wire.CBOR.mediaType())
                        .equals(Wire.CBOR.mediaType())
                ? cbor
                : json;
    }

    /** Bytes with all headers of an answer that may be kept. */
    static ResponseEntity<byte[]> answer(byte[] body, MediaType type) {
        return answer(body, type, CacheControl.maxAge(FRESH));
    }

    /** The same, to be kept as is said. */
    static ResponseEntity<byte[]> answer(byte[] body, MediaType type, CacheControl kept) {
        return ResponseEntity.ok()
                .contentType(type)
                .eTag('"' + digest(body) + '"')
                .cacheControl(kept)
                .varyBy(HttpHeaders.ACCEPT, HttpHeaders.ACCEPT_ENCODING)
                .body(body);
    }

    private static String digest(byte[] body) {
        try {
            byte[] hash = MessageDigest.getInstance("SHA-256").digest(body);
            return HexFormat.of().formatHex(hash, 0, 12);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every JVM has SHA-256", e);
        }
    }
}
