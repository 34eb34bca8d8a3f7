package dev.slowpoint.kit.layers;

import static org.assertj.core.api.Assertions.assertThat;

import dev.slowpoint.kit.Answer;
import dev.slowpoint.kit.Contract;
import dev.slowpoint.kit.Contract.Example;
import dev.slowpoint.kit.Kit;
import dev.slowpoint.kit.Subject;
import dev.slowpoint.kit.Wire;
import dev.slowpoint.kit.changes.ContractChanges;
import dev.slowpoint.kit.changes.Severity;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.dataformat.yaml.YAMLMapper;

/** Whether a client that was built for the last release still gets what it was promised. */
@ExtendWith(Kit.class)
@DisplayNameGeneration(Kit.Names.class)
public class CompatLayer {

    private final Subject subject;

    CompatLayer(Subject subject) {
        this.subject = subject;
    }

    @Test
    @Tag("R-130")
    void servedContract() {
        JsonNode served = new YAMLMapper()
                .readTree(subject.get("/openapi.yaml").send().expect(200).text());
        assertThat(ContractChanges.between(Contract.RELEASED.document(), served).stream()
                        .filter(change -> change.severity() == Severity.BREAKING))
                .as("what breaks clients of the released contract")
                .isEmpty();
    }

    static Stream<Example> released() {
        return Contract.RELEASED.examples().stream();
    }

    @ParameterizedTest
    @MethodSource("released")
    @Tag("R-131")
    void releasedRequests(Example example) {
        subject.offers(example.operation().id());
        for (Wire wire : Wire.values()) {
            Answer answer = subject.post(example.operation().path())
                    .body(wire, example.request())
                    .send()
                    .expect(200);
            assertThat(Contract.RELEASED.faults(example.operation(), answer))
                    .as("what breaks the released contract")
                    .isEmpty();
        }
    }
}
