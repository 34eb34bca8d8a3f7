package dev.slowpoint.ops;

import static org.assertj.core.api.Assertions.assertThat;

import dev.slowpoint.started.Command;
import dev.slowpoint.started.Tools;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;

/** Rules, runbook and dashboards as files; what they find in a real scrape is seen by {@link ObservabilityIT}. */
class WatchingFilesTest {

    private static final Path TESTS = Path.of("src/test/prometheus");

    @TempDir
    private Path folder;

    static List<Watching.Alert> alerts() {
        return Watching.alerts();
    }

    static List<Path> dashboards() {
        return Watching.dashboards();
    }

    @ParameterizedTest
    @MethodSource("alerts")
    void an_alert_says_who_is_told_what_it_means_and_where_to_read_on(Watching.Alert alert) {
        assertThat(alert.labels()).containsEntry("service", "slowpoint").containsKeys("severity", "slo");
        assertThat(alert.labels().get("severity")).isIn("page", "ticket");
        assertThat(alert.annotations())
                .containsOnlyKeys("summary", "description", "runbook_url")
                .containsEntry(
                        "runbook_url", "/docs/guide/runbook#" + alert.name().toLowerCase(Locale.ROOT));
        assertThat(Watching.page("runbook.md")).contains("\n## " + alert.name() + "\n");
    }

    @Test
    void the_runbook_has_no_section_of_an_alert_that_is_gone_and_each_has_all_its_parts() {
        String runbook = Watching.page("runbook.md");
        List<String> sections = runbook.lines()
                .filter(line -> line.startsWith("## "))
                .map(line -> line.substring(3))
                .toList();
        assertThat(sections)
                .doesNotHaveDuplicates()
                .containsExactlyInAnyOrderElementsOf(
                        alerts().stream().map(Watching.Alert::name).distinct().toList());
        for (String part : List.of("For users:", "Look first:", "Usual causes:", "Stop the bleeding:", "Decides:")) {
            assertThat(runbook.split("\\*\\*" + part + "\\*\\*", -1)).as(part).hasSize(sections.size() + 1);
        }
    }

    @ParameterizedTest
    @MethodSource("dashboards")
    void a_dashboard_can_be_shown_anywhere_and_says_what_is_bad(Path file) {
        JsonNode dashboard = Watching.json(file);
        List<Integer> ids = new ArrayList<>();
        List<String> places = new ArrayList<>();
        assertThat(dashboard
                        .path("templating")
                        .path("list")
                        .path(0)
                        .path("type")
                        .asString())
                .isEqualTo("datasource");
        for (JsonNode panel : dashboard.path("panels")) {
            ids.add(panel.path("id").asInt());
            JsonNode place = panel.path("gridPos");
            places.add(place.path("x") + " " + place.path("y"));
            assertThat(place.path("x").asInt() + place.path("w").asInt()).isLessThanOrEqualTo(24);
            if (panel.path("type").asString().equals("row")) {
                continue;
            }
            assertThat(panel.path("description").asString())
                    .as(panel.path("title").asString())
                    .contains("Bad: ");
            assertThat(panel.path("fieldConfig").path("defaults").path("unit").asString())
                    .isNotEmpty();
            assertThat(panel.path("datasource").path("uid").asString()).isEqualTo("${datasource}");
            assertThat(panel.path("targets").size()).isPositive();
            for (JsonNode target : panel.path("targets")) {
                assertThat(target.path("datasource").path("uid").asString()).isEqualTo("${datasource}");
                assertThat(target.path("expr").asString()).isNotEmpty();
            }
        }
        assertThat(ids).isNotEmpty().doesNotHaveDuplicates();
        assertThat(places).doesNotHaveDuplicates();
        assertThat(file).hasFileName(dashboard.path("uid").asString() + ".json");
        assertThat(Watching.page("watching.md")).contains("`" + file.getFileName() + "`");
    }

    @Test
    void the_rules_are_in_order() {
        Command check = promtool("check", "rules", "--lint=all", "--lint-fatal", absolute(Watching.RULES));
        assertThat(check.output()).contains("SUCCESS");
        assertThat(check.exitCode()).as(check.output()).isZero();
    }

    @ParameterizedTest
    @ValueSource(strings = {"alerts.test.yaml", "day.test.yaml"})
    void alerts_fire_when_they_should_and_are_silent_when_they_should(String tests) {
        Command run = promtool("test", "rules", absolute(TESTS.resolve(tests)));
        assertThat(run.exitCode()).as(run.output()).isZero();
    }

    @Test
    void each_alert_is_seen_to_fire() throws IOException {
        String told =
                Files.readString(TESTS.resolve("alerts.test.yaml")) + Files.readString(TESTS.resolve("day.test.yaml"));
        for (Watching.Alert alert : alerts()) {
            assertThat(told).contains("alertname: " + alert.name() + "\n        exp_alerts:\n");
        }
    }

    private static String absolute(Path file) {
        return file.toAbsolutePath().normalize().toString();
    }

    private Command promtool(String... words) {
        List<String> command = new ArrayList<>(List.of(Tools.need("promtool").toString()));
        command.addAll(List.of(words));
        return Command.run(folder, Map.of(), command);
    }
}
