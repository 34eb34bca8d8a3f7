package dev.slowpoint.plan;

import dev.slowpoint.food.Condition;
import dev.slowpoint.heat.Body;
import dev.slowpoint.heat.Dose;
import dev.slowpoint.heat.Halt;
import dev.slowpoint.heat.StartField;
import dev.slowpoint.plan.Band.Cold;
import dev.slowpoint.plan.Band.Heating;
import dev.slowpoint.plan.Band.Piece;
import dev.slowpoint.plan.CookPlan.TakeOut;
import dev.slowpoint.safety.InactivationLine;
import dev.slowpoint.safety.MarginBand;
import dev.slowpoint.safety.Verdict;
import dev.slowpoint.texture.TextureReading;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.function.Supplier;

/**
 * Puts portions into bands and plans each band once. What it answers for a portion depends on that portion and the sheet
 * alone. It keeps the bands used lately, up to a bound; any number of threads may ask.
 */
public final class SheetPlanner {

    /** Bands kept; a band holds a few kilobytes. */
    private static final int KEPT = 2000;

    /** How far above the recommended setpoint one is looked for, and in which steps (our own choice) [K]. */
    private static final double BEYOND_K = 6.0;

    private static final double STEP_K = 2.0;

    /** How long a store is asked about to learn the longest time in it [s]: one day. */
    private static final double A_DAY = 86_400.0;

    private final CookPlanner planner;
    private final Knowledge knowledge;
    private final Sheet sheet;
    private final SheetDefaults defaults;
    private final Kept<Band.Place, Band> bands = new Kept<>(KEPT);
    private final Kept<CookTask, Double> setpoints = new Kept<>(KEPT);

    SheetPlanner(CookPlanner planner, Sheet sheet) {
        this.planner = planner;
        this.knowledge = planner.knowledge();
        this.sheet = sheet;
        this.defaults = knowledge.sheets();
    }

    /**
     * The band of a portion. Where its thinnest piece would be past its best, the band is halved, until it fits or is as
     * narrow as bands get.
     *
     * @throws Refusal when the portion is outside what the model or the rule can answer
     */
    public Band bandOf(Portion portion) {
        Band band = null;
        for (int halvings = 0; halvings <= defaults.halvings(); halvings++) {
            Ladder ladder = Ladder.of(sheet.units(), defaults, halvings);
            Ladder.Rungs rungs = ladder.around(portion.thinnest(), portion.thickest());
            CookTask task = portion.task();
            Band.Place place = new Band.Place(
                    task.with(ladder.slowest(task.body(), rungs)),
                    ladder.fastest(task.body(), rungs),
                    rungs.from(),
                    rungs.to());
            band = bands.get(place, () -> plan(place));
            if (!band.overcooks()) {
                return band;
            }
        }
        return Objects.requireNonNull(band);
    }

    private Band plan(Band.Place place) {
        SolverRuns solver = new SolverRuns();
        CookTask asked = place.slowest();
        Admission.check(asked, knowledge);
        List<CookTask> starts = cooks(asked);
        Trial slowest = slowestTrial(starts.get(starts.size() - 1), solver);
        double setpointC = slowest.setpointC();
        List<Heating> cooks = new ArrayList<>();
        boolean fitToKeep = true;
        boolean served = true;
        for (CookTask start : starts) {
            CookTask task = start.at(setpointC);
            Terms terms = planner.terms(task);
            Card card = task.frozen() ? Card.FROZEN : Card.FRIDGE;
            boolean last = cooks.size() == starts.size() - 1;
            Trial worst = last ? slowest : trial(start, setpointC, solver);
            Heating heating = heating(card, task, worst, place.fastest(), terms, solver);
            cooks.add(heating);
            served &= heating.time().isPresent()
                    && (heating.safety().verdict() == Verdict.MET
                            || heating.safety().verdict() == Verdict.NOT_APPLICABLE);
            fitToKeep &= heating.time().isPresent()
                    && listeriaKilled(worst, heating.time().getAsDouble(), terms);
        }
        CookTask cooked = asked.at(setpointC);
        return new Band(
                place,
                setpointC,
                cooks,
                sheet.cards().contains(Card.CHILL_AND_KEEP)
                        ? Optional.of(cold(cooked, setpointC, served, fitToKeep))
                        : Optional.empty(),
                sheet.cards().contains(Card.REHEAT)
                        ? Optional.of(reheat(cooked.reheatedFrom(storeC()), setpointC, place.fastest(), solver))
                        : Optional.empty(),
                solver.effort());
    }

