package dev.slowpoint.kit.changes;

import static dev.slowpoint.kit.changes.Contracts.append;
import static dev.slowpoint.kit.changes.Contracts.drop;
import static dev.slowpoint.kit.changes.Contracts.remove;
import static dev.slowpoint.kit.changes.Contracts.rename;
import static dev.slowpoint.kit.changes.Contracts.set;
import static dev.slowpoint.kit.changes.Severity.BREAKING;
import static dev.slowpoint.kit.changes.Severity.COMPATIBLE;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * Deliberate edits of the real contract, each with the verdict that the rules of direction ask for (Zalando RESTful API
 * Guidelines, rules 107 and 111; the edits that a known checker does not see on OpenAPI 3.1 are all here: OpenAPITools
 * openapi-diff 2.1.7).
 */
class ContractChangesTest {

    private static final JsonNode PRESENT = Contracts.present();

    private static final String COOK = "/paths/~1v1~1cook-plans/post";
    private static final String BODY = COOK + "/requestBody";
    private static final String ANSWER = COOK + "/responses/200";
    private static final String REVIEW = "/paths/~1v1~1log-reviews/post";
    private static final String SCHEMAS = "/components/schemas";
    private static final String REQUEST_SCHEMA = SCHEMAS + "/CookPlanRequest";
    private static final String ANSWER_SCHEMA = SCHEMAS + "/CookPlanAnswer";
    private static final String THICKNESS = SCHEMAS + "/Geometry/properties/thicknessMm";
    private static final String SETPOINT = ANSWER_SCHEMA + "/properties/setpointC";
    private static final String THEN = REQUEST_SCHEMA + "/properties/then";
    private static final String RULE = REQUEST_SCHEMA + "/properties/rule";
    private static final String CAUTIONS = ANSWER_SCHEMA + "/properties/cautions";
    private static final String DIGEST = ANSWER_SCHEMA + "/properties/digest";
    private static final String PROBLEM400 = "/components/responses/Problem400/content/application~1problem+json";
    private static final String RETRY = "/components/responses/Problem503/headers/Retry-After";
    private static final String RETRY_HEADER = "/components/headers/RetryAfter";

    private static final String VESSEL = SCHEMAS + "/Vessel";

    /** Puts a named enumeration into both documents: the contract has none. */
    private static void vessel(JsonNode contract) {
        set(contract, VESSEL, "{\"type\": \"string\", \"enum\": [\"pot\", \"tub\"]}");
        set(
                contract,
                REQUEST_SCHEMA + "/properties/vessel",
                "{\"$ref\": \"#/components/schemas/Vessel\", \"default\": \"pot\"}");
    }

    private record Expected(Severity severity, String rule, String pointer) {}

    /** An edit; {@code given} is done to both documents before. */
    private record Edit(String name, Consumer<JsonNode> given, Consumer<JsonNode> edit, List<Expected> expected) {
        @Override
        public String toString() {
            return name;
        }
    }

    private static final class Edits {
        private final List<Edit> all = new ArrayList<>();

        void breaks(String name, String rule, String pointer, Consumer<JsonNode> edit) {
            breaksGiven(name, rule, pointer, contract -> {}, edit);
        }

        void passes(String name, String rule, String pointer, Consumer<JsonNode> edit) {
            passesGiven(name, rule, pointer, contract -> {}, edit);
        }

        void breaksGiven(String name, String rule, String pointer, Consumer<JsonNode> given, Consumer<JsonNode> edit) {
            all.add(new Edit(name, given, edit, List.of(new Expected(BREAKING, rule, pointer))));
        }

        void passesGiven(String name, String rule, String pointer, Consumer<JsonNode> given, Consumer<JsonNode> edit) {
            all.add(new Edit(name, given, edit, List.of(new Expected(COMPATIBLE, rule, pointer))));
        }

        void unseen(String name, Consumer<JsonNode> edit) {
            all.add(new Edit(name, contract -> {}, edit, List.of()));
        }

        void several(String name, Consumer<JsonNode> given, Consumer<JsonNode> edit, Expected... expected) {
            all.add(new Edit(name, given, edit, List.of(expected)));
        }
    }

    static Stream<Edit> edits() {
        Edits edits = new Edits();
        paths(edits);
        parameters(edits);
        bodies(edits);
        requestSchemas(edits);
        answers(edits);
        answerSchemas(edits);
        bothSides(edits);
        security(edits);
        return edits.all.stream();
    }

