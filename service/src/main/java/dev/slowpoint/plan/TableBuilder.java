package dev.slowpoint.plan;

import dev.slowpoint.plan.LookupTable.Quantity;
import dev.slowpoint.plan.TableAxes.Gap;
import dev.slowpoint.plan.TableGrid.Spot;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.Deque;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.ToIntFunction;

/**
 * Builds a lookup table: planes are put where the error is largest until it is small enough or the table is as long as it
 * may be; then the nodes are moved to the safe side of all plans computed so far, and the table is held against plans at
 * fresh random points. Where one of those is on the wrong side, it counts among the known ones, more is kept in reserve, and
 * fresh points are drawn again.
 */
final class TableBuilder {

    /** Fresh random points that a table is held against. */
    static final int CHECKS = 400;

    /** Random points that nodes are moved by, besides the middles of the cells. */
    private static final int MENDING = 256;

    /** Plans that one table may cost, so that it takes seconds (our own choice). */
    private static final int MOST_PLANS = 4_000;

    /** Sets of fresh points that may be drawn. */
    private static final int MOST_ROUNDS = 8;

    private static final long SEED = 20_260_101L;

    /** Each axis may err by a third of what all three together may. */
    private static final double SHARE_OF_AXIS = 1.0 / 3.0;

    /** What is kept in reserve from the first, as a share of what the table may err (our own choice). */
    private static final double FIRST_RESERVE = 0.2;

    /** What is kept in reserve besides where times bend sharply, as a share of the time (our own choice). */
    private static final double STEEP_RESERVE = 0.02;

    /**
     * The most by which the first grows in one of the first rounds, and twice as much in each later one, so that one bad
     * place does not spoil all others (our own choice).
     */
    private static final double MOST_RESERVE = 0.5;

    /** How much more than the worst wrong share is kept in reserve after a round that found one (our own choice). */
    private static final double RESERVE = 1.5;

    /** Stands for an error that is not known yet, as long as any when it is written. */
    private static final LookupTable.Error NOT_YET = new LookupTable.Error(345_599.0, 99.999, 345_599.0, 99.999, 0.999);

    private final LookupTableTask task;
    private final Terms terms;
    private final ToIntFunction<LookupTable> length;
    private final List<Quantity> quantities;
    private final TablePlans plans;
    private final TableAxes axes;
    private final List<Notice> notices;
    private final Map<Quantity, Double> reserves = new EnumMap<>(Quantity.class);
    private final Map<Quantity, Map<Spot, Double>> further = new EnumMap<>(Quantity.class);

    /** The grids that led to the last one. */
    private final Deque<TableGrid> grids = new ArrayDeque<>();

    TableBuilder(LookupTableTask task, List<Quantity> quantities, Terms terms, ToIntFunction<LookupTable> length) {
        this.task = task;
        this.terms = terms;
        this.length = length;
        this.quantities = quantities;
        this.plans = new TablePlans(task, terms);
        this.axes = new TableAxes(
                task,
                plans,
                quantities,
                Setting.startBy(task.cook(), terms.knowledge().defaults()));
        quantities.forEach(quantity -> {
            reserves.put(quantity, FIRST_RESERVE * task.within());
            further.put(quantity, new HashMap<>());
        });
        List<List<Notice>> ends = new ArrayList<>();
        for (double size : ends(0, true)) {
            for (double setpointC : ends(1, false)) {
                for (double startC : ends(2, false)) {
                    ends.add(plans.notices(new Spot(size, setpointC, startC)));
                }
            }
        }
        // Of no or a few among independent points wrong, three over their number bounds the share of wrong ones at 95 %
        // (rule of three: Hanley and Lippman-Hand 1983, JAMA 249:1743, from memory).
        this.notices = Notices.of(ends, CHECKS, Math.ceil(3000.0 / CHECKS) / 10.0, terms.knowledge());
    }

    /** The two ends of an axis, or the one where they are the same. */
    private List<Double> ends(int axis, boolean greatestFirst) {
        LookupTableTask.Ends ends = task.axis(axis);
        if (ends.from() == ends.to()) {
            return List.of(ends.from());
        }
        return greatestFirst ? List.of(ends.to(), ends.from()) : List.of(ends.from(), ends.to());
    }

