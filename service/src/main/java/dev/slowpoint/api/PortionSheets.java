package dev.slowpoint.api;

import dev.slowpoint.api.PortionSheetAnswer.PortionPlace;
import dev.slowpoint.api.PortionSheetAnswer.SheetBand;
import dev.slowpoint.api.PortionSheetAnswer.SheetTotals;
import dev.slowpoint.heat.Halt;
import dev.slowpoint.ops.PlanMetrics;
import dev.slowpoint.plan.Card;
import dev.slowpoint.plan.CookPlanner;
import dev.slowpoint.plan.CookTask;
import dev.slowpoint.plan.Knowledge;
import dev.slowpoint.plan.Portion;
import dev.slowpoint.plan.Refusal;
import dev.slowpoint.plan.Sheet;
import java.io.IOException;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Semaphore;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.DisposableBean;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.stereotype.Component;

/** Answers sheets of portions with the planner of the parameter set that a request names; as many at once as are allowed. */
@Component
final class PortionSheets implements DisposableBean {

    /** Most bands of an answer that is no stream, so that its cost is bounded. */
    static final int MOST_BANDS = 2000;

    private static final double MM_PER_M = 1000.0;

    private final Planners planners;
    private final PlanMetrics metrics;
    private final Semaphore free;
    private final ExecutorService workers;

    PortionSheets(
            Planners planners, PlanMetrics metrics, @Value("${slowpoint.limits.sheets-at-once}") int sheetsAtOnce) {
        this.planners = planners;
        this.metrics = metrics;
        this.free = new Semaphore(sheetsAtOnce);
        AtomicInteger count = new AtomicInteger();
        // The work is arithmetic: more threads than cores only wait for each other.
        this.workers = Executors.newFixedThreadPool(Runtime.getRuntime().availableProcessors(), work -> {
            Thread thread = new Thread(work, "sheet-" + count.incrementAndGet());
            thread.setDaemon(true);
            return thread;
        });
    }

    @Override
    public void destroy() {
        workers.shutdownNow();
    }

    /** Lets one more sheet be worked on, if there is room; each true must be followed by one {@link #leave}. */
    boolean enter() {
        boolean room = free.tryAcquire();
        if (!room) {
            metrics.refused(ProblemCode.OVERLOADED.name());
        }
        return room;
    }

    /** Makes room for another sheet. */
    void leave() {
        free.release();
    }

    /** Sheets that could be taken now. */
    int room() {
        return free.availablePermits();
    }

    /**
     * A sheet that is answered as a whole.
     *
     * @param request read, without the portions that are at fault
     * @param faults those portions
     * @param sentences in the language asked for
     * @throws Refusal if what all portions have in common cannot be answered
     */
    PortionSheetAnswer plan(PortionSheetRequest request, ItemFaults faults, Sentences sentences) {
        List<SheetBand> bands = new ArrayList<>();
        List<PortionPlace> places = new ArrayList<>();
        Running running = running(request.sheet(), sentences);
        SheetSink kept = new SheetSink() {
            @Override
            public void band(SheetBand band) {
                bands.add(band);
            }

            @Override
            public void portion(PortionPlace portion) {
                places.add(portion);
            }

            @Override
            public void progress(SheetTotals soFar) {
                // All comes at once.
            }

            @Override
            public void flush() {
                // All comes at once.
            }
        };
        BooleanSupplier late = Halt.ofThread();
        try (SheetRun run = running.run(kept, MOST_BANDS, () -> late)) {
            int next = 0;
            int all = request.portions().size() + faults.count();
            for (int i = 0; i < all; i++) {
                if (faults.of(i).isEmpty()) {
                    run.plan(request.portions().get(next++), null, Pointer.BODY + "/portions/" + i);
                } else {
                    run.refuse(null, null, faults.of(i));
                }
            }
            run.drain();
            SheetTotals totals = run.totals();
            counted(totals);
            return new PortionSheetAnswer(
                    running.knowledge().version(),
                    PlanTranslation.shown(running.knowledge().digest()),
                    bands,
                    places,
                    totals,
                    running.words().cautions());
        } catch (IOException e) {
            throw new IllegalStateException("nothing is written while a sheet is kept", e);
        }
    }

    /** Counts what came of a sheet. */
    void counted(SheetTotals totals) {
        metrics.portions(totals.planned(), totals.refused(), totals.bands());
    }

    /**
     * What a run of a sheet needs.
     *
     * @throws Refusal if what all portions have in common cannot be answered
     */
    Running running(SheetTerms terms, Sentences sentences) {
        CookPlanner planner = planners.of(terms.parameterSet());
        return new Running(
                planner,
                terms,
                workers,
                new SheetTranslation(planner.knowledge(), sentences.in(terms.displayUnits()), terms.displayUnits()));
    }

    /** A sheet under way. */
    record Running(CookPlanner planner, SheetTerms terms, ExecutorService workers, SheetTranslation words) {

        Knowledge knowledge() {
            return planner.knowledge();
        }

        /** Starts a run whose results go to a sink, and that ends its work on each portion when a halt says so. */
        SheetRun run(SheetSink sink, int mostBands, Supplier<BooleanSupplier> halts) {
            Function<SheetPortion, Portion> translation = portion -> portion(portion, terms, knowledge());
            return new SheetRun(planner.sheet(sheet(terms)), translation, words, workers, halts, sink, mostBands);
        }

        SheetLine.Head head() {
            return new SheetLine.Head(
                    knowledge().version(), PlanTranslation.shown(knowledge().digest()), words.cautions());
        }
    }

    private static Sheet sheet(SheetTerms terms) {
        Set<Card> cards = EnumSet.noneOf(Card.class);
        cards.addAll(terms.cards());
        return new Sheet(
                cards,
                terms.displayUnits(),
                terms.chillIn(),
                optional(terms.storeC()),
                optional(terms.fridgeC()),
                optional(terms.freezerC()));
    }

    private static OptionalDouble optional(@Nullable Double value) {
        return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
    }

    /** The question of a portion. */
    private static Portion portion(SheetPortion portion, SheetTerms terms, Knowledge knowledge) {
        CookTask task = TaskTranslation.task(
                new CookPlanRequest(
                        terms.parameterSet(),
                        portion.food(),
                        portion.geometry(),
                        portion.start(),
                        terms.around(),
                        terms.target(),
                        terms.eater(),
                        terms.rule(),
                        terms.tolerances(),
                        portion.pack(),
                        List.of()),
                knowledge);
        List<Double> measured = portion.measuredMm();
        if (measured != null) {
            double[] metres = measured.stream().mapToDouble(mm -> mm / MM_PER_M).toArray();
            return Portion.measured(task, metres, knowledge.sheets());
        }
        return portion.thicknessSpreadMm() == null
                ? Portion.of(task)
                : Portion.spread(task, Objects.requireNonNull(portion.thicknessSpreadMm()) / MM_PER_M);
    }
}
