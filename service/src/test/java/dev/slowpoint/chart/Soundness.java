package dev.slowpoint.chart;

import io.fabric8.kubernetes.api.model.Container;
import io.fabric8.kubernetes.api.model.ContainerPort;
import io.fabric8.kubernetes.api.model.EnvVar;
import io.fabric8.kubernetes.api.model.HTTPGetAction;
import io.fabric8.kubernetes.api.model.Pod;
import io.fabric8.kubernetes.api.model.PodSpec;
import io.fabric8.kubernetes.api.model.Probe;
import io.fabric8.kubernetes.api.model.Quantity;
import io.fabric8.kubernetes.api.model.SecurityContext;
import io.fabric8.kubernetes.api.model.Service;
import io.fabric8.kubernetes.api.model.ServiceAccount;
import io.fabric8.kubernetes.api.model.Volume;
import io.fabric8.kubernetes.api.model.VolumeMount;
import io.fabric8.kubernetes.api.model.autoscaling.v2.HorizontalPodAutoscaler;
import io.fabric8.kubernetes.api.model.gatewayapi.v1.HTTPRoute;
import io.fabric8.kubernetes.api.model.networking.v1.Ingress;
import io.fabric8.kubernetes.api.model.networking.v1.NetworkPolicy;
import io.fabric8.kubernetes.api.model.networking.v1.NetworkPolicyPort;
import io.fabric8.kubernetes.api.model.policy.v1.PodDisruptionBudget;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tools.jackson.databind.JsonNode;

/** What must hold of the objects of a release whatever its values: each requirement by its name. */
final class Soundness {

    private static final int LONGEST_NAME = 63;

    private final Rendered rendered;
    private final List<String> faults = new ArrayList<>();

    private Soundness(Rendered rendered) {
        this.rendered = rendered;
    }

    /** The requirements by name. */
    static final Map<String, Consumer<Soundness>> REQUIREMENTS = requirements();

    private static Map<String, Consumer<Soundness>> requirements() {
        Map<String, Consumer<Soundness>> all = new LinkedHashMap<>();
        all.put("selectors match the labels of the pods", Soundness::selectors);
        all.put("ports have one name everywhere", Soundness::ports);
        all.put("probes ask the main port for what they are for", Soundness::probes);
        all.put("containers may do as little as possible", Soundness::privileges);
        all.put("memory is asked for as it is limited", Soundness::memory);
        all.put("replicas are decided in one place", Soundness::replicas);
        all.put("the network opens two ports in, and names those out", Soundness::network);
        all.put("images are fixed", Soundness::images);
        all.put("names fit", Soundness::names);
        all.put("a stop leaves time for requests under way", Soundness::stop);
        all.put("mounts and volumes belong together", Soundness::mounts);
        all.put("callers must be known", Soundness::access);
        all.put("a change of the overlay replaces the pods", Soundness::checksum);
        return all;
    }

    /** What is wrong, each with the name of its requirement; empty if nothing is. */
    static List<String> faults(Rendered rendered) {
        Soundness soundness = new Soundness(rendered);
        List<String> all = new ArrayList<>();
        REQUIREMENTS.forEach((name, requirement) -> {
            soundness.faults.clear();
            requirement.accept(soundness);
            soundness.faults.forEach(fault -> all.add(name + ": " + fault));
        });
        return all;
    }

    private void demand(boolean holds, String fault) {
        if (!holds) {
            faults.add(fault);
        }
    }

    private Map<String, String> podLabels() {
        return rendered.deployment().getSpec().getTemplate().getMetadata().getLabels();
    }

    private PodSpec pod() {
        return rendered.deployment().getSpec().getTemplate().getSpec();
    }

    private Stream<PodSpec> pods() {
        return Stream.concat(Stream.of(pod()), rendered.all(Pod.class).stream().map(Pod::getSpec));
    }

