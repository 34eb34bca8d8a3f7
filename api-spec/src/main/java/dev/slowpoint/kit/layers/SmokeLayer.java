package dev.slowpoint.kit.layers;

import static org.assertj.core.api.Assertions.assertThat;

import dev.slowpoint.kit.Answer;
import dev.slowpoint.kit.Contract;
import dev.slowpoint.kit.Kit;
import dev.slowpoint.kit.Subject;
import dev.slowpoint.kit.Wire;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;
import tools.jackson.dataformat.yaml.YAMLMapper;

/** Whether it is worth asking further. */
@ExtendWith(Kit.class)
@DisplayNameGeneration(Kit.Names.class)
public class SmokeLayer {

    private final Subject subject;

    SmokeLayer(Subject subject) {
        this.subject = subject;
    }

    @Test
    @Tag("R-001")
    void contract() {
        JsonNode served = new YAMLMapper()
                .readTree(subject.get("/openapi.yaml").send().expect(200).text());
        assertThat(served.at("/info/title").asString()).isEqualTo("Slowpoint");
        assertThat(major(served.at("/info/version").asString()))
                .as("major version")
                .isEqualTo(major(Contract.PUBLISHED.version()));
    }

    @Test
    @Tag("R-002")
    void plan() {
        subject.offers("planCook");
        Answer answer = subject.post("/v1/cook-plans")
                .body(Wire.JSON, Examples.cookPlan().request())
                .send()
                .expect(200);
        assertThat(answer.at("/safety/verdict").asString(""))
                .as("safety.verdict")
                .isNotEmpty();
        assertThat(answer.at("/cautions").size()).as("cautions").isPositive();
    }

    @Test
    @Tag("R-003")
    void problem() {
        subject.offers("planCook");
        ObjectNode request = (ObjectNode) Examples.cookPlan().request().deepCopy();
        request.remove("food");
        Answer answer =
                subject.post("/v1/cook-plans").body(Wire.JSON, request).send().refused(400);
        assertThat(answer.at("/errors/0/pointer").asString("")).isEqualTo("#/food");
    }

    @Test
    @Tag("R-004")
    void parameterSet() {
        subject.offers("planCook");
        subject.offers("listParameterSets");
        JsonNode sets = subject.get("/v1/parameter-sets")
                .accept(Wire.JSON.mediaType())
                .send()
                .expect(200)
                .at("/parameterSets");
        JsonNode plan = subject.post("/v1/cook-plans")
                .body(Wire.JSON, Examples.cookPlan().request())
                .send()
                .expect(200)
                .tree();
        assertThat(sets.valueStream()
                        .filter(set -> set.path("version").equals(plan.path("parameterSet"))
                                && set.path("digest")
                                        .asString("")
                                        .startsWith(plan.path("digest").asString("-"))))
                .as("the set that the plan names, among those that are listed")
                .hasSize(1);
    }

    private static String major(String version) {
        return version.replaceFirst("\\..*", "");
    }
}