    private static void paths(Edits edits) {
        edits.breaks(
                "a path is gone",
                "path-removed",
                "#/paths/~1v1~1foods",
                contract -> remove(contract, "/paths/~1v1~1foods"));
        edits.several(
                "a path has another name",
                contract -> {},
                contract -> rename(contract, "/paths/~1v1~1foods", "/v1/products"),
                new Expected(BREAKING, "path-removed", "#/paths/~1v1~1foods"),
                new Expected(COMPATIBLE, "path-added", "#/paths/~1v1~1products"));
        edits.breaks("an operation is gone", "operation-removed", "#" + COOK, contract -> remove(contract, COOK));
        edits.breaks(
                "an operation has another id",
                "operation-id-changed",
                "#" + COOK + "/operationId",
                contract -> set(contract, COOK + "/operationId", "\"computeCook\""));
        edits.breaks(
                "an operation moves to another tag",
                "tags-changed",
                "#" + COOK + "/tags",
                contract -> set(contract, COOK + "/tags", "[\"catalogues\"]"));
        edits.breaks(
                "the title changes",
                "title-changed",
                "#/info/title",
                contract -> set(contract, "/info/title", "\"Other\""));
        edits.breaks("another server", "server-removed", "#/servers", contract -> remove(contract, "/servers/0"));
        edits.breaks(
                "something nobody said how to judge",
                "keyword-not-judged",
                "#" + COOK + "/callbacks",
                contract -> set(contract, COOK + "/callbacks", "{\"done\": {}}"));
        edits.passes(
                "a path is new",
                "path-added",
                "#/paths/~1v1~1ovens",
                contract -> set(contract, "/paths/~1v1~1ovens", "{\"get\": {}}"));
        edits.passes(
                "an operation is new",
                "operation-added",
                "#/paths/~1v1~1foods/post",
                contract -> set(contract, "/paths/~1v1~1foods/post", "{\"operationId\": \"addFood\"}"));
        edits.passes(
                "an operation is deprecated",
                "operation-deprecated",
                "#" + COOK,
                contract -> set(contract, COOK + "/deprecated", "true"));
        edits.unseen("only words change", contract -> {
            set(contract, COOK + "/description", "\"Other words.\"");
            set(contract, COOK + "/summary", "\"Other words\"");
            set(contract, THICKNESS + "/description", "\"Other words.\"");
            set(contract, THICKNESS + "/examples", "[44]");
            set(contract, "/info/description", "\"Other words.\"");
        });
    }

    private static void parameters(Edits edits) {
        String include = "#" + COOK + "/parameters/include";
        edits.breaks(
                "a parameter is gone",
                "parameter-removed",
                include,
                contract -> remove(contract, parameter(contract, COOK, "include")));
        edits.breaks(
                "a parameter must be sent",
                "parameter-required",
                include,
                contract -> set(contract, parameter(contract, COOK, "include") + "/required", "true"));
        edits.breaks(
                "a new parameter must be sent",
                "parameter-required",
                "#" + COOK + "/parameters/kitchen",
                contract -> append(
                        contract,
                        COOK + "/parameters",
                        "{\"name\": \"kitchen\", \"in\": \"query\", \"required\": true, \"schema\": {\"type\": \"string\"}}"));
        edits.breaks(
                "a parameter moves from the query to a header",
                "parameter-moved",
                "#" + COOK + "/parameters/units",
                contract -> set(contract, parameter(contract, COOK, "units") + "/in", "\"header\""));
        edits.breaks(
                "a list in a parameter is written in several",
                "parameter-style-changed",
                include,
                contract -> set(contract, parameter(contract, COOK, "include") + "/explode", "true"));
        edits.breaks(
                "a word of a parameter is gone",
                "request-enum-reduced",
                include + "/schema/items",
                contract -> drop(contract, parameter(contract, COOK, "include") + "/schema/items/enum", "curve"));
        edits.breaks(
                "a parameter has another type",
                "request-type-changed",
                "#" + REVIEW + "/parameters/errorK/schema",
                contract -> set(contract, parameter(contract, REVIEW, "errorK") + "/schema/type", "\"string\""));
        edits.breaks(
                "a parameter has a narrower range",
                "request-bound-tightened",
                "#" + REVIEW + "/parameters/errorK/schema",
                contract -> set(contract, parameter(contract, REVIEW, "errorK") + "/schema/maximum", "0.001"));
        edits.breaks(
                "a parameter has another default",
                "request-default-changed",
                "#" + COOK + "/parameters/units/schema",
                contract -> set(contract, parameter(contract, COOK, "units") + "/schema/default", "\"us\""));
        edits.passes(
                "a new parameter may be sent",
                "parameter-added",
                "#" + COOK + "/parameters/kitchen",
                contract -> append(
                        contract,
                        COOK + "/parameters",
                        "{\"name\": \"kitchen\", \"in\": \"query\", \"schema\": {\"type\": \"string\"}}"));
        edits.passes(
                "a word of a parameter is new",
                "request-enum-extended",
                include + "/schema/items",
                contract ->
                        append(contract, parameter(contract, COOK, "include") + "/schema/items/enum", "\"photos\""));
        edits.unseen("what a parameter says anyway is written out", contract -> {
            set(contract, parameter(contract, COOK, "include") + "/style", "\"form\"");
            set(contract, parameter(contract, COOK, "units") + "/explode", "true");
            set(contract, parameter(contract, COOK, "Accept-Language") + "/style", "\"simple\"");
        });
        edits.unseen("parameters stand in another order", contract -> {
            ArrayNode list = (ArrayNode) contract.at(COOK + "/parameters");
            List<JsonNode> turned = new ArrayList<>(list.valueStream().toList());
            Collections.reverse(turned);
            list.removeAll().addAll(turned);
        });
        edits.unseen("a parameter becomes a component", contract -> {
            String place = parameter(contract, COOK, "units");
            JsonNode units = contract.at(place).deepCopy();
            ((ObjectNode) contract.path("components")).putObject("parameters").set("Units", units);
            set(contract, place, "{\"$ref\": \"#/components/parameters/Units\"}");
        });
    }