    /** The cook of each card that cooks, the one that heats most slowly last. */
    private List<CookTask> cooks(CookTask task) {
        boolean frozen = task.frozen();
        boolean none = sheet.cards().stream().noneMatch(Card::cooks);
        List<CookTask> cooks = new ArrayList<>();
        if (none ? !frozen : sheet.cards().contains(Card.FRIDGE)) {
            cooks.add(
                    frozen
                            ? task.from(
                                    sheet.fridgeC().orElse(knowledge.defaults().fridgeC()))
                            : task);
        }
        if (none ? frozen : sheet.cards().contains(Card.FROZEN)) {
            cooks.add(frozen ? task : task.from(sheet.freezerC().orElse(defaults.freezerC())));
        }
        return cooks;
    }

    private double storeC() {
        return sheet.storeC().orElse(knowledge.defaults().fridgeC());
    }

    /**
     * The cook that heats most slowly, tried at the setpoint asked for; or at the one recommended for its food; or, where that
     * does not do for this band, up to six kelvin above. If none does, the trial at the recommended one says why.
     *
     * @throws Refusal when nothing is recommended for the food
     */
    private Trial slowestTrial(CookTask slowest, SolverRuns solver) {
        OptionalDouble asked = slowest.bath().setpointC();
        if (asked.isPresent()) {
            return trial(slowest, sheet.units().settable(asked.getAsDouble(), defaults), solver);
        }
        double shared = setpoints.get(
                slowest.with(slowest.body().withAcross(defaults.reference())), () -> recommended(slowest));
        Trial first = trial(slowest, shared, solver);
        Trial tried = first;
        for (double above = STEP_K; !fits(tried) && above <= BEYOND_K; above += STEP_K) {
            double setpointC = sheet.units().settable(shared + above, defaults);
            if (setpointC < BoilingPoint.atC(slowest.altitude())) {
                tried = trial(slowest, setpointC, solver);
            }
        }
        return fits(tried) ? tried : first;
    }

    private Trial trial(CookTask task, double setpointC, SolverRuns solver) {
        CookTask there = task.at(setpointC);
        Admission.check(there, knowledge);
        Terms terms = planner.terms(there);
        planner.refuseCoolNonIntact(there, terms, solver);
        return Trial.of(there, setpointC, terms, solver);
    }

    private static boolean fits(Trial trial) {
        boolean safe = trial.verdict() == Verdict.MET || trial.verdict() == Verdict.NOT_APPLICABLE;
        return safe && trial.takeOut().obstacle().isEmpty();
    }

    /** For a piece of the reference size, or for one of half of it where none does for that. */
    private double recommended(CookTask task) {
        double across = defaults.reference();
        try {
            return recommended(task, across);
        } catch (Refusal thick) {
            return recommended(task, 0.5 * across);
        }
    }

    private double recommended(CookTask task, double across) {
        CookTask usual = task.with(task.body().withAcross(across));
        Trial chosen = new SetpointChooser(usual, planner.terms(usual), new SolverRuns())
                .choose()
                .trial();
        return sheet.units().settable(chosen.setpointC(), defaults);
    }

    private Heating heating(Card card, CookTask task, Trial worst, Body fastest, Terms terms, SolverRuns solver) {
        TakeOut takeOut = worst.takeOut();
        double setpointC = worst.setpointC();
        if (takeOut.obstacle().isPresent()) {
            return new Heating(
                    card,
                    task.start().coreC(),
                    OptionalDouble.empty(),
                    takeOut.obstacle(),
                    Double.POSITIVE_INFINITY,
                    Double.POSITIVE_INFINITY,
                    worst.times().hotThrough(),
                    worst.times().safe(),
                    safety(worst, terms),
                    piece(worst, task.body().across(), worst.judgedAt()),
                    Optional.empty(),
                    Notices.of(task, worst, terms, Sequel.Found.NOTHING));
        }
        Trial thin = Trial.of(task.with(fastest), setpointC, terms, solver);
        double closes = thin.times().goodUntil().map(Span::early).orElse(Double.POSITIVE_INFINITY);
        double latest = Math.min(takeOut.latest(), closes);
        double time = time(takeOut, latest);
        CookTask served = task.served(OptionalDouble.of(time));
        Trial judged = Trial.of(
                served, setpointC, terms, worst.lateSetting(), worst.nominal(), worst.early(), worst.late(), 0.0);
        return new Heating(
                card,
                task.start().coreC(),
                OptionalDouble.of(time),
                Optional.empty(),
                takeOut.earliest(),
                latest,
                judged.times().hotThrough(),
                judged.times().safe(),
                safety(judged, terms),
                piece(judged, task.body().across(), time),
                Optional.of(piece(thin, fastest.across(), time)),
                Notices.of(served, judged, terms, Sequel.Found.NOTHING));
    }

