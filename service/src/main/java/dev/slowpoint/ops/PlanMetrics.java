package dev.slowpoint.ops;

import dev.slowpoint.food.FoodGroup;
import dev.slowpoint.plan.PlanPhase;
import io.micrometer.core.instrument.Counter;
import io.micrometer.core.instrument.Gauge;
import io.micrometer.core.instrument.MeterRegistry;
import io.micrometer.core.instrument.Timer;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/**
 * Counts what the service does, in terms of the trade. Every label takes its values from a list that is known when the
 * service starts, never from what a caller sends.
 */
@Component
public class PlanMetrics {

    /** Plans, by verdict, group of food and parameter set. */
    public static final String PLANS = "slowpoint.plans";

    /** Chill plans, by whether the cooling rule is kept, group of food and parameter set. */
    public static final String CHILLS = "slowpoint.chills";

    /** Process windows, by whether there is a region, group of food and parameter set. */
    public static final String WINDOWS = "slowpoint.windows";

    /** Reviews of logs, by verdict, group of food and parameter set. */
    public static final String REVIEWS = "slowpoint.reviews";

    /** Portions of sheets, by whether they were planned. */
    public static final String PORTIONS = "slowpoint.portions";

    /** Bands of sheets. */
    public static final String BANDS = "slowpoint.bands";
    /** Lookup tables, by group of food and parameter set. */
    public static final String TABLES = "slowpoint.tables";

    /** Warnings, by code. */
    public static final String WARNINGS = "slowpoint.warnings";

    /** Requests answered with a problem, by its code. */
    public static final String REFUSED = "slowpoint.refused";

    /** Requests whose caller is not known, by why. */
    public static final String NOT_KNOWN = "slowpoint.access.not.known";

    /** Time spent in the heat solver for one plan. */
    public static final String SOLVER = "slowpoint.solver";

    /** Time steps of the heat solver. */
    public static final String SOLVER_STEPS = "slowpoint.solver.steps";

    /** Time of the phases of one question. */
    public static final String PHASE = "slowpoint.phase";

    /** Plans of cooks under way, by decision. */
    public static final String REPLANS = "slowpoint.replans";

    /** Plans of several foods in one bath, by schedule. */
    public static final String LOADS = "slowpoint.loads";

    /** Answers of the contract, by their format. */
    public static final String RESPONSES = "slowpoint.responses";

    /** The parameter sets that are installed, always 1. */
    public static final String SET_INFO = "slowpoint.parameter.set.info";

    /** The service that runs, always 1. */
    public static final String BUILD_INFO = "slowpoint.build.info";

    /** The code of a failure of ours, and of a request that came while too many waited. */
    static final String INTERNAL_ERROR = "INTERNAL_ERROR";

    static final String OVERLOADED = "OVERLOADED";

    /** The code of a request whose solver was stopped. */
    private static final String OUT_OF_TIME = "OUT_OF_TIME";

    /** Formats that answers are counted by; any other is counted as one. */
    private static final List<String> FORMATS = List.of(
            "application/problem+json",
            "application/json",
            "application/cbor",
            "application/x-ndjson",
            "text/csv",
            "text/html",
            "image/svg+xml");

    private static final String OTHER = "other";

    private final MeterRegistry registry;
    private final PhaseSpans spans;
    private final Timer solver;
    private final Counter solverSteps;
    private final Map<PlanPhase, Timer> phases = new EnumMap<>(PlanPhase.class);
    private final Map<String, Counter> responses = new LinkedHashMap<>();
    private final Counter otherResponses;

    PlanMetrics(MeterRegistry registry, PhaseSpans spans) {
        this.registry = registry;
        this.spans = spans;
        for (PlanPhase phase : PlanPhase.values()) {
            phases.put(
                    phase,
                    Timer.builder(PHASE)
                            .description(
                                    "Time that one question spent in a phase, all times it went through it together")
                            .tag("phase", phase.name().toLowerCase(Locale.ROOT))
                            .register(registry));
        }
        for (String format : FORMATS) {
            responses.put(format, responses(format.substring(format.indexOf('/') + 1)));
        }
        this.otherResponses = responses(OTHER);
        Gauge.builder(BUILD_INFO, () -> 1)
                .description("The service that runs, always 1")
                .tag("version", version())
                .tag("java", Integer.toString(Runtime.version().feature()))
                .register(registry);
        // From zero, so that the first of them is an increase.
        refusals(INTERNAL_ERROR);
        refusals(OVERLOADED);
        refusals(OUT_OF_TIME);
        this.solver = Timer.builder(SOLVER)
                .description("Time spent in the heat solver for one plan")
                .register(registry);
        this.solverSteps = Counter.builder(SOLVER_STEPS)
                .description("Time steps of the heat solver")
                .register(registry);
    }

    /**
     * Counts a plan.
     *
     * @param verdict of its safety, a word of the contract
     * @param group of its food
     * @param parameterSet version of a parameter set that is installed
     */
    public void planned(String verdict, FoodGroup group, String parameterSet) {
        Counter.builder(PLANS)
                .description("Plans answered")
                .tag("verdict", verdict)
                .tag("group", group.name().toLowerCase(Locale.ROOT))
                .tag("parameter.set", parameterSet)
                .register(registry)
                .increment();
    }