    /**
     * Builds it.
     *
     * @throws Refusal when the shortest table is too long, or no table is on the safe side
     */
    LookupTable build() {
        grids.push(new TableGrid(List.of(ends(0, false), ends(1, false), ends(2, false))));
        plans.solve(grid().spots());
        refine();
        for (int round = 0; round < MOST_ROUNDS; round++) {
            List<TableColumn> columns = fitting(round + 1);
            List<Spot> fresh = random(CHECKS, SEED + 1 + round);
            plans.solve(fresh);
            if (safeSided(columns, fresh, round)) {
                refuseEmpty(columns, fresh);
                List<LookupTable.Column> told =
                        columns.stream().map(c -> c.told(c.error(fresh))).toList();
                return table(grid(), told, round + 1);
            }
        }
        throw new Refusal(Refusal.Fault.of("#/longestBytes", "TABLE_NOT_SAFE_SIDED", "FAULT_TABLE_NOT_SAFE_SIDED")
                .withValue(Integer.toString(task.longest()))
                .withHint("HINT_MORE_BYTES_OR_NARROWER"));
    }

    private TableGrid grid() {
        return Objects.requireNonNull(grids.peek());
    }

    private void refine() {
        while (true) {
            List<Gap> gaps = gaps();
            boolean grown = false;
            for (Gap gap : gaps) {
                grown = grow(gap.axis(), gap.middle());
                if (grown) {
                    break;
                }
            }
            if (!grown) {
                return;
            }
        }
    }

    /** What is too coarse, where a plane helps most first. */
    private List<Gap> gaps() {
        List<Gap> gaps = new ArrayList<>();
        for (int axis = 0; axis < 3; axis++) {
            List<Double> planes = grid().axes().get(axis);
            for (int i = 1; i < planes.size(); i++) {
                Gap gap = axes.gap(axis, planes.get(i - 1), planes.get(i));
                if (gap.splits() && axes.misfit(gap).error() > SHARE_OF_AXIS * task.within()) {
                    gaps.add(gap);
                }
            }
        }
        gaps.sort(Comparator.comparingDouble(this::gain).reversed());
        return gaps;
    }

    /** What a plane between takes off the error, for each share by which it makes the table longer. */
    private double gain(Gap gap) {
        return axes.misfit(gap).felt() * grid().axes().get(gap.axis()).size();
    }

    private boolean grow(int axis, double plane) {
        TableGrid grown = grid().with(axis, plane);
        boolean cheap = plans.count() + 2 * grown.nodes() + MENDING + 2 * CHECKS <= MOST_PLANS;
        if (!cheap || length.applyAsInt(guessed(grown)) > task.longest()) {
            return false;
        }
        grids.push(grown);
        return true;
    }

    /** A table whose times are those of the plans known so far, in turn: as long as the real one, or nearly. */
    private LookupTable guessed(TableGrid grid) {
        List<Spot> known = plans.spots();
        List<LookupTable.Column> columns = new ArrayList<>();
        for (Quantity quantity : quantities) {
            List<Integer> seconds = new ArrayList<>(grid.nodes());
            for (int i = 0; i < grid.nodes(); i++) {
                double time = plans.time(known.get(i % known.size()), quantity);
                seconds.add(Double.isInfinite(time) ? LookupTable.NEVER : (int) time);
            }
            columns.add(new LookupTable.Column(quantity, seconds, NOT_YET));
        }
        return table(grid, columns, MOST_ROUNDS);
    }

    /** The columns over the last grid, which is taken back plane by plane until the table is short enough. */
    private List<TableColumn> fitting(int round) {
        while (true) {
            TableGrid grid = grid();
            List<Spot> wanted = new ArrayList<>(grid.spots());
            wanted.addAll(grid.middles());
            wanted.addAll(finer(grid).middles());
            wanted.addAll(random(MENDING, SEED));
            plans.solve(wanted);
            finer(grid).middles().stream().filter(spot -> steep(grid, spot)).forEach(this::keepFurther);
            List<TableColumn> columns = quantities.stream()
                    .map(q -> new TableColumn(
                            q,
                            grid,
                            plans,
                            Objects.requireNonNull(reserves.get(q)),
                            Objects.requireNonNull(further.get(q))))
                    .toList();
            int bytes = length.applyAsInt(
                    table(grid, columns.stream().map(c -> c.told(NOT_YET)).toList(), round));
            if (bytes <= task.longest()) {
                return columns;
            }
            grids.pop();
            if (grids.isEmpty()) {
                throw new Refusal(Refusal.Fault.of(
                                "#/longestBytes", "BUDGET_TOO_SMALL", "FAULT_BUDGET_TOO_SMALL", Integer.toString(bytes))
                        .withValue(Integer.toString(task.longest()))
                        .withMinimum(bytes, "By")
                        .withHint("HINT_MORE_BYTES_OR_FEWER"));
            }
        }
    }

