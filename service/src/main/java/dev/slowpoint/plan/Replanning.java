package dev.slowpoint.plan;

import dev.slowpoint.heat.Brick;
import dev.slowpoint.heat.PointHistory;
import dev.slowpoint.heat.Slab;
import dev.slowpoint.heat.TemperatureHistory;
import dev.slowpoint.plan.CoreFit.Explanation;
import dev.slowpoint.plan.Replan.Decision;
import dev.slowpoint.plan.Replan.Pinned;
import dev.slowpoint.plan.Replan.Reason;
import dev.slowpoint.plan.SoFar.CoreReading;
import dev.slowpoint.safety.CoolingRule;
import dev.slowpoint.safety.Judging;
import dev.slowpoint.safety.ReadingError;
import dev.slowpoint.safety.SafetyKnowledge;
import dev.slowpoint.safety.WarmUpClock;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/** Answers a question about a cook under way: three corners through all that happened and on, judged as one history. */
final class Replanning {

    /** The thinnest and the thickest piece that may be asked for [m]. */
    private static final double THINNEST = 0.003;

    private static final double THICKEST = 0.25;

    /** How far beyond now a plan looks at least [s]. */
    private static final double AHEAD = 48 * 3600.0;

    /** A spread of the safe time that counts as well, and as fairly pinned, as a share of it (our own bands). */
    private static final double WELL = 0.1;

    private static final double FAIRLY = 0.25;

    /** How closely the moment is found from which growth is no longer accepted [s]; the earlier side of it counts. */
    private static final double CLOSE_S = 10.0;

    /** How far below the setpoint the slower of two cores is told where the rule tells none [K] (our own choice). */
    private static final double NEARLY_HOT_K = 1.0;

    /** A reading that is met this closely is explained [K]. */
    private static final double EXPLAINED_K = 0.05;

    private final CookTask cook;
    private final SoFar soFar;
    private final Terms terms;
    private final Knowledge knowledge;
    private final SolverRuns solver;
    private final double horizon;
    private final Map<Corner, CookSoFar> courses = new EnumMap<>(Corner.class);
    private final Map<Corner, Setting> settings = new EnumMap<>(Corner.class);
    private final Optional<Replan.Fit> fit;
    private final double readingMissK;
    private final List<TemperatureHistory> possible;
    private final double sporesGrow;
    private final Trial trial;

    /** Follows a task that was admitted. */
    Replanning(ReplanTask task, Terms terms, SolverRuns solver) {
        this.soFar = task.soFar();
        this.cook = task.soFar().across().isPresent()
                ? task.cook().with(task.cook().body().withAcross(soFar.across().getAsDouble()))
                : task.cook();
        this.terms = terms;
        this.knowledge = terms.knowledge();
        this.solver = solver;
        this.horizon = Math.max(knowledge.defaults().horizon(), soFar.elapsed() + AHEAD);
        for (Corner corner : Corner.values()) {
            courses.put(
                    corner,
                    new CookSoFar(
                            WaterTrack.of(cook, soFar, corner, knowledge, horizon),
                            soFar.events(),
                            corner,
                            knowledge,
                            soFar.elapsed()));
            settings.put(corner, told(corner));
        }
        double missK = 0.0;
        Optional<CookPlan.TakeOut> takeOutAsTold = Optional.empty();
        Optional<Replan.Fit> found = Optional.empty();
        if (!soFar.readings().isEmpty()) {
            Map<Corner, Setting> told = new EnumMap<>(settings);
            Explanation nominal = coreFit(Corner.NOMINAL).bySize(setting(Corner.NOMINAL), 0.0);
            missK = nominal.missK();
            Replan.Fit fitted = fitted(nominal);
            found = Optional.of(fitted);
            takeOutAsTold = heldBack(told, fitted);
        }
        this.fit = found;
        this.readingMissK = missK;
        terms.watch().begins(PlanPhase.SOLVE);
        Map<Corner, TemperatureHistory> histories = new EnumMap<>(Corner.class);
        for (Corner corner : Corner.values()) {
            histories.put(corner, run(corner, setting(corner), horizon));
        }
        terms.watch().ends(PlanPhase.SOLVE);
        this.possible = possible(histories.values());
        this.sporesGrow = sporesGrow();
        this.trial = trial(histories, setting(Corner.LATE), sporesGrow, takeOutAsTold);
    }

    private Trial trial(
            Map<Corner, TemperatureHistory> histories,
            Setting late,
            double sporesGrowAt,
            Optional<CookPlan.TakeOut> takeOutAsTold) {
        return Trial.of(
                cook(),
                setpointC(),
                terms,
                late,
                history(histories, Corner.NOMINAL),
                history(histories, Corner.EARLY),
                history(histories, Corner.LATE),
                new Trial.UnderWay(soFar.elapsed(), sporesGrowAt, takeOutAsTold));
    }

