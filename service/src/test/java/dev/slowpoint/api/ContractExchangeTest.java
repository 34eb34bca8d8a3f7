package dev.slowpoint.api;

import static org.assertj.core.api.Assertions.assertThat;

import io.restassured.response.Response;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;

/** Real exchanges keep the contract to the letter: status, media type, headers and body, in JSON and in CBOR. */
class ContractExchangeTest extends HttpTest {

    /** Of each path with a parameter, one entry that is there. */
    private static final Map<String, List<String>> ENTRIES = Map.of(
            "/v1/foods/{id}", List.of("pork-loin", "trout", "egg-in-shell"),
            "/v1/rules/{id}", List.of("us-fsis-2021", "FC-COOL", "au-vic"),
            "/v1/parameter-sets/{version}", List.of("2026.1"),
            "/v1/parameter-sets/{version}/differences", List.of("2026.1/differences?from=2026.1"),
            "/v1/warnings/{code}", List.of("FROM_FROZEN"),
            "/v1/problems/{code}", List.of("OUT_OF_RANGE", "not-found"),
            "/problems/{slug}", List.of("out-of-range"));

    private ContractCheck served() {
        return new ContractCheck(http().get("/openapi.json").asByteArray());
    }

    private static List<String> getters(JsonNode contract) {
        return contract.at("/paths").propertyNames().stream()
                .filter(path -> contract.at("/paths").get(path).has("get"))
                .toList();
    }

    private static List<String> addresses(String path) {
        return path.contains("{")
                ? ENTRIES.getOrDefault(path, List.of()).stream()
                        .map(entry -> path.substring(0, path.indexOf('{')) + entry)
                        .toList()
                : List.of(path);
    }

    /** All that may be included, joined by commas. */
    private static String included(JsonNode contract, String path) {
        for (JsonNode parameter : contract.at("/paths/" + path.replace("/", "~1") + "/post/parameters")) {
            if (parameter.at("/name").asString().equals("include")) {
                return String.join(
                        ",",
                        parameter
                                .at("/schema/items/enum")
                                .valueStream()
                                .map(JsonNode::asString)
                                .toList());
            }
        }
        return "";
    }

    private void examples(ContractCheck check, String type) throws IOException {
        for (Path file : ExamplesTest.requests()) {
            String path = operation(file.getFileName().toString());
            String body = Files.readString(file);
            String included = included(check.contract(), path);
            for (String query : included.isEmpty() ? List.of("") : List.of("", "?include=" + included)) {
                Response answer = http().contentType(type)
                        .accept(type)
                        .body(type.equals(CBOR) ? cbor(body) : body.getBytes(StandardCharsets.UTF_8))
                        .post(path + query);
                assertThat(answer.statusCode()).as(file + answer.asString()).isEqualTo(200);
                check.check(answer, "post", path);
            }
        }
    }