    private static void bodies(Edits edits) {
        edits.breaks(
                "a body is no longer read in one form",
                "request-media-type-removed",
                "#" + BODY + "/content/application~1cbor",
                contract -> remove(contract, BODY + "/content/application~1cbor"));
        edits.breaks(
                "a body must be sent",
                "body-required",
                "#/paths/~1v1~1foods/get/requestBody",
                contract ->
                        set(contract, "/paths/~1v1~1foods/get/requestBody", "{\"required\": true, \"content\": {}}"));
        edits.breaksGiven(
                "a body that need not be sent must be sent",
                "body-required",
                "#" + BODY,
                contract -> remove(contract, BODY + "/required"),
                contract -> set(contract, BODY + "/required", "true"));
        edits.passes(
                "a body is read in one more form",
                "request-media-type-added",
                "#" + BODY + "/content/text~1csv",
                contract -> set(contract, BODY + "/content/text~1csv", "{\"schema\": {\"type\": \"string\"}}"));
        edits.passes(
                "a body need no longer be sent",
                "body-optional",
                "#" + BODY,
                contract -> remove(contract, BODY + "/required"));
    }

    private static void requestSchemas(Edits edits) {
        String thickness = "#" + THICKNESS;
        edits.breaks(
                "a member of a request is gone",
                "request-property-removed",
                thickness,
                contract -> remove(contract, THICKNESS));
        edits.breaks(
                "a member of a request must be sent",
                "request-property-required",
                "#" + REQUEST_SCHEMA + "/properties/target",
                contract -> append(contract, REQUEST_SCHEMA + "/required", "\"target\""));
        edits.several(
                "a new member of a request must be sent",
                contract -> {},
                contract -> {
                    set(contract, REQUEST_SCHEMA + "/properties/kitchen", "{\"type\": \"string\"}");
                    append(contract, REQUEST_SCHEMA + "/required", "\"kitchen\"");
                },
                new Expected(BREAKING, "request-property-required", "#" + REQUEST_SCHEMA + "/properties/kitchen"),
                new Expected(COMPATIBLE, "request-property-added", "#" + REQUEST_SCHEMA + "/properties/kitchen"));
        edits.breaks(
                "a text in a request becomes a number",
                "request-type-changed",
                "#" + RULE,
                contract -> set(contract, RULE + "/type", "\"integer\""));
        edits.breaks(
                "a number in a request becomes a whole number",
                "request-type-changed",
                thickness,
                contract -> set(contract, THICKNESS + "/type", "\"integer\""));
        edits.breaksGiven(
                "null is no longer read",
                "request-type-changed",
                "#" + RULE,
                contract -> set(contract, RULE + "/type", "[\"string\", \"null\"]"),
                contract -> set(contract, RULE + "/type", "\"string\""));
        edits.breaks(
                "the items of a list in a request have another type",
                "request-type-changed",
                "#" + SCHEMAS + "/Portion/properties/measuredMm/items",
                contract -> set(contract, SCHEMAS + "/Portion/properties/measuredMm/items/type", "\"string\""));
        edits.breaks(
                "a number in a request has another format",
                "request-format-changed",
                thickness,
                contract -> set(contract, THICKNESS + "/format", "\"float\""));
        edits.breaks(
                "a number in a request has another unit",
                "request-unit-changed",
                thickness,
                contract -> set(contract, THICKNESS + "/x-unit", "\"cm\""));
        edits.breaks(
                "the least of a request rises",
                "request-bound-tightened",
                thickness,
                contract -> set(contract, THICKNESS + "/minimum", "4"));
        edits.breaks(
                "the most of a request falls",
                "request-bound-tightened",
                thickness,
                contract -> set(contract, THICKNESS + "/maximum", "200"));
        edits.breaksGiven(
                "the excluded least of a request rises",
                "request-bound-tightened",
                thickness,
                contract -> set(contract, THICKNESS + "/exclusiveMinimum", "4"),
                contract -> set(contract, THICKNESS + "/exclusiveMinimum", "5"));
        edits.breaks(
                "the least of a request is excluded",
                "request-bound-tightened",
                thickness,
                contract -> rename(contract, THICKNESS + "/minimum", "exclusiveMinimum"));
        edits.breaks(
                "a text in a request must be shorter",
                "request-bound-tightened",
                "#" + RULE,
                contract -> set(contract, RULE + "/maxLength", "32"));
        edits.breaks(
                "a text in a request must be longer",
                "request-bound-tightened",
                "#" + RULE,
                contract -> set(contract, RULE + "/minLength", "2"));
        edits.breaks(
                "a text in a request follows another pattern",
                "request-pattern-changed",
                "#" + RULE,
                contract -> set(contract, RULE + "/pattern", "\"^[a-z]+$\""));
        edits.breaks(
                "a list in a request holds fewer",
                "request-bound-tightened",
                "#" + THEN,
                contract -> set(contract, THEN + "/maxItems", "6"));
        edits.breaks(
                "a list in a request needs more",
                "request-bound-tightened",
                "#" + THEN,
                contract -> set(contract, THEN + "/minItems", "1"));
        edits.breaks(
                "a list in a request must not repeat",
                "request-bound-tightened",
                "#" + THEN,
                contract -> set(contract, THEN + "/uniqueItems", "true"));
        edits.breaks(
                "a number in a request must be a multiple",
                "request-bound-tightened",
                thickness,
                contract -> set(contract, THICKNESS + "/multipleOf", "0.5"));
        edits.breaksGiven(
                "a word of a request is gone",
                "request-enum-reduced",
                "#" + VESSEL,
                ContractChangesTest::vessel,
                contract -> drop(contract, VESSEL + "/enum", "tub"));
        edits.breaksGiven(
                "a default beside a reference changes",
                "request-default-changed",
                "#" + REQUEST_SCHEMA + "/properties/vessel",
                ContractChangesTest::vessel,
                contract -> set(contract, REQUEST_SCHEMA + "/properties/vessel/default", "\"tub\""));
        edits.breaks(
                "a default is gone",
                "request-default-changed",
                "#" + SCHEMAS + "/Pack/properties/salted",
                contract -> remove(contract, SCHEMAS + "/Pack/properties/salted/default"));
        edits.breaksGiven(
                "a schema has another name",
                "type-renamed",
                "#" + REQUEST_SCHEMA + "/properties/vessel",
                ContractChangesTest::vessel,
                contract -> {
                    rename(contract, VESSEL, "Tub");
                    set(contract, REQUEST_SCHEMA + "/properties/vessel/$ref", "\"#/components/schemas/Tub\"");
                });
        edits.breaks(
                "a union comes into a request",
                "keyword-not-judged",
                "#" + REQUEST_SCHEMA + "/oneOf",
                contract -> set(contract, REQUEST_SCHEMA + "/oneOf", "[{\"type\": \"object\"}]"));
        edits.breaksGiven(
                "a request no longer takes other members",
                "request-unknown-members-refused",
                "#" + REQUEST_SCHEMA,
                contract -> remove(contract, REQUEST_SCHEMA + "/additionalProperties"),
                contract -> set(contract, REQUEST_SCHEMA + "/additionalProperties", "false"));

        edits.passes(
                "a new member of a request may be sent",
                "request-property-added",
                "#" + REQUEST_SCHEMA + "/properties/kitchen",
                contract -> set(contract, REQUEST_SCHEMA + "/properties/kitchen", "{\"type\": \"string\"}"));
        edits.passes(
                "a member of a request need no longer be sent",
                "request-property-optional",
                "#" + REQUEST_SCHEMA + "/properties/start",
                contract -> drop(contract, REQUEST_SCHEMA + "/required", "start"));
        edits.passesGiven(
                "a word of a request is new",
                "request-enum-extended",
                "#" + VESSEL,
                ContractChangesTest::vessel,
                contract -> append(contract, VESSEL + "/enum", "\"oven\""));
        edits.passes(
                "the most of a request rises",
                "request-bound-loosened",
                thickness,
                contract -> set(contract, THICKNESS + "/maximum", "300"));
        edits.passes(
                "the least of a request falls away",
                "request-bound-loosened",
                thickness,
                contract -> remove(contract, THICKNESS + "/minimum"));
        edits.passes(
                "a pattern of a request falls away",
                "request-bound-loosened",
                "#" + RULE,
                contract -> remove(contract, RULE + "/pattern"));
        edits.passes(
                "null is read as well",
                "request-type-changed",
                "#" + RULE,
                contract -> set(contract, RULE + "/type", "[\"string\", \"null\"]"));
        edits.passes(
                "a unit is told where none was",
                "request-unit-told",
                "#" + SCHEMAS + "/LoadItem/properties/count",
                contract -> set(contract, SCHEMAS + "/LoadItem/properties/count/x-unit", "\"{piece}\""));
        edits.passes(
                "a default is told where none was",
                "request-default-told",
                "#" + RULE,
                contract -> set(contract, RULE + "/default", "\"us-fsis-2021\""));
        edits.unseen("the same bounds are written in other words", contract -> {
            set(contract, THICKNESS + "/minimum", "3.0");
            set(contract, THEN + "/maxItems", "12.0");
            remove(contract, THEN + "/minItems");
            set(contract, RULE + "/minLength", "0");
            set(contract, THEN + "/uniqueItems", "false");
        });
    }