    private static TemperatureHistory history(Map<Corner, TemperatureHistory> histories, Corner corner) {
        return Objects.requireNonNull(histories.get(corner));
    }

    /** The setting of a corner as told, in the bath that it is in from now on. */
    private Setting told(Corner corner) {
        Setting first = Setting.of(cook, cook.bath().setpointC().orElseThrow(), corner, knowledge, terms.materials());
        Setting later = course(corner).track().setpointC() == first.bath().temperatureC()
                ? first
                : first.inBathAt(course(corner).track().setpointC());
        boolean flat = CookSoFar.floated(soFar.events()) && later.body() instanceof Brick;
        return flat ? later.withBody(new Slab(later.body().across())) : later;
    }

    private CookSoFar course(Corner corner) {
        return Objects.requireNonNull(courses.get(corner));
    }

    private Setting setting(Corner corner) {
        return Objects.requireNonNull(settings.get(corner));
    }

    private TemperatureHistory run(Corner corner, Setting setting, double until) {
        return solver.through(course(corner).programme(setting, until), setting);
    }

    private CoreFit coreFit(Corner corner) {
        double low = THINNEST;
        double high = THICKEST;
        if (soFar.across().isPresent()) {
            double by = cook.tolerances()
                    .across()
                    .orElse(Math.max(
                            knowledge.defaults().acrossAtLeast(),
                            knowledge.defaults().acrossShare() * soFar.across().getAsDouble()));
            low = Math.max(low, soFar.across().getAsDouble() - by);
            high = Math.min(high, soFar.across().getAsDouble() + by);
        }
        return new CoreFit(
                soFar.readings(),
                (setting, until) -> run(corner, setting, until).core(),
                low,
                high);
    }

    /** How far the readings may be off [K]: as stated, or as usual for a probe. */
    double statedErrorK() {
        return soFar.readings().stream()
                .map(CoreReading::errorK)
                .mapToDouble(e -> e.orElse(knowledge.replan().probeK()))
                .max()
                .orElse(0.0);
    }

    /**
     * Settles the corners on what explains the readings. Of all explanations early takes the one that is safe first and late
     * the one that is safe last: other sizes in well and in badly stirred water, and other water around the size as told.
     */
    private Replan.Fit fitted(Explanation nominal) {
        double errorK = statedErrorK();
        boolean contradicts = nominal.missK() > errorK;
        if (!contradicts
                || safeAt(Corner.NOMINAL, nominal.setting()) > safeAt(Corner.NOMINAL, setting(Corner.NOMINAL))) {
            settings.put(Corner.NOMINAL, nominal.setting());
        }
        List<Explanation> all = new ArrayList<>(List.of(nominal));
        double reachK = Math.max(errorK, nominal.missK());
        Span spread = new Span(
                safeAt(Corner.NOMINAL, setting(Corner.NOMINAL)),
                settle(Corner.EARLY, reachK, contradicts, all),
                settle(Corner.LATE, -reachK, contradicts, all));
        double low = all.stream()
                .filter(e -> !e.byFilm())
                .mapToDouble(e -> e.setting().body().across())
                .min()
                .orElseThrow();
        double high = all.stream()
                .filter(e -> !e.byFilm())
                .mapToDouble(e -> e.setting().body().across())
                .max()
                .orElseThrow();
        Explanation film = coreFit(Corner.NOMINAL).byFilm(told(Corner.NOMINAL), 0.0);
        double share = (spread.late() - spread.early()) / spread.nominal();
        boolean explained = !contradicts && high < 0.999 * THICKEST;
        Pinned pinned = !explained || !(share <= FAIRLY) ? Pinned.POORLY : share <= WELL ? Pinned.WELL : Pinned.FAIRLY;
        return new Replan.Fit(
                new Range(nominal.setting().body().across(), low, high),
                film.missK() <= errorK ? Optional.of(film.setting().bath().filmCoefficient()) : Optional.empty(),
                pinned,
                nominal.missK());
    }

