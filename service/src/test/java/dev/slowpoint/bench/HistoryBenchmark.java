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
import org.hipparchus.ode.ODEIntegrator;
import org.hipparchus.ode.nonstiff.DormandPrince54Integrator;
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

    static final Programme BATH = Programme.of(new Stage(new Surroundings(60.0, 200.0), 7200.0));
    private static final RateLaw LINE = new Line();

    static final Material PORK = pork();

    /** Cells that give a general-purpose integrator the accuracy of ours, checked by {@link EqualAccuracyTest}. */
    private static final int CELLS_THAWED = 16;

    private static final int CELLS_FROZEN = 36;

    private static final double GENERAL_TOLERANCE = 1e-4;

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
        return run(5.0, Resolution.SERVICE).core().atC(3600.0);
    }

    /** From the fridge, on our finest mesh: the yardstick of the accuracy tests. */
    @Benchmark
    public double thawedOnTheFinestMesh() {
        return doses(5.0, Resolution.YARDSTICK);
    }

    /** From the fridge, by a general-purpose integrator and the method of lines at equal accuracy. */
    @Benchmark
    public double thawedByGeneralIntegrator() {
        return lines(5.0).doses(integrator(), 5.0, BATH.duration());
    }

    /** From the freezer, the same. */
    @Benchmark
    public double frozenByGeneralIntegrator() {
        return lines(-18.0).doses(integrator(), -18.0, BATH.duration());
    }

    double generalTimeTo(double levelC, double startC) {
        return lines(startC).timeTo(levelC, integrator(), startC, BATH.duration());
    }

    private static MethodOfLines lines(double startC) {
        return new MethodOfLines(0.03, startC < 0.0 ? CELLS_FROZEN : CELLS_THAWED, 200.0, 60.0, PORK, LINE);
    }

    private static ODEIntegrator integrator() {
        return new DormandPrince54Integrator(1e-6, 1000.0, GENERAL_TOLERANCE, GENERAL_TOLERANCE);
    }

    private double doses(double startC) {
        return doses(startC, Resolution.SERVICE);
    }

    private double doses(double startC, Resolution resolution) {
        TemperatureHistory history = run(startC, resolution);
        return Dose.of(LINE, history.core()).total()
                + Dose.of(LINE, history.surface()).total()
                + history.meanDose(LINE).total();
    }

    private TemperatureHistory run(double startC, Resolution resolution) {
        return Conduction.run(new Slab(0.03), PORK, StartField.uniform(startC), BATH, resolution);
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
