package dev.slowpoint.api;

import java.util.List;
import java.util.Set;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.springframework.http.CacheControl;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;

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
    private boolean pictured() {
        return best(Wire.JSON.mediaType(), Wire.CBOR.mediaType(), CookPicture.SVG)
                .equals(CookPicture.SVG);
    }

    /** The parts of a plan asked for, and those that its picture needs where that is wanted. */
    Set<Include> included(@Nullable List<String> include, Class<? extends Record> answer) {
        Set<Include> included = Include.of(include, answer);
        if (pictured()) {
            included.add(Include.CURVE);
        }
        return included;
    }

    /** A plan as data, or as its picture where that is wanted more. */
    ResponseEntity<Object> answer(Record plan, Sentences sentences, Function<PictureWords, byte[]> picture) {
        ResponseEntity.BodyBuilder answer = ResponseEntity.ok().cacheControl(CacheControl.noStore());
        return pictured()
                ? answer.contentType(CookPicture.SVG).body(picture.apply(new PictureWords(sentences)))
                : answer.body(plan);
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
