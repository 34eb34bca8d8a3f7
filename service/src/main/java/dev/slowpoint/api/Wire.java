package dev.slowpoint.api;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import org.springframework.http.MediaType;
import tools.jackson.core.JsonParser;
import tools.jackson.core.ObjectReadContext;
import tools.jackson.core.StreamReadConstraints;
import tools.jackson.core.StreamWriteFeature;
import tools.jackson.core.TokenStreamFactory;
import tools.jackson.core.json.JsonFactory;
import tools.jackson.core.json.JsonReadFeature;
import tools.jackson.databind.MapperFeature;
import tools.jackson.databind.ObjectMapper;
import tools.jackson.databind.cfg.MapperBuilder;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.dataformat.cbor.CBORFactory;
import tools.jackson.dataformat.cbor.CBORMapper;
import tools.jackson.dataformat.cbor.CBORReadFeature;

/** The two representations of every request and answer: the same members, in text or in binary. */
enum Wire {
    /** RFC 8259, UTF-8. */
    JSON(MediaType.APPLICATION_JSON) {
        @Override
        JsonParser parser(byte[] body) throws CharacterCodingException {
            // Decoded here, so that other encodings and broken UTF-8 are refused and not guessed.
            String text = StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(body))
                    .toString();
            return JSON_FACTORY.createParser(ObjectReadContext.empty(), text);
        }
    },
    /** RFC 8949. */
    CBOR(MediaType.APPLICATION_CBOR) {
        @Override
        JsonParser parser(byte[] body) {
            return CBOR_FACTORY.createParser(ObjectReadContext.empty(), body);
        }
    };

    /** Objects and lists inside each other. */
    static final int DEEPEST = 20;

    private static final StreamReadConstraints LIMITS = StreamReadConstraints.builder()
            .maxNestingDepth(DEEPEST)
            .maxNumberLength(64)
            .maxStringLength(1024)
            .maxNameLength(256)
            .build();

    private static final TokenStreamFactory JSON_FACTORY = JsonFactory.builder()
            .streamReadConstraints(LIMITS)
            // Read as tokens so that the reader can name the field; it never lets one pass.
            .enable(JsonReadFeature.ALLOW_NON_NUMERIC_NUMBERS)
            .build();

    private static final TokenStreamFactory CBOR_FACTORY = CBORFactory.builder()
            .streamReadConstraints(LIMITS)
            .enable(CBORReadFeature.READ_UNDEFINED_AS_EMBEDDED_OBJECT)
            .enable(CBORReadFeature.READ_SIMPLE_VALUE_AS_EMBEDDED_OBJECT)
            .build();

    // The fast writer prints the shortest digits on every JVM; Double.toString does so only since Java 19.
    private static final ObjectMapper JSON_MAPPER = answers(JsonMapper.builder(JsonFactory.builder()
            .enable(StreamWriteFeature.USE_FAST_DOUBLE_WRITER)
            .build()));

    private static final ObjectMapper CBOR_MAPPER = answers(CBORMapper.builder());

    private final MediaType mediaType;

    Wire(MediaType mediaType) {
        this.mediaType = mediaType;
    }

    private static <M extends ObjectMapper, B extends MapperBuilder<M, B>> M answers(B builder) {
        return builder.disable(MapperFeature.SORT_PROPERTIES_ALPHABETICALLY)
                .changeDefaultPropertyInclusion(inclusion -> inclusion.withValueInclusion(JsonInclude.Include.NON_NULL))
                .build();
    }

    /** The name of the representation in {@code Accept} and {@code Content-Type}. */
    MediaType mediaType() {
        return mediaType;
    }

    /** Opens a body for reading, within the limits on depth and lengths. */
    abstract JsonParser parser(byte[] body) throws CharacterCodingException;

    /** Writes an answer; members without a value are left out, the others stand in the order of the record. */
    byte[] write(Object answer) {
        return (this == JSON ? JSON_MAPPER : CBOR_MAPPER).writeValueAsBytes(answer);
    }
}
