package dev.slowpoint.api;

import dev.slowpoint.api.PortionSheetAnswer.PortionPlace;
import dev.slowpoint.api.PortionSheetAnswer.SheetTotals;
import dev.slowpoint.heat.Halt;
import dev.slowpoint.plan.Band;
import dev.slowpoint.plan.Portion;
import dev.slowpoint.plan.Refusal;
import dev.slowpoint.plan.SheetPlanner;
import java.io.IOException;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Executor;
import java.util.concurrent.FutureTask;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * Runs one sheet: portions go in one after another, are planned by several threads, and come out in the same order. What is
 * held at a time is bounded, however many portions there are.
 */
final class SheetRun implements AutoCloseable {

    /** Portions that are planned ahead of the one that comes out next. */
    private static final int AHEAD = 256;

    /** Bands whose numbers are known; one that was not used for so many others gets a new number. */
    static final int NUMBERED = 4000;

    /** Portions between two reports of progress. */
    static final int REPORTED = 500;

    private final SheetPlanner planner;
    private final Function<SheetPortion, Portion> translation;
    private final SheetTranslation words;
    private final Executor workers;
    private final Supplier<BooleanSupplier> halts;
    private final SheetSink sink;
    private final int mostBands;
    private final Deque<Pending> pending = new ArrayDeque<>();
    private final Map<Band.Place, Integer> numbers = new LinkedHashMap<>(64, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Band.Place, Integer> eldest) {
            return size() > NUMBERED;
        }
    };
    private volatile boolean stopped;
    private boolean full;
    private int portions;
    private int refused;
    private int bands;

    /**
     * A run.
     *
     * @param planner of the sheet
     * @param translation of a portion into its question; throws a refusal where there is none
     * @param words of the cards
     * @param workers that plan
     * @param halts asked for each portion when work on it begins: says when that must end
     * @param sink of what comes out
     * @param mostBands portions that would need more bands are refused
     */
    SheetRun(
            SheetPlanner planner,
            Function<SheetPortion, Portion> translation,
            SheetTranslation words,
            Executor workers,
            Supplier<BooleanSupplier> halts,
            SheetSink sink,
            int mostBands) {
        this.planner = planner;
        this.translation = translation;
        this.words = words;
        this.workers = workers;
        this.halts = halts;
        this.sink = sink;
        this.mostBands = mostBands;
    }

    /** One that is planned, or was refused before. */
    private record Pending(
            @Nullable String id,
            @Nullable Integer line,
            String pointer,
            @Nullable FutureTask<Band> band,
            List<Fault> faults) {}

    /**
     * Takes a portion.
     *
     * @param line of the stream, if it is one
     * @param pointer of the portion in its message
     */
    void plan(SheetPortion portion, @Nullable Integer line, String pointer) throws IOException {
        FutureTask<Band> task = new FutureTask<>(() -> {
            BooleanSupplier late = halts.get();
            try (Halt halt = Halt.on(() -> stopped || late.getAsBoolean())) {
                if (stopped) {
                    throw new IllegalStateException("the sheet is no longer wanted");
                }
                return planner.bandOf(translation.apply(portion));
            }
        });
        workers.execute(task);
        add(new Pending(portion.id(), line, pointer, task, List.of()));
    }

    /** Takes a portion that could not be read. */
    void refuse(@Nullable String id, @Nullable Integer line, List<Fault> faults) throws IOException {
        add(new Pending(id, line, Pointer.BODY, null, faults));
    }

    private void add(Pending portion) throws IOException {
        pending.add(portion);
        while (!pending.isEmpty() && (pending.size() > AHEAD || ready(pending.element()))) {
            emit(pending.remove());
        }
    }

    private static boolean ready(Pending portion) {
        return portion.band() == null || portion.band().isDone();
    }

    /** Waits for all that was taken, and sends it on. */
    void drain() throws IOException {
        while (!pending.isEmpty()) {
            emit(pending.remove());
        }
        sink.flush();
    }

    /** How many so far. */
    SheetTotals totals() {
        return new SheetTotals(portions, portions - refused, refused, bands);
    }

    private void emit(Pending portion) throws IOException {
        portions++;
        List<FaultEntry> faults = words.faults(portion.faults());
        Integer number = null;
        if (portion.band() != null) {
            try {
                number = full ? null : number(band(portion.band()));
                if (number == null) {
                    faults = words.faults(List.of(Fault.of(
                            portion.pointer(),
                            ProblemCode.TOO_MANY_BANDS,
                            "FAULT_TOO_MANY_BANDS",
                            Integer.toString(mostBands))));
                }
            } catch (Refusal refusal) {
                faults = refusal.faults().stream()
                        .limit(ItemFaults.LISTED)
                        .map(fault -> words.fault(fault).below(portion.pointer()))
                        .toList();
            } catch (Halt.Halted halted) {
                // Where the whole sheet is out of time, so is whoever asks here.
                if (Halt.ofThread().getAsBoolean()) {
                    throw halted;
                }
                faults = words.faults(
                        List.of(Fault.of(portion.pointer(), ProblemCode.OUT_OF_TIME, "FAULT_OUT_OF_TIME")));
            }
        }
        if (number == null) {
            refused++;
        }
        sink.portion(new PortionPlace(portion.id(), portion.line(), number, number == null ? faults : null));
        if (portions % REPORTED == 0) {
            sink.progress(totals());
        }
    }

    /** The number of a band, which is told first if it is new; none if there are too many. */
    private @Nullable Integer number(Band band) throws IOException {
        Integer known = numbers.get(band.place());
        if (known != null) {
            return known;
        }
        if (bands >= mostBands) {
            // Nothing after this is planned any more, so that the work is bounded.
            full = true;
            stopped = true;
            return null;
        }
        bands++;
        numbers.put(band.place(), bands);
        sink.band(words.band(bands, band));
        return bands;
    }

    private static Band band(FutureTask<Band> task) {
        try {
            return task.get();
        } catch (ExecutionException e) {
            if (e.getCause() instanceof RuntimeException failure) {
                throw failure;
            }
            throw new IllegalStateException("a portion could not be planned", e.getCause());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while planning a sheet", e);
        }
    }

    /** Stops what is still being planned; its results are not wanted. */
    @Override
    public void close() {
        stopped = true;
        pending.forEach(portion -> {
            FutureTask<Band> task = portion.band();
            if (task != null) {
                task.cancel(false);
            }
        });
        pending.clear();
    }
}
