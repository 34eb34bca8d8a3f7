package dev.slowpoint.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the image says of itself, and that the chart, the build and the image say the same. */
class DockerfileTest {

    private static final Path ROOT = Path.of("..");
    private static final Pattern CONTINUED = Pattern.compile("\\\\\n\\s*");

    private static List<String> all;
    private static List<String> last;

    @BeforeAll
    static void read() throws Exception {
        all = CONTINUED
                .matcher(Files.readString(ROOT.resolve("Dockerfile")))
                .replaceAll("")
                .lines()
                .filter(line -> !line.isBlank() && !line.startsWith("#"))
                .toList();
        int from = 0;
        for (int i = 0; i < all.size(); i++) {
            if (all.get(i).startsWith("FROM ")) {
                from = i;
            }
        }
        // The last stage, and the one that it begins with.
        List<String> stages = new ArrayList<>(all.subList(from, all.size()));
        int app = all.indexOf("FROM ${JRE_IMAGE} AS app");
        stages.addAll(
                0,
                all.subList(app, all.size()).stream()
                        .takeWhile(line -> !line.endsWith("AS trained"))
                        .toList());
        last = stages;
    }

    private static String only(String instruction) {
        assertThat(last).filteredOn(line -> line.startsWith(instruction + " ")).hasSize(1);
        return last.stream()
                .filter(line -> line.startsWith(instruction + " "))
                .map(line -> line.substring(instruction.length() + 1))
                .findFirst()
                .orElseThrow();
    }

    @Test
    @DisplayName("Base images have a fixed tag and no registry, and may be replaced")
    void base_images() {
        List<String> images =
                all.stream().filter(line -> line.matches("ARG \\w+_IMAGE=.*")).toList();
        assertThat(images)
                .hasSize(2)
                .allSatisfy(image -> assertThat(image)
                        .matches("ARG \\w+_IMAGE=[a-z0-9-]+:[\\w.-]+")
                        .doesNotContain("latest"));
        assertThat(all)
                .filteredOn(line -> line.startsWith("FROM "))
                .allSatisfy(line -> assertThat(line).matches("FROM (\\$\\{(BUILD|JRE)_IMAGE}|app)( AS [a-z]+)?"));
    }

    @Test
    @DisplayName("Java is the first process, so that it gets the signal to stop")
    void first_process() {
        assertThat(only("ENTRYPOINT")).startsWith("[\"java\", ");
        assertThat(only("STOPSIGNAL")).isEqualTo("SIGTERM");
    }

    @Test
    @DisplayName("The user and the ports are those of the chart")
    void as_the_chart(@TempDir Path folder) {
        Rendered rendered = Chart.copy(folder.resolve("chart")).render(Map.of());
        String user = rendered.deployment()
                .getSpec()
                .getTemplate()
                .getSpec()
                .getSecurityContext()
                .getRunAsUser()
                .toString();
        assertThat(only("USER")).isEqualTo(user + ":" + user);
        assertThat(last).anyMatch(line -> line.contains("useradd --uid " + user + " "));
        assertThat(Stream.of(only("EXPOSE").split(" ", -1)))
                .containsExactlyElementsOf(rendered.container().getPorts().stream()
                        .map(port -> port.getContainerPort().toString())
                        .toList());
        assertThat(only("ENV"))
                .contains("LOGGING_STRUCTURED_FORMAT_CONSOLE=ecs")
                .contains("SLOWPOINT_ACCESS_MODE=keys")
                .contains("SLOWPOINT_ACCESS_KEYSFILE=" + rendered.setting("SLOWPOINT_ACCESS_KEYSFILE"));
    }

    @Test
    @DisplayName("The health check runs a class that is there")
    void health_check() throws Exception {
        Matcher named = Pattern.compile("\"(dev\\.slowpoint\\.[\\w.]+)\"").matcher(only("HEALTHCHECK"));
        assertThat(named.find()).isTrue();
        assertThat(Class.forName(named.group(1)).getMethod("main", String[].class))
                .isNotNull();
    }

    @Test
    @DisplayName("Image, chart and build have one version")
    void version() throws Exception {
        Matcher version = Pattern.compile("<artifactId>slowpoint</artifactId>\\s*<version>([^<]+)</version>")
                .matcher(Files.readString(ROOT.resolve("pom.xml")));
        assertThat(version.find()).isTrue();
        assertThat(last).contains("ARG VERSION=" + version.group(1));
        assertThat(Chart.tree(Files.readString(Chart.SHIPPED.resolve("Chart.yaml"))))
                .containsEntry("appVersion", version.group(1));
    }

    @Test
    @DisplayName("Labels are those of the Open Container Initiative")
    void labels() {
        assertThat(only("LABEL")).contains("image.title", "image.licenses", "image.version", "image.revision");
        assertThat(Stream.of(only("LABEL").split(" (?=[\\w.]+=\")", -1)))
                .allSatisfy(label -> assertThat(label).startsWith("org.opencontainers.image."));
    }

    @Test
    @DisplayName("What is copied from the source is there, and not kept from the build")
    void sources() throws Exception {
        List<String> kept = Files.readAllLines(ROOT.resolve(".dockerignore"));
        List<String> sources = all.stream()
                .filter(line -> line.startsWith("COPY ") && !line.startsWith("COPY --from"))
                .map(line -> line.split(" ", -1)[1])
                .toList();
        assertThat(sources).isNotEmpty().allSatisfy(source -> {
            assertThat(ROOT.resolve(source)).exists();
            assertThat(kept).doesNotContain(source, source + "/");
        });
        assertThat(kept).contains("**/target/", ".git/");
    }
}