    private void selects(String who, Map<String, String> selector) {
        demand(
                selector != null
                        && !selector.isEmpty()
                        && podLabels().entrySet().containsAll(selector.entrySet()),
                who + " selects " + selector + ", pods have " + podLabels());
        for (Pod test : rendered.all(Pod.class)) {
            demand(
                    selector == null
                            || !test.getMetadata().getLabels().entrySet().containsAll(selector.entrySet()),
                    who + " selects the test too");
        }
    }

    private void selectors() {
        selects("deployment", rendered.deployment().getSpec().getSelector().getMatchLabels());
        rendered.all(Service.class)
                .forEach(service -> selects("service", service.getSpec().getSelector()));
        rendered.maybe(PodDisruptionBudget.class)
                .ifPresent(budget -> selects(
                        "disruption budget", budget.getSpec().getSelector().getMatchLabels()));
        rendered.maybe(NetworkPolicy.class)
                .ifPresent(policy -> selects(
                        "network policy", policy.getSpec().getPodSelector().getMatchLabels()));
        pod().getTopologySpreadConstraints()
                .forEach(spread -> selects("spread", spread.getLabelSelector().getMatchLabels()));
        JsonNode monitor = rendered.others().get("ServiceMonitor");
        if (monitor != null) {
            Map<String, String> wanted = new LinkedHashMap<>();
            monitor.at("/spec/selector/matchLabels")
                    .properties()
                    .forEach(
                            label -> wanted.put(label.getKey(), label.getValue().asString()));
            List<String> watched = rendered.all(Service.class).stream()
                    .filter(service ->
                            service.getMetadata().getLabels().entrySet().containsAll(wanted.entrySet()))
                    .map(service -> service.getSpec().getPorts().get(0).getName())
                    .toList();
            demand(watched.equals(List.of("management")), "the monitor watches the services of ports " + watched);
        }
    }

    private Set<String> containerPorts() {
        return rendered.container().getPorts().stream()
                .map(ContainerPort::getName)
                .collect(Collectors.toSet());
    }

    private void ports() {
        demand(containerPorts().equals(Set.of("http", "management")), "the container has " + containerPorts());
        rendered.all(Service.class)
                .forEach(service -> service.getSpec().getPorts().forEach(port -> {
                    demand(
                            containerPorts().contains(port.getTargetPort().getStrVal()),
                            "service port to " + port.getTargetPort());
                    demand(
                            port.getName().equals(port.getTargetPort().getStrVal()),
                            "service port named " + port.getName());
                }));
        demand(
                rendered.serviceWith("http").getSpec().getPorts().size() == 1,
                "the service of callers opens more than the port http");
        rendered.maybe(Ingress.class)
                .ifPresent(ingress -> ingress.getSpec()
                        .getRules()
                        .forEach(rule -> rule.getHttp().getPaths().forEach(path -> {
                            demand(
                                    Objects.equals(
                                            path.getBackend()
                                                    .getService()
                                                    .getPort()
                                                    .getName(),
                                            "http"),
                                    "ingress to port "
                                            + path.getBackend().getService().getPort());
                            demand(
                                    path.getBackend()
                                            .getService()
                                            .getName()
                                            .equals(rendered.serviceWith("http")
                                                    .getMetadata()
                                                    .getName()),
                                    "ingress to "
                                            + path.getBackend().getService().getName());
                        })));
        rendered.maybe(HTTPRoute.class)
                .ifPresent(route -> route.getSpec()
                        .getRules()
                        .forEach(rule -> rule.getBackendRefs()
                                .forEach(backend -> demand(
                                        backend.getName()
                                                        .equals(rendered.serviceWith("http")
                                                                .getMetadata()
                                                                .getName())
                                                && backend.getPort()
                                                        .equals(rendered.serviceWith("http")
                                                                .getSpec()
                                                                .getPorts()
                                                                .get(0)
                                                                .getPort()),
                                        "route to " + backend.getName() + ":" + backend.getPort()))));
        JsonNode monitor = rendered.others().get("ServiceMonitor");
        if (monitor != null) {
            demand(monitor.at("/spec/endpoints/0/port").asString().equals("management"), "monitor of another port");
        }
    }

