package dev.slowpoint.plan;

import dev.slowpoint.heat.PointHistory;
import dev.slowpoint.heat.TemperatureHistory;
import dev.slowpoint.plan.CookPlan.Margins;
import dev.slowpoint.safety.Judgement;
import dev.slowpoint.safety.Judging;
import dev.slowpoint.safety.ReadingError;
import dev.slowpoint.safety.Verdict;
import dev.slowpoint.safety.WarmUpClock;
import java.util.OptionalDouble;
import java.util.function.DoublePredicate;

/**
 * How much colder the bath or how much thicker the piece may be before the rule is just met at the time judged; or, where
 * it is not met, how much the other way it must go. Searched on the slow corner, and answered on the safe side.
 */
final class MarginSearch {

    /** How far and how finely is searched, in kelvin and in metres; beyond it a margin is not told (our own limits). */
    private static final double FARTHEST_K = 30.0;

    private static final double FINEST_K = 0.05;
    private static final double FARTHEST = 0.2;
    private static final double FINEST = 0.0005;
    /** The thinnest piece and the hottest bath that may be asked for. */
    private static final double THINNEST = 0.003;

    private static final double HOTTEST_C = 100.0;

    private final Trial trial;
    private final Terms terms;
    private final SolverRuns solver;

    MarginSearch(Trial trial, Terms terms, SolverRuns solver) {
        this.trial = trial;
        this.terms = terms;
        this.solver = solver;
    }

    /** The margins of a trial; none where the rule asks for nothing or the surface answers for it. */
    Margins margins() {
        if (trial.verdict() != Verdict.MET && trial.verdict() != Verdict.NOT_MET) {
            return Margins.NONE;
        }
        double left = trial.worst().marginS();
        double setpointC = trial.setpointC();
        double across = trial.lateSetting().body().across();
        boolean met = trial.verdict() == Verdict.MET;
        return new Margins(
                Double.isFinite(left) ? OptionalDouble.of(left) : OptionalDouble.empty(),
                boundary(
                        met,
                        0.25,
                        met ? FARTHEST_K : HOTTEST_C - setpointC,
                        FINEST_K,
                        colderK -> passes(trial.lateSetting().inBathAt(setpointC - colderK))),
                boundary(
                        met,
                        0.001,
                        met ? FARTHEST : across - THINNEST,
                        FINEST,
                        thicker -> passes(trial.lateSetting().acrossOf(across + thicker))));
    }

    /**
     * The largest change that still passes, looking upwards from zero when nothing changed passes, else the smallest change
     * downwards that begins to pass, with its sign.
     */
    private static OptionalDouble boundary(
            boolean met, double first, double farthest, double finest, DoublePredicate passes) {
        double direction = met ? 1.0 : -1.0;
        double near = 0.0;
        double far = Math.min(first, farthest);
        while (passes.test(direction * far) == met) {
            if (far >= farthest) {
                return OptionalDouble.empty();
            }
            near = far;
            far = Math.min(2.0 * far, farthest);
        }
        while (far - near > finest) {
            double middle = 0.5 * (near + far);
            if (passes.test(direction * middle) == met) {
                near = middle;
            } else {
                far = middle;
            }
        }
        return OptionalDouble.of(direction * (met ? near : far));
    }

    private boolean passes(Setting setting) {
        TemperatureHistory history = solver.until(trial.judgedAt(), setting);
        PointHistory core = history.core();
        Judgement judgement = terms.knowledge()
                .safety()
                .judge()
                .judge(
                        terms.requirements(),
                        core,
                        trial.judgedAt(),
                        Judging.worstCase(new ReadingError(terms.errorK())));
        WarmUpClock clock = WarmUpClock.of(
                core,
                trial.judgedAt(),
                ReadingError.NONE,
                terms.knowledge().safety().warmUp());
        return Trial.verdict(judgement, clock) == Verdict.MET;
    }
}