    private static void answers(Edits edits) {
        edits.breaks(
                "a status is gone",
                "status-removed",
                "#" + COOK + "/responses/422",
                contract -> remove(contract, COOK + "/responses/422"));
        edits.breaks(
                "another success is new",
                "success-status-added",
                "#" + COOK + "/responses/202",
                contract -> set(contract, COOK + "/responses/202", "{\"description\": \"Later\"}"));
        edits.breaks(
                "an answer is no longer written in one form",
                "answer-media-type-removed",
                "#" + ANSWER + "/content/image~1svg+xml",
                contract -> remove(contract, ANSWER + "/content/image~1svg+xml"));
        edits.breaks("a header is gone", "header-removed", "#" + RETRY, contract -> remove(contract, RETRY));
        edits.breaks(
                "a header has another type",
                "answer-type-changed",
                "#" + RETRY_HEADER + "/schema",
                contract -> set(contract, RETRY_HEADER + "/schema/type", "\"string\""));
        edits.breaksGiven(
                "a header may be absent",
                "header-optional",
                "#" + RETRY_HEADER,
                contract -> set(contract, RETRY_HEADER + "/required", "true"),
                contract -> remove(contract, RETRY_HEADER + "/required"));
        edits.breaks(
                "a code of problems is gone",
                "problem-code-removed",
                "#" + PROBLEM400 + "/examples/OUT_OF_RANGE",
                contract -> remove(contract, PROBLEM400 + "/examples/OUT_OF_RANGE"));
        edits.passes(
                "a failure is new",
                "status-added",
                "#" + COOK + "/responses/418",
                contract -> set(contract, COOK + "/responses/418", "{\"description\": \"Too many\"}"));
        edits.passes(
                "an answer is written in one more form",
                "answer-media-type-added",
                "#" + ANSWER + "/content/text~1csv",
                contract -> set(contract, ANSWER + "/content/text~1csv", "{\"schema\": {\"type\": \"string\"}}"));
        edits.passes("a header is new", "header-added", "#" + ANSWER + "/headers/X-New", contract -> {
            if (contract.at(ANSWER + "/headers").isMissingNode()) {
                set(contract, ANSWER + "/headers", "{}");
            }
            set(contract, ANSWER + "/headers/X-New", "{\"schema\": {\"type\": \"string\"}}");
        });
        edits.passes(
                "a code of problems is new",
                "problem-code-added",
                "#" + PROBLEM400 + "/examples/NEWLY_FOUND",
                contract -> set(contract, PROBLEM400 + "/examples/NEWLY_FOUND", "{\"value\": {}}"));
        edits.unseen(
                "an example of an answer is gone",
                contract -> remove(contract, ANSWER + "/content/application~1json/examples"));
    }

