package dev.slowpoint.plan;

import dev.slowpoint.plan.LookupTable.Quantity;
import dev.slowpoint.plan.TableGrid.Spot;
import dev.slowpoint.plan.TableGrid.Weights;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;

/**
 * One quantity at the nodes of a grid, moved to the safe side: what is waited for is raised, what the food must be out by is
 * lowered, until the value between nodes is on that side of every plan known.
 */
final class TableColumn {

    /** More than a controller loses that computes in 32-bit floating point [s] (our own choice). */
    private static final double ROUNDING = 0.5;

    /** A share of a shorter time than this says little [s] (our own choice). */
    private static final double SHORTEST = 60.0;

    private final Quantity quantity;
    private final TableGrid grid;
    private final TablePlans plans;
    private final double[] values;

    /**
     * The column over the plans that are known; those at the nodes must be.
     *
     * @param reserve kept beyond every plan, as a share of its time
     * @param further kept beyond plans that an earlier table was on the wrong side of [s]
     */
    TableColumn(Quantity quantity, TableGrid grid, TablePlans plans, double reserve, Map<Spot, Double> further) {
        this.quantity = quantity;
        this.grid = grid;
        this.plans = plans;
        this.values = new double[grid.nodes()];
        List<Spot> spots = grid.spots();
        for (int i = 0; i < values.length; i++) {
            double time = plans.time(spots.get(i), quantity);
            values[i] = quantity.awaited() ? Math.ceil(time) : Math.floor(time);
        }
        mend(reserve, further);
        if (quantity.awaited()) {
            neverSooner();
        }
    }

    private record Gap(Weights weights, double wanted, double missing) {}

    /** What misses most is mended first, and often mends its neighbours. */
    private void mend(double reserve, Map<Spot, Double> further) {
        List<Gap> gaps = new ArrayList<>();
        for (Spot spot : plans.spots()) {
            Weights weights = grid.weights(spot);
            double time = plans.time(spot, quantity);
            double beyond = time * reserve + ROUNDING + further.getOrDefault(spot, 0.0);
            double wanted = quantity.awaited() ? time + beyond : Math.max(0.0, time - beyond);
            double missing = missing(weights.of(values), wanted);
            if (missing > 0.0) {
                gaps.add(new Gap(weights, wanted, missing));
            }
        }
        gaps.sort(Comparator.comparingDouble(Gap::missing).reversed());
        gaps.forEach(this::mend);
    }

    private double missing(double between, double wanted) {
        if (Double.isInfinite(between)) {
            return 0.0;
        }
        return quantity.awaited() ? wanted - between : between - wanted;
    }

    /** Moves the nodes around a point, each as its weight says, so that their squares together move least. */
    private void mend(Gap gap) {
        Weights weights = gap.weights();
        double missing = missing(weights.of(values), gap.wanted());
        if (missing <= 0.0) {
            return;
        }
        if (Double.isInfinite(missing)) {
            values[weights.nearest()] = Double.POSITIVE_INFINITY;
            return;
        }
        for (int i = 0; i < weights.count(); i++) {
            double by = Math.ceil(missing * weights.weight(i) / weights.squares());
            int node = weights.node(i);
            values[node] = quantity.awaited() ? values[node] + by : Math.max(0.0, values[node] - by);
        }
        if (missing(weights.of(values), gap.wanted()) > 0.0) {
            // Some node was lowered to nothing and could not do its share.
            for (int i = 0; i < weights.count(); i++) {
                values[weights.node(i)] = Math.min(values[weights.node(i)], Math.floor(gap.wanted()));
            }
        }
    }

    /** A thicker piece, and one that starts colder, is never sooner. */
    private void neverSooner() {
        int sizes = grid.axes().get(0).size();
        int setpoints = grid.axes().get(1).size();
        int starts = grid.axes().get(2).size();
        for (int i = 0; i < sizes; i++) {
            for (int j = 0; j < setpoints; j++) {
                for (int k = starts - 1; k >= 0; k--) {
                    int node = grid.node(i, j, k);
                    if (i > 0) {
                        values[node] = Math.max(values[node], values[grid.node(i - 1, j, k)]);
                    }
                    if (k + 1 < starts) {
                        values[node] = Math.max(values[node], values[grid.node(i, j, k + 1)]);
                    }
                }
            }
        }
    }

    /** By how much the table is on the wrong side of a plan [s], infinite where it gives a time and the plan none. */
    double wrongBy(Spot spot) {
        double time = plans.time(spot, quantity);
        return Math.max(0.0, missing(grid.weights(spot).of(values), time));
    }

    /** The same as a share of the time. */
    double wrongShare(Spot spot) {
        return wrongBy(spot) / Math.max(SHORTEST, plans.time(spot, quantity));
    }

    /** Whether the table gives a time at a point. */
    boolean gives(Spot spot) {
        return Double.isFinite(grid.weights(spot).of(values));
    }

    /** How far it is from the plans at points that were solved. */
    LookupTable.Error error(List<Spot> spots) {
        double[] seconds = new double[spots.size()];
        double[] shares = new double[spots.size()];
        int n = 0;
        int needless = 0;
        for (Spot spot : spots) {
            double time = plans.time(spot, quantity);
            if (Double.isInfinite(time)) {
                continue;
            }
            double between = grid.weights(spot).of(values);
            if (Double.isInfinite(between)) {
                needless++;
                continue;
            }
            seconds[n] = Math.abs(between - time);
            shares[n] = seconds[n] / Math.max(SHORTEST, time);
            n++;
        }
        Arrays.sort(seconds, 0, n);
        Arrays.sort(shares, 0, n);
        int usual = Math.max(0, (int) Math.ceil(0.95 * n) - 1);
        return new LookupTable.Error(
                n == 0 ? 0.0 : seconds[n - 1],
                n == 0 ? 0.0 : shares[n - 1],
                n == 0 ? 0.0 : seconds[usual],
                n == 0 ? 0.0 : shares[usual],
                (double) needless / spots.size());
    }

    /** As it is told. */
    LookupTable.Column told(LookupTable.Error error) {
        return new LookupTable.Column(
                quantity,
                Arrays.stream(values)
                        .mapToObj(v -> Double.isInfinite(v) ? LookupTable.NEVER : (int) v)
                        .toList(),
                error);
    }
}
