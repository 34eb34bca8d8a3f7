package dev.slowpoint.plan;

import dev.slowpoint.plan.Outcome.PreChill;
import dev.slowpoint.plan.Step.ChillMedium;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;

/**
 * What keeps the core at what was wanted although a sear warms it: a chill before, or a cooler bath. Searched on the
 * nominal corner with a few runs each. A cooler bath is told for its temperature only: whether it is safe is a question of
 * its own.
 */
final class SearAdvice {

    /** How near to the wanted core is near enough [K], and how many runs a search may take (our own choices). */
    private static final double NEAR_K = 0.1;

    private static final int MOST_RUNS = 8;

    /** A chill of this length per square metre of thickness is tried first, and none longer than an hour [s/m2, s]. */
    private static final double FIRST_CHILL = 120.0 / (0.025 * 0.025);

    private static final double LONGEST_CHILL = 3600.0;

    private final CookTask task;
    private final Trial trial;
    private final Terms terms;
    private final Course.Aim aim;
    private final SolverRuns solver;
    private final int sear;

    /** For the step {@code sear} of the task. */
    SearAdvice(CookTask task, Trial trial, Terms terms, Course.Aim aim, SolverRuns solver, int sear) {
        this.task = task;
        this.trial = trial;
        this.terms = terms;
        this.aim = aim;
        this.solver = solver;
        this.sear = sear;
    }

    /** The shortest chill in ice water with which the core peaks at what was wanted; empty when none of an hour does. */
    Optional<PreChill> chill(double wantedCoreC, double peakC) {
        // Half way to what still counts as reached: at the wanted core itself a far longer chill makes hardly a
        // difference.
        double wantedC = wantedCoreC + 0.5 * aim.withinK();
        AfterBath after = terms.knowledge().after();
        double high = FIRST_CHILL * task.body().across() * task.body().across();
        double highBy = searedAfter(high).peakC() - wantedC;
        double low = 0.0;
        double lowBy = peakC - wantedC;
        while (highBy > 0.0) {
            if (high >= LONGEST_CHILL) {
                return Optional.empty();
            }
            low = high;
            lowBy = highBy;
            high = Math.min(2.0 * high, LONGEST_CHILL);
            highBy = searedAfter(high).peakC() - wantedC;
        }
        double seconds = root(low, lowBy, high, highBy, s -> searedAfter(s).peakC() - wantedC);
        Seared found = searedAfter(seconds);
        double mediumC =
                Objects.requireNonNull(after.media().get(ChillMedium.ICE_WATER)).temperatureC();
        return Optional.of(new PreChill(seconds, mediumC, found.coreC(), found.peakC()));
    }

    /** The setpoint of the last bath before the sear with which the core peaks at what was wanted. */
    OptionalDouble setpoint(double wantedC, double peakC) {
        double asIsC = lastSetpointC();
        double lowC = asIsC;
        double lowBy = peakC - wantedC;
        for (double factor = 1.5; lowBy > 0.0; factor *= 2.0) {
            if (lowC <= Admission.COOLEST_BATH_C) {
                return OptionalDouble.empty();
            }
            lowC = Math.max(asIsC - factor * (peakC - wantedC), Admission.COOLEST_BATH_C);
            lowBy = searedFrom(lowC) - wantedC;
        }
        return OptionalDouble.of(root(asIsC, peakC - wantedC, lowC, lowBy, c -> searedFrom(c) - wantedC));
    }

    /** Setpoint of the last bath before the sear [C]. */
    double lastSetpointC() {
        for (int i = sear - 1; i >= 0; i--) {
            if (task.then().get(i) instanceof Step.Bath bath) {
                return bath.setpointC();
            }
            if (task.then().get(i) instanceof Step.Reheat reheat) {
                return reheat.setpointC();
            }
        }
        return trial.setpointC();
    }

    private record Seared(double coreC, double peakC) {}

    private Seared searedAfter(double chill) {
        List<Step> steps = new ArrayList<>(task.then().subList(0, sear));
        steps.add(new Step.Chill(ChillMedium.ICE_WATER, OptionalDouble.empty(), OptionalDouble.of(chill)));
        steps.add(task.then().get(sear));
        return run(trial.setpointC(), steps);
    }

    private double searedFrom(double setpointC) {
        List<Step> steps = new ArrayList<>(task.then().subList(0, sear + 1));
        for (int i = sear - 1; i >= 0; i--) {
            if (steps.get(i) instanceof Step.Bath bath) {
                steps.set(i, new Step.Bath(setpointC, bath.duration()));
                return run(trial.setpointC(), steps).peakC();
            }
            if (steps.get(i) instanceof Step.Reheat reheat) {
                steps.set(i, new Step.Reheat(setpointC, reheat.duration()));
                return run(trial.setpointC(), steps).peakC();
            }
        }
        return run(setpointC, steps).peakC();
    }

    private Seared run(double setpointC, List<Step> steps) {
        Setting setting = Setting.of(task, setpointC, Corner.NOMINAL, terms.knowledge(), terms.materials());
        Passage passage = new Course(setting, Corner.NOMINAL, terms.knowledge().after(), aim)
                .cook(trial.judgedAt())
                .then(steps)
                .watch()
                .run(solver);
        double begins = passage.begins(steps.size() - 1);
        return new Seared(
                passage.core().atC(begins),
                Passage.peak(passage.core(), begins, passage.history().end()).temperatureC());
    }

    /** False position, the end that stays halved (Illinois), until the value is near zero. */
    private static double root(double a, double aBy, double b, double bBy, DoubleUnaryOperator by) {
        double keptAt = a;
        double kept = aBy;
        double at = b;
        double value = bBy;
        for (int i = 0; i < MOST_RUNS && Math.abs(value) > NEAR_K; i++) {
            double next = at - value * (at - keptAt) / (value - kept);
            double nextValue = by.applyAsDouble(next);
            if (nextValue * value < 0.0) {
                keptAt = at;
                kept = value;
            } else {
                kept *= 0.5;
            }
            at = next;
            value = nextValue;
        }
        return at;
    }
}