    /**
     * Holds the late corner back to the piece as told, and answers when to take that piece out; empty where there is no such time.
     *
     * <p>A low reading proves that the slowest-heating point is no warmer; a high one proves nothing of that point, for while
     * a piece heats every other point of it is warmer, and a tip off the middle reads too high. So readings may make a plan
     * longer at any time, and bring its late side forward in one case only: where the size is open by a stated tolerance, and
     * the readings are explained and pin the safe time at least fairly. Then the late side is held to the thin end of that
     * tolerance. The nominal and the early side follow the readings.
     */
    private Optional<CookPlan.TakeOut> heldBack(Map<Corner, Setting> told, Replan.Fit found) {
        Setting nominal = Objects.requireNonNull(told.get(Corner.NOMINAL));
        Setting late = Objects.requireNonNull(told.get(Corner.LATE));
        Setting early = Objects.requireNonNull(told.get(Corner.EARLY));
        if (cook.tolerances().across().isPresent() && found.pinned() != Pinned.POORLY) {
            nominal = nominal.acrossOf(early.body().across());
            late = late.acrossOf(early.body().across());
        }
        Map<Corner, TemperatureHistory> histories = new EnumMap<>(Corner.class);
        histories.put(Corner.NOMINAL, run(Corner.NOMINAL, nominal, horizon));
        histories.put(Corner.EARLY, run(Corner.EARLY, early, horizon));
        histories.put(Corner.LATE, run(Corner.LATE, late, horizon));
        if (safeNoSooner(history(histories, Corner.LATE).slowest(), run(Corner.LATE, setting(Corner.LATE), horizon))) {
            settings.put(Corner.LATE, late);
        }
        CookPlan.TakeOut takeOut = trial(histories, late, Double.POSITIVE_INFINITY, Optional.empty())
                .takeOut();
        return takeOut.obstacle().isPresent() ? Optional.empty() : Optional.of(takeOut);
    }

    /** Whether a core is safe no sooner than another in the worst case; where both never are, hot through no sooner. */
    private boolean safeNoSooner(PointHistory core, TemperatureHistory other) {
        double one = safeAtWorst(core);
        double two = safeAtWorst(other.slowest());
        double hotC = setpointC() - NEARLY_HOT_K;
        return one > two
                || (one == two && core.firstAtOrAbove(hotC) >= other.slowest().firstAtOrAbove(hotC));
    }

    private double safeAtWorst(PointHistory core) {
        return knowledge
                .safety()
                .judge()
                .judge(terms.requirements(), core, horizon, Trial.worstCase(cook(), terms, terms.error(setpointC())))
                .safeAt();
    }

    /** Below this the readings mean a clearly thinner piece [m]: beyond the usual tolerance, or a narrower one as stated. */
    double clearlyThinner() {
        double told = cook.body().across();
        Defaults defaults = knowledge.defaults();
        double usual = Math.max(defaults.acrossAtLeast(), defaults.acrossShare() * told);
        return told - Math.max(Math.min(Setting.acrossBy(cook, defaults), usual), ReplanNotices.RULER);
    }

    /** Settles a corner; when it is safe then [s]. */
    private double settle(Corner corner, double shiftK, boolean contradicts, List<Explanation> all) {
        Setting told = setting(corner);
        CoreFit coreFit = coreFit(corner);
        List<Explanation> explanations = new ArrayList<>();
        explanations.add(coreFit.bySize(told, shiftK));
        explanations.add(coreFit.bySize(
                told.withFilm(told(corner == Corner.LATE ? Corner.EARLY : Corner.LATE)
                        .bath()
                        .filmCoefficient()),
                shiftK));
        explanations.add(
                coreFit.byFilm(told.acrossOf(told(Corner.NOMINAL).body().across()), shiftK));
        explanations.removeIf(e -> e.missK() > Math.abs(shiftK) + EXPLAINED_K);
        if (contradicts || explanations.isEmpty()) {
            // What contradicts itself must not make anything safe sooner: what was told counts as well.
            explanations.add(new Explanation(told, Double.POSITIVE_INFINITY, false));
        }
        all.addAll(explanations);
        Setting best = explanations.get(0).setting();
        double bestAt = safeAt(corner, best);
        for (Explanation e : explanations.subList(1, explanations.size())) {
            double at = safeAt(corner, e.setting());
            if (corner == Corner.LATE ? at > bestAt : at < bestAt) {
                best = e.setting();
                bestAt = at;
            }
        }
        settings.put(corner, best);
        return bestAt;
    }

    /** When a setting is safe by the central count, or hot through where nothing is asked [s]. */
    private double safeAt(Corner corner, Setting setting) {
        PointHistory core = run(corner, setting, horizon).slowest();
        double safe = knowledge
                .safety()
                .judge()
                .judge(terms.requirements(), core, horizon, Judging.nominal(Trial.FLOOR_ALLOWANCE_K))
                .safeAt();
        return Math.max(safe, core.firstAtOrAbove(setpointC() - 1.0));
    }

