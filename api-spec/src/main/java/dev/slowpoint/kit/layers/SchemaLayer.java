package dev.slowpoint.kit.layers;

import static org.assertj.core.api.Assertions.assertThat;

import dev.slowpoint.kit.Answer;
import dev.slowpoint.kit.Contract;
import dev.slowpoint.kit.Contract.Example;
import dev.slowpoint.kit.Contract.Operation;
import dev.slowpoint.kit.Kit;
import dev.slowpoint.kit.Subject;
import dev.slowpoint.kit.Wire;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.StreamSupport;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NamedNodeMap;
import org.w3c.dom.NodeList;
import org.xml.sax.SAXException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.JsonNodeFactory;

/** Whether what is answered has the form that the contract says. */
@ExtendWith(Kit.class)
@DisplayNameGeneration(Kit.Names.class)
public class SchemaLayer {

    private static final String EXAMPLES = "dev.slowpoint.kit.layers.Examples#all";
    private static final Contract CONTRACT = Contract.PUBLISHED;
    private static final String SVG = "image/svg+xml";

    private final Subject subject;

    SchemaLayer(Subject subject) {
        this.subject = subject;
    }

    private Answer ask(Example example, Wire wire) {
        subject.offers(example.operation().id());
        return subject.once(
                example + " " + wire,
                () -> subject.post(example.operation().path())
                        .body(wire, example.request())
                        .send());
    }

    private Answer ask(Example example, String mediaType) {
        subject.offers(example.operation().id());
        Assumptions.assumeTrue(
                CONTRACT.answers(example.operation(), 200).contains(mediaType),
                () -> example.operation() + " is not said to answer as " + mediaType);
        return subject.post(example.operation().path())
                .accept(mediaType)
                .body(Wire.JSON, example.request())
                .send()
                .expect(200);
    }

    private static void assertKept(Operation operation, Answer answer) {
        assertThat(CONTRACT.faults(operation, answer))
                .as("what breaks the contract")
                .isEmpty();
    }

    @ParameterizedTest
    @MethodSource(EXAMPLES)
    @Tag("R-010")
    void json(Example example) {
        assertKept(example.operation(), ask(example, Wire.JSON).expect(200));
    }

    @ParameterizedTest
    @MethodSource(EXAMPLES)
    @Tag("R-011")
    void cbor(Example example) {
        Answer answer = ask(example, Wire.CBOR).expect(200);
        assertThat(answer.mediaType()).isEqualTo(Wire.CBOR.mediaType());
        assertKept(example.operation(), answer);
    }

    @ParameterizedTest
    @MethodSource(EXAMPLES)
    @Tag("R-012")
    void both(Example example) {
        JsonNode json = ask(example, Wire.JSON).expect(200).tree();
        JsonNode cbor = ask(example, Wire.CBOR).expect(200).tree();
        assertThat(Trees.difference(json, cbor, "")).as("JSON against CBOR").isEmpty();
    }

    @ParameterizedTest
    @MethodSource("dev.slowpoint.kit.layers.Examples#catalogues")
    @Tag("R-013")
    void catalogues(Operation operation) {
        subject.offers(operation.id());
        for (String path : Catalogues.paths(subject, operation)) {
            for (Wire wire : Wire.values()) {
                Answer answer =
                        subject.get(path).accept(wire.mediaType()).send().expect(200);
                assertThat(answer.mediaType()).as(path).isEqualTo(wire.mediaType());
                assertKept(operation, answer);
            }
        }
    }

    @ParameterizedTest
    @MethodSource("dev.slowpoint.kit.layers.Examples#computing")
    @Tag("R-014")
    void problems(Operation operation) {
        subject.offers(operation.id());
        for (String body : List.of("{}", "[]", "{", "{\"sauce\":1}", "")) {
            Answer answer = subject.post(operation.path())
                    .body(Wire.JSON.mediaType(), body)
                    .send()
                    .refused(400);
            assertKept(operation, answer);
        }
    }

    @ParameterizedTest
    @MethodSource(EXAMPLES)
    @Tag("R-015")
    void nulls(Example example) {
        List<String> found = new ArrayList<>();
        Trees.visit(ask(example, Wire.JSON).expect(200).tree(), "", (pointer, node) -> {
            if (node.isNull()) {
                found.add(pointer + " is null");
            }
        });
        Trees.visit(ask(example, Wire.CBOR).expect(200).tree(), "", (pointer, node) -> {
            if (node.isNull() || (node.isNumber() && !Double.isFinite(node.asDouble()))) {
                found.add(pointer + " is " + node);
            }
        });
        assertThat(found).isEmpty();
    }

    @ParameterizedTest
    @MethodSource(EXAMPLES)
    @Tag("R-016")
    void unnamed(Example example) {
        JsonNode schema = CONTRACT.response(example.operation(), 200).at("/content/application~1json/schema");
        assertThat(CONTRACT.unnamed(schema, ask(example, Wire.JSON).expect(200).tree()))
                .as("members that the contract does not name")
                .isEmpty();
    }

