package dev.slowpoint.plan;

import dev.slowpoint.plan.LookupTable.Quantity;
import dev.slowpoint.plan.TableGrid.Spot;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Finds where a grid is too coarse. Along five lines through the ranges for each axis, the plan in the middle of two planes
 * is held against the value between them.
 */
final class TableAxes {

    /** Steps that planes lie on: a quarter of a millimetre and eighths of a kelvin, short in binary (our own choice). */
    private static final double[] STEPS = {0.25e-3, 0.125, 0.125};

    /** Where the lines cross the two other axes, as shares of their ranges. */
    private static final double[][] LINES = {{0.1, 0.1}, {0.1, 0.9}, {0.5, 0.5}, {0.9, 0.1}, {0.9, 0.9}};

    /** A share of a shorter time than this says little [s]. */
    private static final double SHORTEST = 60.0;

    /** What losing a whole range to never counts as (our own choice). */
    private static final double LOST = 0.5;

    private final LookupTableTask task;
    private final TablePlans plans;
    private final List<Quantity> quantities;
    private final double bendC;
    private final Map<Gap, Misfit> found = new HashMap<>();

    TableAxes(LookupTableTask task, TablePlans plans, List<Quantity> quantities, double startBy) {
        double freezingC = task.cook().food().freezingPointC();
        this.bendC = task.frozen() ? freezingC - startBy : freezingC + startBy;
        this.task = task;
        this.plans = plans;
        this.quantities = quantities;
    }

    /**
     * Two neighbouring planes, and the one to put between them.
     *
     * @param axis counted from zero
     * @param low the one
     * @param middle that to put between, not between where they are as near as may be
     * @param high the other
     */
    record Gap(int axis, double low, double middle, double high) {

        boolean splits() {
            return middle - low > 0.5 * STEPS[axis] && high - middle > 0.5 * STEPS[axis];
        }
    }

    /**
     * A gap. Sizes are split in the same ratio, starts where the tolerance of the start reaches the freezing point, because
     * times bend there.
     */
    Gap gap(int axis, double low, double high) {
        double step = STEPS[axis];
        double between = axis == 0 ? Math.sqrt(low * high) : 0.5 * (low + high);
        if (axis == 2 && bendC > low && bendC < high) {
            between = bendC;
        }
        return new Gap(axis, low, Math.rint(between / step) * step, high);
    }

    /**
     * How badly a gap fits.
     *
     * @param error the largest between its planes, as a share of the time
     * @param felt the mean over the quantities, as far as it is felt over the whole axis
     */
    record Misfit(double error, double felt) {}

    Misfit misfit(Gap gap) {
        Misfit known = found.get(gap);
        if (known == null) {
            known = computed(gap);
            found.put(gap, known);
        }
        return known;
    }

    private Misfit computed(Gap gap) {
        List<List<Spot>> lines = new ArrayList<>();
        List<Spot> all = new ArrayList<>();
        for (double[] line : LINES) {
            Spot base = base(gap.axis(), line);
            List<Spot> three = List.of(
                    base.with(gap.axis(), gap.low()),
                    base.with(gap.axis(), gap.middle()),
                    base.with(gap.axis(), gap.high()));
            lines.add(three);
            all.addAll(three);
        }
        plans.solve(all);
        LookupTableTask.Ends ends = task.axis(gap.axis());
        double share = (gap.high() - gap.low()) / (ends.to() - ends.from());
        double error = 0.0;
        double felt = 0.0;
        for (Quantity quantity : quantities) {
            double worst = 0.0;
            double lost = 0.0;
            for (List<Spot> three : lines) {
                double one = error(gap, three, plans, quantity);
                lost = Double.isInfinite(one) ? LOST : lost;
                worst = Double.isInfinite(one) ? worst : Math.max(worst, one);
            }
            error = Math.max(error, Math.max(worst, lost * share));
            felt += Math.max(worst, lost) * share / quantities.size();
        }
        return new Misfit(error, felt);
    }

    /**
     * As a share of the time; infinite where never lies at one of them and not at another. On the wrong side the planes will
     * be moved by it, which is felt most where times are shortest.
     */
    private static double error(Gap gap, List<Spot> three, TablePlans plans, Quantity quantity) {
        double low = plans.time(three.get(0), quantity);
        double middle = plans.time(three.get(1), quantity);
        double high = plans.time(three.get(2), quantity);
        if (Double.isInfinite(low) && Double.isInfinite(middle) && Double.isInfinite(high)) {
            return 0.0;
        }
        if (Double.isInfinite(low + middle + high)) {
            return Double.POSITIVE_INFINITY;
        }
        double from = TableGrid.coordinate(gap.axis(), gap.low());
        double to = TableGrid.coordinate(gap.axis(), gap.high());
        double share = (TableGrid.coordinate(gap.axis(), gap.middle()) - from) / (to - from);
        double above = low + share * (high - low) - middle;
        boolean wrong = quantity.awaited() == above < 0.0;
        return Math.abs(above) / Math.max(SHORTEST, wrong ? Math.min(middle, Math.min(low, high)) : middle);
    }

    private Spot base(int axis, double[] line) {
        Spot base = new Spot(
                task.across().from(), task.setpointC().from(), task.startC().from());
        int next = 0;
        for (int other = 0; other < 3; other++) {
            if (other != axis) {
                LookupTableTask.Ends ends = task.axis(other);
                base = base.with(other, ends.from() + line[next++] * (ends.to() - ends.from()));
            }
        }
        return base;
    }
}