    /** The setpoint from now on [C]. */
    double setpointC() {
        return course(Corner.NOMINAL).track().setpointC();
    }

    /** The task in the bath that it is in from now on. */
    CookTask cook() {
        return cook.at(setpointC());
    }

    /** The corners, judged. */
    Trial trial() {
        return trial;
    }

    /** What core readings tell. */
    Optional<Replan.Fit> fit() {
        return fit;
    }

    /** The programme and the setting of the late corner, until a time, for whoever varies it. */
    PointHistory late(Setting setting, double until) {
        return run(Corner.LATE, setting, until).slowest();
    }

    /** State now. */
    Replan.Now now() {
        double at = soFar.elapsed();
        return new Replan.Now(
                at,
                Range.of(
                        trial.nominal().core().atC(at),
                        trial.early().core().atC(at),
                        trial.late().core().atC(at)),
                trial.nominal().surface().atC(at),
                course(Corner.NOMINAL).track().atC(at));
    }

    /** The water at a time [s from food in], nominal [C]. */
    double waterC(double time) {
        return trial.nominal()
                .bath()
                .map(water -> water.atC(time))
                .orElseGet(() -> course(Corner.NOMINAL).track().atC(time));
    }

    /** The times without heater. */
    List<Replan.Off> off() {
        List<Replan.Off> off = new ArrayList<>();
        List<WaterTrack.Off> nominal = course(Corner.NOMINAL).track().offs();
        for (int i = 0; i < nominal.size(); i++) {
            WaterTrack.Off early = course(Corner.EARLY).track().offs().get(i);
            WaterTrack.Off late = course(Corner.LATE).track().offs().get(i);
            off.add(new Replan.Off(
                    Span.between(
                            nominal.get(i).over() - nominal.get(i).from(),
                            early.over() - early.from(),
                            late.over() - late.from()),
                    nominal.get(i).inferred()));
        }
        return off;
    }

    /** Whether a stated length of a time without heater did not fit the water found. */
    boolean offDoubted() {
        return course(Corner.NOMINAL).track().offs().stream().anyMatch(WaterTrack.Off::doubted);
    }

    /** Whether the log leaves a time of more than is taken as known without a reading; its length in all [s]. */
    double unrecorded() {
        if (soFar.bathLog().isEmpty()) {
            return 0.0;
        }
        var log = soFar.bathLog().get();
        double gap = knowledge.replan().logGap();
        double sum = log.unread().stream().mapToDouble(u -> u.seconds()).sum();
        double before = log.used() > 0 ? log.timeS(0) : soFar.elapsed();
        double since = log.used() > 0 ? soFar.elapsed() - log.timeS(log.used() - 1) : 0.0;
        return sum + (before > gap ? before : 0.0) + (since > gap ? since : 0.0);
    }

    /** How far readings are from the nominal explanation [K]. */
    double readingMissK() {
        return readingMissK;
    }

    /** What the past, or past and future until a time, did in a corner. */
    WarmSpell spell(TemperatureHistory history, double until) {
        SafetyKnowledge safety = knowledge.safety();
        CoolingRule rule =
                Objects.requireNonNull(safety.cooling().get(knowledge.after().interruptionRule()));
        return WarmSpell.of(history, until, growthLevelC(), !cook.raw(), rule, safety);
    }

    /** Growth limit of C. perfringens, the reading error added [C]. */
    private double growthLevelC() {
        return new ReadingError(terms.errorK())
                .readingFor(terms.limits().warmUp().perfringensToC());
    }

    /**
     * What the piece may have gone through. Where the length of a time without heater was worked out, the three corners do not
     * hold the worst for spores between them: a heater that went off long ago may never have woken any in the slow piece. So
     * the slower pieces are looked at in the water of the shorter times as well.
     */
    private List<TemperatureHistory> possible(Collection<TemperatureHistory> corners) {
        List<TemperatureHistory> all = new ArrayList<>(corners);
        if (course(Corner.NOMINAL).track().offs().stream().anyMatch(WaterTrack.Off::inferred)) {
            all.add(run(Corner.EARLY, setting(Corner.LATE), horizon));
            all.add(run(Corner.NOMINAL, setting(Corner.LATE), horizon));
            all.add(run(Corner.EARLY, setting(Corner.NOMINAL), horizon));
        }
        return List.copyOf(all);
    }