    private static void answerSchemas(Edits edits) {
        String setpoint = "#" + SETPOINT;
        String bestS = SCHEMAS + "/TakeOut/properties/bestS";
        edits.breaks(
                "a member of an answer is gone",
                "answer-property-removed",
                "#" + ANSWER_SCHEMA + "/properties/shapeErrorPercent",
                contract -> remove(contract, ANSWER_SCHEMA + "/properties/shapeErrorPercent"));
        edits.breaks(
                "a member of an answer may be absent",
                "answer-property-optional",
                "#" + ANSWER_SCHEMA + "/properties/safety",
                contract -> drop(contract, ANSWER_SCHEMA + "/required", "safety"));
        edits.breaks(
                "a whole number in an answer becomes a text",
                "answer-type-changed",
                "#" + bestS,
                contract -> set(contract, bestS + "/type", "\"string\""));
        edits.breaks(
                "a whole number in an answer becomes any number",
                "answer-type-changed",
                "#" + bestS,
                contract -> set(contract, bestS + "/type", "\"number\""));
        edits.breaks(
                "a list in an answer becomes a text",
                "answer-type-changed",
                "#" + CAUTIONS,
                contract -> set(contract, CAUTIONS, "{\"type\": \"string\"}"));
        edits.breaks(
                "the items of a list in an answer have another type",
                "answer-type-changed",
                "#" + SCHEMAS + "/Curve/properties/coreC/items",
                contract -> set(contract, SCHEMAS + "/Curve/properties/coreC/items/type", "\"string\""));
        edits.breaks(
                "an answer may hold null",
                "answer-type-changed",
                "#" + DIGEST,
                contract -> set(contract, DIGEST + "/type", "[\"string\", \"null\"]"));
        edits.breaks("type and format of an answer change together", "answer-type-changed", "#" + bestS, contract -> {
            set(contract, bestS + "/type", "\"number\"");
            set(contract, bestS + "/format", "\"double\"");
        });
        edits.breaks(
                "a number in an answer has another format",
                "answer-format-changed",
                "#" + bestS,
                contract -> set(contract, bestS + "/format", "\"int64\""));
        edits.breaks(
                "a number in an answer has another unit",
                "answer-unit-changed",
                "#" + bestS,
                contract -> set(contract, bestS + "/x-unit", "\"min\""));
        edits.breaks(
                "a number in an answer loses its unit",
                "answer-unit-changed",
                setpoint,
                contract -> remove(contract, SETPOINT + "/x-unit"));
        edits.breaks(
                "the most of an answer rises",
                "answer-bound-loosened",
                setpoint,
                contract -> set(contract, SETPOINT + "/maximum", "120"));
        edits.breaks(
                "the least of an answer falls away",
                "answer-bound-loosened",
                setpoint,
                contract -> remove(contract, SETPOINT + "/minimum"));
        edits.breaksGiven(
                "a closed word of an answer is new",
                "answer-enum-extended",
                "#" + DIGEST,
                contract -> set(contract, DIGEST + "/enum", "[\"a\", \"b\"]"),
                contract -> append(contract, DIGEST + "/enum", "\"c\""));
        edits.breaksGiven(
                "closed words of an answer become open",
                "answer-enum-extended",
                "#" + DIGEST,
                contract -> set(contract, DIGEST + "/enum", "[\"a\", \"b\"]"),
                contract -> remove(contract, DIGEST + "/enum"));
        edits.breaksGiven(
                "a fixed word of an answer changes",
                "answer-enum-extended",
                "#" + DIGEST,
                contract -> set(contract, DIGEST + "/enum", "[\"a\"]"),
                contract -> {
                    remove(contract, DIGEST + "/enum");
                    append(contract, DIGEST + "/enum", "\"a\"");
                    set(contract, DIGEST + "/const", "\"b\"");
                });
        edits.breaksGiven(
                "a member comes into an answer that allowed no others",
                "answer-property-added",
                "#" + ANSWER_SCHEMA + "/properties/kitchen",
                contract -> set(contract, ANSWER_SCHEMA + "/additionalProperties", "false"),
                contract -> set(contract, ANSWER_SCHEMA + "/properties/kitchen", "{\"type\": \"string\"}"));

        edits.passes(
                "a member of an answer is new",
                "answer-property-added",
                "#" + ANSWER_SCHEMA + "/properties/kitchen",
                contract -> set(contract, ANSWER_SCHEMA + "/properties/kitchen", "{\"type\": \"string\"}"));
        edits.passes(
                "a member of an answer is new and always there",
                "answer-property-added",
                "#" + ANSWER_SCHEMA + "/properties/kitchen",
                contract -> {
                    set(contract, ANSWER_SCHEMA + "/properties/kitchen", "{\"type\": \"string\"}");
                    append(contract, ANSWER_SCHEMA + "/required", "\"kitchen\"");
                });
        edits.passes(
                "a member of an answer is now always there",
                "answer-property-required",
                "#" + ANSWER_SCHEMA + "/properties/takeOut",
                contract -> append(contract, ANSWER_SCHEMA + "/required", "\"takeOut\""));
        edits.passes(
                "the most of an answer falls",
                "answer-bound-tightened",
                setpoint,
                contract -> set(contract, SETPOINT + "/maximum", "95"));
        edits.passesGiven(
                "a list in an answer gets a length",
                "answer-bound-tightened",
                "#" + CAUTIONS,
                contract -> remove(contract, CAUTIONS + "/maxItems"),
                contract -> set(contract, CAUTIONS + "/maxItems", "40"));
        edits.passesGiven(
                "a closed word of an answer is gone",
                "answer-enum-reduced",
                "#" + DIGEST,
                contract -> set(contract, DIGEST + "/enum", "[\"a\", \"b\"]"),
                contract -> drop(contract, DIGEST + "/enum", "b"));
        edits.passes(
                "a member of an answer is deprecated",
                "answer-deprecated",
                "#" + DIGEST,
                contract -> set(contract, DIGEST + "/deprecated", "true"));
        edits.unseen(
                "another example of an open word of an answer",
                contract -> set(contract, SCHEMAS + "/Warning/properties/severity/examples", "[\"notice\"]"));
    }

