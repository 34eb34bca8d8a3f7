package dev.slowpoint.plan;

import dev.slowpoint.food.FoodGroup;
import dev.slowpoint.heat.Dose;
import dev.slowpoint.heat.PointHistory;
import dev.slowpoint.heat.RateLaw;
import dev.slowpoint.plan.Outcome.Cooling;
import dev.slowpoint.plan.Outcome.Growth;
import dev.slowpoint.plan.Outcome.Holding;
import dev.slowpoint.plan.Outcome.Interruption;
import dev.slowpoint.plan.Outcome.Keeping;
import dev.slowpoint.plan.Outcome.ReheatCheck;
import dev.slowpoint.plan.Outcome.Reheating;
import dev.slowpoint.plan.Outcome.Resumption;
import dev.slowpoint.plan.Outcome.SearEffect;
import dev.slowpoint.plan.Outcome.SwapWater;
import dev.slowpoint.safety.CoolingRule;
import dev.slowpoint.safety.Finding;
import dev.slowpoint.safety.GrowthScope.Occasion;
import dev.slowpoint.safety.Hazard;
import dev.slowpoint.safety.HotHoldingLimit;
import dev.slowpoint.safety.InactivationLine;
import dev.slowpoint.safety.Judgement;
import dev.slowpoint.safety.ReadingError;
import dev.slowpoint.safety.RuleLimits;
import dev.slowpoint.safety.SafetyKnowledge;
import dev.slowpoint.safety.Verdict;
import dev.slowpoint.safety.WarmUpClock;
import dev.slowpoint.safety.WarmUpLimits;
import dev.slowpoint.texture.TextureReading;
import dev.slowpoint.texture.TextureWindow;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What follows the bath: each corner run once from food in through all steps, so that one temperature field is carried
 * through everything, and then read step by step. The piece leaves the bath at the moment the trial was judged at, also
 * where the trial found no good moment.
 */
final class Sequel {

    /** Listeria in the food, 70 C for 2 min, from the floor of its table (UK FSA and ACMSF; FDA Table A-3). */
    static final String LISTERIA_LINE = "K-LM-UK";

    static final double LISTERIA_FLOOR_C = 60.0;

    /** Decimal reductions of Listeria that keeping, and a kill step, ask for (UK FSA; FDA Table A-3). */
    static final double LISTERIA_TARGET_LOG10 = 6.0;

    /** Growth of C. perfringens that is still accepted (9 CFR 318.17(a)(2)), and what is broken beyond it. */
    private static final double ACCEPTED_GROWTH_LOG10 = 1.0;

    private static final String GROWTH_RANGE = "GROWTH-CP";

    private final CookTask task;
    private final Trial trial;
    private final Terms terms;
    private final SolverRuns solver;
    private final AfterBath after;
    private final SafetyKnowledge safety;
    private final RuleLimits limits;
    private final ReadingError error;
    private final Course.Aim aim;
    private final CoolingRule coolingRule;
    private final List<Step> steps;
    private final Passages passages;
    private final ColdLife coldLife;
    private Verdict verdict;
    private Optional<String> broken = Optional.empty();
    private boolean spoiled;
    private int cuts;

    private Sequel(CookTask task, Trial trial, Terms terms, SolverRuns solver) {
        this.task = task;
        this.trial = trial;
        this.terms = terms;
        this.solver = solver;
        this.after = terms.knowledge().after();
        this.safety = terms.knowledge().safety();
        this.error = new ReadingError(terms.errorK());
        this.limits = terms.limits();
        this.coolingRule = limits.cooling();
        this.aim = new Course.Aim(
                task.target().coreC(),
                task.target().withinK().orElse(terms.knowledge().defaults().withinK()),
                coldC(coolingRule),
                terms.knowledge().defaults().horizon());
        this.steps = task.then();
        this.passages = new Passages(run(Corner.NOMINAL), run(Corner.EARLY), run(Corner.LATE));
        this.coldLife = new ColdLife(limits.coldStorage(), task.eater());
        this.verdict = trial.verdict();
    }

    /**
     * What was found.
     *
     * @param outcomes one a step
     * @param texture of the nominal corner over the whole history, if modelled
     * @param ends when the last step ends, nominal [s]
     * @param spoiled whether spore formers may have grown in warmth, so that nothing is left to certify
     * @param passages what the corners went through; empty when there are no steps
     */
    record Found(
            List<Outcome> outcomes,
            Optional<TextureReading> texture,
            double ends,
            boolean spoiled,
            Optional<Passages> passages) {

        static final Found NOTHING = new Found(List.of(), Optional.empty(), 0.0, false, Optional.empty());
    }