    private void probe(String which, Probe probe, String path) {
        if (probe == null || probe.getHttpGet() == null) {
            demand(false, "no " + which + " probe");
            return;
        }
        HTTPGetAction get = probe.getHttpGet();
        boolean secured = !rendered.setting("SERVER_SSL_BUNDLE").isEmpty();
        demand(path.equals(get.getPath()), which + " asks " + get.getPath());
        demand("http".equals(get.getPort().getStrVal()), which + " on port " + get.getPort());
        demand((secured ? "HTTPS" : "HTTP").equals(get.getScheme()), which + " by " + get.getScheme());
        demand(probe.getTimeoutSeconds() != null, which + " has no time-out");
    }

    private void probes() {
        probe("startup", rendered.container().getStartupProbe(), "/livez");
        probe("liveness", rendered.container().getLivenessProbe(), "/livez");
        probe("readiness", rendered.container().getReadinessProbe(), "/readyz");
    }

    private void privileges() {
        pods().forEach(pod -> {
            demand(
                    Boolean.TRUE.equals(pod.getSecurityContext().getRunAsNonRoot())
                            && Objects.equals(pod.getSecurityContext().getRunAsUser(), 10001L),
                    "a pod may run as root");
            demand(
                    pod.getSecurityContext().getSeccompProfile() != null
                            && "RuntimeDefault"
                                    .equals(pod.getSecurityContext()
                                            .getSeccompProfile()
                                            .getType()),
                    "no seccomp profile");
            demand(Boolean.FALSE.equals(pod.getAutomountServiceAccountToken()), "a pod has a token");
            demand(Boolean.FALSE.equals(pod.getEnableServiceLinks()), "a pod is told of all services");
            for (Container container : pod.getContainers()) {
                SecurityContext security = container.getSecurityContext();
                demand(security != null, container.getName() + " has no security context");
                if (security != null) {
                    demand(
                            Boolean.FALSE.equals(security.getAllowPrivilegeEscalation()),
                            container.getName() + " may gain privileges");
                    demand(
                            Boolean.TRUE.equals(security.getReadOnlyRootFilesystem()),
                            container.getName() + " may write its root");
                    demand(
                            security.getCapabilities() != null
                                    && List.of("ALL")
                                            .equals(security.getCapabilities().getDrop())
                                    && (security.getCapabilities().getAdd() == null
                                            || security.getCapabilities()
                                                    .getAdd()
                                                    .isEmpty()),
                            container.getName() + " keeps capabilities");
                }
            }
        });
        ServiceAccount account = rendered.maybe(ServiceAccount.class).orElseThrow();
        demand(Boolean.FALSE.equals(account.getAutomountServiceAccountToken()), "the account hands out a token");
        demand(account.getMetadata().getName().equals(pod().getServiceAccountName()), "the pods have another account");
    }

    private void memory() {
        pods().flatMap(pod -> pod.getContainers().stream()).forEach(container -> {
            Quantity asked = container.getResources().getRequests().get("memory");
            Quantity limit = container.getResources().getLimits().get("memory");
            demand(asked != null && asked.equals(limit), container.getName() + " asks for " + asked + " of " + limit);
            demand(container.getResources().getRequests().get("cpu") != null, container.getName() + " asks for no CPU");
        });
        demand(rendered.setting("JAVA_TOOL_OPTIONS").contains("-Xmx"), "the heap has no bound");
        demand(
                rendered.setting("JAVA_TOOL_OPTIONS").contains("-XX:ActiveProcessorCount="),
                "the JVM counts the cores of the node");
    }

