package dev.slowpoint.contract;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.datatype.jsr310.JavaTimeModule;
import com.sun.net.httpserver.HttpServer;
import dev.slowpoint.started.Command;
import dev.slowpoint.started.StartedService;
import dev.slowpoint.started.Tools;
import io.restassured.RestAssured;
import io.restassured.http.ContentType;
import io.restassured.path.json.JsonPath;
import java.io.File;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.net.URISyntaxException;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.tools.Diagnostic;
import javax.tools.DiagnosticCollector;
import javax.tools.JavaCompiler;
import javax.tools.JavaFileObject;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/**
 * Clients that are generated from the contract compile without a warning, and can be used. The names of their types are
 * listed in {@code src/test/clients/type-names.txt}: a rename breaks those who use them. {@code -Dcontract.write=true}
 * writes the list anew.
 */
@ExtendWith(StartedService.Resolver.class)
class GeneratedClientsIT {

    private static final Path CLIENTS =
            Path.of(System.getProperty("service.jar", "")).resolveSibling("clients");
    private static final Path SOURCES = Path.of("src", "test", "clients");
    private static final Path TYPE_NAMES = SOURCES.resolve("type-names.txt");
    private static final Path CONTRACT = Path.of("..", "api-spec", "openapi.yaml");
    private static final Path PORK_LOIN = Path.of("..", "api-spec", "examples", "cook-plan-pork-loin.request.json");

    /** What the templates of the generator always bring, whatever the contract says. */
    private static final List<String> KNOWN_WARNINGS_OF_C = List.of(
            "-Wno-unused-variable",
            "-Wno-unused-function",
            "-Wno-unused-label",
            "-Wno-parentheses",
            "-Wno-pointer-sign",
            "-Wno-cpp");

    /** The same for Java: it calls methods of Jackson that newer versions of Jackson deprecate. */
    private static final String KNOWN_WARNINGS_OF_JAVA = ",-serial,-classfile,-path,-deprecation";

    /** Its query has names with dots, which become no names in C; left out in the build. */
    private static final String NOT_IN_C = "planPortions";

    private static final Pattern OPERATION = Pattern.compile("operationId: (\\w+)");
    private static final Pattern NESTED_ENUM = Pattern.compile("public enum (\\w+)");

    @Test
    void the_java_client_compiles_without_warnings_and_fetches_a_plan(StartedService service, @TempDir Path folder)
            throws IOException {
        compileJava(folder);
        assertThat(fetchWithJava(folder, service.address())).isEqualTo(takeOut(service));
    }

    @Test
    void the_java_client_passes_over_members_and_words_it_does_not_know(StartedService service, @TempDir Path folder)
            throws IOException {
        compileJava(folder);
        try (Newer newer = new Newer(service.address())) {
            assertThat(fetchWithJava(folder, newer.address())).isEqualTo(takeOut(service));
        }
    }

    @Test
    void the_typescript_client_compiles_and_fetches_a_plan(StartedService service, @TempDir Path folder)
            throws IOException {
        String node = Tools.need("node").toString();
        String npm = Tools.need("npm").toString();
        for (String file : List.of("package.json", "package-lock.json", "tsconfig.json", "fetchPlan.ts")) {
            Files.copy(SOURCES.resolve("typescript").resolve(file), folder.resolve(file));
        }
        copy(CLIENTS.resolve("typescript"), folder.resolve("client"));
        run(folder, npm, "ci", "--ignore-scripts", "--prefer-offline", "--no-audit", "--no-fund");
        run(folder, node, "node_modules/typescript/bin/tsc", "-p", ".");

        String program = folder.resolve("out/fetchPlan.js").toString();
        assertThat(run(folder, node, program, service.address().toString())).isEqualTo(takeOut(service));
        try (Newer newer = new Newer(service.address())) {
            assertThat(run(folder, node, program, newer.address().toString())).isEqualTo(takeOut(service));
        }
    }

