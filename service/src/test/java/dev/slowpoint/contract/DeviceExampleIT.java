package dev.slowpoint.contract;

import static dev.slowpoint.contract.TroubledNetwork.altered;
import static dev.slowpoint.contract.TroubledNetwork.brokenOff;
import static dev.slowpoint.contract.TroubledNetwork.busy;
import static dev.slowpoint.contract.TroubledNetwork.dropped;
import static dev.slowpoint.contract.TroubledNetwork.none;
import static dev.slowpoint.contract.TroubledNetwork.portal;
import static dev.slowpoint.contract.TroubledNetwork.retiring;
import static org.assertj.core.api.Assertions.assertThat;

import dev.slowpoint.started.StartedService;
import dev.slowpoint.started.Tools;
import io.restassured.RestAssured;
import io.restassured.http.ContentType;
import io.restassured.path.json.JsonPath;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** The device's example in C, compiled as its Makefile says, against the packaged service and over a bad network. */
@ExtendWith(StartedService.Resolver.class)
class DeviceExampleIT {

    private static final Path SOURCES = Path.of("..", "api-spec", "device");
    private static final Path BUILT = Path.of("target", "device-example").toAbsolutePath();

    private static final int SHOWN_AS_MET = 0;
    private static final int NOT_SHOWN_AS_MET = 1;
    private static final int REFUSED = 3;
    private static final int NO_ANSWER = 4;

    private static final String PORK_LOIN = """
            {"food":{"id":"pork-loin"},"geometry":{"shape":"slab","thicknessMm":%s},"start":{"temperatureC":%s},
             "surroundings":{"bath":{"setpointC":%s}}}""";

    private static final String TABLE = """
            {"food":{"id":"pork-loin"},"geometry":{"shape":"slab"},"thickness":{"fromMm":30,"toMm":60},
             "setpoint":{"fromC":60,"toC":63},"start":{"fromC":2,"toC":6},"longestBytes":12288,"sentences":false}""";

    /** Looks up random points of a table by the code of the contract, and by that of the example. */
    private static final String HARNESS = """
            #include <math.h>
            #include <stdint.h>
            #include <stdio.h>
            #include "table.h"

            static const float *D, *T, *S;
            static int nD, nT, nS;

            CODE_OF_THE_CONTRACT

            static struct table table;
            static char text[TABLE_LONGEST_ANSWER];
            static uint32_t state = 2463534242u;

            static float between(const struct table_axis *axis) {
                state ^= state << 13;
                state ^= state >> 17;
                state ^= state << 5;
                float low = axis->planes[0];
                float high = axis->planes[axis->count - 1];
                /* Every eighth point lies on a plane, where neighbours count with nothing. */
                return state % 8 == 0
                        ? axis->planes[state / 8 % (uint32_t) axis->count]
                        : low + (high - low) * ((float) (state >> 8) / 16777216.0f);
            }

            int main(int count, char **words) {
                FILE *file = fopen(words[count - 1], "rb");
                if (file == NULL || !table_read(text, fread(text, 1, sizeof text, file), &table)) {
                    return 2;
                }
                D = table.thickness_mm.planes; nD = table.thickness_mm.count;
                T = table.setpoint_c.planes; nT = table.setpoint_c.count;
                S = table.start_c.planes; nS = table.start_c.count;
                enum table_quantity quantities[] = {
                        TABLE_HOT_THROUGH, TABLE_SAFE, TABLE_GOOD_UNTIL, TABLE_SOFT_FROM};
                for (int i = 0; i < 20000; i++) {
                    enum table_quantity q = quantities[i % 4];
                    float d = between(&table.thickness_mm);
                    float c = between(&table.setpoint_c);
                    float s = between(&table.start_c);
                    float theirs = lookup(table.times_s[q], d, c, s);
                    float rounded = q == TABLE_HOT_THROUGH || q == TABLE_SAFE ? ceilf(theirs) : floorf(theirs);
                    int32_t ours = -1;
                    enum table_finding found = table_lookup(&table, q, d, c, s, &ours);
                    if (theirs < 0 ? found != TABLE_NEVER : found != TABLE_TIME || ours != (int32_t) rounded) {
                        printf("at %g mm, %g C, from %g C: %g and %d\\n", d, c, s, theirs, (int) ours);
                        return 1;
                    }
                }
                printf("20000 points looked up the same\\n");
                return 0;
            }
            """;

    private static final Pattern TAKE_OUT = Pattern.compile(
            "TAKE OUT (\\d+):(\\d\\d):(\\d\\d) after food in \\(until (\\d+):(\\d\\d):(\\d\\d)\\)\\..*",
            Pattern.DOTALL);