    /** Follows a task through its steps. */
    static Found of(CookTask task, Trial trial, Terms terms, SolverRuns solver) {
        if (task.then().isEmpty()) {
            return Found.NOTHING;
        }
        terms.watch().begins(PlanPhase.STEPS);
        Found found = new Sequel(task, trial, terms, solver).found();
        terms.watch().ends(PlanPhase.STEPS);
        return found;
    }

    /** What all of a piece has to fall to, so that every limit of a rule ends [C]. */
    static double coldC(CoolingRule rule) {
        return rule.stages().stream().mapToDouble(CoolingRule.Stage::toC).min().orElseThrow();
    }

    private Passage run(Corner corner) {
        Setting setting = Setting.of(task, trial.setpointC(), corner, terms.knowledge(), terms.materials());
        Course course =
                new Course(setting, corner, after, aim).cook(trial.judgedAt()).then(steps);
        return (endsRestingAfterSear() ? course.watch() : course).run(solver);
    }

    private boolean endsRestingAfterSear() {
        int last = steps.size() - 1;
        while (last > 0 && steps.get(last) instanceof Step.Rest) {
            last--;
        }
        return steps.get(last) instanceof Step.Sear;
    }

    private Found found() {
        List<Outcome> outcomes = new ArrayList<>();
        for (int i = 0; i < steps.size(); i++) {
            outcomes.add(outcome(i));
        }
        double ends = passages.nominal().ends(steps.size() - 1);
        Optional<TextureReading> texture = terms.softening().map(s -> {
            double targetC = task.target().coreC().orElse(trial.setpointC());
            return TextureReading.of(
                    s.textureClass(),
                    passages.nominal().history(),
                    TextureWindow.hotThroughC(trial.setpointC(), targetC),
                    s.earlier());
        });
        return new Found(outcomes, texture, ends, spoiled, Optional.of(passages));
    }

    private Outcome outcome(int i) {
        Step step = steps.get(i);
        Optional<Holding> holding = Optional.empty();
        Optional<SwapWater> swap = Optional.empty();
        Optional<Interruption> interruption = Optional.empty();
        Optional<SearEffect> sear = Optional.empty();
        Optional<Cooling> cooling = Optional.empty();
        Optional<Keeping> keeping = Optional.empty();
        Optional<Reheating> reheating = Optional.empty();
        if (step instanceof Step.Bath bath) {
            holding = Optional.of(holding(i, bath));
            swap = swap(i, bath);
        } else if (step instanceof Step.Unheated unheated) {
            interruption = Optional.of(interruption(i, unheated));
        } else if (step instanceof Step.Sear) {
            sear = Optional.of(sear(i));
        } else if (step instanceof Step.Chill) {
            cooling = Optional.of(cooling(i));
        } else if (step instanceof Step.Store store) {
            cooling = warm(i) ? Optional.of(cooling(i)) : Optional.empty();
            keeping = Optional.of(coldLife.store(store, fitness(i), growthStored(i)));
        } else if (step instanceof Step.Reheat reheat) {
            reheating = Optional.of(reheating(i, reheat));
        }
        return new Outcome(
                step,
                passages.span(p -> p.begins(i)),
                passages.span(p -> p.ends(i)),
                passages.range(p -> p.core().atC(p.ends(i))),
                passages.nominal().history().surface().atC(passages.nominal().ends(i)),
                holding,
                swap,
                interruption,
                sear,
                cooling,
                keeping,
                reheating);
    }

    private FoodGroup group() {
        return task.food().group();
    }

    private List<Growth> growthStored(int i) {
        return Growths.in(passages, p -> p.begins(i), p -> p.ends(i), Occasion.STORE, group(), safety);
    }

    /** Whether the last heating is no chill away: the piece went into the store as it was. */
    private boolean warm(int i) {
        return !(steps.subList(heatedBefore(i) + 1, i).stream()
                .anyMatch(s -> s instanceof Step.Chill || s instanceof Step.Store));
    }

    private static boolean heats(Step step) {
        return step instanceof Step.Bath || step instanceof Step.Sear || step instanceof Step.Reheat;
    }

    /** The last heating before a step; minus one for the first bath. */
    private int heatedBefore(int i) {
        int found = i - 1;
        while (found >= 0 && !heats(steps.get(found))) {
            found--;
        }
        return found;
    }

    /** The next heating after a step; the number of steps when there is none. */
    private int heatedAfter(int i) {
        int found = i + 1;
        while (found < steps.size() && !heats(steps.get(found))) {
            found++;
        }
        return found;
    }

    /** The hottest water up to and with a step [C]. */
    private double hottestSetpointC(int i) {
        double hottestC = trial.setpointC();
        for (Step step : steps.subList(0, i + 1)) {
            if (step instanceof Step.Bath bath) {
                hottestC = Math.max(hottestC, bath.setpointC());
            } else if (step instanceof Step.Reheat reheat) {
                hottestC = Math.max(hottestC, reheat.setpointC());
            }
        }
        return hottestC;
    }

