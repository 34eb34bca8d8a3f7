package dev.slowpoint.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Which values the chart refuses, and that it says where they stand. */
class ChartValuesTest {

    @TempDir
    static Path folder;

    private static Chart chart;

    @BeforeAll
    static void copy() {
        chart = Chart.copy(folder.resolve("chart"));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            replicas: 0 | /replicas
            replicas: 101 | /replicas
            replicas: two | /replicas
            replicas: 1.5 | /replicas
            replica: 2 | replica
            image: {tag: latest} | /image/tag
            image: {tag: 'a b'} | /image/tag
            image: {digest: sha256:abc} | /image/digest
            image: {repository: ''} | /image/repository
            image: {name: slowpoint} | /image
            imagePullSecrets: [UPPER] | /imagePullSecrets/0
            service: {port: 0} | /service/port
            service: {port: 65536} | /service/port
            service: {type: LoadBalancer} | /service
            access: {mode: open} | /access/mode
            access: {mode: none} | /access/mode
            access: {keysSecret: ''} | /access/keysSecret
            access: {jwt: {issuerUri: 'http://login.example.org'}} | /access/jwt/issuerUri
            access: {keys: [abc]} | /access
            tls: {secret: 'A_B'} | /tls/secret
            overlay: {files: {'../foods.csv': x}} | ../foods.csv
            overlay: {files: {foods.csv: ''}} | /overlay/files/foods.csv
            overlay: {files: {foods.csv: 3}} | /overlay/files/foods.csv
            limits: {longestRequestS: 0} | /limits/longestRequestS
            limits: {longestRequestS: 10s} | /limits/longestRequestS
            limits: {threadsPerCore: 65} | /limits/threadsPerCore
            limits: {mostWaiting: -1} | /limits/mostWaiting
            limits: {sheetsAtOnce: 0} | /limits/sheetsAtOnce
            jvm: {heapMi: 32} | /jvm/heapMi
            jvm: {processors: 0} | /jvm/processors
            resources: {limits: {memory: 512M}} | /resources/limits/memory
            resources: {requests: {cpu: lots}} | /resources/requests/cpu
            resources: {limits: {storage: 1Gi}} | /resources/limits
            shutdown: {preStopS: 0} | /shutdown/preStopS
            shutdown: {graceS: 500} | /shutdown/graceS
            autoscaling: {max: 0} | /autoscaling/max
            autoscaling: {cpuPercent: 5} | /autoscaling/cpuPercent
            autoscaling: {enabled: 'yes'} | /autoscaling/enabled
            disruptionBudget: {maxUnavailable: 1} | /disruptionBudget
            spread: 1 | /spread
            networkPolicy: {clientNamespaces: [In_gress]} | /networkPolicy/clientNamespaces/0
            networkPolicy: {keySet: {cidr: login.example.org}} | /networkPolicy/keySet/cidr
            networkPolicy: {tracing: {port: 70000}} | /networkPolicy/tracing/port
            ingress: {enabled: true} | /ingress/host
            ingress: {host: 'a b'} | /ingress/host
            gateway: {enabled: true, host: a.example.org} | /gateway/parent/name
            gateway: {enabled: true, parent: {name: public}} | /gateway/host
            monitoring: {serviceMonitor: {intervalS: 1}} | /monitoring/serviceMonitor/intervalS
            monitoring: {rules: {runbookBase: slowpoint}} | /monitoring/rules/runbookBase
            monitoring: {dashboards: {labels: {a: 'b c'}}} | /monitoring/dashboards/labels/a
            monitoring: {alerts: true} | /monitoring
            tracing: {share: 2} | /tracing/share
            tracing: {endpoint: collector} | /tracing/endpoint
            test: {credentialsSecret: ''} | /test/credentialsSecret
            environment: {lower: x} | lower
            environment: {UPPER: 3} | /environment/UPPER
            podLabels: {team: 'our team'} | /podLabels/team
            tolerations: [{effect: Sometimes}] | /tolerations/0/effect
            """)
    @DisplayName("A value that is out of bounds is refused at its place")
    void refused(String values, String place) {
        String dotted = place.startsWith("/") ? place.substring(1).replace('/', '.') : place;
        assertThatThrownBy(() -> chart.text("plans", Chart.tree(values)))
                .satisfies(refusal -> assertThat(refusal.getMessage().contains(place)
                                || refusal.getMessage().contains(dotted))
                        .as(refusal.getMessage())
                        .isTrue());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            {access: {mode: jwt}} | access.jwt
            {access: {mode: jwt, jwt: {issuerUri: 'https://a.example.org', jwkSetUri: 'https://a.example.org/keys'}}} | access.jwt
            {access: {mode: jwt, jwt: {issuerUri: 'https://a.example.org', jwkSetUri: 'https://a.example.org/keys', audience: us}}} | networkPolicy.keySet.cidr
            {tracing: {endpoint: 'http://collector:4318'}} | networkPolicy.tracing.namespace
            {overlay: {configMap: ours, files: {foods.csv: x}}} | overlay
            {limits: {longestRequestS: 31}} | limits.longestRequestS
            {limits: {longestLargeRequestS: 35}} | limits.longestLargeRequestS
            {autoscaling: {min: 7}} | autoscaling.min
            {resources: {requests: {memory: 256Mi}}} | resources.requests.memory
            {jvm: {heapMi: 240}} | jvm.heapMi
            """)
    @DisplayName("Values that do not fit each other are refused by name")
    void not_fitting(String values, String place) {
        assertThatThrownBy(() -> chart.text("plans", Chart.tree(values))).hasMessageContaining(place + ":");
    }

