package dev.slowpoint.chart;

import io.fabric8.kubernetes.api.model.ConfigMap;
import io.fabric8.kubernetes.api.model.Container;
import io.fabric8.kubernetes.api.model.EnvVar;
import io.fabric8.kubernetes.api.model.HasMetadata;
import io.fabric8.kubernetes.api.model.Pod;
import io.fabric8.kubernetes.api.model.Service;
import io.fabric8.kubernetes.api.model.ServiceAccount;
import io.fabric8.kubernetes.api.model.apps.Deployment;
import io.fabric8.kubernetes.api.model.autoscaling.v2.HorizontalPodAutoscaler;
import io.fabric8.kubernetes.api.model.gatewayapi.v1.HTTPRoute;
import io.fabric8.kubernetes.api.model.networking.v1.Ingress;
import io.fabric8.kubernetes.api.model.networking.v1.NetworkPolicy;
import io.fabric8.kubernetes.api.model.policy.v1.PodDisruptionBudget;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.regex.Pattern;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.cfg.MapperConfig;
import tools.jackson.databind.introspect.Annotated;
import tools.jackson.databind.introspect.JacksonAnnotationIntrospector;
import tools.jackson.dataformat.yaml.YAMLMapper;

/**
 * The objects that a chart makes: those of Kubernetes itself by their types, those of the Prometheus operator as they stand.
 *
 * @param typed objects whose every member is one that their type knows
 * @param others objects of kinds that Kubernetes does not have by itself, by kind
 */
record Rendered(List<HasMetadata> typed, Map<String, JsonNode> others) {

    private static final Pattern BETWEEN = Pattern.compile("(?m)^---\\s*$");

    private static final Map<String, Class<? extends HasMetadata>> TYPES = Map.ofEntries(
            Map.entry("apps/v1/Deployment", Deployment.class),
            Map.entry("v1/Service", Service.class),
            Map.entry("v1/ServiceAccount", ServiceAccount.class),
            Map.entry("v1/ConfigMap", ConfigMap.class),
            Map.entry("v1/Pod", Pod.class),
            Map.entry("autoscaling/v2/HorizontalPodAutoscaler", HorizontalPodAutoscaler.class),
            Map.entry("policy/v1/PodDisruptionBudget", PodDisruptionBudget.class),
            Map.entry("networking.k8s.io/v1/NetworkPolicy", NetworkPolicy.class),
            Map.entry("networking.k8s.io/v1/Ingress", Ingress.class),
            Map.entry("gateway.networking.k8s.io/v1/HTTPRoute", HTTPRoute.class));

    /** The models take any member into a drawer for unknown ones; without it, a misspelt member is refused. */
    private static final class NoDrawer extends JacksonAnnotationIntrospector {
        private static final long serialVersionUID = 1;

        @Override
        public Boolean hasAnySetter(MapperConfig<?> config, Annotated annotated) {
            return false;
        }
    }

    private static final YAMLMapper STRICT = YAMLMapper.builder()
            .annotationIntrospector(new NoDrawer())
            .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .build();

    /** Reads what Helm prints. Throws if an object has a member that its type does not know. */
    static Rendered of(String text) {
        List<HasMetadata> typed = new ArrayList<>();
        Map<String, JsonNode> others = new java.util.TreeMap<>();
        for (String document : BETWEEN.split(text, -1)) {
            JsonNode tree = STRICT.readTree(document);
            if (tree.isEmpty()) {
                continue;
            }
            String kind = tree.path("kind").asString();
            String version = tree.path("apiVersion").asString();
            Class<? extends HasMetadata> type = TYPES.get(version + "/" + kind);
            if (type != null) {
                typed.add(STRICT.treeToValue(tree, type));
            } else if (version.equals("monitoring.coreos.com/v1")) {
                others.put(kind, tree);
            } else {
                throw new IllegalArgumentException("no type for " + version + " " + kind);
            }
        }
        return new Rendered(List.copyOf(typed), others);
    }

    /** Objects of a type. */
    <T extends HasMetadata> List<T> all(Class<T> type) {
        return typed.stream().filter(type::isInstance).map(type::cast).toList();
    }

    /** The object of a type that there is at most one of. */
    <T extends HasMetadata> Optional<T> maybe(Class<T> type) {
        List<T> found = all(type);
        if (found.size() > 1) {
            throw new IllegalStateException(found.size() + " objects of type " + type.getSimpleName());
        }
        return found.stream().findFirst();
    }

    Deployment deployment() {
        return maybe(Deployment.class).orElseThrow();
    }

    /** The container of the service. */
    Container container() {
        return deployment().getSpec().getTemplate().getSpec().getContainers().get(0);
    }

    /** A setting of the container by its environment name; empty if it has none. */
    String setting(String name) {
        return container().getEnv().stream()
                .filter(variable -> variable.getName().equals(name))
                .map(EnvVar::getValue)
                .findFirst()
                .orElse("");
    }

    /** The service with a port of this name. */
    Service serviceWith(String port) {
        return all(Service.class).stream()
                .filter(service -> service.getSpec().getPorts().stream()
                        .anyMatch(each -> each.getName().equals(port)))
                .findFirst()
                .orElseThrow();
    }

    /** Kind and name of each object. */
    TreeSet<String> names() {
        TreeSet<String> names = new TreeSet<>();
        typed.forEach(
                each -> names.add(each.getKind() + " " + each.getMetadata().getName()));
        others.forEach(
                (kind, tree) -> names.add(kind + " " + tree.at("/metadata/name").asString()));
        return names;
    }
}
