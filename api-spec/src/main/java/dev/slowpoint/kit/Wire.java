package dev.slowpoint.kit;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.dataformat.cbor.CBORMapper;

/** The two notations that every operation reads and answers. */
public enum Wire {
    JSON("application/json", new JsonMapper()),
    CBOR("application/cbor", new CBORMapper());

    private final String mediaType;
    private final ObjectMapper mapper;

    Wire(String mediaType, ObjectMapper mapper) {
        this.mediaType = mediaType;
        this.mapper = mapper;
    }

    public String mediaType() {
        return mediaType;
    }

    public JsonNode read(byte[] bytes) {
        return mapper.readTree(bytes);
    }

    public JsonNode read(String text) {
        return mapper.readTree(text);
    }

    public byte[] write(JsonNode tree) {
        return mapper.writeValueAsBytes(tree);
    }
}
