package dev.slowpoint.kit;

import static org.junit.platform.engine.discovery.DiscoverySelectors.selectClass;

import dev.slowpoint.kit.Results.Outcome;
import dev.slowpoint.kit.layers.CompatLayer;
import dev.slowpoint.kit.layers.GoldenLayer;
import dev.slowpoint.kit.layers.HttpLayer;
import dev.slowpoint.kit.layers.NegativeLayer;
import dev.slowpoint.kit.layers.PropertyLayer;
import dev.slowpoint.kit.layers.SchemaLayer;
import dev.slowpoint.kit.layers.SmokeLayer;
import java.io.IOException;
import java.io.PrintWriter;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.junit.platform.engine.discovery.ClassSelector;
import org.junit.platform.launcher.Launcher;
import org.junit.platform.launcher.LauncherDiscoveryRequest;
import org.junit.platform.launcher.TagFilter;
import org.junit.platform.launcher.TestPlan;
import org.junit.platform.launcher.core.LauncherConfig;
import org.junit.platform.launcher.core.LauncherDiscoveryRequestBuilder;
import org.junit.platform.launcher.core.LauncherFactory;
import org.junit.platform.reporting.legacy.xml.LegacyXmlReportGeneratingListener;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import tools.jackson.databind.JsonNode;

/** The command line of the kit. */
@Command(
        name = "contract-kit",
        mixinStandardHelpOptions = true,
        versionProvider = ContractKit.Version.class,
        sortOptions = false,
        description = "Tests a server against the Slowpoint contract.",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:every test passed or was skipped",
            "1:at least one test failed",
            "2:the options are wrong, or nothing was tested",
            "3:the subject does not answer at all"
        })
public final class ContractKit implements Callable<Integer> {

    static final int FAILED = 1;
    static final int NOTHING_TESTED = 2;
    static final int NO_ANSWER = 3;

    /** All layers, from the quick to the thorough. */
    static final List<Class<?>> LAYERS = List.of(
            SmokeLayer.class,
            SchemaLayer.class,
            GoldenLayer.class,
            NegativeLayer.class,
            PropertyLayer.class,
            HttpLayer.class,
            CompatLayer.class);

    @Spec
    private CommandLine.Model.@Nullable CommandSpec spec;

    @Option(names = "--base-url", paramLabel = "URL", description = "Where the subject answers, up to but without /v1.")
    private @Nullable URI baseUrl;

    @Option(
            names = "--auth",
            paramLabel = "CREDENTIALS",
            defaultValue = "${env:SLOWPOINT_KIT_AUTH}",
            description =
                    "Value of the Authorization header, such as 'Bearer abc'. Reports do not show it. If absent, it"
                            + " is taken from SLOWPOINT_KIT_AUTH in the environment, which lists of processes do not show.")
    private @Nullable String auth;

    @Option(
            names = "--header",
            paramLabel = "'NAME: VALUE'",
            description = "A further header of every request; may be given more than once. Reports do not show it.")
    private List<String> headers = List.of();

    @Option(
            names = "--tags",
            split = ",",
            paramLabel = "TAG",
            description = "Only these: layers (smoke, schema, golden, negative, property, http, compat), levels (must,"
                    + " should) or ids of requirements.")
    private List<String> tags = List.of();

    @Option(names = "--skip", split = ",", paramLabel = "TAG", description = "Not these; as with --tags.")
    private List<String> skip = List.of();

    @Option(
            names = "--operations",
            split = ",",
            paramLabel = "ID",
            description =
                    "The operations the subject offers, by operationId; all if absent. Tests of others are skipped.")
    private List<String> operations = List.of();

    @Option(
            names = "--trust",
            paramLabel = "FILE",
            description = "Certificates (PEM) to trust instead of those of the Java runtime.")
    private @Nullable Path trust;

    @Option(
            names = "--timeout-s",
            defaultValue = "60",
            paramLabel = "SECONDS",
            description = "Longest wait for a connection and for an answer; ${DEFAULT-VALUE} if absent.")
    private int timeoutS;

    @Option(
            names = "--seed",
            defaultValue = "1",
            paramLabel = "NUMBER",
            description = "Where generated requests start from; ${DEFAULT-VALUE} if absent.")
    private long seed;

    @Option(
            names = "--rounds",
            defaultValue = "12",
            paramLabel = "NUMBER",
            description = "Generated requests for each property; ${DEFAULT-VALUE} if absent.")
    private int rounds;

    @Option(
            names = "--report",
            defaultValue = "contract-report",
            paramLabel = "FOLDER",
            description = "Where report.md, result.json and TEST-junit-jupiter.xml go; ${DEFAULT-VALUE} if absent.")
    private Path report = Path.of("contract-report");

    @Option(names = "--list", description = "List the requirements and end; asks nobody.")
    private boolean list;

    private final PrintWriter out;

    private ContractKit(PrintWriter out) {
        this.out = out;
    }

    /** Runs the kit and ends the process with its exit code. */
    public static void main(String[] arguments) {
        // The report of JUnit lists system properties, and this one holds the command line with its credentials.
        System.clearProperty("sun.java.command");
        // The libraries log to nobody here, and need not say so.
        System.setProperty("slf4j.internal.verbosity", "ERROR");
        PrintWriter out = new PrintWriter(System.out, true, StandardCharsets.UTF_8);
        System.exit(run(out, arguments));
    }

    /** Runs the kit and hands back its exit code. */
    public static int run(PrintWriter out, String... arguments) {
        return new CommandLine(new ContractKit(out))
                .setOut(out)
                .setErr(out)
                .setCaseInsensitiveEnumValuesAllowed(true)
                .execute(arguments);
    }

