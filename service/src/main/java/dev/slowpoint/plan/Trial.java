package dev.slowpoint.plan;

import dev.slowpoint.heat.PointHistory;
import dev.slowpoint.heat.TemperatureHistory;
import dev.slowpoint.plan.CookPlan.Obstacle;
import dev.slowpoint.plan.CookPlan.TakeOut;
import dev.slowpoint.plan.CookPlan.Times;
import dev.slowpoint.safety.Judgement;
import dev.slowpoint.safety.Judging;
import dev.slowpoint.safety.ReadingError;
import dev.slowpoint.safety.Requirement;
import dev.slowpoint.safety.SafetyJudge;
import dev.slowpoint.safety.StartRange;
import dev.slowpoint.safety.Verdict;
import dev.slowpoint.safety.WarmUpClock;
import dev.slowpoint.safety.WarmUpLimits;
import dev.slowpoint.texture.TextureReading;
import java.util.List;
import java.util.Optional;

/**
 * One task tried in one bath: its three corners run, judged and read.
 *
 * @param setpointC of the bath [C]
 * @param lateSetting the slow corner, from which margins are searched
 * @param nominal history of the nominal corner
 * @param early history of the fast corner
 * @param late history of the slow corner
 * @param requirements of the rule
 * @param reading texture of the nominal corner, if modelled
 * @param times milestones
 * @param warmUpUsedUp when the slow corner has been in the warm-up range for as long as it may [s]; infinity where it
 *     leaves it in time
 * @param takeOut when to take it out
 * @param exposed when the slow corner has been in the warm-up range for as long as it may [s]; infinity if never
 * @param judgedAt the time judged [s]
 * @param worst judgement of the slow corner at that time, the reading error taken off
 * @param central judgement of the nominal corner at that time, for information
 * @param clock of the warm-up in the slow corner
 * @param verdict the judgement, and the warm-up within its limit
 */
