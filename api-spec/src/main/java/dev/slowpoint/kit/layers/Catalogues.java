package dev.slowpoint.kit.layers;

import dev.slowpoint.kit.Contract.Operation;
import dev.slowpoint.kit.Subject;
import dev.slowpoint.kit.Wire;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import tools.jackson.databind.JsonNode;

/** The paths of what a subject lists. */
final class Catalogues {

    private Catalogues() {}

    /** Each path of an operation: its own, or one for each entry of the list that its path continues. */
    static List<String> paths(Subject subject, Operation operation) {
        int brace = operation.path().indexOf('{');
        if (brace < 0) {
            return List.of(operation.path() + query(operation));
        }
        String parameter =
                operation.path().substring(brace + 1, operation.path().indexOf('}'));
        // Explanations are found at the path that each problem names, and those are listed like all else.
        String list =
                parameter.equals("slug") ? "/v1/problems" : operation.path().substring(0, brace - 1);
        JsonNode entries = subject.get(list)
                .accept(Wire.JSON.mediaType())
                .send()
                .expect(200)
                .tree();
        List<String> paths = new ArrayList<>();
        entries.forEach(all -> all.forEach(entry -> paths.add(
                parameter.equals("slug")
                        ? entry.path("type").asString()
                        : operation.path().replaceFirst("\\{[^}]+}.*", "")
                                + entry.path(parameter).asString()
                                + operation.path().replaceFirst(".*}", "")
                                + query(operation))));
        if (paths.isEmpty()) {
            throw new AssertionError(list + " lists nothing");
        }
        return paths;
    }

    /** What an operation cannot be asked without, as the contract shows it. */
    private static String query(Operation operation) {
        String query = operation
                .node()
                .path("parameters")
                .valueStream()
                .filter(parameter -> parameter.path("in").asString("").equals("query")
                        && parameter.path("required").asBoolean(false))
                .map(parameter -> parameter.path("name").asString() + "="
                        + parameter.at("/schema/examples/0").asString())
                .collect(Collectors.joining("&"));
        return query.isEmpty() ? "" : "?" + query;
    }
}