    @Test
    void the_c_client_compiles_without_warnings_and_fetches_a_plan(StartedService service, @TempDir Path folder)
            throws IOException {
        String gcc = Tools.need("gcc").toString();
        Path probe = Files.writeString(folder.resolve("probe.c"), "#include <curl/curl.h>\n");
        if (Command.run(folder, Map.of(), List.of(gcc, "-fsyntax-only", probe.toString()))
                        .exitCode()
                != 0) {
            Tools.missing("The header curl/curl.h is not there");
        }
        Path client = CLIENTS.resolve("c").toAbsolutePath();
        List<String> words = new ArrayList<>(List.of(gcc, "-std=c99", "-D_GNU_SOURCE", "-Wall", "-Werror"));
        words.addAll(KNOWN_WARNINGS_OF_C);
        words.addAll(List.of("-I" + client, "-I" + client.resolve("include")));
        int known = words.size();
        for (String part : List.of("src", "model", "api", "external")) {
            files(client.resolve(part), ".c").forEach(file -> words.add(file.toString()));
        }
        assertThat(words).hasSizeGreaterThan(known + 100);
        words.add(SOURCES.resolve("c/fetch_plan.c").toAbsolutePath().toString());
        words.addAll(List.of("-o", "fetch_plan", "-lcurl", "-lm"));
        assertThat(run(folder, words.toArray(String[]::new))).isEmpty();

        String program = folder.resolve("fetch_plan").toString();
        assertThat(run(folder, program, service.address().toString())).isEqualTo(takeOut(service));
        try (Newer newer = new Newer(service.address())) {
            assertThat(run(folder, program, newer.address().toString())).isEqualTo(takeOut(service));
        }
    }

    @Test
    void the_c_client_has_every_operation_but_one() throws IOException {
        StringBuilder headers = new StringBuilder();
        for (Path file : files(CLIENTS.resolve("c/api"), ".h")) {
            headers.append(Files.readString(file));
        }
        List<String> absent = OPERATION
                .matcher(Files.readString(CONTRACT))
                .results()
                .map(match -> match.group(1))
                .filter(operation -> !headers.toString().contains("API_" + operation + "("))
                .toList();
        assertThat(absent)
                .as("operations that are not in the list of client-c in pom.xml")
                .containsExactly(NOT_IN_C);
    }

    @Test
    void no_type_of_a_client_is_renamed() throws IOException {
        SortedSet<String> names = new TreeSet<>();
        for (String part : List.of("api", "model")) {
            Path sources =
                    CLIENTS.resolve("java/src/main/java/dev/slowpoint/client").resolve(part);
            for (Path file : files(sources, ".java")) {
                String type = file.getFileName().toString().replace(".java", "");
                names.add("java " + type);
                Matcher nested = NESTED_ENUM.matcher(Files.readString(file));
                while (nested.find()) {
                    if (!nested.group(1).equals(type)) {
                        names.add("java " + type + "." + nested.group(1));
                    }
                }
            }
            for (Path file : files(CLIENTS.resolve("c").resolve(part), ".h")) {
                names.add("c " + file.getFileName().toString().replace(".h", ""));
            }
        }
        for (String part : List.of("apis", "models")) {
            for (Path file : files(CLIENTS.resolve("typescript").resolve(part), ".ts")) {
                names.add("typescript " + file.getFileName().toString().replace(".ts", ""));
            }
        }
        assertThat(names).hasSizeGreaterThan(300);
        if (Boolean.getBoolean("contract.write")) {
            Files.write(TYPE_NAMES, names);
        }
        assertThat(names)
                .as("a name that is gone breaks clients; write new ones with -Dcontract.write=true")
                .containsExactlyElementsOf(Files.readAllLines(TYPE_NAMES));
    }

    private static void compileJava(Path folder) throws IOException {
        JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
        DiagnosticCollector<JavaFileObject> diagnostics = new DiagnosticCollector<>();
        List<Path> sources = new ArrayList<>(files(CLIENTS.resolve("java/src/main/java"), ".java"));
        assertThat(sources).hasSizeGreaterThan(100);
        sources.add(SOURCES.resolve("java/FetchPlan.java"));
        try (StandardJavaFileManager files =
                compiler.getStandardFileManager(diagnostics, Locale.ROOT, StandardCharsets.UTF_8)) {
            boolean compiled = compiler.getTask(
                            null,
                            files,
                            diagnostics,
                            List.of(
                                    "--release",
                                    "17",
                                    "-proc:none",
                                    "-Xlint:all" + KNOWN_WARNINGS_OF_JAVA,
                                    "-d",
                                    folder.toString(),
                                    "-cp",
                                    libraries()),
                            null,
                            files.getJavaFileObjectsFromPaths(sources))
                    .call();
            assertThat(diagnostics.getDiagnostics())
                    .filteredOn(diagnostic -> diagnostic.getKind() != Diagnostic.Kind.NOTE)
                    .isEmpty();
            assertThat(compiled).isTrue();
        }
    }