    @ParameterizedTest
    @MethodSource(EXAMPLES)
    @Tag("R-017")
    void pictures(Example example) throws ParserConfigurationException, IOException, SAXException {
        Answer answer = ask(example, SVG);
        assertThat(answer.mediaType()).isEqualTo(SVG);
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
        factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
        factory.setNamespaceAware(true);
        Document picture = factory.newDocumentBuilder().parse(new ByteArrayInputStream(answer.bytes()));
        assertThat(picture.getDocumentElement().getLocalName()).isEqualTo("svg");
        NodeList all = picture.getElementsByTagNameNS("*", "*");
        for (int i = 0; i < all.getLength(); i++) {
            Element element = (Element) all.item(i);
            assertThat(element.getLocalName()).isNotIn("script", "foreignObject", "image", "iframe", "use");
            NamedNodeMap attributes = element.getAttributes();
            for (int j = 0; j < attributes.getLength(); j++) {
                String name = attributes.item(j).getNodeName();
                assertThat(name)
                        .as("an attribute that runs or fetches")
                        .doesNotStartWith("on")
                        .isNotIn("href", "xlink:href", "src");
            }
        }
    }

    @ParameterizedTest
    @MethodSource(EXAMPLES)
    @Tag("R-018")
    void warnings(Example example) {
        subject.offers("listWarnings");
        Set<String> known = new TreeSet<>();
        subject.get("/v1/warnings")
                .accept(Wire.JSON.mediaType())
                .send()
                .expect(200)
                .at("/warnings")
                .forEach(warning -> known.add(warning.path("code").asString("")));
        Set<String> told = new TreeSet<>();
        Trees.visit(ask(example, Wire.JSON).expect(200).tree(), "", (pointer, node) -> {
            if (pointer.matches(".*/(warnings|cautions)/\\d+")) {
                told.add(node.path("code").asString(""));
            }
        });
        assertThat(known).as("the warnings that are listed").containsAll(told);
    }

    @Test
    @Tag("R-019")
    void everyProblemIsExplained() {
        subject.offers("listProblems");
        subject.offers("explainProblem");
        JsonNode listed = subject.get("/v1/problems")
                .accept(Wire.JSON.mediaType())
                .send()
                .expect(200)
                .at("/problems");
        assertThat(listed.size()).isPositive();
        for (JsonNode problem : listed) {
            JsonNode told = subject.get(problem.path("type").asString())
                    .accept(Wire.JSON.mediaType())
                    .send()
                    .expect(200)
                    .tree();
            assertThat(told).as(problem.path("type").asString()).isEqualTo(problem);
        }
        Set<String> codes = new TreeSet<>(StreamSupport.stream(listed.spliterator(), false)
                .map(problem -> problem.path("code").asString())
                .toList());
        Set<String> shown = new TreeSet<>();
        CONTRACT.document()
                .at("/components/responses")
                .forEach(response -> shown.addAll(response.at("/content/application~1problem+json/examples")
                        .propertyNames()));
        assertThat(codes).as("the problems that the contract shows").containsAll(shown);
    }

    @ParameterizedTest
    @MethodSource(EXAMPLES)
    @Tag("R-020")
    void asShown(Example example) {
        subject.offers(example.operation().id());
        JsonNode answer = ask(example, Wire.JSON).expect(200).tree();
        Assumptions.assumeTrue(
                !example.answer().isMissingNode(), () -> "The contract shows no answer for " + example.name());
        Assumptions.assumeTrue(
                answer.path("digest").equals(example.answer().path("digest")),
                () -> "The subject computes with other parameters: " + answer.path("digest"));
        assertThat(Trees.difference(example.answer(), answer, ""))
                .as("the answer of the contract against that of the subject")
                .isEmpty();
    }

    @ParameterizedTest
    @MethodSource(EXAMPLES)
    @Tag("R-021")
    void otherNotations(Example example) {
        List<String> types = new ArrayList<>(CONTRACT.answers(example.operation(), 200));
        // What an operation reads as a stream it also answers as one, and only then.
        types.removeIf(type -> !type.equals(Wire.JSON.mediaType())
                && !type.equals(Wire.CBOR.mediaType())
                && example.operation().node().at("/requestBody/content").has(type));
        for (String type : types) {
            Answer answer = ask(example, type);
            assertThat(answer.mediaType()).isEqualTo(type);
            assertThat(answer.bytes()).as("bytes of " + type).isNotEmpty();
            assertKept(example.operation(), answer);
        }
    }

    @Test
    @Tag("R-022")
    void streams() {
        subject.offers("planPortions");
        String table = "id,food.id,geometry.shape,geometry.thicknessMm,start.temperatureC\n"
                + "a,pork-loin,slab,38,4\nb,pork-loin,slab,900,4\nc,chicken-thigh,slab,29,4\n";
        Answer answer = subject.post("/v1/portion-sheets")
                .accept("application/x-ndjson")
                .body("text/csv", table)
                .send()
                .expect(200);
        JsonNode line = JsonNodeFactory.instance.objectNode().put("$ref", "#/components/schemas/SheetLine");
        List<String> ids = new ArrayList<>();
        answer.text().lines().forEach(text -> {
            JsonNode tree = Wire.JSON.read(text);
            assertThat(CONTRACT.faults(line, tree)).as(text).isEmpty();
            if (tree.has("portion")) {
                ids.add(tree.at("/portion/line").asString());
            }
        });
        assertThat(ids).as("a line for each portion, in the order they came").containsExactly("2", "3", "4");
    }
}
