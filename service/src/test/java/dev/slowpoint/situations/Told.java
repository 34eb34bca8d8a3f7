package dev.slowpoint.situations;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import tools.jackson.databind.JsonNode;

/** What the service told. */
record Told(JsonNode answer) {

    /** A time in minutes. */
    double minutes(String pointer) {
        return number(pointer) / 60.0;
    }

    double number(String pointer) {
        JsonNode node = answer.at(pointer);
        assertThat(node.isNumber()).as("%s in %s", pointer, answer).isTrue();
        return node.asDouble();
    }

    String text(String pointer) {
        JsonNode node = answer.at(pointer);
        assertThat(node.isString()).as("%s in %s", pointer, answer).isTrue();
        return node.asString();
    }

    boolean has(String pointer) {
        return !answer.at(pointer).isMissingNode();
    }

    List<String> warnings() {
        return answer.at("/warnings").findValuesAsString("code");
    }

    /** How severe its warnings are. */
    List<String> severities() {
        return answer.at("/warnings").findValuesAsString("severity");
    }

    List<String> cautions() {
        return answer.at("/cautions").findValuesAsString("code");
    }
}
