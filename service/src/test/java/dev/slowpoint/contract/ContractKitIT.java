package dev.slowpoint.contract;

import static org.assertj.core.api.Assertions.assertThat;

import dev.slowpoint.kit.ContractKit;
import dev.slowpoint.kit.Requirement;
import dev.slowpoint.started.Command;
import dev.slowpoint.started.StartedService;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** The kit passes where the contract is kept, and notices by name where it is not. */
@ExtendWith(StartedService.Resolver.class)
class ContractKitIT {

    /** Enough to meet every way of the relay; what else computes is like a cook plan in all that a relay could change. */
    private static final String BEHIND_A_RELAY = "planCook,reviewLog,listFoods,listParameterSets";

    private final StartedService service;

    @TempDir
    private Path folder;

    ContractKitIT(StartedService service) {
        this.service = service;
    }

    /** What a run in this process printed, and its exit code. */
    private record Run(int code, String printed) {
        String lastLine() {
            return printed.lines().reduce("", (before, line) -> line);
        }
    }

    private Run run(URI subject, String... more) {
        StringWriter printed = new StringWriter();
        String[] arguments = Stream.concat(
                        Stream.of("--base-url", subject.toString(), "--report", folder.toString()), Arrays.stream(more))
                .toArray(String[]::new);
        return new Run(ContractKit.run(new PrintWriter(printed), arguments), printed.toString());
    }

    @Test
    void the_packaged_kit_passes_against_the_packaged_service() throws IOException {
        Command done = Command.run(
                folder,
                Map.of(),
                List.of(
                        StartedService.java(),
                        "-jar",
                        System.getProperty("kit.jar"),
                        "--base-url",
                        service.address().toString(),
                        "--auth",
                        "Bearer not-to-be-seen",
                        "--report",
                        folder.toString()));
        assertThat(done.exitCode()).as(done.output()).isZero();
        String lastLine = done.output().lines().reduce("", (before, line) -> line);
        assertThat(lastLine).matches("[1-9]\\d+ passed, 0 failed, \\d+ skipped");

        JsonNode result = JsonMapper.shared().readTree(Files.readAllBytes(folder.resolve("result.json")));
        assertThat(lastLine).startsWith(result.path("passed").asLong() + " passed");
        assertThat(result.path("requirements")
                        .valueStream()
                        .map(node -> node.path("id").asString()))
                .as("requirements that are accounted for")
                .containsExactlyElementsOf(Requirement.ALL.keySet());
        assertThat(folder.resolve("report.md")).content().contains("| R-001 ", "**" + lastLine + "**");
        assertThat(folder.resolve("TEST-junit-jupiter.xml")).content().contains("<testcase ");
        try (Stream<Path> files = Files.list(folder)) {
            for (Path file : files.toList()) {
                assertThat(Files.readString(file)).as(file.toString()).doesNotContain("not-to-be-seen");
            }
        }
    }

    /** Nothing that the relay does by itself is noticed, but for the paths that it cannot hand on. */
    @Test
    void the_kit_passes_behind_a_relay_that_changes_nothing() throws IOException {
        try (Relay relay = Relay.of(service.address(), sent -> sent, (sent, answer) -> answer)) {
            Run run = run(relay.address(), "--rounds", "2", "--skip", "R-080,R-114", "--operations", BEHIND_A_RELAY);
            assertThat(run.code()).as(run.printed()).isZero();
        }
    }

    @ParameterizedTest
    @EnumSource
    void a_broken_server_is_noticed_by_the_requirement_it_breaks(BrokenServer broken) throws IOException {
        try (Relay relay = broken.start(service.address())) {
            Run run = run(
                    relay.address(),
                    "--rounds",
                    "4",
                    "--tags",
                    broken.requirement(),
                    "--operations",
                    broken.operations());
            assertThat(run.code()).as(run.printed()).isEqualTo(1);
            assertThat(run.printed()).contains("FAILED " + broken.requirement() + " ");
            assertThat(run.lastLine()).matches("\\d+ passed, [1-9]\\d* failed, \\d+ skipped");
        }
    }

    @Test
    void each_requirement_that_can_be_tested_has_a_broken_server() {
        List<String> testable = Requirement.ALL.values().stream()
                .filter(requirement -> requirement.untestable().isEmpty())
                .map(Requirement::id)
                .toList();
        assertThat(Arrays.stream(BrokenServer.values()).map(BrokenServer::requirement))
                .containsExactlyInAnyOrderElementsOf(testable);
    }

    @Test
    void a_subject_that_does_not_answer_is_told_from_one_that_answers_wrongly() throws IOException {
        Run run = run(URI.create("http://127.0.0.1:" + StartedService.freePort()));
        assertThat(run.code()).isEqualTo(3);
        assertThat(run.printed()).contains("does not answer");
    }

    @Test
    void an_operation_that_is_not_offered_is_skipped_and_not_passed() {
        Run run = run(service.address(), "--tags", "R-070", "--operations", "planCook");
        assertThat(run.code()).isZero();
        assertThat(run.lastLine()).isEqualTo("1 passed, 0 failed, 7 skipped");
    }

    @Test
    void a_run_that_tests_nothing_does_not_pass() {
        Run run = run(service.address(), "--tags", "R-140");
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.lastLine()).isEqualTo("0 passed, 0 failed, 1 skipped");
    }
}
