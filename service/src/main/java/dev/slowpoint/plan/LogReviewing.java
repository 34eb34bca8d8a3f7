package dev.slowpoint.plan;

import dev.slowpoint.food.Mark;
import dev.slowpoint.food.Provenance;
import dev.slowpoint.heat.PointHistory;
import dev.slowpoint.plan.CookPlan.Source;
import dev.slowpoint.plan.LogReview.CriticalLimit;
import dev.slowpoint.plan.LogReview.Deviation;
import dev.slowpoint.plan.LogReview.DeviationCode;
import dev.slowpoint.plan.LogReview.LogVerdict;
import dev.slowpoint.plan.LogReview.What;
import dev.slowpoint.plan.LogTask.Aspect;
import dev.slowpoint.plan.LogTask.SensorPlace;
import dev.slowpoint.plan.Outcome.Growth;
import dev.slowpoint.safety.CoolingRule;
import dev.slowpoint.safety.Finding;
import dev.slowpoint.safety.GrowthLaw;
import dev.slowpoint.safety.GrowthScope;
import dev.slowpoint.safety.Hazard;
import dev.slowpoint.safety.HotHoldingLimit;
import dev.slowpoint.safety.Judgement;
import dev.slowpoint.safety.Judging;
import dev.slowpoint.safety.ReadingError;
import dev.slowpoint.safety.Recording;
import dev.slowpoint.safety.Recording.Unread;
import dev.slowpoint.safety.Requirement;
import dev.slowpoint.safety.Rule;
import dev.slowpoint.safety.SafetyKnowledge;
import dev.slowpoint.safety.TableView;
import dev.slowpoint.safety.WarmUpLimits;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * Judges a log. Everything is looked at twice where readings are missing: once on the safe side, where they earn no kill and
 * their time counts as warm-up, growth and cooling, and once on the other. A limit is met only if the safe side keeps it,
 * not met if even the other breaks it, and undecided between. Between two readings above a level that food may not fall
 * below, it is taken not to have fallen.
 *
 * <p>The error of the instrument is added to every limit (FSIS-GD-2021-14 p. 20), at either end of a range.
 */
final class LogReviewing {

    /** Colder than any growth, kill or range: what an unread stretch is filled with where it must count for nothing. */
    private static final double NOTHING_C = -60.0;

    /** The log holds a cooling if it ends this much below where cooling began [K]; a bath swings less (our choice). */
    private static final double COOLED_K = 5.0;

    /** A cook that never reaches the begin of a cooling rule cools from this far below its highest reading [K] (our choice). */
    private static final double BELOW_HIGHEST_K = 1.0;

    /** So far beyond a level the core has to have been before a fall below it counts: noise is no fall [K] (our choice). */
    private static final double BEYOND_K = 1.0;

    private static final String HOT_HOLDING = "FC-HOLD-HOT";
    private static final String GROWTH_RANGE = "GROWTH-CP";

    /** Of the level that {@link #GROWTH_RANGE} names; the parameter set gives the number, and the limits file this source. */
    private static final Provenance GROWTH_RANGE_ORIGIN = new Provenance(
            Mark.READ_SECONDARY,
            "Upper growth limit of C. perfringens as quoted in practice; FDA fish guide App. 4 Table A-1 gives 52 C");

    /** Deviations listed; more are counted. */
    private static final int LISTED = 50;

    private final LogTask task;
    private final SafetyKnowledge safety;
    private final List<ReheatRule> reheating;
    private final Recording recording;
    private final Seen seen;
    private final ReadingError error;
    private final CoolingRule coolingRule;
    private final Rule rule;
    private final List<Requirement> requirements;
    private final List<CriticalLimit> limits = new ArrayList<>();
    private final List<Deviation> deviations = new ArrayList<>();
    private Optional<Finding> governing = Optional.empty();
    private boolean heatAdaptationPossible;
    private List<Growth> growth = List.of();
    private boolean cookingJudged;
    private boolean coolingJudged;

    /**
     * What is known of the slowest-heating point.
     *
     * @param least as cold as it may have been
     * @param most as warm as it may have been
     * @param errorK how far either may lie from the truth on top of that [K]
     */
    record Seen(Recording least, Recording most, double errorK) {}