    @Override
    public Integer call() throws IOException {
        Set<String> asked = asked();
        if (list) {
            Requirement.ALL.values().stream()
                    .filter(requirement -> asked.contains(requirement.id()))
                    .forEach(requirement -> out.println(requirement.id() + "  " + requirement.layer() + "  "
                            + requirement.level() + "  " + requirement.text()
                            + requirement
                                    .untestable()
                                    .map(reason -> "  (not testable: " + reason + ")")
                                    .orElse("")));
            return 0;
        }
        Subject.Terms terms = terms();
        Optional<Map<String, String>> told = introduction(terms);
        if (told.isEmpty()) {
            return NO_ANSWER;
        }
        Files.createDirectories(report);
        Results results = execute(asked, terms);
        results.untestable(asked);
        Report account = new Report(
                version(), Contract.PUBLISHED.version(), terms.address().toString(), told.get(), seed, results);
        account.write(report);
        out.println("Report: " + report.resolve("report.md").toAbsolutePath().normalize());
        out.println(account.lastLine());
        if (results.count(Outcome.FAILED) > 0) {
            return FAILED;
        }
        return results.count(Outcome.PASSED) == 0 ? NOTHING_TESTED : 0;
    }

    private Results execute(Set<String> asked, Subject.Terms terms) {
        LauncherDiscoveryRequest request = LauncherDiscoveryRequestBuilder.request()
                .selectors(LAYERS.stream().map(ContractKit::selector).toList())
                .filters(TagFilter.includeTags(List.copyOf(asked)))
                .configurationParameters(terms.asParameters())
                .build();
        Launcher launcher = LauncherFactory.create(LauncherConfig.builder()
                .enableTestExecutionListenerAutoRegistration(false)
                .enableLauncherSessionListenerAutoRegistration(false)
                .enableLauncherDiscoveryListenerAutoRegistration(false)
                .enablePostDiscoveryFilterAutoRegistration(false)
                .build());
        TestPlan plan = launcher.discover(request);
        Results results = new Results(out, plan);
        launcher.execute(plan, results, new LegacyXmlReportGeneratingListener(report, out));
        return results;
    }

    private static ClassSelector selector(Class<?> layer) {
        return selectClass(layer);
    }

    private Set<String> asked() {
        try {
            Set<String> asked = new TreeSet<>(tags.isEmpty() ? Requirement.ALL.keySet() : Requirement.named(tags));
            asked.removeAll(Requirement.named(skip));
            return asked;
        } catch (IllegalArgumentException e) {
            throw wrong(e.getMessage());
        }
    }

    private Subject.Terms terms() {
        URI address = baseUrl;
        if (address == null
                || address.getHost() == null
                || !Set.of("http", "https").contains(address.getScheme())) {
            throw wrong("--base-url is needed, such as http://localhost:8080");
        }
        if (trust != null && !Files.isReadable(trust)) {
            throw wrong("--trust: " + trust + " cannot be read");
        }
        Map<String, String> sent = new TreeMap<>();
        for (String header : headers) {
            String[] parts = header.split(":\\s*", 2);
            if (parts.length != 2) {
                throw wrong("--header needs a name and a value with a colon between them");
            }
            sent.put(parts[0], parts[1]);
        }
        if (auth != null) {
            sent.put("Authorization", auth);
        }
        List<String> known = Contract.PUBLISHED.operations().stream()
                .map(Contract.Operation::id)
                .toList();
        List<String> unknown = new ArrayList<>(offered());
        unknown.removeAll(known);
        if (!unknown.isEmpty()) {
            throw wrong("The contract has no operation " + unknown.get(0) + ", but " + String.join(", ", known));
        }
        return new Subject.Terms(
                address,
                sent,
                Set.copyOf(offered()),
                Duration.ofSeconds(timeoutS),
                Optional.ofNullable(trust),
                seed,
                rounds);
    }

    /** An empty list of operations is that of all. */
    private List<String> offered() {
        return operations.stream().filter(id -> !id.isBlank()).toList();
    }

    /** What the subject says of itself; nothing where it does not answer. */
    private Optional<Map<String, String>> introduction(Subject.Terms terms) {
        Subject subject = Subject.of(terms);
        Map<String, String> told = new LinkedHashMap<>();
        try {
            Answer sets = subject.get("/v1/parameter-sets")
                    .accept(Wire.JSON.mediaType())
                    .send();
            if (sets.status() == 200) {
                JsonNode first = sets.at("/entries/0");
                told.put("parameterSet", first.path("version").asString(""));
                told.put("digest", first.path("digest").asString(""));
            }
            return Optional.of(told);
        } catch (AssertionError unreadable) {
            // It answers, though not what it should: the tests will say so.
            return Optional.of(told);
        } catch (Exception e) {
            // REST Assured throws what its client throws, whether that is declared or not.
            out.println(terms.address() + " does not answer: " + e.getMessage());
            return Optional.empty();
        }
    }

    private ParameterException wrong(@Nullable String message) {
        return new ParameterException(Objects.requireNonNull(spec).commandLine(), message);
    }

    private static String version() {
        String packed = ContractKit.class.getPackage().getImplementationVersion();
        return packed == null ? "unpacked" : packed;
    }

    /** The version of the jar. */
    static final class Version implements CommandLine.IVersionProvider {
        @Override
        public String[] getVersion() {
            return new String[] {"contract-kit " + version() + ", contract " + Contract.PUBLISHED.version()};
        }
    }
}