    @Test
    @DisplayName("A heap that fits its memory is taken, in either unit")
    void fitting() {
        assertThat(chart.render(Chart.tree(
                                "{jvm: {heapMi: 460}, resources: {requests: {memory: 1Gi}, limits: {memory: 1Gi}}}"))
                        .setting("JAVA_TOOL_OPTIONS"))
                .contains("-Xmx460m");
    }

    @Test
    @DisplayName("The schema knows every default, closes every object and bounds every number")
    void schema() {
        JsonNode schema = JsonMapper.shared().readTree(chart.read("values.schema.json"));
        List<String> faults = new ArrayList<>();
        closed("", schema, faults);
        known("", Chart.tree(chart.read("values.yaml")), schema, faults);
        assertThat(faults).isEmpty();
    }

    private static void closed(String place, JsonNode schema, List<String> faults) {
        String type = schema.path("type").asString("");
        if (type.equals("object") && !place.equals("/global")) {
            JsonNode more = schema.path("additionalProperties");
            if (more.isMissingNode() || (more.isBoolean() && more.asBoolean())) {
                faults.add(place + " takes anything");
            }
        }
        if ((type.equals("integer") || type.equals("number")) && !schema.has("minimum")) {
            faults.add(place + " has no bound");
        }
        schema.path("properties")
                .properties()
                .forEach(each -> closed(place + "/" + each.getKey(), each.getValue(), faults));
    }

    private static void known(String place, Map<String, Object> values, JsonNode schema, List<String> faults) {
        values.forEach((name, value) -> {
            JsonNode below = schema.path("properties").path(name);
            if (below.isMissingNode() && schema.path("properties").size() > 0) {
                faults.add(place + "/" + name + " is not in the schema");
            }
            if (value instanceof Map<?, ?> tree) {
                known(place + "/" + name, Chart.named(tree), below, faults);
            }
        });
        schema.path("properties").properties().forEach(each -> {
            if (!values.containsKey(each.getKey())
                    && !each.getKey().equals("global")
                    && !place.equals("/tolerations")
                    && !place.startsWith("/resources")) {
                faults.add(place + "/" + each.getKey() + " has no default in values.yaml");
            }
        });
    }

    @Test
    @DisplayName("Every value has a comment, of its own or of the group that it stands in")
    void commented() {
        List<String> lines = chart.read("values.yaml").lines().toList();
        List<String> bare = new ArrayList<>();
        for (int i = 0; i < lines.size(); i++) {
            boolean opens = lines.get(i).matches("[a-z].*");
            if (opens && !lines.get(i - 1).startsWith("#") && !hasCommentBelow(lines, i)) {
                bare.add(lines.get(i));
            }
        }
        assertThat(lines).filteredOn(line -> line.matches("[a-z].*")).hasSizeGreaterThan(20);
        assertThat(bare).isEmpty();
    }

    private static boolean hasCommentBelow(List<String> lines, int index) {
        return lines.subList(index + 1, lines.size()).stream()
                .takeWhile(line -> line.startsWith(" "))
                .anyMatch(line -> line.strip().startsWith("#"));
    }
}