    private static boolean compiled;

    private final URI service;

    DeviceExampleIT(StartedService service) {
        this.service = service.address();
    }

    /** How a program ended, what it printed, and what it wrote to the log. */
    private record Run(int exit, String printed, String logged) {}

    /** Before each, so that each test tells why it was aborted; compiled once. */
    @BeforeEach
    void compile() throws IOException, InterruptedException {
        if (compiled) {
            return;
        }
        Tools.need("gcc");
        Tools.need("make");
        Path packages = Tools.need("pkg-config");
        if (run(Path.of("."), packages.toString(), "--exists", "libcjson", "libcurl")
                        .exit()
                != 0) {
            Tools.missing("libcjson and libcurl are not installed for development");
        }
        copySources(BUILT);
        Run make = run(BUILT, "make", "CC=gcc");
        assertThat(make.exit()).as(make.printed() + make.logged()).isZero();
        compiled = true;
    }

    @Test
    void its_unit_tests_pass() throws Exception {
        Run check = run(BUILT, "./test_device", "fixtures");
        assertThat(check.exit()).as(check.printed()).isZero();
        assertThat(check.printed()).containsPattern("^[1-9]\\d+ passed, 0 failed");
    }

    @Test
    void its_unit_tests_and_its_main_program_do_nothing_that_c_leaves_undefined() throws Exception {
        Path folder = BUILT.resolveSibling("device-example-sanitized");
        copySources(folder);
        String sanitize = "-fsanitize=address,undefined -fno-sanitize-recover=all";
        Files.writeString(folder.resolve("probe.c"), "int main(void) { return 0; }\n");
        List<String> probe = new ArrayList<>(List.of("gcc", "-o", "probe", "probe.c"));
        probe.addAll(List.of(sanitize.split(" ", -1)));
        if (run(folder, probe.toArray(String[]::new)).exit() != 0) {
            Tools.missing("the sanitizers of gcc are not installed");
        }
        Run check = run(folder, "make", "CC=gcc", "CFLAGS=-O1 -g", "SANITIZE=" + sanitize, "all", "check");
        assertThat(check.exit()).as(check.printed() + check.logged()).isZero();
        Run plan = run(folder, planOf(service, "45", "4", "60"));
        assertThat(plan.exit()).as(plan.printed() + plan.logged()).isEqualTo(SHOWN_AS_MET);
    }

    @Test
    void a_plan_shows_the_times_that_the_service_answers() throws Exception {
        JsonPath answer = plan("45", "4", "60");
        Run shown = run(BUILT, planOf(service, "45", "4", "60"));
        assertThat(shown.printed())
                .startsWith("TAKE OUT " + clock(answer.getInt("takeOut.bestS")) + " after food in (from "
                        + clock(answer.getInt("takeOut.earliestS")) + ", until "
                        + clock(answer.getInt("takeOut.latestS")) + "). Rule met.");
        assertThat(shown.exit()).isEqualTo(SHOWN_AS_MET);
        List<String> cautions = answer.getList("cautions.text");
        assertThat(cautions)
                .isNotEmpty()
                .allSatisfy(caution -> assertThat(shown.printed()).contains(caution));
    }

    @Test
    void a_plan_below_its_rule_shows_no_time() throws Exception {
        assertThat(plan("45", "4", "52").getString("safety.verdict")).isEqualTo("notMet");
        Run shown = run(BUILT, planOf(service, "45", "4", "52"));
        assertThat(shown.exit()).isEqualTo(NOT_SHOWN_AS_MET);
        assertThat(shown.printed()).startsWith("DANGER: ").contains("NOT SAFE").doesNotContain("TAKE OUT");
    }

    @Test
    void a_busy_service_and_broken_connections_are_waited_out() throws Exception {
        try (TroubledNetwork network = new TroubledNetwork(service, busy(1), dropped(), brokenOff(), none())) {
            Run shown = run(BUILT, planOf(network.address(), "45", "4", "60"));
            assertThat(shown.exit()).as(shown.printed()).isEqualTo(SHOWN_AS_MET);
            List<Double> arrivals = network.arrivalsS();
            assertThat(arrivals).hasSize(4);
            assertThat(arrivals.get(1)).as("waited as Retry-After said [s]").isGreaterThanOrEqualTo(1.0);
        }
    }