    LogReviewing(LogTask task, Knowledge knowledge, Recording recording, Optional<Seen> seen, double errorK) {
        this.task = task;
        this.safety = knowledge.safety();
        this.reheating = knowledge.after().reheating();
        this.recording = recording;
        this.seen = seen.orElse(new Seen(recording, recording, errorK));
        this.error = new ReadingError(this.seen.errorK());
        this.coolingRule = Objects.requireNonNull(
                safety.cooling().get(task.coolingRule().orElse(knowledge.after().coolingRule())));
        this.rule = safety.rules().rule(task.rule().orElse(safety.rules().defaultRule()));
        this.requirements = safety.rules()
                .requirements(
                        rule.id(),
                        task.food().group(),
                        task.form(),
                        task.condition(),
                        task.purpose(),
                        task.eater(),
                        OptionalDouble.of(task.fatPercent()
                                .orElse(100.0 * task.food().composition().fat())));
        unread();
        boolean core = task.sensor().place() == SensorPlace.CORE;
        boolean known = core || seen.isPresent();
        double cooked = cookingEnds();
        if (known && asks(Aspect.COOKING)) {
            cooking(cooked);
        } else if (task.sensor().place() == SensorPlace.SURFACE && task.form().intact() && asks(Aspect.COOKING)) {
            // The clock of an intact piece may be read at its surface, its endpoint never (FSIS-GD-2021-14 p. 24).
            warmUp(cooked);
        }
        if (core) {
            hotHolding();
            cooling();
            if (task.aspects().contains(Aspect.REHEATING)) {
                reheating();
            }
        }
    }

    /** Whether part of a log is to be judged: it is asked for, or nothing is. */
    private boolean asks(Aspect aspect) {
        return task.aspects().isEmpty() || task.aspects().contains(aspect);
    }

    private void unread() {
        for (Unread u : recording.unread()) {
            DeviationCode code = switch (u.cause()) {
                case GAP -> DeviationCode.GAP;
                case NO_READING -> DeviationCode.NO_READING;
                case FAULT_VALUE -> DeviationCode.FAULT_VALUE;
                case JUMP -> DeviationCode.JUMP;
                case STUCK -> DeviationCode.STUCK;
            };
            Object value = code == DeviationCode.GAP ? (Object) Math.ceil(u.seconds()) : (Object) u.excluded();
            deviations.add(new Deviation(u.fromS(), u.untilS(), code, List.of(value)));
        }
    }

    private boolean decides() {
        return requirements.stream().anyMatch(r -> !r.advisory());
    }

    // ---- cooking ----

    private void cooking(double cooked) {
        if (requirements.isEmpty()) {
            return;
        }
        cookingJudged = true;
        double end = seen.least().lastS();
        for (Requirement requirement : requirements) {
            Judgement least = judge(requirement, leastFor(requirement.hazard()), end);
            Finding finding = least.findings().get(0);
            Finding most = finding.met() || complete()
                    ? finding
                    : judge(requirement, seen.most().filled(u -> seen.most().highestC()), end)
                            .findings()
                            .get(0);
            heatAdaptationPossible |= least.heatAdaptationPossible();
            if (!requirement.advisory()
                    && governing
                            .filter(g -> g.marginLog10() <= finding.marginLog10())
                            .isEmpty()) {
                governing = Optional.of(finding);
            }
            lethality(finding, most, end);
        }
        if (decides()) {
            warmUp(cooked);
            fallenBack();
        }
    }

    private boolean complete() {
        return recording.unread().isEmpty() && seen.least() == seen.most();
    }

    private Judgement judge(Requirement requirement, PointHistory history, double at) {
        return safety.judge().judge(List.of(requirement), history, at, Judging.worstCase(error));
    }

    /** The history that kills least and grows most: unread stretches kill nothing, and grow if they may. */
    private PointHistory leastFor(Hazard hazard) {
        double growsC = fastestGrowthC(hazard);
        double fromC = safety.warmUp().growthFromC() - error.errorK();
        double toC = error.readingFor(safety.warmUp().growthToC());
        return seen.least().filled(u -> u.mayLieBetween(fromC, toC) ? growsC : NOTHING_C);
    }

    /** Where a hazard grows fastest on the way up [C]; where nothing is known of its growth, where it counts for nothing. */
    private double fastestGrowthC(Hazard hazard) {
        GrowthLaw law = safety.warmUpGrowth().laws().get(hazard);
        double best = NOTHING_C;
        double most = 0.0;
        for (double t = safety.warmUp().growthFromC();
                law != null && t < safety.warmUp().growthToC();
                t += 0.5) {
            double rate = law.perSecond(t);
            if (rate > most) {
                most = rate;
                best = t;
            }
        }
        return best;
    }