    private Holding holding(int i, Step.Bath bath) {
        PointHistory late = passages.late().coldest();
        double ends = passages.late().ends(i);
        Judgement judgement = safety.judge()
                .judge(
                        terms.requirements(),
                        late,
                        ends,
                        Trial.worstCase(task, terms, terms.error(hottestSetpointC(i))));
        boolean cooledBefore =
                steps.subList(0, i).stream().anyMatch(s -> s instanceof Step.Chill || s instanceof Step.Store);
        WarmUpClock clock =
                cooledBefore ? trial.clock() : WarmUpClock.of(late, ends, ReadingError.NONE, limits.warmUp());
        List<Growth> growth = grownIn(i, bath.setpointC());
        verdict = broken.isEmpty() ? Trial.verdict(judgement, clock) : Verdict.NOT_MET;
        HotHoldingLimit limit = limits.hotHolding();
        return new Holding(
                verdict,
                judgement
                        .governing()
                        .map(Finding::deliveredLog10)
                        .map(OptionalDouble::of)
                        .orElseGet(OptionalDouble::empty),
                passages.range(p -> p.coldest().secondsBelow(limits.warmUp().perfringensToC(), p.begins(i), p.ends(i)))
                        .high(),
                bath.setpointC() < limit.lowestC(),
                limit.lowestC(),
                growth);
    }

    /** What grows in a bath cool enough for it; beyond what is accepted, nothing that follows is certified. */
    private List<Growth> grownIn(int i, double setpointC) {
        if (setpointC >= error.readingFor(limits.warmUp().perfringensToC())) {
            return List.of();
        }
        List<Growth> growth = new Coolings(passages, p -> p.begins(i), p -> p.ends(i), true, group()).growth(safety);
        if (growth.stream()
                .anyMatch(g ->
                        g.hazard() == Hazard.C_PERFRINGENS && g.lagCounted() && g.log10() > ACCEPTED_GROWTH_LOG10)) {
            broken = Optional.of(GROWTH_RANGE);
            spoiled = true;
        }
        return growth;
    }

    private Optional<SwapWater> swap(int i, Step.Bath bath) {
        double beforeC = waterBeforeC(i);
        if (!(bath.setpointC() < beforeC) || bath.setpointC() <= after.tapC()) {
            return Optional.empty();
        }
        // What is swapped, w, leaves at T1: (V - w) T1 + w Ttap = V T2.
        double share = (beforeC - bath.setpointC()) / (beforeC - after.tapC());
        return task.bath().vessel().map(vessel -> new SwapWater(vessel.volume() * share, after.tapC()));
    }

    /** Temperature of the water before a step [C]. */
    private double waterBeforeC(int i) {
        double waterC = trial.setpointC();
        int cut = 0;
        for (Step step : steps.subList(0, i)) {
            if (step instanceof Step.Bath bath) {
                waterC = bath.setpointC();
            } else if (step instanceof Step.Reheat reheat) {
                waterC = reheat.setpointC();
            } else if (step instanceof Step.Unheated) {
                waterC = passages.nominal().cut(cut++).endC();
            }
        }
        return waterC;
    }

    private Interruption interruption(int i, Step.Unheated step) {
        int cut = cuts++;
        double limitC = limits.warmUp().perfringensToC();
        CoolingRule rule = Objects.requireNonNull(safety.cooling().get(after.interruptionRule()));
        Coolings coolings = new Coolings(passages, p -> p.begins(i), p -> p.ends(i), true, group());
        boolean withinRule = coolings.withinLimitsOf(rule);
        boolean mayGoOn = withinRule && passages.all(p -> !falls(p, i, error.readingFor(limitC)));
        if (!mayGoOn) {
            broken = Optional.of(rule.id());
            spoiled = true;
        }
        return new Interruption(
                passages.length(p -> p.cut(cut).duration()),
                step.duration().isEmpty(),
                passages.range(p -> p.cut(cut).endC()),
                limitC,
                passages.length(p -> p.cut(cut).below(limitC)),
                passages.length(p -> p.coldest().secondsBelow(limitC, p.begins(i), p.ends(i))),
                passages.length(p -> p.warmest().secondsBelow(limitC, p.begins(i), p.ends(i))),
                rule.id(),
                withinRule,
                coolings.growth(safety),
                mayGoOn ? Resumption.MAY_GO_ON : Resumption.DISCARD_OR_DECIDE);
    }

    /** Whether any point of the piece that was as warm as a level fell below it in a step. */
    private static boolean falls(Passage p, int i, double levelC) {
        for (int node = 0; node < p.history().nodes(); node++) {
            PointHistory point = p.history().node(node);
            if (point.atC(p.begins(i)) >= levelC && point.secondsBelow(levelC, p.begins(i), p.ends(i)) > 0.0) {
                return true;
            }
        }
        return false;
    }

