package dev.slowpoint.plan;

import dev.slowpoint.heat.PointHistory;
import dev.slowpoint.plan.CookPlan.Margins;
import dev.slowpoint.safety.Judgement;
import dev.slowpoint.safety.ReadingError;
import dev.slowpoint.safety.Verdict;
import dev.slowpoint.safety.WarmUpClock;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;

/**
 * How much colder the bath or how much thicker the piece may be before the rule is just met at the time judged; or, where
 * it is not met, how much the other way it must go. Searched on the slow corner, and answered on the safe side.
 */
final class MarginSearch {

    /** How far and how finely is searched, in kelvin and in metres; beyond it a margin is not told (our own limits). */
    static final double FARTHEST_K = 30.0;

    static final double FINEST_K = 0.05;
    static final double FARTHEST = 0.2;
    static final double FINEST = 0.0005;
    /** The thinnest piece and the hottest bath that may be asked for. */
    static final double THINNEST = 0.003;

    private static final double HOTTEST_C = 100.0;

    /** How far beyond the time judged a history is run, so that a kill that comes too late is still told by how much. */
    private static final double LOOKED_AHEAD = 3.0;

    private final CookTask task;
    private final Trial trial;
    private final Terms terms;
    private final double across;
    private final Course course;

    private MarginSearch(CookTask task, Trial trial, Terms terms, double across, Course course) {
        this.task = task;
        this.across = across;
        this.trial = trial;
        this.terms = terms;
        this.course = course;
    }

    /** Of a cook that is planned: every change is asked for anew, so its tolerances are those of the changed size. */
    static MarginSearch of(CookTask task, Trial trial, Terms terms, SolverRuns solver) {
        return new MarginSearch(task, trial, terms, task.body().across(), (setpointC, across, until) -> {
            CookTask changed = task.with(task.body().withAcross(across));
            Setting setting = Setting.of(changed, setpointC, Corner.LATE, terms.knowledge(), terms.materials());
            return solver.until(until, setting).slowest();
        });
    }

    /** Of a cook under way, whose past is known: a change is one of the setting that explains it. */
    static MarginSearch of(CookTask task, Trial trial, Terms terms, Replanning past) {
        Setting late = trial.lateSetting();
        return new MarginSearch(task, trial, terms, late.body().across(), (setpointC, across, until) -> {
            return past.late(late.inBathAt(setpointC).acrossOf(across), until);
        });
    }

    /** Of a cook in water that other food cools too: a change of the bath is one of that water, and the other food stays as it is. */
    static MarginSearch of(CookTask task, Trial trial, Terms terms, Course course) {
        return new MarginSearch(task, trial, terms, task.body().across(), course);
    }

    /** What the slowest-heating point of the slow corner goes through until a time [s], after a change. */
    interface Course {

        /** Its history in a bath [C], of another size across [m], until a time [s]. */
        PointHistory slowest(double setpointC, double across, double until);
    }

    /** The margins of a trial; none where the rule asks for nothing or the surface answers for it. */
    Margins margins() {
        if (trial.verdict() != Verdict.MET && trial.verdict() != Verdict.NOT_MET) {
            return Margins.NONE;
        }
        terms.watch().begins(PlanPhase.MARGINS);
        Margins found = search();
        terms.watch().ends(PlanPhase.MARGINS);
        return found;
    }

    private Margins search() {
        boolean tooSlow = trial.clock().pace() == WarmUpClock.Pace.TOO_SLOW;
        double left = trial.worst().marginS();
        double setpointC = trial.setpointC();
        boolean met = trial.verdict() == Verdict.MET;
        double slack = slack(trial.worst(), trial.clock());
        return new Margins(
                // No time in the bath mends a warm-up that was too slow.
                Double.isFinite(left) && !tooSlow ? OptionalDouble.of(left) : OptionalDouble.empty(),
                boundary(
                        slack,
                        0.5,
                        met ? FARTHEST_K : HOTTEST_C - setpointC,
                        FINEST_K,
                        colderK -> slack(setpointC - colderK, across)),
                boundary(
                        slack,
                        thickerGuess(slack, across),
                        met ? FARTHEST : across - THINNEST,
                        FINEST,
                        thicker -> slack(setpointC, across + thicker)));
    }

    /** Heating takes as long as nearly the square of the thickness (the power is that of a usual film). */
    static double thickerGuess(double slack, double across) {
        double growth = StrictMath.pow(Math.max(1.0 + slack, 0.1), 1.0 / 1.8);
        return Math.max(Math.abs(growth - 1.0) * across, FINEST);
    }

    /**
     * The largest change that still passes, looking upwards from zero when nothing changed passes, else the smallest change
     * downwards that begins to pass, with its sign; by false position on the slack, closed in until both sides are known.
     *
     * @param unchanged slack without a change
     * @param guess how far the boundary may be
     * @param farthest how far is looked
     * @param finest how closely it is found
     * @param slackOf zero or more where a change passes
     */
    static OptionalDouble boundary(
            double unchanged, double guess, double farthest, double finest, DoubleUnaryOperator slackOf) {
        boolean met = unchanged >= 0.0;
        double direction = met ? 1.0 : -1.0;
        double near = 0.0;
        double nearSlack = unchanged;
        double far = Math.min(guess, farthest);
        double farSlack = slackOf.applyAsDouble(direction * far);
        while (farSlack >= 0.0 == met) {
            if (far >= farthest) {
                return OptionalDouble.empty();
            }
            double step = (far - near) * farSlack / (nearSlack - farSlack);
            double grown = step > 0.0 ? Math.min(1.2 * step, 4.0 * far) : 4.0 * far;
            near = far;
            nearSlack = farSlack;
            far = Math.min(far + Math.max(grown, finest), farthest);
            farSlack = slackOf.applyAsDouble(direction * far);
        }
        while (far - near > finest) {
            double crossing = near + (far - near) * nearSlack / (nearSlack - farSlack);
            double closer = crossing - near > far - crossing ? crossing - 0.4 * finest : crossing + 0.4 * finest;
            double middle = Math.min(Math.max(closer, near + 0.05 * (far - near)), far - 0.05 * (far - near));
            double found = slackOf.applyAsDouble(direction * middle);
            if (found >= 0.0 == met) {
                near = middle;
                nearSlack = found;
                farSlack *= 0.6;
            } else {
                far = middle;
                farSlack = found;
                nearSlack *= 0.6;
            }
        }
        return OptionalDouble.of(direction * (met ? near : far));
    }

    private double slack(double setpointC, double across) {
        double until = Math.min(
                LOOKED_AHEAD * trial.judgedAt(), terms.knowledge().defaults().horizon());
        PointHistory core = course.slowest(setpointC, across, until);
        Judgement judgement = terms.knowledge()
                .safety()
                .judge()
                .judge(
                        terms.requirements(),
                        core,
                        trial.judgedAt(),
                        Trial.worstCase(task, terms, terms.error(setpointC)));
        WarmUpClock clock = WarmUpClock.of(
                core, trial.judgedAt(), ReadingError.NONE, terms.limits().warmUp());
        return slack(judgement, clock);
    }

    /** How much time there is over what is needed, as a share of it: zero or more where the rule and the warm-up are kept. */
    private double slack(Judgement judgement, WarmUpClock clock) {
        double kill = trial.judgedAt() / judgement.safeAt() - 1.0;
        double warmUp = clock.leftS() / Math.max(terms.limits().warmUp().longestS() - clock.leftS(), 1.0);
        return Math.min(kill, warmUp);
    }
}