    private void lethality(Finding least, Finding most, double end) {
        Requirement asked = least.requirement();
        double required = asked.target() + least.growthLog10();
        LogVerdict met = status(least.marginLog10() >= 0.0, most.marginLog10() >= 0.0);
        limits.add(new CriticalLimit(
                asked.id(),
                What.LETHALITY,
                Optional.of(asked.hazard()),
                OptionalDouble.of(error.readingFor(asked.floorC())),
                OptionalDouble.empty(),
                required,
                least.deliveredLog10(),
                met,
                asked.advisory(),
                asked.provenance()));
        if (met == LogVerdict.NOT_MET && !asked.advisory()) {
            add(
                    recording.firstS(),
                    recording.lastS(),
                    DeviationCode.LETHALITY_NOT_REACHED,
                    Figures.log10Down(least.deliveredLog10()),
                    Figures.log10(required),
                    asked.hazard().name());
        }
        least.table().ifPresent(table -> {
            TableView best = most.table().orElseThrow();
            limits.add(new CriticalLimit(
                    table.table(),
                    What.TABLE_TIME,
                    Optional.of(asked.hazard()),
                    OptionalDouble.of(error.readingFor(table.rowC())),
                    OptionalDouble.empty(),
                    table.requiredS(),
                    table.dwellS(),
                    status(table.metAt() <= end, best.metAt() <= end),
                    asked.advisory(),
                    asked.table().orElseThrow().provenance()));
        });
    }

    private static LogVerdict status(boolean least, boolean most) {
        return least ? LogVerdict.MET : most ? LogVerdict.UNDECIDED : LogVerdict.NOT_MET;
    }

    /** When the core was last as warm as the top of the warm-up range; what follows is a matter of cooling. */
    private double cookingEnds() {
        return lastAtOrAbove(seen.least(), error.readingFor(safety.warmUp().toC()))
                .orElse(seen.least().lastS());
    }

    private static OptionalDouble lastAtOrAbove(Recording log, double levelC) {
        for (int i = log.used() - 1; i >= 0; i--) {
            if (log.temperatureC(i) >= levelC) {
                return OptionalDouble.of(log.timeS(i));
            }
        }
        return OptionalDouble.empty();
    }

    private void warmUp(double until) {
        WarmUpLimits warmUp = safety.warmUp();
        double fromC = warmUp.fromC() - error.errorK();
        double toC = error.readingFor(warmUp.toC());
        InRange inRange = InRange.of(seen.least(), fromC, toC, seen.least().firstS(), until);
        double fewest = seen.least() == seen.most()
                ? inRange.readS()
                : InRange.of(
                                seen.most(),
                                warmUp.fromC() + error.errorK(),
                                warmUp.toC() - error.errorK(),
                                seen.most().firstS(),
                                until)
                        .readS();
        LogVerdict met = status(inRange.mostS() <= warmUp.longestS(), fewest <= warmUp.longestS());
        limits.add(new CriticalLimit(
                "A-CUT-6H",
                What.WARM_UP,
                Optional.empty(),
                OptionalDouble.of(fromC),
                OptionalDouble.of(toC),
                warmUp.longestS(),
                inRange.countedS(),
                met,
                false,
                warmUp.provenance()));
        if (met == LogVerdict.NOT_MET) {
            add(
                    inRange.fromS(),
                    inRange.untilS(),
                    DeviationCode.WARM_UP_TOO_SLOW,
                    Figures.hours(inRange.countedS()),
                    Figures.hours(warmUp.longestS()));
        }
    }