    /**
     * Until when what fell back, or will fall back on the way to this setpoint, is harmless in all that is possible if the piece
     * stays in [s]; infinity if for good, and zero where it is not even so now. A heater that is on again does not stop the fall:
     * what the outside lost arrives in the middle later.
     */
    private double sporesGrow() {
        double grow = Double.POSITIVE_INFINITY;
        for (TemperatureHistory history : possible) {
            double high = Math.min(grow, horizon);
            if (spell(history, high).harmless()) {
                continue;
            }
            double low = soFar.elapsed();
            if (!spell(history, low).harmless()) {
                return 0.0;
            }
            while (high - low > CLOSE_S) {
                double middle = 0.5 * (low + high);
                if (spell(history, middle).harmless()) {
                    low = middle;
                } else {
                    high = middle;
                }
            }
            grow = low;
        }
        return grow;
    }

    /**
     * What to do, and why. It looks at what was and at what is bound to come: how far the piece still falls back is settled by
     * the heat that it has lost. So no moment is told for a piece that will not be certified at that moment.
     */
    Verdict verdict() {
        double now = soFar.elapsed();
        WarmUpClock nominalClock = clock(trial.nominal(), now);
        WarmUpClock worstClock = clock(trial.late(), now);
        WarmSpell nominal = spell(trial.nominal(), now);
        boolean unrecorded = unrecorded() > 0.0;
        boolean tooWarm = worstClock.pace() == WarmUpClock.Pace.TOO_SLOW;
        double fallen = fallen(now);
        if (nominalClock.pace() == WarmUpClock.Pace.TOO_SLOW) {
            return Verdict.of(Decision.DISCARD, Reason.WARM_TOO_LONG, fallen);
        }
        if (nominal.broken()) {
            return Verdict.of(Decision.DISCARD, Reason.SPORES_GREW, fallen);
        }
        if (tooWarm && unrecorded) {
            return Verdict.of(Decision.DISCARD, Reason.NO_RECORD, fallen);
        }
        if (tooWarm) {
            return Verdict.of(Decision.GET_DECISION, Reason.WARM_TOO_LONG_AT_WORST, fallen);
        }
        if (sporesGrow < now) {
            return Verdict.of(
                    Decision.GET_DECISION,
                    unrecorded && nominal.harmless() ? Reason.NO_RECORD : Reason.SPORES_MAY_HAVE_GROWN,
                    fallen);
        }
        CookPlan.TakeOut takeOut = trial.takeOut();
        boolean none = takeOut.obstacle().isPresent();
        boolean grows = sporesGrow < trial.judgedAt();
        if (grows && growsInThisBath()) {
            return Verdict.of(Decision.CHANGE_PLAN, Reason.NO_TIME_FITS, fallen);
        }
        if (grows || (none && Double.isFinite(sporesGrow) && !growsInThisBath())) {
            // Another setpoint does not stop a fall that is on its way.
            return Verdict.of(Decision.GET_DECISION, Reason.SPORES_MAY_HAVE_GROWN, fallen(trial.judgedAt()));
        }
        if (none) {
            return Verdict.of(Decision.CHANGE_PLAN, Reason.NO_TIME_FITS, fallen);
        }
        Optional<Reason> reason = trial.verdict() == dev.slowpoint.safety.Verdict.NOT_MET
                ? Optional.of(Reason.NOT_MET_WHEN_SERVED)
                : Optional.empty();
        return new Verdict(
                takeOut.earliest() <= now ? Decision.READY : Decision.CARRY_ON, reason, fallen(trial.judgedAt()));
    }

    /** Whether this setpoint is so cool that it lets woken spores grow beyond what is accepted, sooner or later. */
    boolean growsInThisBath() {
        return setpointC() < growthLevelC() && Double.isFinite(sporesGrow);
    }

    /** Longest time any part was below the growth limit after having been above it, worst case, until a time [s]. */
    private double fallen(double until) {
        return possible.stream()
                .mapToDouble(h -> spell(h, until).fallen())
                .max()
                .orElseThrow();
    }

    private WarmUpClock clock(TemperatureHistory history, double until) {
        return WarmUpClock.of(
                history.slowest(), until, ReadingError.NONE, terms.limits().warmUp());
    }

    /** Whether what was, or what will be if it stays at this setpoint, forbids to certify the food at the moment judged. */
    boolean spoiled(Verdict verdict) {
        return verdict.decision() == Decision.DISCARD
                || verdict.decision() == Decision.GET_DECISION
                || sporesGrow < trial.judgedAt();
    }

    /**
     * What to do.
     *
     * @param decision what
     * @param reason why
     * @param fallen longest time any part was, or is bound to be by the moment judged, below the growth limit after having
     *     been above it, worst case [s]
     */
    record Verdict(Decision decision, Optional<Reason> reason, double fallen) {

        private static Verdict of(Decision decision, Reason reason, double fallen) {
            return new Verdict(decision, Optional.of(reason), fallen);
        }
    }
}