    private void replicas() {
        Integer replicas = rendered.deployment().getSpec().getReplicas();
        HorizontalPodAutoscaler scaler =
                rendered.maybe(HorizontalPodAutoscaler.class).orElse(null);
        demand((scaler == null) == (replicas != null), "replicas " + replicas + " with scaler " + (scaler != null));
        int fewest = scaler != null ? scaler.getSpec().getMinReplicas() : Objects.requireNonNullElse(replicas, 1);
        PodDisruptionBudget budget = rendered.maybe(PodDisruptionBudget.class).orElse(null);
        demand(budget == null || fewest > 1, "a budget for one pod stops all maintenance");
        demand(
                budget == null
                        || Objects.equals(budget.getSpec().getMaxUnavailable().getIntVal(), 1),
                "the budget lets more than one pod go");
        if (scaler != null) {
            demand(
                    scaler.getSpec()
                            .getScaleTargetRef()
                            .getName()
                            .equals(rendered.deployment().getMetadata().getName()),
                    "the scaler scales " + scaler.getSpec().getScaleTargetRef().getName());
            demand(
                    scaler.getSpec().getBehavior().getScaleDown().getStabilizationWindowSeconds() >= 300,
                    "pods are taken away in haste");
        }
    }

    private void network() {
        NetworkPolicy policy = rendered.maybe(NetworkPolicy.class).orElse(null);
        if (policy == null) {
            return;
        }
        demand(
                new TreeSet<>(policy.getSpec().getPolicyTypes()).equals(new TreeSet<>(List.of("Egress", "Ingress"))),
                "it governs " + policy.getSpec().getPolicyTypes());
        List<String> in = policy.getSpec().getIngress().stream()
                .flatMap(rule -> rule.getPorts().stream())
                .map(port -> port.getPort().getStrVal())
                .toList();
        demand(in.equals(List.of("http", "management")), "it opens " + in);
        policy.getSpec().getIngress().forEach(rule -> demand(!rule.getFrom().isEmpty(), "it lets everyone in"));
        policy.getSpec().getIngress().stream()
                .filter(rule -> rule.getPorts().stream()
                        .anyMatch(port -> "management".equals(port.getPort().getStrVal())))
                .forEach(rule -> demand(
                        rule.getFrom().size() == 1 && rule.getFrom().get(0).getNamespaceSelector() != null,
                        "others than monitoring may read metrics"));
        TreeSet<Integer> wanted = new TreeSet<>(List.of(53));
        if (rendered.setting("SLOWPOINT_ACCESS_MODE").equals("jwt")) {
            wanted.add(443);
        }
        if (!rendered.setting("MANAGEMENT_OPENTELEMETRY_TRACING_EXPORT_OTLP_ENDPOINT")
                .isEmpty()) {
            wanted.add(4318);
        }
        TreeSet<Integer> out = policy.getSpec().getEgress().stream()
                .flatMap(rule -> rule.getPorts().stream())
                .map(NetworkPolicyPort::getPort)
                .map(port -> port.getIntVal())
                .collect(Collectors.toCollection(TreeSet::new));
        demand(out.equals(wanted), "it lets out to " + out + ", wanted " + wanted);
        policy.getSpec()
                .getEgress()
                .forEach(rule ->
                        demand(!rule.getTo().isEmpty() && !rule.getPorts().isEmpty(), "it lets out to anywhere"));
    }

    private void images() {
        pods().flatMap(pod -> pod.getContainers().stream())
                .map(Container::getImage)
                .forEach(image -> {
                    String version = image.substring(image.lastIndexOf('/') + 1);
                    demand(version.contains(":"), image + " has neither tag nor digest");
                    demand(!version.endsWith(":latest"), image + " floats");
                });
    }