    /** Once out of the growth range of spore formers the core may not fall back into it before it is cooled. */
    private void fallenBack() {
        double levelC = error.readingFor(safety.warmUp().perfringensToC());
        OptionalDouble last = lastAtOrAbove(seen.least(), levelC + BEYOND_K);
        if (last.isEmpty()) {
            return;
        }
        double first = firstAtOrAbove(seen.least(), levelC + BEYOND_K);
        InRange below = InRange.of(seen.least(), NOTHING_C, levelC, first, last.getAsDouble());
        // Whether growth happened is for a person to decide, who knows the food; the log alone shows no failure.
        LogVerdict met = below.countedS() > 0.0 ? LogVerdict.UNDECIDED : LogVerdict.MET;
        limits.add(new CriticalLimit(
                GROWTH_RANGE,
                What.FALLEN_BACK,
                Optional.of(Hazard.C_PERFRINGENS),
                OptionalDouble.empty(),
                OptionalDouble.of(levelC),
                0.0,
                below.countedS(),
                met,
                false,
                GROWTH_RANGE_ORIGIN));
        if (met != LogVerdict.MET) {
            add(
                    below.fromS(),
                    below.untilS(),
                    DeviationCode.FELL_BACK,
                    Figures.temperature(below.lowestC()),
                    Figures.temperature(levelC));
        }
    }

    private static double firstAtOrAbove(Recording log, double levelC) {
        int i = 0;
        while (log.temperatureC(i) < levelC) {
            i++;
        }
        return log.timeS(i);
    }

    // ---- hot holding ----

    /** Asked for, it decides; where the food only happened to pass the limit before it was cooled, it is told. */
    private void hotHolding() {
        boolean asked = task.aspects().contains(Aspect.HOT_HOLDING);
        if (!asks(Aspect.HOT_HOLDING)) {
            return;
        }
        HotHoldingLimit limit = Objects.requireNonNull(safety.hotHolding().get(HOT_HOLDING));
        double levelC = error.readingFor(limit.lowestC());
        OptionalDouble last = lastAtOrAbove(recording, levelC + BEYOND_K);
        if (last.isEmpty() && !asked) {
            return;
        }
        double from = last.isEmpty() ? recording.firstS() : firstAtOrAbove(recording, levelC + BEYOND_K);
        double until = last.isEmpty() ? recording.lastS() : last.getAsDouble();
        InRange below = InRange.of(recording, NOTHING_C, levelC, from, until);
        double lowestC = below.countedS() > 0.0 ? below.lowestC() : lowestBetween(from, until);
        LogVerdict met = below.countedS() == 0.0
                ? LogVerdict.MET
                : lowestC + error.errorK() < limit.lowestC() ? LogVerdict.NOT_MET : LogVerdict.UNDECIDED;
        limits.add(new CriticalLimit(
                limit.id(),
                What.HOT_HOLDING,
                Optional.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                levelC,
                lowestC,
                met,
                !asked,
                limit.provenance()));
        if (met != LogVerdict.MET) {
            add(
                    below.fromS(),
                    below.untilS(),
                    DeviationCode.HOT_HOLDING_DROP,
                    Figures.temperature(lowestC),
                    Figures.temperature(levelC));
        }
    }

    private double lowestBetween(double from, double until) {
        double lowest = Double.POSITIVE_INFINITY;
        for (int i = 0; i < recording.used(); i++) {
            if (recording.timeS(i) >= from && recording.timeS(i) <= until) {
                lowest = Math.min(lowest, recording.temperatureC(i));
            }
        }
        return lowest;
    }

    // ---- cooling ----

    private void cooling() {
        if (!asks(Aspect.COOLING)) {
            return;
        }
        double topC = coolingRule.stages().stream()
                .mapToDouble(CoolingRule.Stage::fromC)
                .max()
                .orElseThrow();
        double beginsC = Math.min(error.readingFor(topC), recording.highestC() - BELOW_HIGHEST_K);
        double begins = lastAtOrAbove(recording, beginsC).orElseThrow();
        double endC = recording.temperatureC(recording.used() - 1);
        if (endC > beginsC - COOLED_K && !task.aspects().contains(Aspect.COOLING)) {
            return;
        }
        coolingJudged = true;
        // What came before the log is not known: the begin is seen only if the core was seen above the top of the rule,
        // or
        // was seen to warm up.
        boolean beginSeen =
                recording.highestC() >= error.readingFor(topC) || recording.temperatureC(0) < beginsC - COOLED_K;
        if (!beginSeen) {
            add(
                    recording.firstS(),
                    recording.firstS(),
                    DeviationCode.COOLING_BEGAN_EARLIER,
                    Figures.temperature(recording.temperatureC(0)),
                    topC);
        }
        PointHistory late = recording.filled(LogReviewing::warmerEnd);
        PointHistory soon = recording.filled(LogReviewing::colderEnd);
        for (CoolingRule.Stage stage : coolingRule.stages()) {
            stage(stage, begins, beginSeen, late, soon);
        }
        growth = growth(begins);
    }

