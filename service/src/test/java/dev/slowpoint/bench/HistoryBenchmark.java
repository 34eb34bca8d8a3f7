package dev.slowpoint.bench;

import dev.slowpoint.food.Food;
import dev.slowpoint.food.ThermalProperties;
import dev.slowpoint.heat.Conduction;
import dev.slowpoint.heat.Dose;
import dev.slowpoint.heat.Exp;
import dev.slowpoint.heat.Material;
import dev.slowpoint.heat.Programme;
import dev.slowpoint.heat.RateLaw;
import dev.slowpoint.heat.Resolution;
import dev.slowpoint.heat.Slab;
import dev.slowpoint.heat.Stage;
import dev.slowpoint.heat.StartField;
import dev.slowpoint.heat.Surroundings;
import dev.slowpoint.heat.TemperatureHistory;
import dev.slowpoint.parameters.ParameterSets;
import dev.slowpoint.plan.Knowledge;
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

/** One history of a slab of 30 mm, film 200 W/m2K, bath 60 C, two hours, with the doses of core, surface and mean. */
@State(Scope.Thread)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 3, time = 3)
@Fork(1)
public class HistoryBenchmark {

    private static final Programme BATH = Programme.of(new Stage(new Surroundings(60.0, 200.0), 7200.0));
    private static final RateLaw LINE = new Line();

    private final Material pork = pork();

    private static Material pork() {
        Knowledge knowledge = ParameterSets.released().current().knowledge();
        Food food = knowledge.catalogue().find("pork-loin").orElseThrow();
        ThermalProperties properties = knowledge.thermal().properties(food, 0.93);
        return Material.tabulated(
                properties.lowestC(),
                properties.highestC(),
                properties::conductivity,
                properties::volumetricEnthalpy,
                properties.kinksC());
    }

    /** From the fridge. */
    @Benchmark
    public double thawed() {
        return doses(5.0);
    }

    /** From the freezer. */
    @Benchmark
    public double frozen() {
        return doses(-18.0);
    }

    /** From the fridge, without the doses. */
    @Benchmark
    public double thawedHistoryAlone() {
        return run(5.0).core().atC(3600.0);
    }

    private double doses(double startC) {
        TemperatureHistory history = run(startC);
        return Dose.of(LINE, history.core()).total()
                + Dose.of(LINE, history.surface()).total()
                + history.meanDose(LINE).total();
    }

    private TemperatureHistory run(double startC) {
        return Conduction.run(new Slab(0.03), pork, StartField.uniform(startC), BATH, Resolution.SERVICE);
    }

    private record Line() implements RateLaw {
        @Override
        public double perSecond(double temperatureC) {
            return Exp.pow10((temperatureC - 70.0) / 7.5) / 20.0;
        }

        @Override
        public double[] breaksC() {
            return new double[0];
        }
    }
}