    private static void bothSides(Edits edits) {
        Consumer<JsonNode> shared = contract -> {
            vessel(contract);
            set(contract, ANSWER_SCHEMA + "/properties/vessel", "{\"$ref\": \"#/components/schemas/Vessel\"}");
        };
        edits.several(
                "a word is new in a schema of both sides",
                shared,
                contract -> append(contract, VESSEL + "/enum", "\"oven\""),
                new Expected(BREAKING, "answer-enum-extended", "#" + VESSEL),
                new Expected(COMPATIBLE, "request-enum-extended", "#" + VESSEL));
        edits.several(
                "a word is gone in a schema of both sides",
                shared,
                contract -> drop(contract, VESSEL + "/enum", "tub"),
                new Expected(BREAKING, "request-enum-reduced", "#" + VESSEL),
                new Expected(COMPATIBLE, "answer-enum-reduced", "#" + VESSEL));
        Consumer<JsonNode> recursive = contract -> set(
                contract, ANSWER_SCHEMA + "/properties/inner", "{\"$ref\": \"#/components/schemas/CookPlanAnswer\"}");
        edits.breaksGiven(
                "a member of a schema that contains itself is gone",
                "answer-property-removed",
                "#" + DIGEST,
                recursive,
                contract -> {
                    remove(contract, DIGEST);
                    drop(contract, ANSWER_SCHEMA + "/required", "digest");
                });
        Consumer<JsonNode> loose = contract -> set(contract, SCHEMAS + "/Loose", "{\"properties\": {\"a\": {}}}");
        edits.several(
                "a member is gone in a schema that no operation refers to",
                loose,
                contract -> remove(contract, SCHEMAS + "/Loose/properties/a"),
                new Expected(BREAKING, "request-property-removed", "#" + SCHEMAS + "/Loose/properties/a"),
                new Expected(BREAKING, "answer-property-removed", "#" + SCHEMAS + "/Loose/properties/a"));
        edits.breaksGiven(
                "a schema that no operation refers to is gone",
                "schema-removed",
                "#" + SCHEMAS + "/Loose",
                loose,
                contract -> remove(contract, SCHEMAS + "/Loose"));
        edits.unseen(
                "a schema that nobody refers to is new",
                contract -> set(contract, SCHEMAS + "/Unused", "{\"type\": \"object\"}"));
    }

