package dev.slowpoint.api;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.dialect.Dialects;
import dev.slowpoint.kit.GoldenVector;
import dev.slowpoint.kit.Subject;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tools.jackson.databind.JsonNode;

/**
 * The service keeps every golden vector, most of which come from outside of it, and misses those alone that are declared to
 * be missed. The kit says what they mean.
 */
class GoldenVectorsTest extends HttpTest {

    private static final Path VECTORS = Path.of("../api-spec/vectors");

    static List<String> files() {
        try (Stream<Path> folders = Files.walk(VECTORS, 2)) {
            return folders.filter(file -> VECTORS.relativize(file).getNameCount() == 2
                            && file.toString().endsWith(".json"))
                    .map(file -> VECTORS.relativize(file).toString().replace('\\', '/'))
                    .sorted()
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static JsonNode vector(String file) {
        return READER.readTree(VECTORS.resolve(file));
    }

    private static List<JsonNode> vectors() {
        return files().stream().map(GoldenVectorsTest::vector).toList();
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("files")
    void a_vector_holds_unless_it_is_declared_to_be_missed(String file) {
        GoldenVector vector = GoldenVector.of(vector(file));
        Subject subject = Subject.of(Subject.Terms.of(URI.create("http://localhost:" + port)));

        List<String> misses = vector.misses(vector.ask(subject).send());

        if (vector.disagreement().isPresent()) {
            assertThat(misses)
                    .as("declared as a disagreement, but it holds: delete the declaration")
                    .isNotEmpty();
        } else {
            assertThat(misses).isEmpty();
        }
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("files")
    void a_vector_keeps_the_schema_and_is_named_like_its_file(String file) throws IOException {
        Schema schema = SchemaRegistry.withDialect(Dialects.getDraft202012())
                .getSchema(Files.readString(VECTORS.resolve("vector.schema.json")));

        assertThat(schema.validate(vector(file))).isEmpty();
        assertThat(file).endsWith("/" + vector(file).get("id").asString() + ".json");
        assertThat(vector(file).at("/request/path").asString().replaceFirst("^/v1", ""))
                .as("stands in the folder of its operation")
                .startsWith("/" + file.substring(0, file.indexOf('/')));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("files")
    void a_vector_can_fail(String file) {
        JsonNode vector = vector(file);
        boolean ofAbsenceAlone = true;
        for (JsonNode expected : vector.at("/expect/values")) {
            ofAbsenceAlone &= expected.has("absent");
        }

        assertThat(ofAbsenceAlone).isFalse();
        assertThat(GoldenVector.of(vector).misses(READER.createObjectNode())).isNotEmpty();
    }

    @Test
    void every_vector_has_an_id_of_its_own_and_stands_in_the_index_with_its_digest() throws Exception {
        Map<String, JsonNode> index = new TreeMap<>();
        List<String> listed = new ArrayList<>();
        for (JsonNode entry : READER.readTree(VECTORS.resolve("index.json"))) {
            listed.add(entry.get("id").asString());
            assertThat(index.put(entry.get("id").asString(), entry))
                    .as(entry.toString())
                    .isNull();
        }

        assertThat(listed).isSorted();
        assertThat(index.values().stream().map(e -> e.get("file").asString()))
                .as("api-spec/vectors/make-index.py writes the index")
                .containsExactlyInAnyOrderElementsOf(files());
        for (JsonNode entry : index.values()) {
            Path file = VECTORS.resolve(entry.get("file").asString());
            assertThat(entry.get("sha256").asString())
                    .as("%s: api-spec/vectors/make-index.py writes the index", file)
                    .isEqualTo(sha256(Files.readAllBytes(file)));
            assertThat(entry.get("kind")).isEqualTo(READER.readTree(file).get("kind"));
            assertThat(entry.get("id")).isEqualTo(READER.readTree(file).get("id"));
        }
    }

    private static String sha256(byte[] bytes) throws NoSuchAlgorithmException {
        return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    }

    @Test
    void there_are_at_least_sixty_vectors_and_most_come_from_outside() {
        List<JsonNode> vectors = vectors();
        List<JsonNode> outside = vectors.stream()
                .filter(v -> !v.get("kind").asString().equals("regression"))
                .toList();

        assertThat(vectors).hasSizeGreaterThanOrEqualTo(60);
        assertThat(outside.size()).isGreaterThanOrEqualTo(6 * vectors.size() / 10);
    }

    @Test
    void every_operation_has_a_vector() {
        JsonNode contract = READER.readTree(http().get("/openapi.json").asByteArray());
        TreeSet<String> uncovered = new TreeSet<>();
        contract.get("paths")
                .propertyStream()
                .forEach(path -> path.getValue()
                        .propertyStream()
                        .filter(operation -> List.of("get", "post").contains(operation.getKey()))
                        .forEach(operation ->
                                uncovered.add(operation.getKey().toUpperCase(Locale.ROOT) + " " + path.getKey())));
        assertThat(uncovered).hasSizeGreaterThan(15);

        for (JsonNode vector : vectors()) {
            String method = vector.at("/request/method").asString();
            String path = vector.at("/request/path").asString();
            uncovered.removeIf(operation -> operation.startsWith(method + " ")
                    && path.matches(operation.substring(method.length() + 1).replaceAll("\\{[^}]+}", "[^/]+"))
                    && vector.at("/expect/status").asInt() == 200);
        }

        assertThat(uncovered).isEmpty();
    }

    @Test
    void what_is_known_from_memory_never_passes_food_as_safe() {
        for (JsonNode vector : vectors()) {
            if (vector.get("mark").asString().equals("MEMORY")) {
                for (JsonNode expected : vector.at("/expect/values")) {
                    assertThat(expected.path("is").asString())
                            .as(vector.get("id").asString())
                            .isNotEqualTo("met");
                }
            }
        }
    }
}