    /**
     * The time on the card: the best one, rounded up; the last whole step at which the thinnest piece is still good, if that
     * comes sooner; never one before the earliest.
     */
    private double time(TakeOut takeOut, double latest) {
        double step = defaults.timeStep();
        double best = DisplayUnits.up(takeOut.best(), step);
        if (best <= latest) {
            return best;
        }
        double sooner = DisplayUnits.down(latest, step);
        return sooner >= takeOut.earliest() ? sooner : DisplayUnits.up(takeOut.earliest(), step);
    }

    private static Band.Safety safety(Trial trial, Terms terms) {
        double left = trial.worst().marginS();
        boolean asked = trial.worst().governing().isPresent();
        return new Band.Safety(
                trial.verdict(),
                terms.rule(),
                trial.worst().governing(),
                trial.worst().governing().map(f -> trial.verdict() == Verdict.NOT_MET ? MarginBand.NOT_MET : f.band()),
                asked && Double.isFinite(left) ? OptionalDouble.of(left) : OptionalDouble.empty());
    }

    private static Piece piece(Trial trial, double across, double at) {
        Optional<TextureReading> reading = trial.reading();
        return new Piece(
                across,
                trial.nominal().slowest().atC(at),
                reading.map(r -> r.verdict(at)),
                reading.map(r -> r.lossPercentAt(at)).orElseGet(OptionalDouble::empty));
    }

    /** Whether the slowest piece got six decimal reductions of Listeria by a time [s], the reading error taken off. */
    private boolean listeriaKilled(Trial trial, double at, Terms terms) {
        InactivationLine line =
                Objects.requireNonNull(knowledge.safety().lines().get(Sequel.LISTERIA_LINE));
        Dose dose = Dose.of(
                terms.error(trial.setpointC()).judged(line.killFrom(Sequel.LISTERIA_FLOOR_C)),
                trial.late().slowest());
        return dose.at(at) >= Sequel.LISTERIA_TARGET_LOG10;
    }

    /** Cooling of the slowest piece from the setpoint, free in the medium whatever lay how in the bath. */
    private Cold cold(CookTask task, double setpointC, boolean served, boolean fitToKeep) {
        ChillPlan plan = planner.chill(
                new ChillTask(
                        task.food(),
                        task.form(),
                        task.body(),
                        Arrangement.FREE,
                        StartField.uniform(setpointC),
                        new Step.Chill(sheet.chillIn(), OptionalDouble.empty(), OptionalDouble.empty()),
                        Optional.of(new Step.Store(storeC(), A_DAY)),
                        Optional.empty(),
                        fitToKeep,
                        task.eater(),
                        task.tolerances()),
                Set.of());
        double ends = plan.ends().late();
        return new Cold(
                sheet.chillIn(),
                Double.isFinite(ends)
                        ? OptionalDouble.of(DisplayUnits.up(ends, defaults.timeStep()))
                        : OptionalDouble.empty(),
                plan.cooling(),
                storeC(),
                served ? plan.keeping().map(Outcome.Keeping::longest).orElse(0.0) : 0.0,
                plan.notices());
    }

    private Heating reheat(CookTask task, double setpointC, Body fastest, SolverRuns solver) {
        if (task.condition() != Condition.COOKED) {
            throw new IllegalArgumentException("only cooked food is warmed up again");
        }
        Admission.check(task, knowledge);
        Terms terms = planner.terms(task);
        return heating(Card.REHEAT, task, Trial.of(task, setpointC, terms, solver), fastest, terms, solver);
    }

    /** Values that take long to compute, each computed by one thread while others wait for it; those used least go first. */
    private static final class Kept<K, V> {

        private final Map<K, FutureTask<V>> values;

        Kept(int most) {
            this.values = new LinkedHashMap<>(64, 0.75f, true) {
                private static final long serialVersionUID = 1L;

                @Override
                protected boolean removeEldestEntry(Map.Entry<K, FutureTask<V>> eldest) {
                    return size() > most;
                }
            };
        }

        V get(K key, Supplier<V> make) {
            FutureTask<V> mine = new FutureTask<>(make::get);
            FutureTask<V> task;
            synchronized (values) {
                FutureTask<V> known = values.get(key);
                task = known == null ? mine : known;
                if (known == null) {
                    values.put(key, mine);
                }
            }
            if (task == mine) {
                mine.run();
            }
            try {
                return task.get();
            } catch (ExecutionException e) {
                if (e.getCause() instanceof Halt.Halted) {
                    // Says nothing of the band: whoever comes later may have more time.
                    synchronized (values) {
                        values.remove(key, task);
                    }
                }
                if (e.getCause() instanceof RuntimeException failure) {
                    throw failure;
                }
                throw new IllegalStateException("a band could not be planned", e.getCause());
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                throw new CancellationException("interrupted while waiting for a band");
            }
        }
    }
}
