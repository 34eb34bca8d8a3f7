package dev.slowpoint.api;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.http.MediaType;

/**
 * What an {@code Accept} header asks for, once the framework has found it acceptable.
 *
 * @param ranges in the order sent; empty for no header, which takes anything
 */
record Accepted(List<MediaType> ranges) {

    /** Reads a header. */
    static Accepted of(@Nullable String header) {
        return new Accepted(header == null ? List.of() : MediaType.parseMediaTypes(header));
    }

    /** The type that is wanted most; the first among equals. */
    MediaType best(MediaType... types) {
        MediaType best = types[0];
        for (MediaType type : types) {
            best = quality(type) > quality(best) ? type : best;
        }
        return best;
    }

    /** Whether a picture is wanted more than data. */
    boolean pictured() {
        return best(Wire.JSON.mediaType(), Wire.CBOR.mediaType(), CookPicture.SVG)
                .equals(CookPicture.SVG);
    }

    /** Quality that the most specific matching range gives a type (RFC 9110, section 12.5.1). */
    private double quality(MediaType type) {
        MediaType best = null;
        for (MediaType range : ranges) {
            if (range.includes(type) && (best == null || specificity(range) > specificity(best))) {
                best = range;
            }
        }
        return best == null ? 0.0 : best.getQualityValue();
    }

    private static int specificity(MediaType range) {
        return range.isWildcardType() ? 0 : range.isWildcardSubtype() ? 1 : 2;
    }
}
