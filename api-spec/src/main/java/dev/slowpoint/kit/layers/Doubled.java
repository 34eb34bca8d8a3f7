package dev.slowpoint.kit.layers;

import dev.slowpoint.kit.Wire;
import java.io.ByteArrayOutputStream;
import tools.jackson.core.JsonGenerator;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.dataformat.cbor.CBORMapper;

/** Writes a request in which one object has a member twice, which no tree can hold. */
final class Doubled {

    private final JsonGenerator generator;
    private final String target;

    private Doubled(JsonGenerator generator, String target) {
        this.generator = generator;
        this.target = target;
    }

    /** The request, with the first member of the object at the pointer sent twice. */
    static byte[] write(Wire wire, JsonNode request, String pointer) {
        ObjectMapper mapper = wire == Wire.JSON ? new JsonMapper() : new CBORMapper();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (JsonGenerator generator = mapper.createGenerator(bytes)) {
            new Doubled(generator, pointer).write(request, "");
        }
        return bytes.toByteArray();
    }

    private void write(JsonNode node, String pointer) {
        if (node.isObject()) {
            generator.writeStartObject();
            boolean first = true;
            for (var member : node.properties()) {
                for (int times = first && pointer.equals(target) ? 2 : 1; times > 0; times--) {
                    generator.writeName(member.getKey());
                    write(member.getValue(), Trees.child(pointer, member.getKey()));
                }
                first = false;
            }
            generator.writeEndObject();
        } else if (node.isArray()) {
            generator.writeStartArray();
            for (int i = 0; i < node.size(); i++) {
                write(node.get(i), pointer + "/" + i);
            }
            generator.writeEndArray();
        } else {
            generator.writePOJO(node);
        }
    }
}