    /**
     * Counts a chill plan.
     *
     * @param kept whether the cooling rule is kept
     * @param group of its food
     * @param parameterSet version of a parameter set that is installed
     */
    public void chilled(boolean kept, FoodGroup group, String parameterSet) {
        Counter.builder(CHILLS)
                .description("Chill plans answered")
                .tag("kept", Boolean.toString(kept))
                .tag("group", group.name().toLowerCase(Locale.ROOT))
                .tag("parameter.set", parameterSet)
                .register(registry)
                .increment();
    }

    /**
     * Counts a process window.
     *
     * @param open whether there is a region
     * @param group of its food
     * @param parameterSet version of a parameter set that is installed
     */
    public void windowed(boolean open, FoodGroup group, String parameterSet) {
        Counter.builder(WINDOWS)
                .description("Process windows answered")
                .tag("open", Boolean.toString(open))
                .tag("group", group.name().toLowerCase(Locale.ROOT))
                .tag("parameter.set", parameterSet)
                .register(registry)
                .increment();
    }

    /**
     * Counts a lookup table.
     *
     * @param group of its food
     * @param parameterSet version of a parameter set that is installed
     */
    public void tabulated(FoodGroup group, String parameterSet) {
        Counter.builder(TABLES)
                .description("Lookup tables answered")
                .tag("group", group.name().toLowerCase(Locale.ROOT))
                .tag("parameter.set", parameterSet)
                .register(registry)
                .increment();
    }

    /**
     * Counts a review of a log.
     *
     * @param verdict a word of the contract
     * @param group of its food
     * @param parameterSet version of a parameter set that is installed
     */
    public void reviewed(String verdict, FoodGroup group, String parameterSet) {
        Counter.builder(REVIEWS)
                .description("Reviews of logs answered")
                .tag("verdict", verdict)
                .tag("group", group.name().toLowerCase(Locale.ROOT))
                .tag("parameter.set", parameterSet)
                .register(registry)
                .increment();
    }

    /**
     * Counts what came of a sheet.
     *
     * @param planned portions that got a card
     * @param refused portions that got a problem
     * @param bands that were told
     */
    public void portions(int planned, int refused, int bands) {
        portions("planned", planned);
        portions("refused", refused);
        Counter.builder(BANDS)
                .description("Bands of sheets answered")
                .register(registry)
                .increment(bands);
    }

    private void portions(String outcome, int count) {
        Counter.builder(PORTIONS)
                .description("Portions of sheets answered")
                .tag("outcome", outcome)
                .register(registry)
                .increment(count);
    }

    /** Counts a warning of a plan by its code from the catalogue. */
    public void warned(String code) {
        Counter.builder(WARNINGS)
                .description("Warnings in plans answered")
                .tag("code", code)
                .register(registry)
                .increment();
    }

    /** Counts a request that was answered with a problem, by its code from the catalogue. */
    public void refused(String code) {
        refusals(code).increment();
    }

    private Counter refusals(String code) {
        return Counter.builder(REFUSED)
                .description("Requests answered with a problem")
                .tag("code", code)
                .register(registry);
    }

    /** Counts a plan of a cook under way by its decision, a word of the contract. */
    public void replanned(String decision) {
        Counter.builder(REPLANS)
                .description("Plans of cooks under way answered")
                .tag("decision", decision)
                .register(registry)
                .increment();
    }

    /** Counts a plan of several foods by its schedule, a word of the contract. */
    public void loaded(String schedule) {
        Counter.builder(LOADS)
                .description("Plans of several foods in one bath answered")
                .tag("schedule", schedule)
                .register(registry)
                .increment();
    }

    /** Counts a request whose caller is not known, by a word for why. */
    public void notKnown(String reason) {
        Counter.builder(NOT_KNOWN)
                .description("Requests whose caller is not known")
                .tag("reason", reason)
                .register(registry)
                .increment();
    }

    /** Counts an answer by its format. */
    void responded(@Nullable String contentType) {
        counterOf(contentType).increment();
    }

    private Counter counterOf(@Nullable String contentType) {
        if (contentType != null) {
            for (Map.Entry<String, Counter> known : responses.entrySet()) {
                if (contentType.startsWith(known.getKey())) {
                    return known.getValue();
                }
            }
        }
        return otherResponses;
    }

    private Counter responses(String format) {
        return Counter.builder(RESPONSES)
                .description("Answers of the contract")
                .tag("format", format)
                .register(registry);
    }

    /**
     * Tells of a parameter set that is installed.
     *
     * @param version of the set
     * @param digest short, as answers show it
     * @param current whether it answers where a request names none
     */
    public void installed(String version, String digest, boolean current) {
        Gauge.builder(SET_INFO, () -> 1)
                .description("Parameter sets installed, always 1")
                .tag("version", version)
                .tag("digest", digest)
                .tag("current", Boolean.toString(current))
                .register(registry);
    }

    /** A clock for one question, which is to be closed. */
    public PlanClock clock() {
        return new PlanClock(this);
    }

    /**
     * Notes the work of the heat solver for one plan.
     *
     * @param spent until the plan was there [ns]
     * @param steps of time, over all its runs
     */
    void solved(long spent, long steps) {
        solver.record(spent, TimeUnit.NANOSECONDS);
        solverSteps.increment((double) steps);
    }

    /** Notes the phases of one question. */
    void record(PlanClock clock) {
        clock.stints()
                .forEach((phase, stint) ->
                        Objects.requireNonNull(phases.get(phase)).record(stint.busy(), TimeUnit.NANOSECONDS));
        spans.write(clock);
    }

    private static String version() {
        return Objects.requireNonNullElse(PlanMetrics.class.getPackage().getImplementationVersion(), "unpackaged");
    }
}
