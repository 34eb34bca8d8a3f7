package dev.slowpoint.ops;

import static org.assertj.core.api.Assertions.assertThat;

import dev.slowpoint.api.HttpTest;
import io.restassured.RestAssured;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Dashboards and alerts depend on these names; whoever changes one changes those too. */
class MetricsTest extends HttpTest {

    private String scrape() {
        http().contentType(JSON).body(PORK).post(PLANS);
        http().contentType(JSON)
                .body(porkWith("\"temperatureC\":4", "\"temperatureC\":-18"))
                .post(PLANS);
        http().contentType(JSON).body("{}").post(PLANS);
        http().contentType(JSON).body(WARM_PORK).post(CHILLS);
        http().contentType(JSON).body(PORK).post(WINDOWS);
        http().contentType(JSON)
                .body("{\"food\":{\"id\":\"pork-loin\"},\"geometry\":{\"shape\":\"slab\"},"
                        + "\"thickness\":{\"fromMm\":20,\"toMm\":25},\"setpoint\":{\"fromC\":60,\"toC\":60},"
                        + "\"start\":{\"fromC\":4,\"toC\":4},\"withinPercent\":20}")
                .post(TABLES);
        http().contentType("text/csv")
                .body("timeS,temperatureC\n0,60\n60,60\n")
                .post(LOGS + "?food=pork-loin&place=bath");
        return RestAssured.given()
                .port(managementPort)
                .get("/actuator/prometheus")
                .asString();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "slowpoint_plans_total{application=\"slowpoint\",group=\"pork\",parameter_set=\"2026.1\",verdict=\"met\"}",
                "slowpoint_reviews_total{application=\"slowpoint\",group=\"pork\",parameter_set=\"2026.1\",verdict=\"notApplicable\"}",
                "slowpoint_chills_total{application=\"slowpoint\",group=\"pork\",kept=\"true\",parameter_set=\"2026.1\"}",
                "slowpoint_windows_total{application=\"slowpoint\",group=\"pork\",open=\"true\",parameter_set=\"2026.1\"}",
                "slowpoint_tables_total{application=\"slowpoint\",group=\"pork\",parameter_set=\"2026.1\"}",
                "slowpoint_warnings_total{application=\"slowpoint\",code=\"FROM_FROZEN\"}",
                "slowpoint_refused_total{application=\"slowpoint\",code=\"MISSING_FIELD\"}",
                "slowpoint_solver_seconds_count{application=\"slowpoint\"}",
                "slowpoint_solver_seconds_sum{application=\"slowpoint\"}",
                "slowpoint_phase_seconds_count{application=\"slowpoint\",phase=\"solve\"}",
                "slowpoint_ready{application=\"slowpoint\"} 1.0",
                "slowpoint_build_info{application=\"slowpoint\",",
                "slowpoint_parameter_set_info{application=\"slowpoint\",current=\"true\",digest=\"",
                "slowpoint_requests_in_flight{application=\"slowpoint\"}",
                "slowpoint_requests_waiting{application=\"slowpoint\"}",
                "slowpoint_responses_total{application=\"slowpoint\",format=\"json\"}",
                "slowpoint_refused_total{application=\"slowpoint\",code=\"INTERNAL_ERROR\"}",
                "slowpoint_refused_total{application=\"slowpoint\",code=\"OVERLOADED\"}",
                "slowpoint_solver_steps_total{application=\"slowpoint\"}",
                "jvm_memory_used_bytes{",
                "process_cpu_usage{",
                "tomcat_threads_busy_threads{",
            })
    void a_scrape_has_what_dashboards_show(String start) {
        assertThat(scrape().lines().filter(line -> line.startsWith(start))).isNotEmpty();
    }

    /** An objective can be judged only at a threshold that is a bucket. */
    @Test
    void the_time_of_requests_has_a_bucket_at_every_objective() {
        Pattern bucket =
                Pattern.compile("http_server_requests_seconds_bucket\\{.*uri=\"/v1/cook-plans\".*le=\"([^\"]+)\".*");
        List<String> bounds = scrape().lines()
                .map(bucket::matcher)
                .filter(Matcher::matches)
                .map(matcher -> matcher.group(1))
                .distinct()
                .collect(Collectors.toList());
        assertThat(bounds)
                .containsExactly(
                        "0.001", "0.0025", "0.005", "0.01", "0.025", "0.05", "0.1", "0.25", "0.5", "1.0", "2.5", "5.0",
                        "10.0", "+Inf");
    }

    @Test
    void what_callers_send_never_becomes_a_label() {
        http().contentType(JSON).body(PORK.replace("pork-loin", "xyzzy")).post(PLANS);
        http().contentType(JSON).body(PORK.replace("\"slab\"", "\"xyzzy\"")).post(PLANS);
        http().get("/v1/foods/xyzzy");
        http().get("/xyzzy");
        assertThat(scrape()).doesNotContain("xyzzy");
    }

    @Test
    void there_are_a_few_threads_for_each_core() {
        int cores = Runtime.getRuntime().availableProcessors();
        // And as many as may wait for slow clients.
        assertThat(scrape().lines().filter(line -> line.startsWith("tomcat_threads_config_max_threads")))
                .anyMatch(line -> line.endsWith(" " + (4.0 * cores + 32.0)));
    }

    @Test
    void metrics_are_not_on_the_public_port() {
        assertThat(http().get("/actuator/prometheus").statusCode()).isEqualTo(404);
    }
}