    /** The grid with more planes where times bend so sharply that its own are as near to each other as may be. */
    private TableGrid finer(TableGrid grid) {
        TableGrid finer = grid;
        for (int axis = 0; axis < 3; axis++) {
            List<Double> planes = grid.axes().get(axis);
            for (int i = 1; i < planes.size(); i++) {
                if (!axes.gap(axis, planes.get(i - 1), planes.get(i)).splits()) {
                    finer = finer.with(axis, 0.5 * (planes.get(i - 1) + planes.get(i)));
                }
            }
        }
        return finer;
    }

    /** Whether a point lies between setpoints that are as near to each other as may be. */
    private boolean steep(TableGrid grid, Spot spot) {
        List<Double> planes = grid.axes().get(1);
        for (int i = 1; i < planes.size(); i++) {
            boolean between = spot.setpointC() > planes.get(i - 1) && spot.setpointC() < planes.get(i);
            if (between) {
                return !axes.gap(1, planes.get(i - 1), planes.get(i)).splits();
            }
        }
        return false;
    }

    private void keepFurther(Spot spot) {
        for (Quantity quantity : quantities) {
            double time = plans.time(spot, quantity);
            // What is waited for bends to the safe side there: it falls ever more slowly as the bath gets hotter.
            if (!quantity.awaited()) {
                Objects.requireNonNull(further.get(quantity)).putIfAbsent(spot, STEEP_RESERVE * time);
            }
        }
    }

    private List<Spot> random(int count, long seed) {
        SobolPoints sobol = SobolPoints.shifted(3, seed);
        List<Spot> spots = new ArrayList<>(count);
        for (int i = 0; i < count; i++) {
            Spot spot = new Spot(0.0, 0.0, 0.0);
            for (int axis = 0; axis < 3; axis++) {
                LookupTableTask.Ends ends = task.axis(axis);
                spot = spot.with(axis, ends.from() + sobol.at(i, axis) * (ends.to() - ends.from()));
            }
            spots.add(spot);
        }
        return Collections.unmodifiableList(spots);
    }

    /** Whether no point is on the wrong side; else keeps more in reserve. */
    private boolean safeSided(List<TableColumn> columns, List<Spot> fresh, int round) {
        boolean safe = true;
        double most = MOST_RESERVE * task.within() * (1 << Math.max(0, round - 2));
        for (int i = 0; i < columns.size(); i++) {
            TableColumn column = columns.get(i);
            double worst = 0.0;
            for (Spot spot : fresh) {
                double wrongBy = column.wrongBy(spot);
                safe &= wrongBy == 0.0;
                if (wrongBy > 0.0 && Double.isFinite(wrongBy)) {
                    worst = Math.max(worst, column.wrongShare(spot));
                    // Its neighbours are probably on the wrong side as well.
                    Objects.requireNonNull(further.get(quantities.get(i))).merge(spot, 2.0 * wrongBy, Double::sum);
                }
            }
            if (worst > 0.0) {
                reserves.merge(quantities.get(i), Math.min(RESERVE * worst, most), Double::sum);
            }
        }
        return safe;
    }

    /** Nobody needs a table that says never everywhere. */
    private void refuseEmpty(List<TableColumn> columns, List<Spot> fresh) {
        for (int i = 0; i < columns.size(); i++) {
            Quantity quantity = quantities.get(i);
            if (fresh.stream().anyMatch(columns.get(i)::gives)) {
                continue;
            }
            if (fresh.stream().anyMatch(spot -> Double.isFinite(plans.time(spot, quantity)))) {
                throw new Refusal(Refusal.Fault.of("#/longestBytes", "BUDGET_TOO_SMALL", "FAULT_TABLE_ALL_NEVER")
                        .withValue(Integer.toString(task.longest()))
                        .withHint("HINT_MORE_BYTES_OR_WARMER"));
            }
            throw new Refusal(Refusal.Fault.of(
                            "#/setpoint",
                            "TABLE_WITHOUT_TIMES",
                            quantity == Quantity.SAFE ? "FAULT_TABLE_NEVER_SAFE" : "FAULT_TABLE_NEVER_REACHED")
                    .withHint("HINT_WARMER_OR_THINNER"));
        }
    }

    private LookupTable table(TableGrid grid, List<LookupTable.Column> columns, int rounds) {
        return new LookupTable(
                terms.knowledge().version(),
                terms.knowledge().digest(),
                grid.axes().get(0),
                grid.axes().get(1),
                grid.axes().get(2),
                columns,
                CHECKS,
                rounds,
                notices,
                plans.effort());
    }
}
