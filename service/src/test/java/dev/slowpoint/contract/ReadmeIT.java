package dev.slowpoint.contract;

import static org.assertj.core.api.Assertions.assertThat;

import dev.slowpoint.started.Command;
import dev.slowpoint.started.StartedService;
import dev.slowpoint.started.Tools;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tools.jackson.databind.json.JsonMapper;

/** What the README shows is what happens. */
@ExtendWith(StartedService.Resolver.class)
class ReadmeIT {

    private static final Path README = Path.of("../README.md");
    private static final Pattern BLOCK = Pattern.compile("```(\\w+)\\n(.*?)\\n```", Pattern.DOTALL);

    private final StartedService service;

    @TempDir
    private Path folder;

    ReadmeIT(StartedService service) {
        this.service = service;
    }

    /** The blocks of code in a language, in their order. */
    private static List<String> blocks(String language) throws IOException {
        List<String> blocks = new ArrayList<>();
        Matcher matcher = BLOCK.matcher(Files.readString(README));
        while (matcher.find()) {
            if (matcher.group(1).equals(language)) {
                blocks.add(matcher.group(2));
            }
        }
        return blocks;
    }

    static Stream<String> requests() throws IOException {
        return blocks("sh").stream().filter(block -> block.contains("curl "));
    }

    /** What a command prints, which must end well. */
    private String run(String command) {
        Tools.need("curl");
        Command done = Command.run(
                folder,
                Map.of(),
                List.of(
                        Tools.need("bash").toString(),
                        "-euo",
                        "pipefail",
                        "-c",
                        command.replace("curl ", "curl --fail-with-body ")
                                .replace("localhost:8080", service.address().getAuthority())));
        assertThat(done.exitCode()).as(done.output()).isZero();
        return done.output();
    }

    @ParameterizedTest
    @MethodSource("requests")
    void each_request_is_answered(String request) throws IOException {
        String printed = run(request);
        Matcher file = Pattern.compile(" -o (\\S+)").matcher(request);
        assertThat(file.find() ? Files.readString(folder.resolve(file.group(1))) : printed)
                .isNotBlank();
    }

    @Test
    void the_answer_that_is_shown_is_the_one_that_comes() throws IOException {
        String shown = blocks("json").get(0);
        String printed = run(requests().findFirst().orElseThrow());
        assertThat(JsonMapper.shared().readTree(printed))
                .isEqualTo(JsonMapper.shared().readTree(shown));
    }
}
