package dev.slowpoint.kit.layers;

import dev.slowpoint.kit.Contract;
import dev.slowpoint.kit.Contract.Example;
import dev.slowpoint.kit.Contract.Operation;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/** The requests that the contract shows, as sources of tests. */
final class Examples {

    private Examples() {}

    static Stream<Example> all() {
        return Contract.PUBLISHED.examples().stream();
    }

    /** The operations that compute: each is shown with at least one request. */
    static Stream<Operation> computing() {
        return Contract.PUBLISHED.operations().stream().filter(Operation::reads);
    }

    /** The operations that list or tell what there is. */
    static Stream<Operation> catalogues() {
        return Contract.PUBLISHED.operations().stream().filter(operation -> !operation.reads());
    }

    /** Catalogues whose path has no parameter. */
    static Stream<Operation> lists() {
        return catalogues().filter(operation -> !operation.path().contains("{"));
    }

    /** The shortest request that is shown of an operation, which is the cheapest to ask. */
    static Example shortest(Operation operation) {
        List<Example> shown = Contract.PUBLISHED.examples(operation);
        return shown.stream()
                .min(Comparator.comparingInt(
                        example -> example.request().toString().length()))
                .orElseThrow(() -> new AssertionError("The contract shows no request of " + operation));
    }

    static Example cookPlan() {
        return shortest(Contract.PUBLISHED.operation("planCook"));
    }
}
