package dev.slowpoint.contract;

import static dev.slowpoint.contract.Spoiling.*;

import dev.slowpoint.contract.Relay.Received;
import dev.slowpoint.contract.Relay.Sent;
import java.io.IOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.function.BiFunction;
import java.util.function.UnaryOperator;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * Servers that are wrong in one way each: the service behind a relay that spoils what goes in or what comes out. For each
 * requirement of the kit that can be tested there is one, so that no test of the kit can be one that never fails.
 */
enum BrokenServer {
    OTHER_CONTRACT("R-001", "", pass(), to("/openapi.yaml", replace("title: Slowpoint", "title: Something"))),
    NO_CAUTIONS("R-002", "planCook", pass(), answer(plan -> plan.remove("cautions"))),
    FOOD_IS_OPTIONAL("R-003", "planCook", request(plan -> food(plan)), keep()),
    SET_UNKNOWN("R-004", "planCook,listParameterSets", pass(), answer(plan -> plan.put("digest", "0000000000000000"))),
    NO_VERDICT("R-010", "planCook", pass(), answer(Spoiling::withoutVerdict)),
    BINARY_WITHOUT_DIGEST("R-011", "planCook", pass(), binary(plan -> plan.remove("digest"))),
    BINARY_ROUNDED("R-012", "planCook", pass(), binary(plan -> numbers(plan, Math::rint))),
    FOODS_WITHOUT_GROUP("R-013", "listFoods", pass(), catalogue(entry -> entry.remove("group"))),
    PROBLEMS_WITHOUT_CODE("R-014", "planCook", pass(), problem(problem -> problem.remove("code"))),
    NULLS("R-015", "planCook", pass(), answer(plan -> plan.putNull("setpointReason"))),
    UNNAMED_MEMBER("R-016", "planCook", pass(), answer(plan -> plan.put("debug", 1))),
    SCRIPT_IN_PICTURE(
            "R-017", "planCook", pass(), typed("image/svg+xml", replace("</svg>", "<script>1</script></svg>"))),
    UNKNOWN_WARNING(
            "R-018",
            "planCook,listWarnings",
            pass(),
            (sent, answer) -> sent.method().equals("POST")
                    ? edit(
                            answer,
                            200,
                            plan -> array(plan, "warnings")
                                    .addObject()
                                    .put("code", "NEWS")
                                    .put("severity", "info")
                                    .put("text", "News."))
                    : answer),
    PROBLEMS_UNEXPLAINED(
            "R-019", "listProblems,explainProblem", pass(), to("/problems/", answer -> answer.status(404))),
    OTHER_THAN_SHOWN("R-020", "planCook", pass(), answer(plan -> numbers(plan, number -> number * 1.001))),
    NO_PICTURES(
            "R-021",
            "planCook",
            sent -> sent.header("Accept").contains("svg") ? sent.header("Accept", "application/json") : sent,
            keep()),
    STREAM_OUT_OF_ORDER("R-022", "planPortions", pass(), typed("application/x-ndjson", Spoiling::turned)),
    HASTY("R-030", "", pass(), answer(plan -> numbers(plan, number -> number * 0.8))),
    HASTY_IN_FORMULAS("R-031", "", pass(), answer(plan -> numbers(plan, number -> number * 0.8))),
    HASTY_IN_METHODS("R-032", "", pass(), answer(plan -> numbers(plan, number -> number * 0.8))),
    HASTY_AND_RENAMED("R-033", "", pass(), (sent, answer) -> answer.status() == 200 ? answer.status(202) : answer),
    TYPOS_IGNORED("R-040", "planCook", request(plan -> withoutNames(plan, name -> name.startsWith("sauce"))), keep()),
    NULLS_IGNORED("R-041", "planCook", request(Spoiling::withoutNulls), keep()),
    QUOTES_IGNORED("R-042", "planCook", request(Spoiling::withoutQuotes), keep()),
    LAST_ONE_WINS("R-043", "planCook", request(plan -> {}), keep()),
    ENDS_EARLY("R-044", "planCook", Spoiling::firstValue, keep()),
    EMPTY_IS_FINE(
            "R-045",
            "planCook",
            sent -> sent.body().length == 0 ? sent.body(new byte[] {'{', '}'}) : sent,
            Spoiling::alwaysFine),
    START_IS_GUESSED("R-046", "planCook", request(plan -> fill(plan, "start")), keep()),
    CLAMPS("R-047", "planCook", request(plan -> at(plan, "thicknessMm", number -> Math.min(number, 250))), keep()),
    ANY_CASE("R-048", "planCook", request(Spoiling::lowerCase), keep()),
    ZERO_FOR_NO("R-049", "planCook", request(Spoiling::withoutFlags), keep()),
    NOT_A_NUMBER_IS_ZERO("R-050", "planCook", Spoiling::finite, keep()),
    CUTS_TEXTS("R-051", "planCook", request(plan -> cut(plan, 64)), keep()),
    CUTS_LISTS("R-052", "planCook", request(Spoiling::shortLists), keep()),
    BREAKS_ON_DEPTH("R-053", "planCook", pass(), problem("NESTING_TOO_DEEP", answer -> answer.status(500))),
    ONE_AT_A_TIME("R-054", "planCook", pass(), problem(problem -> {
        while (array(problem, "errors").size() > 1) {
            array(problem, "errors").remove(1);
        }
    })),
    BLANK_TYPE("R-055", "planCook", pass(), problem(problem -> problem.put("type", "about:blank"))),
    TELLS_ALL("R-056", "planCook", pass(), problem(problem -> problem.put("detail", "java.lang.NullPointerException"))),
    READS_LATIN("R-057", "planCook", Spoiling::fromLatin, keep()),
    ANY_FOOD_IS_PORK(
            "R-058",
            "planCook",
            request(plan -> {
                if (plan.at("/food/id").asString("").startsWith("no-such")) {
                    food(plan);
                }
            }),
            keep()),
    IGNORES_PARAMETERS("R-059", "planCook", sent -> sent.target(sent.target().replaceFirst("[?&]sauce=1", "")), keep()),
    NO_HINTS(
            "R-060",
            "planCook",
            pass(),
            problem(problem -> problem.path("errors").forEach(error -> ((ObjectNode) error).remove("hint")))),
    READS_EVERYTHING(
            "R-061",
            "planCook",
            sent -> sent.body().length > 65_536
                    ? sent.body(new String(sent.body(), StandardCharsets.UTF_8)
                            .strip()
                            .getBytes(StandardCharsets.UTF_8))
                    : sent,
            keep()),
    NO_ALLOW("R-070", "planCook", pass(), (sent, answer) -> answer.without("Allow")),
    POSTS_TO_CATALOGUES(
            "R-071", "listFoods", pass(), (sent, answer) -> answer.status() == 405 ? answer.status(404) : answer),
    ANSWERS_JSON_TO_ALL("R-072", "planCook", sent -> sent.header("Accept", "application/json"), keep()),
    READS_ALL_AS_JSON("R-073", "planCook", sent -> sent.header("Content-Type", "application/json"), keep()),
    HEAD_IS_BARE(
            "R-074",
            "listFoods",
            pass(),
            (sent, answer) -> sent.method().equals("HEAD") ? answer.without("ETag") : answer),
    NEVER_KNOWN("R-075", "listFoods", sent -> sent.without("If-None-Match"), keep()),
    PLANS_ARE_KEPT(
            "R-076",
            "planCook",
            pass(),
            (sent, answer) -> sent.method().equals("POST") ? answer.header("Cache-Control", "max-age=60") : answer),
    CONDITIONAL_PLANS(
            "R-077",
            "planCook",
            pass(),
            (sent, answer) -> sent.method().equals("POST")
                            && !sent.header("If-None-Match").isEmpty()
                    ? answer.status(412)
                    : answer),
    COMPRESSES_SOMETHING_ELSE("R-078", "planCook", pass(), Spoiling::otherCompressed),
    NOT_FOUND_AS_PAGE(
            "R-079",
            "",
            pass(),
            (sent, answer) -> answer.status() == 404 ? answer.header("Content-Type", "text/html") : answer),
    /** The relay itself answers these paths, with a page. */
    CROOKED_PATHS_AS_PAGE("R-080", "", pass(), keep()),
    NO_LENGTH("R-081", "planCook", pass(), (sent, answer) -> answer.header("Transfer-Encoding", "chunked")),
    NO_CHARSET(
            "R-082",
            "planCook",
            sent -> sent.header("Content-Type").contains("charset") ? sent.header("Content-Type", "a/b") : sent,
            keep()),
    LOCAL_NUMBERS(
            "R-083",
            "planCook",
            pass(),
            (sent, answer) -> sent.header("Accept-Language").startsWith("de")
                    ? edit(answer, 200, plan -> plan.put("setpointC", 999))
                    : answer),
    FAHRENHEIT(
            "R-084",
            "planCook",
            pass(),
            (sent, answer) -> sent.target().contains("units=us")
                    ? edit(answer, 200, plan -> plan.put("setpointC", 140))
                    : answer),
    TALKS_TOO_MUCH("R-085", "planCook", pass(), answer(plan -> plan.put("noise", "-".repeat(2048)))),
    COUNTS_QUESTIONS(
            "R-086", "planCook", pass(), (sent, answer) -> edit(answer, 200, plan -> plan.put("count", next()))),
    SUNSET_BEFORE_DAWN(
            "R-087",
            "planCook",
            pass(),
            (sent, answer) ->
                    answer.header("Deprecation", "@1900000000").header("Sunset", "Fri, 01 Jan 2021 00:00:00 GMT")),
    ONE_TAG_FOR_ALL("R-088", "listFoods", pass(), (sent, answer) -> answer.header("ETag", "\"same\"")),
    THICKER_IS_FASTER(
            "R-100",
            "planCook",
            request(plan -> {
                at(plan, "thicknessMm", number -> 110 - number);
                at(plan, "diameterMm", number -> 110 - number);
            }),
            keep()),
    COOLER_IS_FASTER("R-101", "planCook", request(plan -> at(plan, "setpointC", number -> 160 - number)), keep()),
    COLDER_IS_FASTER("R-102", "planCook", request(plan -> at(plan, "temperatureC", number -> 8 - number)), keep()),
    CARELESS_OF_THE_WEAK(
            "R-103",
            "planCook",
            request(plan -> {
                if (plan.has("eater")) {
                    at(plan, "thicknessMm", number -> number * 0.8);
                    at(plan, "diameterMm", number -> number * 0.8);
                }
            }),
            keep()),
    OUT_BEFORE_SAFE("R-104", "planCook", pass(), answer(plan -> at(plan, "earliestS", number -> 60))),
    MARGIN_UPSIDE_DOWN("R-105", "planCook", pass(), answer(plan -> at(plan, "marginLog10", number -> -number - 1))),
    SURER_WHEN_UNSURE(
            "R-106",
            "planCook",
            request(plan -> {
                if (plan.get("tolerances") instanceof ObjectNode tolerances) {
                    at(tolerances, "thicknessMm", number -> 4.5 - number);
                }
            }),
            keep()),
    MINDS_THE_ORDER(
            "R-107",
            "planCook",
            request(plan -> {
                if (!plan.isEmpty() && plan.propertyNames().iterator().next().equals("surroundings")) {
                    at(plan, "setpointC", number -> number + 1);
                }
            }),
            keep()),
    ALWAYS_MET("R-108", "planCook", pass(), answer(plan -> {
        if (plan.get("safety") instanceof ObjectNode safety) {
            safety.put("verdict", "met");
        }
    })),
    OUTAGE_HELPS(
            "R-109",
            "planCook,planAnew",
            request(plan -> {
                if (plan.at("/soFar/events").size() > 0) {
                    ((ObjectNode) plan.path("soFar")).remove("events");
                    at(plan, "thicknessMm", number -> Math.max(3, number * 0.7));
                    at(plan, "diameterMm", number -> Math.max(3, number * 0.7));
                }
            }),
            keep()),
    HEAT_REVIVES(
            "R-110",
            "planCook,reviewLog",
            request(plan -> {
                if (plan.get("temperaturesC") instanceof ArrayNode temperatures) {
                    for (int i = 0; i < temperatures.size(); i++) {
                        double read = temperatures.get(i).asDouble();
                        temperatures.set(i, JsonNodeFactory.instance.numberNode(read > 50 ? 112 - read : read));
                    }
                }
            }),
            keep()),
    FIRST_IS_THICKER(
            "R-111",
            "planPortions",
            request(plan -> {
                if (plan.at("/portions/0") instanceof ObjectNode first) {
                    at(first, "thicknessMm", number -> number + 20);
                    at(first, "diameterMm", number -> number + 20);
                }
            }),
            keep()),
    CROWDS_ARE_SLOWER(
            "R-112",
            "planPortions",
            request(plan -> {
                if (plan.get("portions") instanceof ArrayNode portions) {
                    portions.forEach(portion -> {
                        at((ObjectNode) portion, "thicknessMm", number -> number + 5 * portions.size());
                        at((ObjectNode) portion, "diameterMm", number -> number + 5 * portions.size());
                    });
                }
            }),
            keep()),
    RECOMMENDS_AT_RANDOM("R-113", "planCook,planWindow", pass(), answer(plan -> {
        if (plan.get("recommended") instanceof ObjectNode point) {
            point.put("atS", 60);
        }
    })),
    TABLE_ON_THE_OTHER_SIDE(
            "R-114",
            "planCook,planTable",
            pass(),
            answer(plan -> plan.path("columns").forEach(column -> {
                ArrayNode times = (ArrayNode) column.path("timesS");
                for (int i = 0; i < times.size(); i++) {
                    times.set(
                            i, JsonNodeFactory.instance.numberNode(times.get(i).asLong() - 600));
                }
            }))),
    BREAKS_NOW_AND_THEN("R-115", "planCook", pass(), (sent, answer) -> next() % 2 == 0 ? answer.status(500) : answer),
    PATH_IS_GONE("R-130", "", pass(), to("/openapi.yaml", replace("/v1/replans:", "/v1/plans-anew:"))),
    OLD_REQUESTS_ARE_REFUSED(
            "R-131",
            "planChill",
            pass(),
            (sent, answer) -> sent.target().startsWith("/v1/chill-plans") ? answer.status(422) : answer);

    private final String requirement;
    private final String operations;
    private final UnaryOperator<Sent> before;
    private final BiFunction<Sent, Received, Received> after;

    BrokenServer(
            String requirement,
            String operations,
            UnaryOperator<Sent> before,
            BiFunction<Sent, Received, Received> after) {
        this.requirement = requirement;
        this.operations = operations;
        this.before = before;
        this.after = after;
    }

    /** The requirement whose tests have to notice. */
    String requirement() {
        return requirement;
    }

    /** The operations that are enough to notice, with commas between them; all where empty. */
    String operations() {
        return operations;
    }

    /** Starts it in front of a service that is right. */
    Relay start(URI service) throws IOException {
        return Relay.of(service, before, after);
    }
}
