package dev.slowpoint.kit.layers;

import dev.slowpoint.kit.Answer;
import dev.slowpoint.kit.Contract;
import dev.slowpoint.kit.GoldenVector;
import dev.slowpoint.kit.Kit;
import dev.slowpoint.kit.Subject;
import dev.slowpoint.kit.Wire;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.opentest4j.TestAbortedException;

/** Whether the numbers are right. */
@ExtendWith(Kit.class)
@DisplayNameGeneration(Kit.Names.class)
public class GoldenLayer {

    private final Subject subject;

    GoldenLayer(Subject subject) {
        this.subject = subject;
    }

    static Stream<GoldenVector> published() {
        return GoldenVector.ALL.stream().filter(vector -> vector.kind() == GoldenVector.Kind.PUBLISHED);
    }

    static Stream<GoldenVector> analytic() {
        return GoldenVector.ALL.stream().filter(vector -> vector.kind() == GoldenVector.Kind.ANALYTIC);
    }

    static Stream<GoldenVector> crossMethod() {
        return GoldenVector.ALL.stream().filter(vector -> vector.kind() == GoldenVector.Kind.CROSS_METHOD);
    }

    static Stream<GoldenVector> regression() {
        return GoldenVector.ALL.stream().filter(vector -> vector.kind() == GoldenVector.Kind.REGRESSION);
    }

    @ParameterizedTest
    @MethodSource("published")
    @Tag("R-030")
    void published(GoldenVector vector) {
        hold(vector);
    }

    @ParameterizedTest
    @MethodSource("analytic")
    @Tag("R-031")
    void analytic(GoldenVector vector) {
        hold(vector);
    }

    @ParameterizedTest
    @MethodSource("crossMethod")
    @Tag("R-032")
    void crossMethod(GoldenVector vector) {
        hold(vector);
    }

    @ParameterizedTest
    @MethodSource("regression")
    @Tag("R-033")
    void regression(GoldenVector vector) {
        hold(vector);
    }

    private void hold(GoldenVector vector) {
        Contract.PUBLISHED
                .operation(vector.method(), vector.path())
                .ifPresent(operation -> subject.offers(operation.id()));
        vector.parameterSet()
                .ifPresent(set -> Assumptions.assumeTrue(
                        offers(set), () -> "The subject does not offer the parameter set " + set));
        Answer answer = vector.ask(subject).send();
        List<String> misses = vector.misses(answer);
        if (vector.disagreement().isPresent()) {
            if (misses.isEmpty()) {
                throw new AssertionError("A known disagreement is gone, and has to be taken out of the vector: "
                        + vector.disagreement().get());
            }
            throw new TestAbortedException(
                    "Known disagreement: " + vector.disagreement().get() + " " + misses);
        }
        if (!misses.isEmpty()) {
            throw new AssertionError(vector.title() + " (" + vector.source() + "): " + String.join("; ", misses));
        }
    }

    private boolean offers(String set) {
        Answer sets = subject.once(
                "parameter sets",
                () -> subject.get("/v1/parameter-sets")
                        .accept(Wire.JSON.mediaType())
                        .send());
        return sets.status() == 200
                && sets.at("/parameterSets")
                        .valueStream()
                        .anyMatch(entry -> entry.path("version").asString("").equals(set));
    }
}