    private SearEffect sear(int i) {
        int next = heatedAfter(i);
        Passage nominal = passages.nominal();
        SearAdvice advice = new SearAdvice(task, trial, terms, aim, solver, i);
        double setpointC = advice.lastSetpointC();
        double wantedC = Math.min(task.target().coreC().orElse(setpointC), setpointC);
        Range peakC = passages.range(p -> peak(p, i, next).temperatureC());
        boolean overshoots = peakC.nominal() > wantedC + aim.withinK();
        return new SearEffect(
                passages.range(p -> peak(p, i, next).temperatureC() - p.core().atC(p.begins(i))),
                peak(nominal, i, next).at() - nominal.ends(i),
                peakC,
                wantedC,
                passages.range(p -> p.history().depthEverAtOrAbove(after.doneC())),
                after.doneC(),
                overshoots ? advice.chill(wantedC, peakC.nominal()) : Optional.empty(),
                overshoots ? advice.setpoint(wantedC, peakC.nominal()) : OptionalDouble.empty());
    }

    private Passage.Peak peak(Passage p, int sear, int next) {
        double until = next < steps.size() ? p.begins(next) : p.history().end();
        return Passage.peak(p.core(), p.begins(sear), until);
    }

    private Cooling cooling(int i) {
        int before = heatedBefore(i);
        int next = heatedAfter(i);
        boolean again = next < steps.size();
        int last = again ? next - 1 : steps.size() - 1;
        Cooling cooling = new Coolings(
                        passages,
                        p -> before < 0 ? trial.judgedAt() : p.ends(before),
                        p -> p.ends(last),
                        again,
                        group())
                .by(coolingRule, safety);
        if (!cooling.kept() && broken.isEmpty()) {
            broken = Optional.of(coolingRule.id());
        }
        return cooling;
    }

    private ColdLife.Fitness fitness(int i) {
        boolean served = verdict == Verdict.MET || verdict == Verdict.NOT_APPLICABLE;
        Optional<String> unfit = broken.or(
                () -> served ? Optional.empty() : Optional.of(terms.rule().id()));
        return new ColdLife.Fitness(
                unfit, listeriaLog10(0.0, passages.late().begins(i), passages.late()) >= LISTERIA_TARGET_LOG10);
    }

    /** Kill of Listeria at the coldest point between two times of a corner, the reading error taken off. */
    private double listeriaLog10(double from, double until, Passage p) {
        InactivationLine line = Objects.requireNonNull(safety.lines().get(LISTERIA_LINE));
        RateLaw law = error.judged(line.killFrom(LISTERIA_FLOOR_C));
        Dose dose = Dose.of(law, p.coldest());
        return dose.at(until) - dose.at(from);
    }

    private Reheating reheating(int i, Step.Reheat step) {
        double hotC = aim.hotThroughC(step.setpointC());
        List<Growth> growth = grownIn(i, step.setpointC());
        boolean fit = broken.isEmpty() && (verdict == Verdict.MET || verdict == Verdict.NOT_APPLICABLE);
        double killLog10 =
                passages.range(p -> listeriaLog10(p.begins(i), p.ends(i), p)).low();
        List<ReheatCheck> checks = after.reheating().stream()
                .map(rule -> new ReheatCheck(rule, rule.coreC().isEmpty() ? fit : warmed(i, rule)))
                .toList();
        return new Reheating(
                passages.length(p -> hotAfter(p, i, hotC)),
                passages.length(p -> warmUp(p, i)),
                growth,
                checks,
                killLog10,
                killLog10 >= LISTERIA_TARGET_LOG10);
    }

    private double warmUp(Passage p, int i) {
        WarmUpLimits warmUp = limits.warmUp();
        return p.coldest().secondsBelow(warmUp.toC(), p.begins(i), p.ends(i))
                - p.coldest().secondsBelow(warmUp.fromC(), p.begins(i), p.ends(i));
    }

    private boolean warmed(int i, ReheatRule rule) {
        double levelC = error.readingFor(rule.coreC().orElseThrow());
        return passages.all(p -> {
            double at = p.coldest().timeOfSecondsAtOrAbove(levelC, rule.held(), p.begins(i), p.ends(i));
            return at - p.begins(i) <= rule.within().orElse(Double.MAX_VALUE);
        });
    }

    /** How long after its begin a step had warmed the core to a level [s]; infinity when it did not. */
    private static double hotAfter(Passage p, int i, double levelC) {
        double below = p.core().secondsBelow(levelC - Course.LEVEL_K, p.begins(i), p.ends(i));
        return p.core().atC(p.ends(i)) >= levelC - Course.LEVEL_K ? below : Double.POSITIVE_INFINITY;
    }
}
