package dev.slowpoint.bench;

import dev.slowpoint.food.Condition;
import dev.slowpoint.food.Form;
import dev.slowpoint.heat.Body;
import dev.slowpoint.heat.Brick;
import dev.slowpoint.heat.Slab;
import dev.slowpoint.heat.StartField;
import dev.slowpoint.parameters.ParameterSets;
import dev.slowpoint.plan.Arrangement;
import dev.slowpoint.plan.CookPlan;
import dev.slowpoint.plan.CookPlanner;
import dev.slowpoint.plan.CookTask;
import dev.slowpoint.plan.Detail;
import dev.slowpoint.plan.LoadPlan;
import dev.slowpoint.plan.LoadTask;
import dev.slowpoint.plan.ProcessWindow;
import dev.slowpoint.plan.ProcessWindowTask;
import dev.slowpoint.plan.Stirring;
import dev.slowpoint.safety.Eater;
import dev.slowpoint.safety.Purpose;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** One default cook plan without HTTP: three corners, judged, read, and its margins searched. */
@State(Scope.Thread)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 3, time = 3)
@Fork(1)
public class PlanBenchmark {

    private final CookPlanner planner =
            new CookPlanner(ParameterSets.released().current().knowledge());

    /** Pork loin, 45 mm, 4 C, bath 60 C. */
    @Benchmark
    public CookPlan thawed() {
        return planner.plan(task(4.0), Set.of());
    }

    /** The same from the freezer. */
    @Benchmark
    public CookPlan frozen() {
        return planner.plan(task(-18.0), Set.of());
    }

    /** The first with a sample of possible cooks. */
    @Benchmark
    public CookPlan sampled() {
        return planner.plan(task(4.0), Set.of(Detail.UNCERTAINTY));
    }

    /** The second with a sample of possible cooks. */
    @Benchmark
    public CookPlan frozenSampled() {
        return planner.plan(task(-18.0), Set.of(Detail.UNCERTAINTY));
    }

    /** A block with ends, whose stand-in is computed anew for each cook of the sample. */
    @Benchmark
    public CookPlan blockSampled() {
        return planner.plan(task(4.0, new Brick(0.045, 0.09, 0.15)), Set.of(Detail.UNCERTAINTY));
    }

    /** Three foods in one bath that stands at its setpoint. */
    @Benchmark
    public LoadPlan threeFoods() {
        return planner.load(load(Optional.empty()), Set.of());
    }

    /** The same in 20 L with 1200 W, all in one water. */
    @Benchmark
    public LoadPlan threeFoodsInOneWater() {
        return planner.load(
                load(Optional.of(new CookTask.Vessel(
                        0.02,
                        1200.0,
                        OptionalDouble.empty(),
                        0.8,
                        true,
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        OptionalDouble.empty()))),
                Set.of());
    }

    /** Pork loin, 45 mm and 30 mm, and chicken breast, 30 mm. */
    private LoadTask load(Optional<CookTask.Vessel> vessel) {
        return new LoadTask(
                List.of(
                        new LoadTask.Item("a", task("pork-loin", 4.0, new Slab(0.045), OptionalDouble.empty(), vessel)),
                        new LoadTask.Item("b", task("pork-loin", 4.0, new Slab(0.03), OptionalDouble.empty(), vessel)),
                        new LoadTask.Item(
                                "c", task("chicken-breast", 4.0, new Slab(0.03), OptionalDouble.empty(), vessel))),
                OptionalDouble.empty());
    }

    /** The process window of the first, over its usual range. */
    @Benchmark
    public ProcessWindow window() {
        OptionalDouble usual = OptionalDouble.empty();
        return planner.window(ProcessWindowTask.of(task(4.0), usual, usual, usual, usual, usual));
    }

    private CookTask task(double startC) {
        return task(startC, new Slab(0.045));
    }

    private CookTask task(double startC, Body body) {
        return task("pork-loin", startC, body, OptionalDouble.of(60.0), Optional.empty());
    }

    private CookTask task(
            String food, double startC, Body body, OptionalDouble setpointC, Optional<CookTask.Vessel> vessel) {
        return new CookTask(
                planner.knowledge().catalogue().find(food).orElseThrow(),
                Form.INTACT,
                Condition.RAW,
                OptionalDouble.empty(),
                false,
                body,
                Arrangement.FREE,
                StartField.uniform(startC),
                Optional.empty(),
                new CookTask.Bath(setpointC, Stirring.PUMPED, vessel),
                0.0,
                new CookTask.Target(
                        Purpose.SERVE, OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty()),
                Eater.GENERAL,
                Optional.empty(),
                new CookTask.Tolerances(
                        OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty()),
                new CookTask.Pack(false, false, OptionalDouble.empty(), OptionalDouble.empty(), false, false),
                List.of());
    }
}