record Trial(
        double setpointC,
        Setting lateSetting,
        TemperatureHistory nominal,
        TemperatureHistory early,
        TemperatureHistory late,
        List<Requirement> requirements,
        Optional<TextureReading> reading,
        Times times,
        double warmUpUsedUp,
        TakeOut takeOut,
        double exposed,
        double judgedAt,
        Judgement worst,
        Judgement central,
        WarmUpClock clock,
        Verdict verdict) {

    /**
     * How far below its floor a nominal estimate starts to count [K]: the usual reading error (our own choice). A bath set
     * exactly to the lowest row of a table approaches it for ever. For information only: the judged margin counts nothing
     * below the floor.
     */
    static final double FLOOR_ALLOWANCE_K = 0.5;

    /** Half the last digit of a table's lowest row as printed in Celsius: a bath set to that row counts as reaching it. */
    private static final double PRINTED_K = 0.05;

    /** The best moment keeps a tenth of the safe time in hand, so that nobody works on the edge (our own choice). */
    private static final double RESERVE = 1.1;

    /**
     * What a cook under way adds to a trial.
     *
     * @param now no earlier time is judged [s]: what has passed cannot be chosen
     * @param sporesGrow until when spores that the heat woke stay within what is accepted if the piece stays in [s]; infinity
     *     if for good
     * @param told when to take out the piece as told, which readings do not bring forward; empty without readings, and where
     *     there is no such time
     */
    record UnderWay(double now, double sporesGrow, Optional<TakeOut> told) {}

    /** Tries a task in a bath of {@code setpointC}. */
    static Trial of(CookTask task, double setpointC, Terms terms, SolverRuns solver) {
        Knowledge knowledge = terms.knowledge();
        double horizon = knowledge.defaults().horizon();
        Setting lateSetting = Setting.of(task, setpointC, Corner.LATE, knowledge, terms.materials());
        terms.watch().begins(PlanPhase.SOLVE);
        TemperatureHistory nominal =
                solver.until(horizon, Setting.of(task, setpointC, Corner.NOMINAL, knowledge, terms.materials()));
        TemperatureHistory early =
                solver.until(horizon, Setting.of(task, setpointC, Corner.EARLY, knowledge, terms.materials()));
        TemperatureHistory late = solver.until(horizon, lateSetting);
        terms.watch().ends(PlanPhase.SOLVE);
        return of(task, setpointC, terms, lateSetting, nominal, early, late, 0.0);
    }

    /**
     * The same of corners that were run already.
     *
     * @param notBefore no earlier time is judged [s]: what has passed cannot be chosen
     */
    static Trial of(
            CookTask task,
            double setpointC,
            Terms terms,
            Setting lateSetting,
            TemperatureHistory nominal,
            TemperatureHistory early,
            TemperatureHistory late,
            double notBefore) {
        return of(
                task,
                setpointC,
                terms,
                lateSetting,
                nominal,
                early,
                late,
                new UnderWay(notBefore, Double.POSITIVE_INFINITY, Optional.empty()));
    }

    /** The same of a cook under way. */
    static Trial of(
            CookTask task,
            double setpointC,
            Terms terms,
            Setting lateSetting,
            TemperatureHistory nominal,
            TemperatureHistory early,
            TemperatureHistory late,
            UnderWay underWay) {
        Knowledge knowledge = terms.knowledge();
        double targetC = task.target().coreC().orElse(setpointC);
        double withinK = task.target().withinK().orElse(knowledge.defaults().withinK());
        double bathK = task.tolerances().bathK().orElse(knowledge.defaults().bathK());
        terms.watch().begins(PlanPhase.TEXTURE);
        Optional<Readings> readings = Readings.of(terms.softening(), nominal, early, late, setpointC, targetC, bathK);
        terms.watch().ends(PlanPhase.TEXTURE);

        terms.watch().begins(PlanPhase.SAFETY);
        double horizon = late.end();
        PointHistory nominalCore = nominal.slowest();
        PointHistory earlyCore = early.slowest();
        PointHistory lateCore = late.slowest();

        List<Requirement> requirements = terms.requirements();
        WarmUpLimits warmUp = terms.limits().warmUp();
        SafetyJudge judge = knowledge.safety().judge();
        Judging worstCase = worstCase(task, terms, terms.error(setpointC));
        Judging centralCase = Judging.nominal(FLOOR_ALLOWANCE_K);
        boolean asked = requirements.stream().anyMatch(r -> !r.advisory());
        Optional<Span> safe = asked
                ? Optional.of(new Span(
                        killReached(judge.judge(requirements, nominalCore, horizon, centralCase), nominalCore),
                        killReached(judge.judge(requirements, earlyCore, horizon, centralCase), earlyCore),
                        judge.judge(requirements, lateCore, horizon, worstCase).safeAt()))
                : Optional.empty();

        double hotC = targetC - withinK;
        Span hotThrough = new Span(
                nominalCore.firstAtOrAbove(hotC),
                earlyCore.firstAtOrAbove(hotC),
                together(
                        nominalCore.firstAtOrAbove(hotC),
                        lateCore.firstAtOrAbove(hotC),
                        nominalCore.firstAtOrAbove(hotC + bathK)));
        Times times = new Times(
                hotThrough,
                safe,
                readings.map(r -> r.span(w -> w.window().opens())),
                readings.filter(Readings::closeModelled)
                        .map(r -> r.range(w -> w.window().closes())),
                readings.map(r -> r.range(w -> w.window().softFrom())).filter(s -> Double.isFinite(s.nominal())));

        boolean surfaceServes =
                asked && requirements.stream().filter(r -> !r.advisory()).allMatch(Requirement::surfaceOnlyAllowed);
        double warm = lateCore.firstAtOrAbove(warmUp.toC());
        boolean tooSlow = Double.isFinite(warm)
                && WarmUpClock.of(lateCore, warm, ReadingError.NONE, warmUp).pace() == WarmUpClock.Pace.TOO_SLOW;
        // A bath that never leaves the warm-up range, or falls back into it, uses up its limit for as long as the food
        // stays.
        double limit = Double.isFinite(warm)
                ? warmUpUsedUp(lateCore, horizon, warmUp)
                : lateCore.firstAtOrAbove(warmUp.fromC()) + warmUp.longestS();
        TakeOut takeOut = takeOut(times, surfaceServes, tooSlow, limit, underWay);
        double judgedAt =
                Math.max(underWay.now(), task.target().serveAfter().orElse(momentToJudge(times, takeOut, horizon)));
        Judgement worst = judge.judge(requirements, lateCore, judgedAt, worstCase);
        WarmUpClock clock = WarmUpClock.of(lateCore, judgedAt, ReadingError.NONE, warmUp);
        Judgement central = judge.judge(requirements, nominalCore, judgedAt, centralCase);
        terms.watch().ends(PlanPhase.SAFETY);
        return new Trial(
                setpointC,
                lateSetting,
                nominal,
                early,
                late,
                requirements,
                readings.map(Readings::nominal),
                times,
                limit,
                takeOut,
                limit,
                judgedAt,
                worst,
                central,
                clock,
                verdict(worst, clock));
    }

    /** The terms of the worst case: reading error and bath off the temperature, growth from the warmest start. */
    static Judging worstCase(CookTask task, Terms terms, ReadingError error) {
        double statedC = task.start().coreC();
        double startK =
                task.tolerances().startK().orElse(terms.knowledge().defaults().startK());
        return Judging.worstCase(error).startingIn(new StartRange(statedC, statedC + startK));
    }

    /** When a piece has been in the warm-up range for as long as it may; infinity where it is not by a time [s]. */
    private static double warmUpUsedUp(PointHistory core, double until, WarmUpLimits limits) {
        if (core.secondsBetween(limits.fromC(), limits.toC(), until) <= limits.longestS()) {
            return Double.POSITIVE_INFINITY;
        }
        double low = 0.0;
        double high = until;
        while (high - low > 1e-3) {
            double middle = 0.5 * (low + high);
            if (core.secondsBetween(limits.fromC(), limits.toC(), middle) <= limits.longestS()) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    /** The judgement, unless the warm-up broke its limit: then no kill makes it good. */
    static Verdict verdict(Judgement worst, WarmUpClock clock) {
        return clock.pace() == WarmUpClock.Pace.TOO_SLOW && worst.verdict() != Verdict.NOT_APPLICABLE
                ? Verdict.NOT_MET
                : worst.verdict();
    }

    /**
     * When the kill asked for is there by the integral alone, come-up counted; the table's own view is left to the worst case.
     * Never, where the core stays below the floor of a requirement.
     */
    private static double killReached(Judgement judgement, PointHistory core) {
        double hottestC = core.highestC() + PRINTED_K;
        return judgement.findings().stream()
                .filter(f -> !f.requirement().advisory())
                .mapToDouble(f -> hottestC < f.requirement().floorC() ? Double.POSITIVE_INFINITY : f.integratedAt())
                .max()
                .orElse(0.0);
    }

    /**
     * Safe counts on its late side and the texture's close on its early side; hot through and tender are matters of
     * quality, so their nominal time opens and their late time is the best one if the window allows. Where a sear makes
     * the outside safe and the rule is never met in this bath, the inside is not waited for.
     */
    private static TakeOut takeOut(
            Times times, boolean surfaceServes, boolean tooSlow, double limit, UnderWay underWay) {
        double opens = times.tender().map(Span::nominal).orElse(0.0);
        double texture = times.goodUntil().map(Span::early).orElse(Double.POSITIVE_INFINITY);
        // Readings may mean a piece past its best by the time that the piece as told is safe: safety comes first.
        double fades = Math.min(
                limit, Math.max(texture, underWay.told().map(TakeOut::latest).orElse(0.0)));
        double closes = Math.min(fades, underWay.sporesGrow());
        boolean sporesFirst = underWay.sporesGrow() < fades;
        double ready = Math.max(times.hotThrough().nominal(), opens);
        double safe = times.safe().map(Span::late).orElse(0.0);
        if (tooSlow) {
            return TakeOut.none(Obstacle.WARM_UP_TOO_SLOW);
        }
        if (Double.isInfinite(safe) && !surfaceServes) {
            return TakeOut.none(Obstacle.RULE_NEVER_MET);
        }
        if (Double.isInfinite(times.hotThrough().nominal())) {
            return TakeOut.none(Obstacle.NEVER_HOT_THROUGH);
        }
        if (Double.isInfinite(opens)) {
            return TakeOut.none(Obstacle.NEVER_TENDER);
        }
        if (ready > closes) {
            return TakeOut.none(sporesFirst ? Obstacle.SPORES_GROW_FIRST : Obstacle.TEXTURE_CLOSES_FIRST);
        }
        if (surfaceServes && safe > closes) {
            safe = 0.0;
        }
        double earliest = Math.max(ready, safe);
        if (earliest > closes) {
            return TakeOut.none(sporesFirst ? Obstacle.SPORES_GROW_FIRST : Obstacle.SAFE_AFTER_TEXTURE);
        }
        double reserved = Math.max(earliest, RESERVE * safe);
        double robust = Math.max(
                Math.max(reserved, readyLate(times)),
                underWay.told().map(TakeOut::best).orElse(0.0));
        return new TakeOut(earliest, Math.min(robust, closes), closes, Optional.empty());
    }

    private static double momentToJudge(Times times, TakeOut takeOut, double horizon) {
        if (takeOut.obstacle().isEmpty()) {
            return takeOut.best();
        }
        double safe = times.safe().map(Span::late).orElse(Double.POSITIVE_INFINITY);
        if (Double.isFinite(safe)) {
            return safe;
        }
        double ready = readyLate(times);
        return Double.isFinite(ready) ? ready : horizon;
    }

    /**
     * A time that two independent causes make late, each alone by so much: delays add as the root of their squares (JCGM
     * 100:2008 5.1.2, from memory). A bath colder by its tolerance may delay more than all else, or never get there.
     */
    private static double together(double nominal, double oneLate, double otherLate) {
        if (Double.isInfinite(oneLate) || Double.isInfinite(otherLate)) {
            return Double.POSITIVE_INFINITY;
        }
        double one = oneLate - nominal;
        double other = otherLate - nominal;
        return nominal + Math.sqrt(one * one + other * other);
    }

    /** Hot through and tender on the late side. What then never comes is not waited for: its nominal time stands. */
    private static double readyLate(Times times) {
        return Math.max(
                awaited(times.hotThrough()), times.tender().map(Trial::awaited).orElse(0.0));
    }

    private static double awaited(Span span) {
        return Double.isFinite(span.late()) ? span.late() : span.nominal();
    }
}
