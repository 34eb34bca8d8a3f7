package dev.slowpoint.api;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.databind.JsonSerializer;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.annotation.JsonSerialize;
import io.swagger.v3.oas.models.media.Content;
import io.swagger.v3.oas.models.media.MediaType;
import java.io.IOException;
import java.util.Map;
import java.util.TreeMap;

/**
 * Writes the media types of a body with JSON first and the others by name. Generated clients take the first one for the
 * type of what they send, and they write JSON.
 */
final class JsonFirst extends JsonSerializer<Content> {

    /** Put on the class of a library, which cannot be annotated. */
    @JsonSerialize(using = JsonFirst.class)
    abstract static class OnContent {}

    private static final String JSON = org.springframework.http.MediaType.APPLICATION_JSON_VALUE;

    @Override
    public void serialize(Content content, JsonGenerator out, SerializerProvider serializers) throws IOException {
        Map<String, MediaType> others = new TreeMap<>(content);
        MediaType json = others.remove(JSON);
        out.writeStartObject();
        if (json != null) {
            serializers.defaultSerializeField(JSON, json, out);
        }
        for (Map.Entry<String, MediaType> other : others.entrySet()) {
            serializers.defaultSerializeField(other.getKey(), other.getValue(), out);
        }
        out.writeEndObject();
    }
}