    @Test
    void what_is_refused_is_not_asked_again() throws Exception {
        try (TroubledNetwork network = new TroubledNetwork(service, none())) {
            String[] command = planOf(network.address(), "45", "4", "60");
            command[List.of(command).indexOf("pork-loin")] = "no-such-food";
            Run shown = run(BUILT, command);
            assertThat(shown.exit()).isEqualTo(REFUSED);
            assertThat(shown.printed()).startsWith("REFUSED UNKNOWN_FOOD: ");
            assertThat(network.arrivalsS()).hasSize(1);
        }
    }

    @Test
    void a_verdict_of_later_is_shown_as_not_safe() throws Exception {
        try (TroubledNetwork network = new TroubledNetwork(
                service, altered(body -> replaced(body, "\"verdict\":\"met\"", "\"verdict\":\"metInPart\"")))) {
            Run shown = run(BUILT, planOf(network.address(), "45", "4", "60"));
            assertThat(shown.exit()).isEqualTo(NOT_SHOWN_AS_MET);
            assertThat(shown.printed()).startsWith("NOT SAFE").doesNotContain("TAKE OUT");
        }
    }

    @Test
    void a_severity_of_later_is_shown_as_danger() throws Exception {
        String warning = "\"warnings\":[{\"code\":\"OF_LATER\",\"severity\":\"grave\",\"text\":\"Something new.\"}";
        try (TroubledNetwork network =
                new TroubledNetwork(service, altered(body -> replaced(body, "\"warnings\":[", warning)))) {
            Run shown = run(BUILT, planOf(network.address(), "45", "4", "60"));
            assertThat(shown.exit()).isEqualTo(NOT_SHOWN_AS_MET);
            assertThat(shown.printed()).startsWith("DANGER: Something new.");
        }
    }

    @Test
    void an_answer_that_will_go_away_is_as_good_as_before_and_logged() throws Exception {
        try (TroubledNetwork network = new TroubledNetwork(service, none(), retiring())) {
            assertThat(run(BUILT, planOf(network.address(), "45", "4", "60")).logged())
                    .isEmpty();
            Run shown = run(BUILT, planOf(network.address(), "45", "4", "60"));
            assertThat(shown.exit()).isEqualTo(SHOWN_AS_MET);
            assertThat(shown.logged()).contains("will go away");
        }
    }

    @Test
    void a_portal_is_no_answer() throws Exception {
        try (TroubledNetwork network = new TroubledNetwork(service, portal())) {
            Run shown = run(BUILT, planOf(network.address(), "45", "4", "60"));
            assertThat(shown.exit()).isEqualTo(NO_ANSWER);
            assertThat(network.arrivalsS()).hasSize(5);
        }
    }

    @Test
    void without_a_network_the_table_answers_and_never_sooner_than_a_plan() throws Exception {
        Path request = Files.writeString(BUILT.resolve("table-request.json"), TABLE);
        Path table = BUILT.resolve("table.json");
        URI gone;
        try (TroubledNetwork network = new TroubledNetwork(service, none())) {
            gone = network.address();
            Run fetched = run(
                    BUILT,
                    "./slowpoint",
                    "fetch",
                    "--url",
                    gone.toString(),
                    "--request",
                    request.toString(),
                    "--file",
                    table.toString());
            assertThat(fetched.exit()).as(fetched.printed()).isEqualTo(SHOWN_AS_MET);
        }
        Run asked = run(BUILT, planOf(gone, "45", "4", "60"));
        assertThat(asked.exit()).isEqualTo(NO_ANSWER);
        assertThat(asked.printed()).startsWith("NO ANSWER");

        Random random = new Random(20_260_101);
        for (int i = 0; i < 20; i++) {
            String thickness = between(random, 30, 60);
            String setpoint = between(random, 60, 63);
            String start = between(random, 2, 6);
            String point = thickness + " mm, " + setpoint + " C, from " + start + " C";
            Run told = run(BUILT, tableOf(table, thickness, start, setpoint));
            Matcher times = TAKE_OUT.matcher(told.printed());
            assertThat(times.matches()).as(point + ": " + told.printed()).isTrue();
            assertThat(told.exit()).as(point).isEqualTo(SHOWN_AS_MET);
            JsonPath plan = plan(thickness, start, setpoint);
            assertThat(seconds(times, 1))
                    .as(point)
                    .isGreaterThanOrEqualTo(plan.getInt("times.safe.lateS"))
                    .isGreaterThanOrEqualTo(plan.getInt("times.hotThrough.lateS"))
                    .isGreaterThanOrEqualTo(plan.getInt("times.tender.lateS"));
            assertThat(seconds(times, 4)).as(point).isLessThanOrEqualTo(plan.getInt("times.goodUntil.earlyS"));
        }
        for (String[] outside : new String[][] {{"29.9", "4", "60"}, {"45", "1.9", "60"}, {"45", "4", "63.1"}}) {
            Run told = run(BUILT, tableOf(table, outside[0], outside[1], outside[2]));
            assertThat(told.exit()).isEqualTo(NO_ANSWER);
            assertThat(told.printed()).doesNotContain("TAKE OUT");
        }
    }

