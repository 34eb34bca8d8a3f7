package dev.slowpoint.kit;

import dev.slowpoint.kit.Results.Outcome;
import dev.slowpoint.kit.Results.Result;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * The account of one run, for people and for programs.
 *
 * @param kit version of the kit
 * @param contract version of the contract that it holds the subject against
 * @param address where the subject answers
 * @param subject what the subject says of itself: its contract, its parameter set and the digest of that
 * @param seed of generated requests
 * @param results of all tests
 */
record Report(String kit, String contract, String address, Map<String, String> subject, long seed, Results results) {

    private static final JsonMapper WRITER = JsonMapper.builder()
            .enable(tools.jackson.databind.SerializationFeature.INDENT_OUTPUT)
            .build();

    /** The last line of a run. */
    String lastLine() {
        return results.count(Outcome.PASSED) + " passed, " + results.count(Outcome.FAILED) + " failed, "
                + results.count(Outcome.SKIPPED) + " skipped";
    }

    void write(Path folder) throws IOException {
        Files.writeString(folder.resolve("result.json"), json());
        Files.writeString(folder.resolve("report.md"), markdown());
    }

    private String json() {
        ObjectNode root = WRITER.createObjectNode();
        root.put("kit", kit).put("contract", contract).put("address", address).put("seed", seed);
        ObjectNode told = root.putObject("subject");
        subject.forEach(told::put);
        root.put("passed", results.count(Outcome.PASSED))
                .put("failed", results.count(Outcome.FAILED))
                .put("skipped", results.count(Outcome.SKIPPED));
        ArrayNode requirements = root.putArray("requirements");
        byRequirement().forEach((requirement, all) -> {
            ObjectNode node = requirements.addObject();
            node.put("id", requirement.id())
                    .put("layer", requirement.layer())
                    .put("level", requirement.level().name().toLowerCase(Locale.ROOT))
                    .put("text", requirement.text())
                    .put("outcome", outcome(all).name().toLowerCase(Locale.ROOT));
            ArrayNode tests = node.putArray("tests");
            all.forEach(result -> {
                ObjectNode test = tests.addObject();
                test.put("name", result.name())
                        .put("outcome", result.outcome().name().toLowerCase(Locale.ROOT))
                        .put("millis", result.millis());
                if (!result.reason().isEmpty()) {
                    test.put("reason", result.reason());
                }
            });
        });
        return WRITER.writeValueAsString(root) + "\n";
    }

    private String markdown() {
        StringBuilder page = new StringBuilder("# Contract report\n\n");
        page.append("Subject: ").append(address).append("  \n");
        subject.forEach(
                (name, value) -> page.append(name).append(": ").append(value).append("  \n"));
        page.append("Kit ")
                .append(kit)
                .append(", contract ")
                .append(contract)
                .append(", seed ")
                .append(seed);
        page.append("\n\n**").append(lastLine()).append("**\n\n");
        page.append("| requirement | level | tests | outcome | ms |\n| --- | --- | ---: | --- | ---: |\n");
        byRequirement()
                .forEach((requirement, all) -> page.append("| ")
                        .append(requirement.id())
                        .append(' ')
                        .append(requirement.text().replace("|", "\\|"))
                        .append(" | ")
                        .append(requirement.level().name().toLowerCase(Locale.ROOT))
                        .append(" | ")
                        .append(all.size())
                        .append(" | ")
                        .append(outcome(all).name().toLowerCase(Locale.ROOT))
                        .append(" | ")
                        .append(all.stream().mapToLong(Result::millis).sum())
                        .append(" |\n"));
        list(page, "Failed", Outcome.FAILED);
        list(page, "Skipped", Outcome.SKIPPED);
        return page.toString();
    }

    private void list(StringBuilder page, String title, Outcome outcome) {
        List<Result> some = results.all().stream()
                .filter(result -> result.outcome() == outcome)
                .toList();
        if (some.isEmpty()) {
            return;
        }
        page.append("\n## ").append(title).append('\n');
        some.forEach(result -> page.append("\n### ")
                .append(result.requirement().id())
                .append(": ")
                .append(result.name())
                .append("\n\n````\n")
                .append(result.reason())
                .append("\n````\n"));
    }

    /** One test that fails fails its requirement; where none ran it is skipped. */
    private static Outcome outcome(List<Result> all) {
        List<Outcome> outcomes = all.stream().map(Result::outcome).distinct().toList();
        if (outcomes.contains(Outcome.FAILED)) {
            return Outcome.FAILED;
        }
        return outcomes.contains(Outcome.PASSED) ? Outcome.PASSED : Outcome.SKIPPED;
    }

    private Map<Requirement, List<Result>> byRequirement() {
        return results.all().stream()
                .collect(Collectors.groupingBy(
                        Result::requirement, LinkedHashMap::new, Collectors.toCollection(ArrayList::new)));
    }
}