    private static double warmerEnd(Unread u) {
        return Math.max(
                u.beforeC().orElse(Double.NEGATIVE_INFINITY),
                u.afterC().orElse(u.beforeC().orElse(0.0)));
    }

    private static double colderEnd(Unread u) {
        return u.afterC().isEmpty()
                ? NOTHING_C
                : Math.min(u.beforeC().orElse(NOTHING_C), u.afterC().getAsDouble());
    }

    private void stage(
            CoolingRule.Stage stage, double begins, boolean beginSeen, PointHistory late, PointHistory soon) {
        double fromC = error.readingFor(stage.fromC());
        double toC = stage.toC() - error.errorK();
        double end = recording.lastS();
        double clockStarts = CoolingRule.fallenTo(soon, begins, fromC);
        double clockStops = CoolingRule.fallenTo(late, begins, toC);
        boolean reached = clockStops <= end;
        double longest = (reached ? clockStops : end) - Math.min(clockStarts, end);
        double shortest = Math.min(CoolingRule.fallenTo(soon, begins, toC), end)
                - Math.min(CoolingRule.fallenTo(late, begins, fromC), end);
        LogVerdict met = shortest > stage.longestS()
                ? LogVerdict.NOT_MET
                : reached && beginSeen && longest <= stage.longestS() ? LogVerdict.MET : LogVerdict.UNDECIDED;
        limits.add(new CriticalLimit(
                stage.id(),
                What.COOLING,
                Optional.empty(),
                OptionalDouble.of(fromC),
                OptionalDouble.of(toC),
                stage.longestS(),
                longest,
                met,
                false,
                stage.provenance()));
        if (met == LogVerdict.NOT_MET) {
            add(
                    Math.min(clockStarts, end),
                    Math.min(clockStops, end),
                    DeviationCode.COOLING_TOO_SLOW,
                    Figures.temperature(fromC),
                    Figures.temperature(toC),
                    Figures.hours(longest),
                    Figures.hours(stage.longestS()));
        } else if (!reached) {
            add(Math.min(clockStarts, end), end, DeviationCode.COOLING_NOT_FINISHED, Figures.temperature(toC));
        }
    }

    /** Growth by every model that is told of cooling, at the fastest wherever nothing was read; none where untested. */
    private List<Growth> growth(double begins) {
        List<Growth> found = new ArrayList<>();
        for (GrowthLaw law : safety.growth().values()) {
            GrowthScope scope = law.subject().scope();
            if (!scope.toldOf(GrowthScope.Occasion.COOLING, task.food().group())) {
                continue;
            }
            double fastestC = safety.warmUp().growthFromC();
            for (double t = fastestC; t < safety.warmUp().growthToC(); t += 0.5) {
                fastestC = law.perSecond(t) > law.perSecond(fastestC) ? t : fastestC;
            }
            double level = fastestC;
            PointHistory worst = recording.filled(u -> level);
            double ends = recording.lastS();
            double untested = scope.untestedS(worst, begins, ends);
            if (untested > 0.0 && untested >= scope.growingS(worst, begins, ends)) {
                continue;
            }
            double log10 = law.grownLog10(worst, begins, ends, law.subject().lagH0());
            found.add(new Growth(
                    law.subject().hazard(),
                    law.subject().id(),
                    log10,
                    law.subject().lagH0() > 0.0,
                    log10,
                    true,
                    untested,
                    scope.testedFromC(),
                    scope.testedToC()));
        }
        return found;
    }

    // ---- reheating ----

    private void reheating() {
        ReheatRule asked = reheating.stream()
                .filter(r -> r.use() == ReheatRule.Use.HOT_HOLDING && r.coreC().isPresent())
                .findFirst()
                .orElseThrow();
        double levelC = error.readingFor(asked.coreC().getAsDouble());
        double within = asked.within().orElseThrow();
        double from = recording.firstS();
        double end = recording.lastS();
        double least = recording.filled(u -> NOTHING_C).timeOfSecondsAtOrAbove(levelC, asked.held(), from, end);
        double most =
                recording.filled(u -> recording.highestC()).timeOfSecondsAtOrAbove(levelC, asked.held(), from, end);
        LogVerdict met = status(least - from <= within, most - from <= within);
        limits.add(new CriticalLimit(
                asked.id(),
                What.REHEATING,
                Optional.empty(),
                OptionalDouble.empty(),
                OptionalDouble.of(levelC),
                within,
                Math.min(least, end) - from,
                met,
                false,
                asked.provenance()));
        if (met != LogVerdict.MET) {
            add(
                    from,
                    Math.min(least, end),
                    DeviationCode.REHEATING_TOO_SLOW,
                    Figures.temperature(levelC),
                    Figures.hours(within));
        }
    }

