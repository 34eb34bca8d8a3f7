package dev.slowpoint.api;

import static org.assertj.core.api.Assertions.assertThat;

import io.restassured.response.Response;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.json.JsonMapper;

/**
 * The examples are what the service really answers. After a change on purpose write them again, and the README with them:
 * {@code mvn -q -pl service -am test -Dtest=ExamplesTest,OpenApiTest -Dcontract.write=true
 * -Dsurefire.failIfNoSpecifiedTests=false}, twice, because the contract shows the examples.
 */
class ExamplesTest extends HttpTest {

    private static final boolean WRITE = Boolean.getBoolean("contract.write");
    private static final Path ROOT = root();
    private static final Path EXAMPLES = ROOT.resolve("api-spec/examples");
    private static final Path README = ROOT.resolve("README.md");
    private static final Pattern ANSWER = Pattern.compile("```json\n(.*?)\n```", Pattern.DOTALL);
    private static final Pattern CURL = Pattern.compile("-d '(\\{.*?})'", Pattern.DOTALL);
    private static final JsonMapper PRETTY =
            JsonMapper.builder().enable(SerializationFeature.INDENT_OUTPUT).build();

    private static Path root() {
        Path here = Path.of("").toAbsolutePath();
        return Files.exists(here.resolve("api-spec")) ? here : Objects.requireNonNull(here.getParent());
    }

    static List<Path> requests() throws IOException {
        try (Stream<Path> files = Files.list(EXAMPLES)) {
            return files.filter(f -> f.toString().endsWith(".request.json"))
                    .sorted()
                    .toList();
        }
    }

    private String planned(String request, String operation) {
        Response response = http().contentType(JSON).body(request).post(operation);
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(200);
        return PRETTY.writeValueAsString(READER.readTree(response.asByteArray()));
    }

    @ParameterizedTest
    @MethodSource("requests")
    void an_example_answer_is_the_real_one(Path request) throws IOException {
        Path answer = EXAMPLES.resolve(request.getFileName().toString().replace(".request.", ".answer."));
        String real = planned(
                        Files.readString(request),
                        operation(request.getFileName().toString())) + "\n";
        if (WRITE) {
            Files.writeString(answer, real);
        }
        assertThat(Files.readString(answer)).isEqualTo(real);
    }

    @ParameterizedTest
    @MethodSource("requests")
    void an_example_picture_is_the_real_one(Path request) throws IOException {
        String name = request.getFileName().toString();
        Path picture = EXAMPLES.resolve(name.replace(".request.json", ".svg"));
        Response response = http().contentType(JSON)
                .accept("image/svg+xml")
                .body(Files.readString(request))
                .post(operation(name));
        if (response.statusCode() == 406) {
            assertThat(picture).as("the service draws none").doesNotExist();
            return;
        }
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(200);
        if (WRITE) {
            Files.write(picture, response.asByteArray());
        }
        assertThat(Files.readString(picture)).isEqualTo(response.asString());
    }

    @Test
    void the_readme_shows_the_real_answer_to_the_request_it_shows() throws IOException {
        String text = Files.readString(README);
        Matcher curl = CURL.matcher(text);
        assertThat(curl.find()).isTrue();
        String real = planned(curl.group(1), PLANS);
        if (WRITE) {
            text = ANSWER.matcher(text).replaceFirst(Matcher.quoteReplacement("```json\n" + compact(real) + "\n```"));
            Files.writeString(README, text);
        }
        Matcher shown = ANSWER.matcher(text);
        assertThat(shown.find()).isTrue();
        JsonNode answer = READER.readTree(shown.group(1));
        assertThat(answer).isEqualTo(READER.readTree(real));
    }

    /** Small objects on one line each, so that the answer can be taken in at a glance. */
    private static String compact(String pretty) {
        return Pattern.compile("\\{\\s*([^{}]*?)\\s*}", Pattern.DOTALL)
                .matcher(pretty)
                .replaceAll(match -> {
                    String inner = match.group(1).replaceAll("\\s*\n\\s*", " ");
                    return Matcher.quoteReplacement(inner.length() < 90 ? "{ " + inner + " }" : match.group());
                });
    }
}