    /** What the generated client names as its dependencies. */
    private static String libraries() {
        return Stream.of(
                        ObjectMapper.class,
                        JsonFactory.class,
                        JsonProperty.class,
                        JavaTimeModule.class,
                        jakarta.annotation.Nonnull.class)
                .map(GeneratedClientsIT::jar)
                .collect(Collectors.joining(File.pathSeparator));
    }

    private static String jar(Class<?> type) {
        try {
            return Path.of(type.getProtectionDomain()
                            .getCodeSource()
                            .getLocation()
                            .toURI())
                    .toString();
        } catch (URISyntaxException e) {
            throw new IllegalStateException(e);
        }
    }

    private static String fetchWithJava(Path folder, URI address) {
        return run(
                folder,
                StartedService.java(),
                "-cp",
                folder + File.pathSeparator + libraries(),
                "FetchPlan",
                address.toString());
    }

    /** The same plan as the clients ask for, without a generated client. */
    private static String takeOut(StartedService service) throws IOException {
        JsonPath plan = RestAssured.given()
                .contentType(ContentType.JSON)
                .body(Files.readString(PORK_LOIN))
                .post(service.address().resolve("/v1/cook-plans"))
                .then()
                .statusCode(200)
                .extract()
                .jsonPath();
        return plan.getInt("takeOut.earliestS") + " " + plan.getInt("takeOut.bestS") + " "
                + plan.getInt("takeOut.latestS");
    }

    private static String run(Path folder, String... words) {
        Command command = Command.run(folder, Map.of(), List.of(words));
        assertThat(command.exitCode()).as(command.output()).isZero();
        return command.output().strip();
    }

    private static List<Path> files(Path folder, String ending) throws IOException {
        try (Stream<Path> all = Files.walk(folder)) {
            return all.filter(file -> file.toString().endsWith(ending)).sorted().toList();
        }
    }

    private static void copy(Path from, Path to) throws IOException {
        try (Stream<Path> all = Files.walk(from)) {
            for (Path file : all.filter(Files::isRegularFile).toList()) {
                Path target = to.resolve(from.relativize(file).toString());
                Files.createDirectories(target.getParent());
                Files.copy(file, target);
            }
        }
    }

    /** A server of the future: it answers what the service does, with more members and other words. */
    private static final class Newer implements AutoCloseable {

        private final HttpServer server;

        Newer(URI service) throws IOException {
            HttpClient client = HttpClient.newHttpClient();
            server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
            server.createContext("/", exchange -> {
                HttpRequest request = HttpRequest.newBuilder(service.resolve(exchange.getRequestURI()))
                        .header("Content-Type", exchange.getRequestHeaders().getFirst("Content-Type"))
                        .header("Accept", "application/json")
                        .POST(HttpRequest.BodyPublishers.ofByteArray(
                                exchange.getRequestBody().readAllBytes()))
                        .build();
                try (exchange) {
                    String answer = client.send(request, HttpResponse.BodyHandlers.ofString())
                            .body();
                    String newer = answer.replaceFirst("\"verdict\":\"\\w+\"", "\"verdict\":\"newWord\"")
                            .replaceFirst("\\{", "{\"newMember\":{\"newList\":[1,\"two\"]},");
                    if (newer.contains("newWord")) {
                        byte[] bytes = newer.getBytes(StandardCharsets.UTF_8);
                        exchange.getResponseHeaders().add("Content-Type", "application/json");
                        exchange.sendResponseHeaders(200, bytes.length);
                        exchange.getResponseBody().write(bytes);
                    } else {
                        exchange.sendResponseHeaders(500, -1);
                    }
                } catch (InterruptedException e) {
                    Thread.currentThread().interrupt();
                }
            });
            server.start();
        }

        URI address() {
            return URI.create("http://127.0.0.1:" + server.getAddress().getPort());
        }

        @Override
        public void close() {
            server.stop(0);
        }
    }
}