    private void catalogues(ContractCheck check, String type) {
        for (String path : getters(check.contract())) {
            assertThat(addresses(path)).as(path).isNotEmpty();
            for (String address : addresses(path)) {
                Response answer = http().accept(type).get(address);
                assertThat(answer.statusCode()).as(address).isEqualTo(200);
                check.check(answer, "get", path);
                Response unchanged = http().accept(type)
                        .header("If-None-Match", answer.header("ETag"))
                        .get(address);
                assertThat(unchanged.statusCode()).as(address).isEqualTo(304);
                check.check(unchanged, "get", path);
            }
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {JSON, CBOR})
    void every_example_is_answered_to_the_letter(String type) throws IOException {
        examples(served(), type);
    }

    @ParameterizedTest
    @ValueSource(strings = {JSON, CBOR})
    void every_catalogue_is_answered_to_the_letter(String type) {
        catalogues(served(), type);
    }

    @ParameterizedTest
    @CsvSource({
        "cook-plan-pork-loin, image/svg+xml",
        "process-window-weekly-loin, text/csv",
        "lookup-table-thin-chicken, text/csv",
        "log-review-loose-plug, text/html",
        "portion-sheet-weekly-box, image/svg+xml"
    })
    void pictures_tables_and_pages_carry_the_headers_that_are_told(String example, String type) throws IOException {
        String path = operation(example + ".request.json");
        Response answer = http().contentType(JSON)
                .accept(type)
                .body(Files.readString(Path.of("../api-spec/examples/" + example + ".request.json")))
                .post(path);
        assertThat(answer.statusCode()).as(answer.asString()).isEqualTo(200);
        served().check(answer, "post", path);
    }

    @ParameterizedTest
    @ValueSource(strings = {"text/csv", "application/x-ndjson"})
    void streams_carry_the_headers_that_are_told(String type) {
        String body = type.equals("text/csv") ? SheetTable.EXAMPLE : SheetStream.EXAMPLE;
        Response answer = http().contentType(type)
                .accept(type)
                .body(body.getBytes(StandardCharsets.UTF_8))
                .post(SHEETS);
        assertThat(answer.statusCode()).as(answer.asString()).isEqualTo(200);
        assertThat(answer.header("Slowpoint-Parameter-Set")).isEqualTo("2026.1");
        served().check(answer, "post", SHEETS);
    }

    /** A body that is sent to plan a cook, and the code of its problem. */
    private record Fault(String code, int status, String type, String accept, String body) {}

    private static Fault of(String code, int status, String body) {
        return new Fault(code, status, JSON, JSON, body);
    }

    private static List<Fault> faults() {
        String deep = "[".repeat(30) + "]".repeat(30);
        return List.of(
                of("EMPTY_BODY", 400, ""),
                of("MALFORMED_BODY", 400, "{"),
                of("TRAILING_CONTENT", 400, PORK + " {}"),
                of("NESTING_TOO_DEEP", 400, porkWith("45", deep)),
                of("LIMIT_EXCEEDED", 400, porkWith("pork-loin", "x".repeat(2000))),
                of("UNKNOWN_FIELD", 400, porkWith("thicknessMm", "thickness")),
                of("DUPLICATE_FIELD", 400, porkWith("\"thicknessMm\":45", "\"thicknessMm\":45,\"thicknessMm\":45")),
                of("MISSING_FIELD", 400, "{}"),
                of("NULL_VALUE", 400, porkWith("45", "null")),
                of("WRONG_TYPE", 400, porkWith("45", "\"45\"")),
                of("NOT_FINITE", 400, porkWith("45", "NaN")),
                of("OUT_OF_RANGE", 400, porkWith("45", "2")),
                of("UNKNOWN_WORD", 400, porkWith("\"slab\"", "\"slap\"")),
                of("WRONG_PATTERN", 400, porkWith("pork-loin", "Pork loin")),
                of("SIZE_MISSING", 400, porkWith(",\"thicknessMm\":45", "")),
                of("SIZE_NOT_OF_SHAPE", 400, porkWith("45", "45,\"diameterMm\":45")),
                new Fault("NOT_ACCEPTABLE", 406, JSON, "application/pdf", PORK),
                of("BODY_TOO_LARGE", 413, " ".repeat(70_000)),
                new Fault("UNSUPPORTED_MEDIA_TYPE", 415, "application/xml", JSON, PORK),
                of("UNKNOWN_FOOD", 422, porkWith("pork-loin", "pork-lion")),
                of("UNKNOWN_PARAMETER_SET", 422, PORK.replaceFirst("\\{", "{\"parameterSet\":\"1999.1\",")),
                of("ABOVE_BOILING_POINT", 422, porkWith("{\"setpointC\":60}", "{\"setpointC\":98},\"altitudeM\":3000")),
                of("START_TOO_WARM", 422, porkWith("\"temperatureC\":4", "\"temperatureC\":45")),
                of("INTERNAL_ERROR", 500, porkWith("pork-loin", TroubledKitchen.BUG)));
    }

    @ParameterizedTest
    @ValueSource(strings = {JSON, CBOR})
    void every_problem_that_can_be_provoked_keeps_the_contract(String wire) {
        ContractCheck check = served();
        Set<String> provoked = new TreeSet<>();
        for (Fault fault : faults()) {
            boolean binary = wire.equals(CBOR) && fault.type().equals(JSON);
            if (binary && !readable(fault.body())) {
                continue;
            }
            Response answer = http().contentType(binary ? CBOR : fault.type())
                    .accept(fault.accept().equals(JSON) ? wire : fault.accept())
                    .body(binary ? cbor(fault.body()) : fault.body().getBytes(StandardCharsets.UTF_8))
                    .post(PLANS);
            assertThat(answer.statusCode()).as(fault.code() + answer.asString()).isEqualTo(fault.status());
            assertThat(answer.contentType()).isEqualTo(PROBLEM);
            assertThat(READER.readTree(answer.asByteArray()).at("/code").asString())
                    .as(answer.asString())
                    .isEqualTo(fault.code());
            check.check(answer, "post", PLANS);
            assertThat(check.resolved(check.contract().at("/paths/~1v1~1cook-plans/post/responses/" + fault.status()))
                            .at("/content/application~1problem+json/examples")
                            .propertyNames())
                    .as("the contract shows " + fault.code())
                    .contains(fault.code());
            provoked.add(fault.code());
        }
        assertThat(provoked).hasSizeGreaterThan(12);
    }

    /** Whether a body is one that CBOR can say as well: no broken text, and no member twice. */
    private static boolean readable(String body) {
        return body.startsWith("{\"")
                && !body.endsWith(" {}")
                && !body.contains("NaN")
                && body.split("thicknessMm", -1).length < 3;
    }

    @ParameterizedTest
    @CsvSource({
        "/v1/foods?what=1, /v1/foods, 400",
        "/v1/foods/nothing, /v1/foods/{id}, 404",
        "/v1/foods?units=feet, /v1/foods, 400",
        "/problems/nothing, /problems/{slug}, 404",
        "/v1/parameter-sets/1999.1, /v1/parameter-sets/{version}, 404",
        "/v1/parameter-sets/2026.1/differences, /v1/parameter-sets/{version}/differences, 400",
        "/v1/parameter-sets/2026.1/differences?from=1999.1, /v1/parameter-sets/{version}/differences, 422"
    })
    void every_problem_of_a_catalogue_keeps_the_contract(String address, String path, int status) {
        Response answer = http().get(address);
        assertThat(answer.statusCode()).isEqualTo(status);
        served().check(answer, "get", path);
    }

    /**
     * Members that all answers of this test may have, though others lack them, by the reason for which they do. A member that
     * joins them is either to be required or to be named here.
     */
    private static final Map<String, String> MAY_BE_ABSENT = Map.of(
            "the food never gets " + "there, or not in " + "that corner",
            "AtSetpoint.goodUntil AtSetpoint.hotThrough AtSetpoint.softFrom AtSetpoint.tender "
                    + "Milestone.earlyS Milestone.lateS Milestone.nominalS Times.hotThrough "
                    + "Times.tender Window.opensS TimeLeft.latestS StepOutcome.begins "
                    + "StepOutcome.ends Reheating.hotThroughAfter ChillPlanAnswer.ends LevelTime.after "
                    + "CoolingLimit.leftS CoolingLimit.taken BathCourse.backAtS Uncertainty.goodUntil "
                    + "Uncertainty.safe Uncertainty.tender SearEffect.chillFirst SearEffect.lowerSetpointC "
                    + "SearEffect.peaksAfterS",
            "no time fits",
            "CookPlanAnswer.takeOut LoadedItem.takeOut ReplanAnswer.takeOut ReplanAnswer.left",
            "no rule asks anything, " + "or none sets a " + "limit",
            "AtSetpoint.verdict Safety.achievedLog10 Safety.band Safety.judgedAtS "
                    + "Safety.marginLog10 Safety.nominalLog10 Safety.organism Safety.requiredLog10 "
                    + "Safety.warmUpLeftS Safety.warmUpS OtherRule.achievedLog10 OtherRule.basis "
                    + "OtherRule.marginLog10 OtherRule.organism OtherRule.requiredLog10 Margins.marginRatio "
                    + "Margins.nominalMarginLog10 TableView.marginRatio Uncertainty.achieved Uncertainty.missProbabilityAtMostPercent "
                    + "Uncertainty.missedPoints Keeping.longestDays LogReviewAnswer.rule NamedRule.edition",
            "the request sent nothing " + "that it comes from",
            "ChillPlanAnswer.keeping LogReviewAnswer.batch LogReviewAnswer.label LogSubject.food "
                    + "SheetBand.food CodedNotice.text Lowering.exchangeL Lowering.pourL "
                    + "LoadPhase.water ReplanAnswer.inferred Inferred.filmWPerM2K Inferred.heaterOff "
                    + "Inferred.heaterOffWorkedOut Inferred.pinned Inferred.thicknessHighMm Inferred.thicknessLowMm "
                    + "Inferred.thicknessMm Reheating.warmUp",
            "texture is not modelled",
            "Texture.confidence Texture.limit Texture.windowS",
            "the model was not " + "tested there, or was " + "tested everywhere",
            "Growth.growthLog10 Growth.nominalLog10 Growth.untestedS",
            "only of one kind " + "of conflict, opening or " + "edge",
            "LoadConflict.needsC LoadConflict.otherAllowsC LoadConflict.otherItem Opening.thicknessMm "
                    + "ProcessPoint.nearestEdge ProcessPoint.spareTolerances SetpointInterval.aboveBarredBy");

    @Test
    void what_is_always_there_is_required() throws IOException {
        ContractCheck check = served();
        examples(check, JSON);
        catalogues(check, JSON);
        for (Fault fault : faults()) {
            check.check(
                    http().contentType(fault.type())
                            .accept(fault.accept())
                            .body(fault.body().getBytes(StandardCharsets.UTF_8))
                            .post(PLANS),
                    "post",
                    PLANS);
        }
        Set<String> explained = new TreeSet<>();
        MAY_BE_ABSENT.values().forEach(names -> explained.addAll(List.of(names.split(" ", -1))));
        List<String> unexplained = new ArrayList<>(check.alwaysThereButNotRequired());
        unexplained.removeAll(explained);
        assertThat(unexplained).isEmpty();
        for (String name : explained) {
            JsonNode schema = check.contract().at("/components/schemas/" + name.replaceFirst("\\..*", ""));
            String member = name.substring(name.indexOf('.') + 1);
            assertThat(schema.at("/properties").has(member)).as(name).isTrue();
            assertThat(schema.at("/required").valueStream().map(JsonNode::asString))
                    .as(name)
                    .doesNotContain(member);
        }
        assertThat(check.objects()).containsKeys("CookPlanAnswer", "Problem", "RuleEntry", "StepOutcome", "SheetBand");
    }
}
