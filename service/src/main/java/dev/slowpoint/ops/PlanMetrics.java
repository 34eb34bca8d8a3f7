package dev.slowpoint.ops;

import dev.slowpoint.food.FoodGroup;
import io.micrometer.core.instrument.Counter;
import io.micrometer.core.instrument.MeterRegistry;
import io.micrometer.core.instrument.Timer;
import java.time.Duration;
import java.util.Locale;
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

    /** Time spent in the heat solver for one plan. */
    public static final String SOLVER = "slowpoint.solver";

    /** Time steps of the heat solver. */
    public static final String SOLVER_STEPS = "slowpoint.solver.steps";

    private final MeterRegistry registry;
    private final Timer solver;
    private final Counter solverSteps;

    PlanMetrics(MeterRegistry registry) {
        this.registry = registry;
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
        Counter.builder(REFUSED)
                .description("Requests answered with a problem")
                .tag("code", code)
                .register(registry)
                .increment();
    }

    /**
     * Notes the work of the heat solver for one plan.
     *
     * @param spent in the solver
     * @param steps of time, over all its runs
     */
    public void solved(Duration spent, long steps) {
        solver.record(spent);
        solverSteps.increment((double) steps);
    }
}
