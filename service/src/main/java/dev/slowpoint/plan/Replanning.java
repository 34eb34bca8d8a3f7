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
        Optional<Replan.Fit> found = Optional.empty();
        if (!soFar.readings().isEmpty()) {
            Explanation nominal = coreFit(Corner.NOMINAL).bySize(setting(Corner.NOMINAL), 0.0);
            missK = nominal.missK();
            found = Optional.of(fitted(nominal));
        }
        this.fit = found;
        this.readingMissK = missK;
        Map<Corner, TemperatureHistory> histories = new EnumMap<>(Corner.class);
        for (Corner corner : Corner.values()) {
            histories.put(corner, run(corner, setting(corner), horizon));
        }
        this.trial = Trial.of(
                cook.at(setpointC()),
                setpointC(),
                terms,
                setting(Corner.LATE),
                history(histories, Corner.NOMINAL),
                history(histories, Corner.EARLY),
                history(histories, Corner.LATE),
                soFar.elapsed());
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
        double levelC = new ReadingError(terms.errorK())
                .readingFor(terms.limits().warmUp().perfringensToC());
        return WarmSpell.of(history, until, levelC, !cook.raw(), rule, safety);
    }

    /** What to do, and why. */
    Verdict verdict() {
        double now = soFar.elapsed();
        WarmUpClock nominalClock = clock(trial.nominal(), now);
        WarmUpClock worstClock = clock(trial.late(), now);
        WarmSpell nominal = spell(trial.nominal(), now);
        List<WarmSpell> corners = List.of(nominal, spell(trial.early(), now), spell(trial.late(), now));
        boolean unrecorded = unrecorded() > 0.0;
        boolean tooWarm = worstClock.pace() == WarmUpClock.Pace.TOO_SLOW;
        double fallen = corners.stream().mapToDouble(WarmSpell::fallen).max().orElseThrow();
        if (nominalClock.pace() == WarmUpClock.Pace.TOO_SLOW) {
            return new Verdict(Decision.DISCARD, Optional.of(Reason.WARM_TOO_LONG), fallen);
        }
        if (nominal.broken()) {
            return new Verdict(Decision.DISCARD, Optional.of(Reason.SPORES_GREW), fallen);
        }
        if (tooWarm && unrecorded) {
            return new Verdict(Decision.DISCARD, Optional.of(Reason.NO_RECORD), fallen);
        }
        if (tooWarm) {
            return new Verdict(Decision.GET_DECISION, Optional.of(Reason.WARM_TOO_LONG_AT_WORST), fallen);
        }
        if (corners.stream().anyMatch(s -> !s.harmless())) {
            return new Verdict(
                    Decision.GET_DECISION,
                    Optional.of(unrecorded && nominal.harmless() ? Reason.NO_RECORD : Reason.SPORES_MAY_HAVE_GROWN),
                    fallen);
        }
        CookPlan.TakeOut takeOut = trial.takeOut();
        if (takeOut.obstacle().isPresent()) {
            return new Verdict(Decision.CHANGE_PLAN, Optional.of(Reason.NO_TIME_FITS), fallen);
        }
        return new Verdict(takeOut.earliest() <= now ? Decision.READY : Decision.CARRY_ON, Optional.empty(), fallen);
    }

    private WarmUpClock clock(TemperatureHistory history, double until) {
        return WarmUpClock.of(
                history.slowest(), until, ReadingError.NONE, terms.limits().warmUp());
    }

    /** Whether what was, or what will be if it stays at this setpoint, forbids to certify the food at the moment judged. */
    boolean spoiled(Verdict verdict) {
        boolean past = verdict.decision() == Decision.DISCARD || verdict.decision() == Decision.GET_DECISION;
        double until = trial.judgedAt();
        return past
                || List.of(trial.nominal(), trial.early(), trial.late()).stream()
                        .anyMatch(h -> !spell(h, until).harmless());
    }

    /**
     * What to do.
     *
     * @param decision what
     * @param reason why
     * @param fallen longest time any part was below the growth limit after having been above it, worst case [s]
     */
    record Verdict(Decision decision, Optional<Reason> reason, double fallen) {}
}
