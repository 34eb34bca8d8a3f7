package dev.slowpoint.plan;

import dev.slowpoint.food.Film;
import dev.slowpoint.heat.PointHistory;
import dev.slowpoint.heat.Programme;
import dev.slowpoint.heat.TemperatureHistory;
import dev.slowpoint.plan.Uncertainty.Missed;
import dev.slowpoint.plan.Uncertainty.Percentiles;
import dev.slowpoint.safety.Finding;
import dev.slowpoint.safety.Judgement;
import dev.slowpoint.safety.Judging;
import dev.slowpoint.safety.ReadingError;
import dev.slowpoint.safety.Verdict;
import dev.slowpoint.safety.WarmUpClock;
import dev.slowpoint.texture.TextureReading;
import dev.slowpoint.texture.TextureWindow;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Computes many possible cooks of one task in one bath, and reads each as the plan is read.
 *
 * <p>The rule is judged as written, floor and table alike, on the core as it would truly be: no error is taken off, because
 * bath and reading are drawn with their errors. All else is the physics of the piece; kinetics are not varied.
 */
final class UncertaintySample {

    /**
     * Cooks computed. Twice as many moved the outer percentiles of 560 plans by 0.4 % at the median, 1.5 % in nine of ten and
     * 4 % at most, and take twice the time, which is long for a piece from the freezer; the spreads themselves are judgement.
     */
    static final int POINTS = 128;

    private static final int AXES = 8;

    private final CookTask task;
    private final Trial trial;
    private final Terms terms;
    private final SolverRuns solver;
    private final int points;
    private final SobolPoints sobol = SobolPoints.shifted(AXES, Uncertainty.SEED);

    private final double targetC;
    private final double withinK;
    private final double acrossBy;
    private final double startBy;
    private final double bathBy;
    private final double readingBy;
    private final Film film;

    UncertaintySample(CookTask task, Trial trial, Terms terms, SolverRuns solver) {
        this(task, trial, terms, solver, POINTS);
    }

    UncertaintySample(CookTask task, Trial trial, Terms terms, SolverRuns solver, int points) {
        this.task = task;
        this.trial = trial;
        this.terms = terms;
        this.solver = solver;
        this.points = points;
        Knowledge knowledge = terms.knowledge();
        Defaults defaults = knowledge.defaults();
        this.targetC = task.target().coreC().orElse(trial.setpointC());
        this.withinK = task.target().withinK().orElse(defaults.withinK());
        this.acrossBy = Setting.acrossBy(task, defaults);
        this.startBy = Setting.startBy(task, defaults);
        this.bathBy = task.tolerances().bathK().orElse(defaults.bathK());
        this.readingBy = task.tolerances().readingK().orElse(defaults.readingK());
        this.film = Setting.film(task.bath().stirring(), knowledge.films(), defaults);
    }

    /** Computes all cooks and reads them. */
    Uncertainty read() {
        terms.watch().begins(PlanPhase.SAMPLE);
        Uncertainty read = read(compute());
        terms.watch().ends(PlanPhase.SAMPLE);
        return read;
    }

    private Uncertainty read(Cooks cooks) {
        boolean asked = trial.worst().governing().isPresent();
        CookPlan.Times times = trial.times();
        return new Uncertainty(
                points,
                Percentiles.of(cooks.hotThrough()),
                asked ? Optional.of(Percentiles.of(cooks.safe())) : Optional.empty(),
                times.tender().map(s -> Percentiles.of(cooks.tender())),
                times.goodUntil().map(s -> Percentiles.of(cooks.closes())),
                times.softFrom().map(s -> Percentiles.of(cooks.soft())),
                Percentiles.of(cooks.coreC()),
                asked ? Optional.of(Percentiles.of(cooks.achievedLog10())) : Optional.empty(),
                asked ? Optional.of(Missed.of(cooks.missed(), points)) : Optional.empty(),
                sampled(),
                notSampled());
    }