    private void add(double fromS, double untilS, DeviationCode code, Object... values) {
        deviations.add(new Deviation(fromS, untilS, code, List.of(values)));
    }

    // ---- the answer ----

    LogVerdict verdict() {
        List<LogVerdict> deciding = limits.stream()
                .filter(l -> !l.advisory())
                .map(CriticalLimit::met)
                .toList();
        if (deciding.contains(LogVerdict.NOT_MET)) {
            return LogVerdict.NOT_MET;
        }
        boolean endpoint = cookingJudged || task.sensor().place() != SensorPlace.SURFACE;
        if (deciding.isEmpty() || !endpoint) {
            return LogVerdict.NOT_APPLICABLE;
        }
        return deciding.contains(LogVerdict.UNDECIDED) ? LogVerdict.UNDECIDED : LogVerdict.MET;
    }

    List<CriticalLimit> limits() {
        return limits;
    }

    List<Deviation> deviations() {
        return deviations.stream()
                .sorted(Comparator.comparingDouble(Deviation::fromS))
                .limit(LISTED)
                .toList();
    }

    int deviationCount() {
        return deviations.size();
    }

    Optional<Rule> rule() {
        return cookingJudged ? Optional.of(rule) : Optional.empty();
    }

    Optional<CoolingRule> coolingRule() {
        return coolingJudged ? Optional.of(coolingRule) : Optional.empty();
    }

    /** The deciding requirement with the least margin, where one was judged. */
    Optional<Finding> governing() {
        return governing;
    }

    boolean heatAdaptationPossible() {
        return heatAdaptationPossible;
    }

    List<Growth> growth() {
        return growth;
    }

    List<Source> sources() {
        List<Source> sources = new ArrayList<>();
        rule().ifPresent(r -> sources.add(new Source("rule " + r.id(), r.provenance())));
        Set<String> named = new HashSet<>();
        for (CriticalLimit limit : limits) {
            if (named.add(limit.id())) {
                sources.add(new Source("limit " + limit.id(), limit.provenance()));
            }
        }
        return sources;
    }

    /**
     * Time in a range.
     *
     * @param readS read to be in it [s]
     * @param countedS with every unread stretch whose ends do not show that it was outside [s]
     * @param mostS with every unread stretch [s]
     * @param fromS when it first counts [s]
     * @param untilS when it last counts [s]
     * @param lowestC lowest reading in it [C]
     */
    private record InRange(double readS, double countedS, double mostS, double fromS, double untilS, double lowestC) {

        static InRange of(Recording log, double lowC, double highC, double from, double until) {
            PointHistory read = log.filled(u -> NOTHING_C - 1.0);
            double readS = read.secondsAtOrAbove(lowC, from, until) - read.secondsAtOrAbove(highC, from, until);
            double counted = readS;
            double most = readS;
            double first = Double.POSITIVE_INFINITY;
            double last = Double.NEGATIVE_INFINITY;
            for (Unread u : log.unread()) {
                double seconds = Math.min(u.untilS(), until) - Math.max(u.fromS(), from);
                if (seconds > 0.0) {
                    most += seconds;
                    if (u.mayLieBetween(lowC, highC)) {
                        counted += seconds;
                        first = Math.min(first, Math.max(u.fromS(), from));
                        last = Math.max(last, Math.min(u.untilS(), until));
                    }
                }
            }
            double lowest = Double.POSITIVE_INFINITY;
            for (int i = 0; i < log.used(); i++) {
                double at = log.timeS(i);
                if (at >= from && at <= until && log.temperatureC(i) >= lowC && log.temperatureC(i) < highC) {
                    first = Math.min(first, at);
                    last = Math.max(last, at);
                    lowest = Math.min(lowest, log.temperatureC(i));
                }
            }
            return new InRange(readS, counted, most, first, last, lowest);
        }
    }
}
