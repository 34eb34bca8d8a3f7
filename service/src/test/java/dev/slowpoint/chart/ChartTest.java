package dev.slowpoint.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assumptions.assumeThat;

import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.dialect.Dialects;
import io.fabric8.kubernetes.api.model.ConfigMap;
import io.fabric8.kubernetes.api.model.ObjectMeta;
import io.fabric8.kubernetes.api.model.Pod;
import io.fabric8.kubernetes.api.model.Service;
import io.fabric8.kubernetes.api.model.autoscaling.v2.HorizontalPodAutoscaler;
import io.fabric8.kubernetes.api.model.autoscaling.v2.MetricSpec;
import io.fabric8.kubernetes.api.model.networking.v1.NetworkPolicy;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** What the chart makes of its values. */
class ChartTest {

    @TempDir
    static Path folder;

    private static Chart chart;

    @BeforeAll
    static void copy() {
        chart = Chart.copy(folder.resolve("chart"));
    }

    static List<String> uses() {
        return Chart.uses();
    }

    @Test
    @DisplayName("Values are shipped for the default, the least, production and everything")
    void values_are_shipped() {
        assertThat(Chart.uses()).containsExactly("default", "everything", "minimal", "production");
    }

    @ParameterizedTest
    @MethodSource("uses")
    @DisplayName("Helm finds nothing to say against the chart")
    void lint(String use) {
        assertThat(chart.lint(chart.values(use)))
                .satisfies(result -> assertThat(result.isFailed())
                        .as(String.join("\n", result.getMessages()))
                        .isFalse());
    }

    @ParameterizedTest
    @MethodSource("uses")
    @DisplayName("Every object has only members that its type knows, and is sound")
    void sound(String use) {
        assertThat(Soundness.faults(chart.render(chart.values(use)))).isEmpty();
    }

    @ParameterizedTest
    @MethodSource("uses")
    @DisplayName("The same values make the same objects")
    void deterministic(String use) {
        assertThat(chart.text("plans", chart.values(use))).isEqualTo(chart.text("plans", chart.values(use)));
    }

    @Test
    @DisplayName("A release with the longest name that Helm allows has names that fit, and differ")
    void long_names() {
        String longest = "a".repeat(52) + "b";
        assertThat(Soundness.faults(Rendered.of(chart.text(longest, chart.values("everything")))))
                .isEmpty();
    }

