package dev.slowpoint.safety;

import dev.slowpoint.food.Provenance;
import dev.slowpoint.heat.Exp;
import dev.slowpoint.heat.PointHistory;
import dev.slowpoint.heat.RateLaw;
import java.util.Arrays;

/**
 * The time that one column of a published table asks for, against the core temperature.
 *
 * <p>Two readings of the same rows: the legal one, by which a row is met when the core was at or above its temperature
 * for its time, with no credit for the way up; and the rate that follows from it, integrated like any kill. Rows of zero
 * time ("instant") end the table: the last row with a time is held until the instant row is reached, and the rate stays
 * at that row for good.
 */
public final class RequiredTime {

    /** Shortest time [s] by which the rows of a table are ranked, so that an instant row has a rank as well. */
    private static final double SHORTEST_RANKED = 1.0;

    private final String table;
    private final double target;
    private final double[] temperaturesC;
    private final double[] seconds;
    private final double[] logSeconds;
    private final int lastTimed;
    private final Provenance provenance;

    /**
     * Rows of one column.
     *
     * @param table id of the table
     * @param target decimal reductions that each row gives, or one whole treatment
     * @param temperaturesC [C] rising
     * @param seconds [s] never rising; the first above zero, zero for an instant row
     * @param provenance where the table was read
     */
    RequiredTime(String table, double target, double[] temperaturesC, double[] seconds, Provenance provenance) {
        if (temperaturesC.length == 0 || temperaturesC.length != seconds.length || !(seconds[0] > 0.0)) {
            throw new IllegalArgumentException("time table " + table + " needs rows, and a time in the lowest");
        }
        for (int i = 1; i < seconds.length; i++) {
            if (!(temperaturesC[i] > temperaturesC[i - 1] && seconds[i] <= seconds[i - 1] && seconds[i] >= 0.0)) {
                throw new IllegalArgumentException("time table " + table + ": the row at " + temperaturesC[i]
                        + " C must be warmer than the one before and ask for no more time");
            }
        }
        this.table = table;
        this.target = target;
        this.temperaturesC = temperaturesC.clone();
        this.seconds = seconds.clone();
        int last = 0;
        while (last + 1 < seconds.length && seconds[last + 1] > 0.0) {
            last++;
        }
        this.lastTimed = last;
        this.logSeconds = new double[last + 1];
        for (int i = 0; i <= last; i++) {
            logSeconds[i] = StrictMath.log(seconds[i]);
        }
        this.provenance = provenance;
    }

    /** Id of the table. */
    public String table() {
        return table;
    }

    /** Decimal reductions that each row gives, or one whole treatment. */
    public double target() {
        return target;
    }

    /** Where the table was read. */
    public Provenance provenance() {
        return provenance;
    }

    /** Temperature of the lowest row [C]; the table supports nothing below it. */
    public double lowestC() {
        return temperaturesC[0];
    }

    /** Time [s] of the highest row at or below a temperature; infinity below the table. */
    public double atRowBelowS(double temperatureC) {
        int row = rowBelow(temperatureC);
        return row < 0 ? Double.POSITIVE_INFINITY : seconds[row];
    }

    /**
     * Time [s] with its logarithm linear in temperature between two rows; infinity below the table, zero from the first
     * instant row on.
     */
    public double interpolatedS(double temperatureC) {
        int row = rowBelow(temperatureC);
        if (row < 0) {
            return Double.POSITIVE_INFINITY;
        }
        return row > lastTimed ? 0.0 : timedS(row, temperatureC);
    }

    /** Decimal reductions (or whole treatments) per second: the target over the interpolated time. */
    public RateLaw rate() {
        return new Rate(this);
    }

    /**
     * The table with one more row, this far below the lowest, by the slope of the two lowest rows. For nominal estimates
     * only: a bath set exactly to the lowest row approaches it for ever.
     */
    RequiredTime extendedBy(double belowK) {
        if (belowK == 0.0) {
            return this;
        }
        int n = temperaturesC.length;
        double[] t = new double[n + 1];
        double[] s = new double[n + 1];
        System.arraycopy(temperaturesC, 0, t, 1, n);
        System.arraycopy(seconds, 0, s, 1, n);
        t[0] = temperaturesC[0] - belowK;
        s[0] = lastTimed == 0
                ? seconds[0]
                : Exp.exp(logSeconds[0]
                        + belowK * (logSeconds[0] - logSeconds[1]) / (temperaturesC[1] - temperaturesC[0]));
        return new RequiredTime(table, target, t, s, provenance);
    }

    /**
     * The legal view of a history at a time: the row that was met, or is nearest to being met, and the first time at
     * which any row was met.
     */
    TableView view(PointHistory core, CreditedTime credited, ReadingError error, double until) {
        int best = 0;
        double bestRank = -1.0;
        double bestDwell = 0.0;
        double metAt = Double.POSITIVE_INFINITY;
        double end = core.end();
        double hottestC = core.highestC();
        double[] levels = new double[temperaturesC.length];
        for (int i = 0; i < levels.length; i++) {
            levels[i] = error.readingFor(temperaturesC[i]);
        }
        double[] dwells = credited.dwells(core, levels, until);
        // From the hottest row down: its time is the shortest, and a colder row that asks for more than the best so far
        // cannot be met sooner.
        for (int i = temperaturesC.length - 1; i >= 0; i--) {
            double level = levels[i];
            if (level > hottestC) {
                continue;
            }
            double dwell = dwells[i];
            double rank = dwell / Math.max(seconds[i], SHORTEST_RANKED);
            if (seconds[i] == 0.0 && core.firstAtOrAbove(level) <= until) {
                // An instant row is met as soon as it is reached, however short the dwell.
                rank = Math.max(rank, 1.0);
            }
            if (rank >= bestRank) {
                best = i;
                bestRank = rank;
                bestDwell = dwell;
            }
            // A second less than asked for at the end cannot have been enough before, whatever the rounding.
            boolean neverMet = until >= end && dwell < seconds[i] - 1.0;
            if (neverMet || metAt <= core.start() + seconds[i]) {
                continue;
            }
            double met = credited.timeOfDwell(core, level, seconds[i], Math.min(metAt, end));
            metAt = Math.min(metAt, met);
        }
        return new TableView(table, temperaturesC[best], seconds[best], bestDwell, metAt);
    }

    private int rowBelow(double temperatureC) {
        int found = Arrays.binarySearch(temperaturesC, temperatureC);
        return found >= 0 ? found : -found - 2;
    }

    private double timedS(int row, double temperatureC) {
        if (row >= lastTimed) {
            return seconds[lastTimed];
        }
        double share = (temperatureC - temperaturesC[row]) / (temperaturesC[row + 1] - temperaturesC[row]);
        return Exp.exp(logSeconds[row] + share * (logSeconds[row + 1] - logSeconds[row]));
    }

    private record Rate(RequiredTime time) implements RateLaw {

        @Override
        public double perSecond(double temperatureC) {
            int row = time.rowBelow(temperatureC);
            return row < 0 ? 0.0 : time.target / time.timedS(row, temperatureC);
        }

        @Override
        public double[] breaksC() {
            return Arrays.copyOf(time.temperaturesC, time.lastTimed + 1);
        }
    }
}