    @Test
    void the_c_code_of_the_contract_compiles_and_looks_up_the_same() throws Exception {
        String description = RestAssured.get(service.resolve("/openapi.yaml")).asString();
        Matcher code = Pattern.compile("```c\n(.*?)```", Pattern.DOTALL).matcher(description);
        assertThat(code.find()).isTrue();
        Path folder = BUILT.resolveSibling("device-example-contract");
        copySources(folder);
        Files.writeString(folder.resolve("contract.c"), HARNESS.replace("CODE_OF_THE_CONTRACT", code.group(1)));
        Run make = run(folder, "make", "CC=gcc", "table.o");
        assertThat(make.exit()).as(make.logged()).isZero();
        // Not with the stricter warnings of the Makefile: they would lengthen what the contract shows.
        Run compiled = run(
                folder,
                "gcc",
                "-std=c99",
                "-pedantic",
                "-Wall",
                "-Wextra",
                "-Werror",
                "-o",
                "contract",
                "contract.c",
                "table.o",
                "-lcjson",
                "-lm");
        assertThat(compiled.exit()).as(compiled.logged()).isZero();
        Run looked = run(folder, "./contract", "fixtures/table.json");
        assertThat(looked.exit()).as(looked.printed()).isZero();
        assertThat(looked.printed()).isEqualTo("20000 points looked up the same\n");
    }

    private static String replaced(String body, String from, String to) {
        assertThat(body).contains(from);
        return body.replace(from, to);
    }

    private JsonPath plan(String thicknessMm, String startC, String setpointC) {
        return RestAssured.given()
                .contentType(ContentType.JSON)
                .body(PORK_LOIN.formatted(thicknessMm, startC, setpointC))
                .post(service.resolve("/v1/cook-plans"))
                .then()
                .statusCode(200)
                .extract()
                .jsonPath();
    }

    private static String[] planOf(URI address, String thicknessMm, String startC, String setpointC) {
        return new String[] {
            "./slowpoint",
            "plan",
            "--url",
            address.toString(),
            "--food",
            "pork-loin",
            "--thickness",
            thicknessMm,
            "--start",
            startC,
            "--setpoint",
            setpointC
        };
    }

    private static String[] tableOf(Path table, String thicknessMm, String startC, String setpointC) {
        return new String[] {
            "./slowpoint",
            "table",
            "--file",
            table.toString(),
            "--thickness",
            thicknessMm,
            "--start",
            startC,
            "--setpoint",
            setpointC
        };
    }

    private static String between(Random random, double low, double high) {
        return String.format(Locale.ROOT, "%.2f", low + (high - low) * random.nextDouble());
    }

    private static String clock(int seconds) {
        return String.format(Locale.ROOT, "%d:%02d:%02d", seconds / 3600, seconds / 60 % 60, seconds % 60);
    }

    private static int seconds(Matcher times, int group) {
        return Integer.parseInt(times.group(group)) * 3600
                + Integer.parseInt(times.group(group + 1)) * 60
                + Integer.parseInt(times.group(group + 2));
    }

    private static void copySources(Path folder) throws IOException {
        try (Stream<Path> sources = Files.walk(SOURCES)) {
            for (Path source : sources.filter(Files::isRegularFile).toList()) {
                Path copy = folder.resolve(SOURCES.relativize(source).toString());
                Files.createDirectories(copy.getParent());
                Files.writeString(copy, Files.readString(source));
            }
        }
    }

    private static Run run(Path folder, String... command) throws IOException, InterruptedException {
        Path printed = Files.createTempFile("device-example", ".txt");
        Path logged = Files.createTempFile("device-example", ".log");
        try {
            Process process = new ProcessBuilder(command)
                    .directory(folder.toFile())
                    .redirectOutput(printed.toFile())
                    .redirectError(logged.toFile())
                    .start();
            if (!process.waitFor(120, TimeUnit.SECONDS)) {
                process.destroyForcibly();
                throw new AssertionError("Not done after two minutes: " + String.join(" ", command));
            }
            return new Run(process.exitValue(), Files.readString(printed), Files.readString(logged));
        } finally {
            Files.delete(printed);
            Files.delete(logged);
        }
    }
}
