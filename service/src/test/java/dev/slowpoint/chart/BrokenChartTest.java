package dev.slowpoint.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Templates that are broken on purpose: each has to be noticed, by the requirement that it breaks. */
class BrokenChartTest {

    /** A template, what is put in place of what, and the requirement that notices; "parse" where the strict reader does. */
    private record Break(String template, String was, String is, String noticedBy) {}

    private static final List<Break> BREAKS = List.of(
            new Break("deployment", "readinessProbe:", "readinesProbe:", "parse"),
            new Break("deployment", "terminationGracePeriodSeconds:", "terminationGracePeriod:", "parse"),
            new Break("service", "targetPort: http", "targetPorts: http", "parse"),
            new Break("deployment", "path: /readyz", "path: /livez", "probes ask"),
            new Break("deployment", "scheme: {{ $scheme }}", "scheme: HTTP", "probes ask"),
            new Break("deployment", "name: management", "name: metrics", "ports have"),
            new Break("service", "targetPort: http", "targetPort: 8080", "ports have"),
            new Break("ingress", "name: http", "name: web", "ports have"),
            new Break("httproute", "port: {{ .Values.service.port }}", "port: 8080", "ports have"),
            new Break("servicemonitor", "port: management", "port: http", "ports have"),
            new Break("servicemonitor", "slowpoint/part: management", "{{- /**/}}", "selectors match"),
            new Break(
                    "service",
                    "{{- include \"slowpoint.selector\" . | nindent 4 }}",
                    "app: slowpoint",
                    "selectors match"),
            new Break(
                    "disruptionbudget",
                    "{{- include \"slowpoint.selector\" . | nindent 6 }}",
                    "app: slowpoint",
                    "selectors match"),
            new Break(
                    "networkpolicy",
                    "{{- include \"slowpoint.selector\" . | nindent 6 }}",
                    "app: slowpoint",
                    "selectors match"),
            new Break("tests/contract", "component: test", "component: service", "selectors match"),
            new Break(
                    "_helpers.tpl", "readOnlyRootFilesystem: true", "readOnlyRootFilesystem: false", "containers may"),
            new Break("_helpers.tpl", "drop: [\"ALL\"]", "drop: [\"NET_RAW\"]", "containers may"),
            new Break("_helpers.tpl", "runAsNonRoot: true", "runAsNonRoot: false", "containers may"),
            new Break("_helpers.tpl", "RuntimeDefault", "Unconfined", "containers may"),
            new Break(
                    "deployment",
                    "automountServiceAccountToken: false",
                    "automountServiceAccountToken: true",
                    "containers may"),
            new Break(
                    "tests/contract",
                    "securityContext:\n        {{- include \"slowpoint.containerSecurity\" . | nindent 8 }}",
                    "securityContext: {}",
                    "containers may"),
            new Break("tests/contract", "memory: 384Mi\n      s", "memory: 512Mi\n      s", "memory is"),
            new Break("deployment", "-Xmx%dm ", "-Xms%dm ", "memory is"),
            new Break("deployment", "{{- if not .Values.autoscaling.enabled }}", "{{- if true }}", "replicas are"),
            new Break(
                    "autoscaler",
                    "    name: {{ include \"slowpoint.name\" . }}\n  minReplicas",
                    "    name: slowpoint\n  minReplicas",
                    "replicas are"),
            new Break("disruptionbudget", "maxUnavailable: 1", "maxUnavailable: 2", "replicas are"),
            new Break("networkpolicy", "policyTypes: [Ingress, Egress]", "policyTypes: [Ingress]", "the network"),
            new Break("networkpolicy", "port: management", "port: 9090", "the network"),
            new Break("networkpolicy", "- podSelector: {}", "- namespaceSelector: {}\n          ports: []", "parse"),
            new Break(
                    "networkpolicy",
                    "          port: 53\n        - protocol: TCP\n          port: 53",
                    "          port: 53\n        - protocol: TCP\n          port: 80",
                    "the network"),
            new Break(
                    "deployment",
                    "add .Values.shutdown.preStopS .Values.shutdown.graceS 10",
                    "add .Values.shutdown.graceS 5",
                    "a stop"),
            new Break(
                    "deployment",
                    "sleep:\n                seconds: {{ .Values.shutdown.preStopS }}",
                    "exec:\n                command: [sleep, \"5\"]",
                    "a stop"),
            new Break("deployment", "mountPath: /etc/slowpoint/keys", "mountPath: /etc/keys", "mounts and"),
            new Break(
                    "deployment",
                    "mountPath: /etc/slowpoint/keys",
                    "subPath: keys\n              mountPath: /etc/slowpoint/keys",
                    "mounts and"),
            new Break(
                    "deployment",
                    "        - name: tls\n          secret:",
                    "        - name: certificate\n          secret:",
                    "mounts and"),
            new Break("deployment", "value: {{ .Values.access.mode }}", "value: open", "callers must"),
            new Break(
                    "deployment",
                    "        checksum/overlay: {{ toJson .Values.overlay | sha256sum }}",
                    "        checksum/overlay: none",
                    "a change of"),
            new Break("_helpers.tpl", "tag | default .version", "tag | default \"latest\"", "images are"),
            new Break("_helpers.tpl", "trunc 50", "trunc 63", "names fit"),
            new Break("dashboards", "-dashboards", "-overlay", "names fit"));

    @TempDir
    Path folder;

    @Test
    @DisplayName("Every broken template is noticed by the requirement that it breaks, and every requirement bites")
    void noticed() {
        Chart chart = Chart.copy(folder.resolve("chart"));
        Map<String, Object> everything = chart.values("everything");
        List<String> unnoticed = new ArrayList<>();
        for (Break each : BREAKS) {
            String file = "templates/" + each.template() + (each.template().contains(".") ? "" : ".yaml");
            String whole = chart.read(file);
            assertThat(whole).as(file).contains(each.was());
            chart.write(file, whole.replace(each.was(), each.is()));
            // The longest name that Helm allows, so that a name that is too long shows.
            List<String> faults = faults(chart, "slowpoint-" + "a".repeat(43), everything);
            chart.write(file, whole);
            if (faults.stream().noneMatch(fault -> fault.startsWith(each.noticedBy()))) {
                unnoticed.add(each + " gave " + faults);
            }
        }
        assertThat(unnoticed).isEmpty();
        assertThat(faults(chart, "slowpoint-" + "a".repeat(43), everything)).isEmpty();

        Set<String> bitten = BREAKS.stream().map(Break::noticedBy).collect(Collectors.toCollection(TreeSet::new));
        assertThat(Soundness.REQUIREMENTS.keySet())
                .allSatisfy(name -> assertThat(bitten).anyMatch(name::startsWith));
    }

    private static List<String> faults(Chart chart, String release, Map<String, Object> values) {
        Rendered rendered;
        String text = chart.text(release, values);
        try {
            rendered = Rendered.of(text);
        } catch (RuntimeException e) {
            return List.of("parse: " + e.getMessage());
        }
        return Stream.concat(
                        Soundness.faults(rendered).stream(),
                        Soundness.faults(Rendered.of(chart.text(release, Map.of()))).stream())
                .toList();
    }
}