    private static void security(Edits edits) {
        edits.breaksGiven(
                "one operation asks for a key",
                "security-added",
                "#" + COOK + "/security",
                contract -> set(contract, COOK + "/security", "[]"),
                contract -> set(contract, COOK + "/security", "[{\"key\": []}]"));
        edits.breaksGiven(
                "an operation asks for one scope more",
                "security-added",
                "#" + COOK + "/security",
                contract -> set(contract, COOK + "/security", "[{\"login\": [\"read\"]}]"),
                contract -> set(contract, COOK + "/security", "[{\"login\": [\"read\", \"plan\"]}]"));
        edits.passesGiven(
                "an operation lets in with another key as well",
                "security-loosened",
                "#" + COOK + "/security",
                contract -> set(contract, COOK + "/security", "[{\"key\": []}]"),
                contract -> append(contract, COOK + "/security", "{\"login\": []}"));
        edits.unseen("no security is said to be none", contract -> set(contract, COOK + "/security", "[{}]"));
    }

    private static String parameter(JsonNode contract, String operation, String name) {
        JsonNode parameters = contract.at(operation + "/parameters");
        for (int i = 0; i < parameters.size(); i++) {
            JsonNode parameter = parameters.get(i);
            if (parameter.has("$ref")) {
                parameter = contract.at(parameter.path("$ref").asString().substring(1));
            }
            if (parameter.path("name").asString().equals(name)) {
                return operation + "/parameters/" + i;
            }
        }
        throw new IllegalStateException("No parameter " + name + " at " + operation);
    }

    @ParameterizedTest
    @MethodSource("edits")
    void an_edit_gets_the_verdict_of_its_direction(Edit edit) {
        JsonNode released = PRESENT.deepCopy();
        edit.given.accept(released);
        JsonNode current = released.deepCopy();
        edit.edit.accept(current);

        assertThat(current).as("the edit changes something").isNotEqualTo(released);
        assertThat(ContractChanges.between(released, current))
                .extracting(change -> new Expected(change.severity(), change.rule(), change.pointer()))
                .containsExactlyInAnyOrderElementsOf(edit.expected);
    }

    @Test
    void every_edit_has_a_name_of_its_own() {
        assertThat(edits().map(Edit::name)).doesNotHaveDuplicates().hasSizeGreaterThan(80);
    }