    private void names() {
        TreeSet<String> names = rendered.names();
        demand(
                names.size() == rendered.typed().size() + rendered.others().size(),
                "two objects of a kind have one name: " + names);
        names.forEach(name -> {
            String bare = name.substring(name.indexOf(' ') + 1);
            demand(bare.length() <= LONGEST_NAME && bare.matches("[a-z0-9]([-a-z0-9]*[a-z0-9])?"), name);
        });
        rendered.typed()
                .forEach(each -> each.getMetadata()
                        .getLabels()
                        .forEach((label, value) -> demand(value.length() <= LONGEST_NAME, label + " is " + value)));
    }

    private void stop() {
        Long sleep = rendered.container().getLifecycle() == null
                        || rendered.container().getLifecycle().getPreStop() == null
                        || rendered.container().getLifecycle().getPreStop().getSleep() == null
                ? null
                : rendered.container().getLifecycle().getPreStop().getSleep().getSeconds();
        String phase = rendered.setting("SPRING_LIFECYCLE_TIMEOUTPERSHUTDOWNPHASE");
        String longest = rendered.setting("SLOWPOINT_LIMITS_LONGESTREQUEST");
        if (sleep == null || !phase.matches("\\d+s") || !longest.matches("\\d+s")) {
            demand(false, "pause " + sleep + ", phase " + phase + ", longest request " + longest);
            return;
        }
        demand(
                pod().getTerminationGracePeriodSeconds() > sleep + seconds(phase),
                "killed after " + pod().getTerminationGracePeriodSeconds() + " s");
        demand(seconds(longest) <= seconds(phase), "requests may take longer than a stop");
    }

    private static long seconds(String duration) {
        return Long.parseLong(duration.substring(0, duration.length() - 1));
    }

    private void mounts() {
        pods().forEach(pod -> {
            Set<String> volumes = pod.getVolumes().stream().map(Volume::getName).collect(Collectors.toSet());
            Set<String> mounted = pod.getContainers().get(0).getVolumeMounts().stream()
                    .map(VolumeMount::getName)
                    .collect(Collectors.toSet());
            demand(volumes.equals(mounted), "volumes " + volumes + ", mounted " + mounted);
            for (VolumeMount mount : pod.getContainers().get(0).getVolumeMounts()) {
                demand(mount.getSubPath() == null, mount.getName() + " is mounted by sub-path and would never change");
                demand(
                        mount.getMountPath().equals("/tmp") || Boolean.TRUE.equals(mount.getReadOnly()),
                        mount.getName() + " may be written");
            }
            demand(
                    pod.getVolumes().stream()
                            .filter(volume -> volume.getName().equals("tmp"))
                            .anyMatch(volume -> volume.getEmptyDir() != null),
                    "nothing to write to at /tmp");
        });
        List<String> places = rendered.container().getVolumeMounts().stream()
                .map(VolumeMount::getMountPath)
                .toList();
        rendered.container().getEnv().stream()
                .map(EnvVar::getValue)
                .filter(value -> value != null && value.replace("file:", "").startsWith("/etc/slowpoint/"))
                .forEach(value -> demand(
                        places.stream().anyMatch(value.replace("file:", "")::startsWith), value + " is not mounted"));
    }

    private void access() {
        String mode = rendered.setting("SLOWPOINT_ACCESS_MODE");
        boolean keys = mode.equals("keys")
                && rendered.setting("SLOWPOINT_ACCESS_KEYSFILE").startsWith("/etc/slowpoint/keys/");
        boolean tokens = mode.equals("jwt")
                && Stream.of("ISSUERURI", "JWKSETURI", "AUDIENCES")
                        .noneMatch(name -> rendered.setting("SPRING_SECURITY_OAUTH2_RESOURCESERVER_JWT_" + name)
                                .isEmpty());
        demand(keys || tokens, "the mode is " + mode);
    }

    private void checksum() {
        Map<String, String> annotations =
                rendered.deployment().getSpec().getTemplate().getMetadata().getAnnotations();
        demand(
                annotations != null
                        && Objects.requireNonNullElse(annotations.get("checksum/overlay"), "")
                                .matches("[0-9a-f]{64}"),
                "no checksum of the overlay");
    }
}