    @Test
    @DisplayName("A release named after the service does not say its name twice")
    void name_once() {
        assertThat(Rendered.of(chart.text("slowpoint", Map.of()))
                        .deployment()
                        .getMetadata()
                        .getName())
                .isEqualTo("slowpoint");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            ingress: {enabled: false} | Ingress plans-slowpoint
            gateway: {enabled: false} | HTTPRoute plans-slowpoint
            autoscaling: {enabled: false} | HorizontalPodAutoscaler plans-slowpoint
            disruptionBudget: false | PodDisruptionBudget plans-slowpoint
            networkPolicy: {enabled: false} | NetworkPolicy plans-slowpoint
            monitoring: {serviceMonitor: {enabled: false}} | ServiceMonitor plans-slowpoint
            monitoring: {rules: {enabled: false}} | PrometheusRule plans-slowpoint
            monitoring: {dashboards: {enabled: false}} | ConfigMap plans-slowpoint-dashboards
            """)
    @DisplayName("Each switch takes away its object and no other")
    void switches(String off, String gone) {
        Map<String, Object> everything = chart.values("everything");
        TreeSet<String> with = chart.render(everything).names();
        TreeSet<String> without =
                chart.render(Chart.over(everything, Chart.tree(off))).names();
        assertThat(with).contains(gone);
        with.remove(gone);
        assertThat(without).isEqualTo(with);
    }

    @Test
    @DisplayName("Spreading is off where it is switched off")
    void spread() {
        assertThat(chart.render(Map.of("spread", true))
                        .deployment()
                        .getSpec()
                        .getTemplate()
                        .getSpec()
                        .getTopologySpreadConstraints())
                .extracting("topologyKey", "whenUnsatisfiable")
                .containsExactly(
                        tuple("kubernetes.io/hostname", "ScheduleAnyway"),
                        tuple("topology.kubernetes.io/zone", "ScheduleAnyway"));
        assertThat(chart.render(Map.of("spread", false))
                        .deployment()
                        .getSpec()
                        .getTemplate()
                        .getSpec()
                        .getTopologySpreadConstraints())
                .isEmpty();
    }

    @Test
    @DisplayName("One pod has no disruption budget, however it is switched")
    void one_pod() {
        assertThat(chart.render(Chart.tree("{replicas: 1, disruptionBudget: true}"))
                        .names())
                .noneMatch(name -> name.startsWith("PodDisruptionBudget"));
    }

    @Test
    @DisplayName("A changed overlay replaces the pods, an equal one does not")
    void overlay_checksum() {
        String one = checksum("overlay: {files: {foods.csv: one}}");
        assertThat(checksum("overlay: {files: {foods.csv: one}}")).isEqualTo(one);
        assertThat(checksum("overlay: {files: {foods.csv: two}}")).isNotEqualTo(one);
        assertThat(checksum("overlay: {configMap: ours}")).isNotEqualTo(one);
    }

    private static String checksum(String values) {
        return chart.render(Chart.tree(values))
                .deployment()
                .getSpec()
                .getTemplate()
                .getMetadata()
                .getAnnotations()
                .get("checksum/overlay");
    }

    @Test
    @DisplayName("Own foods and rules are mounted from the values or from a map that is there")
    void overlay_files() {
        Rendered own = chart.render(Chart.tree("overlay: {files: {foods.csv: \"a,b\\n1,2\\n\"}}"));
        ConfigMap map = own.maybe(ConfigMap.class).orElseThrow();
        assertThat(map.getData()).isEqualTo(Map.of("foods.csv", "a,b\n1,2\n"));
        assertThat(overlayMap(own)).containsExactly(map.getMetadata().getName());
        assertThat(own.setting("SLOWPOINT_OVERLAY_DIRECTORY")).isEqualTo("/etc/slowpoint/overlay");

        Rendered theirs = chart.render(Chart.tree("overlay: {configMap: ours}"));
        assertThat(theirs.all(ConfigMap.class)).isEmpty();
        assertThat(overlayMap(theirs)).containsExactly("ours");

        Rendered none = chart.render(Map.of());
        assertThat(overlayMap(none)).isEmpty();
        assertThat(none.setting("SLOWPOINT_OVERLAY_DIRECTORY")).isEmpty();
    }

    private static List<String> overlayMap(Rendered rendered) {
        return rendered.deployment().getSpec().getTemplate().getSpec().getVolumes().stream()
                .filter(volume -> volume.getConfigMap() != null)
                .map(volume -> volume.getConfigMap().getName())
                .toList();
    }

    @Test
    @DisplayName("With a certificate, probes and the test speak TLS, and monitoring does not")
    void tls() {
        Rendered rendered = chart.render(Chart.tree("tls: {secret: ours}"));
        assertThat(Soundness.faults(rendered)).isEmpty();
        assertThat(rendered.setting("SERVER_SSL_BUNDLE")).isEqualTo("server");
        assertThat(rendered.setting("MANAGEMENT_SERVER_SSL_ENABLED")).isEqualTo("false");
        assertThat(rendered.container().getReadinessProbe().getHttpGet().getScheme())
                .isEqualTo("HTTPS");
        assertThat(testArguments(rendered)).contains("https://plans-slowpoint:80", "--trust");
        assertThat(testArguments(chart.render(Map.of())))
                .contains("http://plans-slowpoint:80")
                .doesNotContain("--trust");
    }

    private static List<String> testArguments(Rendered rendered) {
        return rendered.maybe(Pod.class)
                .orElseThrow()
                .getSpec()
                .getContainers()
                .get(0)
                .getArgs();
    }

    @Test
    @DisplayName("The test of a release asks the service by the name and port that it has")
    void release_test() {
        Rendered rendered = chart.render(Chart.tree("service: {port: 8443}"));
        Service service = rendered.serviceWith("http");
        assertThat(testArguments(rendered))
                .contains(
                        "http://" + service.getMetadata().getName() + ":"
                                + service.getSpec().getPorts().get(0).getPort(),
                        "smoke");
        assertThat(rendered.maybe(Pod.class).map(Pod::getMetadata).map(ObjectMeta::getAnnotations))
                .hasValueSatisfying(annotations -> assertThat(annotations).containsEntry("example.org/hook", "test"));
    }

    @Test
    @DisplayName("Pods are added by CPU, and by requests in flight where asked")
    void autoscaling() {
        assertThat(metrics("autoscaling: {enabled: true}")).containsExactly("Resource");
        assertThat(metrics("autoscaling: {enabled: true, inFlight: 8}")).containsExactly("Resource", "Pods");
        MetricSpec inFlight = chart.render(Chart.tree("autoscaling: {enabled: true, inFlight: 8}"))
                .maybe(HorizontalPodAutoscaler.class)
                .orElseThrow()
                .getSpec()
                .getMetrics()
                .get(1);
        assertThat(inFlight.getPods().getMetric().getName()).isEqualTo("slowpoint_requests_in_flight");
        assertThat(inFlight.getPods().getTarget().getAverageValue().getAmount()).isEqualTo("8");
    }

    private static List<String> metrics(String values) {
        return chart
                .render(Chart.tree(values))
                .maybe(HorizontalPodAutoscaler.class)
                .orElseThrow()
                .getSpec()
                .getMetrics()
                .stream()
                .map(MetricSpec::getType)
                .toList();
    }

    @Test
    @DisplayName("The network lets in the chosen namespaces, and out only to what the values need")
    void network() {
        NetworkPolicy policy = chart.render(
                        Chart.tree("networkPolicy: {clientNamespaces: [ingress], monitoringNamespace: watching}"))
                .maybe(NetworkPolicy.class)
                .orElseThrow();
        assertThat(policy.getSpec().getIngress().get(0).getFrom()).hasSize(2);
        assertThat(policy.getSpec()
                        .getIngress()
                        .get(0)
                        .getFrom()
                        .get(1)
                        .getNamespaceSelector()
                        .getMatchLabels())
                .containsValue("ingress");
        assertThat(policy.getSpec()
                        .getIngress()
                        .get(1)
                        .getFrom()
                        .get(0)
                        .getNamespaceSelector()
                        .getMatchLabels())
                .containsValue("watching");
        assertThat(policy.getSpec().getEgress()).hasSize(1);
    }

    @Test
    @DisplayName("A digest counts before a tag, and the version of the chart where there is neither")
    void image() {
        String digest = "sha256:" + "0".repeat(64);
        assertThat(chart.render(Map.of()).container().getImage()).isEqualTo("slowpoint:0.1.0");
        assertThat(chart.render(Chart.tree("image: {tag: 0.1.0-2}")).container().getImage())
                .isEqualTo("slowpoint:0.1.0-2");
        assertThat(chart.render(Chart.tree("image: {tag: 0.1.0-2, digest: '" + digest + "'}"))
                        .container()
                        .getImage())
                .isEqualTo("slowpoint@" + digest);
    }

    @Test
    @DisplayName("Rules and monitor have the form that the operator of Prometheus reads")
    void operator_kinds() throws Exception {
        Rendered rendered = chart.render(chart.values("everything"));
        assertThat(rendered.others()).containsOnlyKeys("PrometheusRule", "ServiceMonitor");
        for (Map.Entry<String, JsonNode> each : rendered.others().entrySet()) {
            String schema =
                    Files.readString(Path.of("src", "test", "resources", "chart", each.getKey() + ".schema.json"));
            var checked = SchemaRegistry.withDialect(Dialects.getDraft202012()).getSchema(schema, InputFormat.JSON);
            String json = JsonMapper.shared().writeValueAsString(each.getValue());
            assertThat(checked.validate(json, InputFormat.JSON)).isEmpty();
            assertThat(checked.validate(json.replace("\"spec\"", "\"specs\""), InputFormat.JSON))
                    .as("a schema that refuses nothing")
                    .isNotEmpty();
        }
    }

    @Test
    @DisplayName("Rules keep the templates of their texts, and their links lead where the values say")
    void rules() {
        JsonNode rules = chart.render(chart.values("everything")).others().get("PrometheusRule");
        JsonNode alert = rules.at("/spec/groups/0/rules/1");
        assertThat(alert.at("/annotations/runbook_url").asString())
                .isEqualTo("https://slowpoint.example.org/docs/guide/runbook#NothingAsked");
        assertThat(alert.at("/annotations/summary").asString()).isEqualTo("{{ $labels.namespace }} is not asked");
        assertThat(rules.at("/metadata/labels/release").asString()).isEqualTo("prometheus");
    }

    @Test
    @DisplayName("Dashboards are carried byte for byte, with the label that is looked for")
    void dashboards() {
        ConfigMap map = chart.render(Chart.tree("monitoring: {dashboards: {enabled: true}}"))
                .maybe(ConfigMap.class)
                .orElseThrow();
        assertThat(map.getData()).containsEntry("stand-in.json", Chart.DASHBOARD);
        assertThat(map.getMetadata().getLabels()).containsEntry("grafana_dashboard", "1");
    }

    @Test
    @DisplayName("Monitoring that is asked for and has no files is refused")
    void missing_files(@TempDir Path empty) {
        Chart bare = Chart.copy(empty.resolve("chart"));
        bare.delete("files/rules.yaml");
        bare.delete("files/dashboards/stand-in.json");
        assertThatThrownBy(() -> bare.render(Chart.tree("monitoring: {rules: {enabled: true}}")))
                .hasMessageContaining("files/rules.yaml");
    }

    @Test
    @DisplayName("The shipped rules and dashboards are carried")
    void shipped_files(@TempDir Path empty) throws Exception {
        Path files = Chart.SHIPPED.resolve("files");
        assumeThat(files.resolve("rules.yaml")).exists();
        Chart shipped = Chart.copy(empty.resolve("chart"));
        shipped.delete("files/dashboards/stand-in.json");
        shipped.write("files/rules.yaml", Files.readString(files.resolve("rules.yaml")));
        Rendered rendered = shipped.render(chart.values("production"));
        try (Stream<Path> dashboards = Files.list(files.resolve("dashboards"))) {
            assertThat(rendered.maybe(ConfigMap.class).orElseThrow().getData())
                    .containsOnlyKeys(dashboards
                            .map(each -> each.getFileName().toString())
                            .toList());
        }
        rendered.others()
                .get("PrometheusRule")
                .at("/spec/groups")
                .forEach(group -> group.get("rules")
                        .forEach(rule -> assertThat(rule.has("record")
                                        || rule.at("/annotations/runbook_url")
                                                .asString()
                                                .startsWith("https://slowpoint.example.org/docs/guide/runbook"))
                                .as(rule.toString())
                                .isTrue()));
    }

    static Stream<Arguments> settings() {
        return Stream.of(
                Arguments.of("limits: {longestRequestS: 7}", "SLOWPOINT_LIMITS_LONGESTREQUEST", "7s"),
                Arguments.of("limits: {longestLargeRequestS: 17}", "SLOWPOINT_LIMITS_LONGESTLARGEREQUEST", "17s"),
                Arguments.of("limits: {threadsPerCore: 3}", "SLOWPOINT_LIMITS_THREADSPERCORE", "3"),
                Arguments.of("limits: {mostWaiting: 5000}", "SLOWPOINT_LIMITS_MOSTWAITING", "5000"),
                Arguments.of("limits: {sheetsAtOnce: 1}", "SLOWPOINT_LIMITS_SHEETSATONCE", "1"),
                Arguments.of("shutdown: {graceS: 40}", "SPRING_LIFECYCLE_TIMEOUTPERSHUTDOWNPHASE", "40s"),
                Arguments.of("access: {keysSecretKey: file}", "SLOWPOINT_ACCESS_KEYSFILE", "/etc/slowpoint/keys/file"),
                Arguments.of(
                        "jvm: {heapMi: 100, processors: 3, options: -Xss256k}",
                        "JAVA_TOOL_OPTIONS",
                        "-Xmx100m -XX:ActiveProcessorCount=3 -Xss256k"),
                Arguments.of("environment: {SLOWPOINT_X: '1'}", "SLOWPOINT_X", "1"),
                Arguments.of(
                        "{tracing: {endpoint: 'http://c:4318/v1/traces', share: 0.2}, networkPolicy: {tracing: {namespace: t}}}",
                        "MANAGEMENT_TRACING_SAMPLING_PROBABILITY",
                        "0.2"));
    }

    @ParameterizedTest
    @MethodSource("settings")
    @DisplayName("A value reaches the service under the name that it reads")
    void settings(String values, String name, String value) {
        assertThat(chart.render(Chart.tree(values)).setting(name)).isEqualTo(value);
    }
}
