package dev.slowpoint.api;

import dev.slowpoint.parameters.ParameterSets;
import dev.slowpoint.plan.CookPlan;
import dev.slowpoint.plan.CookPlanner;
import dev.slowpoint.plan.CookTask;
import java.util.Objects;
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

/** What stands around a cook plan: its request read and translated, its answer put into words and written. */
@State(Scope.Thread)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 3, time = 3)
@Fork(1)
public class WireBenchmark {

    private final CookPlanner planner =
            new CookPlanner(ParameterSets.released().current().knowledge());
    private final Sentences sentences = new Languages().english();
    private final byte[] body =
            Objects.requireNonNull(new Examples().requests("cook-plan").get("pork-loin"));
    private final CookPlanRequest request = RequestReader.read(body, Wire.JSON, CookPlanRequest.class);
    private final CookPlan plan = planner.plan(TaskTranslation.task(request, planner.knowledge()), Set.of());
    private final CookPlanAnswer answer = answer();

    /** Bytes to record. */
    @Benchmark
    public CookPlanRequest read() {
        return RequestReader.read(body, Wire.JSON, CookPlanRequest.class);
    }

    /** Record to task. */
    @Benchmark
    public CookTask task() {
        return TaskTranslation.task(request, planner.knowledge());
    }

    /** Plan to record: rounding and sentences. */
    @Benchmark
    public CookPlanAnswer answer() {
        return new PlanTranslation(plan, planner.knowledge().notices(), sentences).answer(Set.of());
    }

    /** Record to bytes. */
    @Benchmark
    public byte[] write() {
        return Wire.JSON.write(answer);
    }
}