    /** All cooks, each quantity in rising order; zero where it is not asked or not modelled. */
    Cooks compute() {
        double[] hotThrough = new double[points];
        double[] safe = new double[points];
        double[] tender = new double[points];
        double[] closes = new double[points];
        double[] soft = new double[points];
        double[] coreC = new double[points];
        double[] achieved = new double[points];
        int missed = 0;
        Optional<Finding> governing = trial.worst().governing();
        double hotThroughC = TextureWindow.hotThroughC(trial.setpointC(), targetC);
        for (int i = 0; i < points; i++) {
            Draw draw = draw(i);
            TemperatureHistory history = history(draw);
            PointHistory core = history.slowest();
            hotThrough[i] = core.firstAtOrAbove(targetC - withinK);
            coreC[i] = core.atC(trial.judgedAt());
            if (governing.isPresent()) {
                PointHistory judged = core.warmerBy(draw.readingBy());
                Judgement judgement = judge(judged);
                safe[i] = judgement.safeAt();
                achieved[i] = judgement
                        .findings()
                        .get(trial.worst().findings().indexOf(governing.get()))
                        .deliveredLog10();
                missed += met(judgement, judged) ? 0 : 1;
            }
            if (terms.softening().isPresent()) {
                Softening softening = terms.softening().get();
                TextureWindow window = TextureReading.of(
                                softening.textureClass(), history, hotThroughC, softening.earlier())
                        .window();
                tender[i] = window.opens();
                closes[i] = window.closes();
                soft[i] = window.softFrom();
            }
        }
        for (double[] values : List.of(hotThrough, safe, tender, closes, soft, coreC, achieved)) {
            Arrays.sort(values);
        }
        return new Cooks(hotThrough, safe, tender, closes, soft, coreC, achieved, missed);
    }

    /**
     * What the cooks give.
     *
     * @param hotThrough [s]
     * @param safe [s]
     * @param tender [s]
     * @param closes [s]
     * @param soft [s]
     * @param coreC [C] at the time judged
     * @param achievedLog10 at the time judged
     * @param missed how many do not meet the rule
     */
    record Cooks(
            double[] hotThrough,
            double[] safe,
            double[] tender,
            double[] closes,
            double[] soft,
            double[] coreC,
            double[] achievedLog10,
            int missed) {}

    /** One possible cook. */
    Draw draw(int point) {
        Knowledge knowledge = terms.knowledge();
        return new Draw(
                Spreads.within(acrossBy, sobol.at(point, 0)),
                Spreads.within(startBy, sobol.at(point, 4)),
                Spreads.within(bathBy, sobol.at(point, 3)),
                Spreads.film(film, sobol.at(point, 1)),
                Spreads.film(knowledge.vessels().faceInAir(), sobol.at(point, 7)),
                knowledge.spreads().conductivity(task.food().group().plant(), sobol.at(point, 2)),
                Spreads.within(1.0, sobol.at(point, 6)),
                Spreads.within(readingBy, sobol.at(point, 5)));
    }

    private TemperatureHistory history(Draw draw) {
        Setting setting = Setting.of(task, trial.setpointC(), draw, terms.knowledge(), terms.materials());
        return solver.until(terms.knowledge().defaults().horizon(), setting, draw.shape());
    }

    private Judgement judge(PointHistory core) {
        return terms.knowledge()
                .safety()
                .judge()
                .judge(terms.requirements(), core, trial.judgedAt(), Judging.worstCase(ReadingError.NONE));
    }

    /** Kill and warm-up as the plan asks for them; met on the surface alone does not count. */
    private boolean met(Judgement judgement, PointHistory core) {
        WarmUpClock clock = WarmUpClock.of(
                core,
                trial.judgedAt(),
                ReadingError.NONE,
                terms.knowledge().safety().warmUp());
        return Trial.verdict(judgement, clock) == Verdict.MET;
    }

    private List<UncertainInput> sampled() {
        List<UncertainInput> inputs = new ArrayList<>();
        inputs.add(UncertainInput.THICKNESS);
        inputs.add(UncertainInput.START_TEMPERATURE);
        inputs.add(UncertainInput.BATH_TEMPERATURE);
        inputs.add(UncertainInput.FILM_COEFFICIENT);
        inputs.add(UncertainInput.CONDUCTIVITY);
        if (task.arrangement().faceInAirC().isPresent()) {
            inputs.add(UncertainInput.AIR_FILM_COEFFICIENT);
        }
        Setting late = trial.lateSetting();
        if (late.standIn(Programme.of(late.cooking(trial.judgedAt()))).earlyBy() > 0.0) {
            inputs.add(UncertainInput.SHAPE_ERROR);
        }
        if (trial.worst().governing().isPresent()) {
            inputs.add(UncertainInput.CORE_READING);
        }
        return inputs;
    }

    private List<UncertainInput> notSampled() {
        List<UncertainInput> inputs = new ArrayList<>();
        if (trial.worst().governing().isPresent()) {
            inputs.add(UncertainInput.INACTIVATION_KINETICS);
        }
        if (terms.softening().isPresent()) {
            inputs.add(UncertainInput.TEXTURE_KINETICS);
        }
        inputs.add(UncertainInput.COMPOSITION);
        inputs.add(UncertainInput.ARRANGEMENT);
        if (task.bath().vessel().isPresent()) {
            inputs.add(UncertainInput.VESSEL);
        }
        if (!task.then().isEmpty()) {
            inputs.add(UncertainInput.STEPS_AFTER_BATH);
        }
        return inputs;
    }
}