    @Test
    void a_security_of_all_operations_breaks_each_that_says_nothing_else() {
        JsonNode open = PRESENT.deepCopy();
        set(open, "/security", "[]");
        JsonNode current = open.deepCopy();
        set(current, "/security", "[{\"key\": []}]");

        long operations = PRESENT.path("paths")
                .valueStream()
                .flatMap(JsonNode::valueStream)
                .filter(operation -> operation.has("operationId") && !operation.has("security"))
                .count();
        assertThat(ContractChanges.between(open, current))
                .hasSize((int) operations)
                .allMatch(change -> change.rule().equals("security-added"));
    }

    @Test
    void the_same_document_has_no_changes() {
        assertThat(ContractChanges.between(PRESENT, PRESENT.deepCopy())).isEmpty();
    }

    @Test
    void the_order_of_members_does_not_matter() {
        JsonNode turned = turned(PRESENT);
        assertThat(turned.toString()).isNotEqualTo(PRESENT.toString());
        assertThat(ContractChanges.between(PRESENT, turned)).isEmpty();
        assertThat(ContractChanges.between(turned, PRESENT)).isEmpty();
    }

    private static JsonNode turned(JsonNode node) {
        if (node instanceof ObjectNode object) {
            ObjectNode turned = JsonNodeFactory.instance.objectNode();
            List<String> names = new ArrayList<>(object.propertyNames());
            Collections.reverse(names);
            names.forEach(name -> turned.set(name, turned(object.path(name))));
            return turned;
        }
        if (node instanceof ArrayNode array) {
            ArrayNode same = JsonNodeFactory.instance.arrayNode();
            array.forEach(item -> same.add(turned(item)));
            return same;
        }
        return node;
    }

    @Test
    void every_schema_is_looked_into() {
        JsonNode current = PRESENT.deepCopy();
        Set<String> edited = new TreeSet<>();
        current.path("components").path("schemas").properties().forEach(schema -> {
            if (schema.getValue().has("properties")) {
                String place = SCHEMAS + "/" + schema.getKey() + "/properties/newly";
                set(current, place, "{\"type\": \"string\"}");
                edited.add("#" + place);
            }
        });
        assertThat(edited).hasSizeGreaterThan(100);
        assertThat(ContractChanges.between(PRESENT, current).stream().map(ContractChange::pointer))
                .allMatch(edited::contains)
                .containsAll(edited);
    }

    @Test
    void a_document_of_another_standard_or_with_loose_references_is_refused() {
        JsonNode older = PRESENT.deepCopy();
        set(older, "/openapi", "\"3.0.3\"");
        JsonNode loose = PRESENT.deepCopy();
        set(loose, REQUEST_SCHEMA + "/properties/food/$ref", "\"#/components/schemas/Nowhere\"");
        JsonNode outside = PRESENT.deepCopy();
        set(outside, REQUEST_SCHEMA + "/properties/food/$ref", "\"other.yaml#/Food\"");
        JsonNode twice = PRESENT.deepCopy();
        set(twice, REQUEST_SCHEMA + "/properties/food/type", "\"array\"");

        for (JsonNode current : List.of(older, loose, outside, twice)) {
            assertThatThrownBy(() -> ContractChanges.between(PRESENT, current))
                    .isInstanceOf(IllegalArgumentException.class);
        }
    }

    @Test
    void the_command_line_tells_by_its_exit_code(@TempDir Path folder) throws IOException {
        Path released = folder.resolve("released.yaml");
        Path looser = folder.resolve("looser.json");
        Path broken = folder.resolve("broken.json");
        JsonNode wider = PRESENT.deepCopy();
        set(wider, THICKNESS + "/maximum", "300");
        JsonNode narrower = PRESENT.deepCopy();
        set(narrower, THICKNESS + "/maximum", "200");
        Files.writeString(released, PRESENT.toString());
        Files.writeString(looser, wider.toString());
        Files.writeString(broken, narrower.toString());

        ByteArrayOutputStream out = new ByteArrayOutputStream();
        PrintStream print = new PrintStream(out, true, StandardCharsets.UTF_8);
        assertThat(ContractChanges.run(List.of(released.toString(), looser.toString()), print, print))
                .isZero();
        assertThat(out.toString(StandardCharsets.UTF_8)).contains("0 breaking, 1 compatible");
        assertThat(ContractChanges.run(List.of(released.toString(), broken.toString()), print, print))
                .isEqualTo(1);
        assertThat(out.toString(StandardCharsets.UTF_8))
                .contains("BREAKING request-bound-tightened #" + THICKNESS + ": at most 250 becomes at most 200");
        assertThat(ContractChanges.run(List.of(released.toString()), print, print))
                .isEqualTo(2);
        assertThat(ContractChanges.run(List.of(released.toString(), "absent.yaml"), print, print))
                .isEqualTo(2);
    }
}
