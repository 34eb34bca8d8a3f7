package dev.slowpoint.safety;

import dev.slowpoint.food.Provenance;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;

/**
 * A published table of core temperatures and the time each must be held, with a column for each fat content where the
 * table has them.
 */
public final class TimeTable {

    private final String id;
    private final String product;
    private final Hazard hazard;
    private final double target;
    private final double[] temperaturesC;
    private final double[] fatPercents;
    private final double[][] seconds;
    private final Provenance provenance;

    /**
     * A table from its cells. Where a longer time stands at less fat, it is carried over: FSIS-GD-2021-14 falls slightly
     * as fat rises in three places (chicken 151 F, turkey 150 and 151 F), and the running maximum governs.
     *
     * @param id unique in a parameter set
     * @param product what the table is for
     * @param hazard what is killed
     * @param target decimal reductions that each row gives, or one whole treatment
     * @param temperaturesC [C] rising; in a table printed in Fahrenheit the exact value, not the rounded print
     * @param fatPercents [%] rising, one a column; empty for a table with one column for any fat
     * @param seconds [s] a column of rows for each fat; zero for an instant row
     * @param provenance where the table was read
     */
    public TimeTable(
            String id,
            String product,
            Hazard hazard,
            double target,
            double[] temperaturesC,
            double[] fatPercents,
            double[][] seconds,
            Provenance provenance) {
        if (seconds.length != Math.max(1, fatPercents.length) || !(target > 0.0)) {
            throw new IllegalArgumentException("time table " + id + ": " + seconds.length + " columns for "
                    + fatPercents.length + " fat contents, target " + target);
        }
        this.id = id;
        this.product = product;
        this.hazard = hazard;
        this.target = target;
        this.temperaturesC = temperaturesC.clone();
        this.fatPercents = fatPercents.clone();
        this.provenance = provenance;
        this.seconds = new double[seconds.length][];
        for (int c = 0; c < seconds.length; c++) {
            this.seconds[c] = seconds[c].clone();
            for (int r = 0; c > 0 && r < temperaturesC.length; r++) {
                this.seconds[c][r] = Math.max(this.seconds[c][r], this.seconds[c - 1][r]);
            }
        }
        column(OptionalDouble.empty());
    }

    /** The longer time of two tables in every cell: what FSIS-GD-2021-14 p. 36 asks for birds without a table. */
    public static TimeTable longerOf(TimeTable a, TimeTable b) {
        if (!Arrays.equals(a.temperaturesC, b.temperaturesC)
                || !Arrays.equals(a.fatPercents, b.fatPercents)
                || a.target != b.target
                || a.hazard != b.hazard) {
            throw new IllegalArgumentException(
                    "time tables " + a.id + " and " + b.id + " differ in rows, columns, hazard or target");
        }
        double[][] longer = new double[a.seconds.length][];
        for (int c = 0; c < longer.length; c++) {
            longer[c] = a.seconds[c].clone();
            for (int r = 0; r < longer[c].length; r++) {
                longer[c][r] = Math.max(longer[c][r], b.seconds[c][r]);
            }
        }
        return new TimeTable(
                a.id + "+" + b.id,
                a.product + ", " + b.product,
                a.hazard,
                a.target,
                a.temperaturesC,
                a.fatPercents,
                longer,
                new Provenance(a.provenance.mark(), a.provenance.source() + "; " + b.provenance.source()));
    }

    /** Unique in a parameter set. */
    public String id() {
        return id;
    }

    /** What the table is for. */
    public String product() {
        return product;
    }

    /** What is killed. */
    public Hazard hazard() {
        return hazard;
    }

    /** Decimal reductions that each row gives, or one whole treatment. */
    public double target() {
        return target;
    }

    /** Where the table was read. */
    public Provenance provenance() {
        return provenance;
    }

    /** The fat contents [%] of the columns, rising; empty for a table with one column for any fat. */
    public List<Double> fatPercents() {
        List<Double> fats = new ArrayList<>();
        for (double fat : fatPercents) {
            fats.add(fat);
        }
        return List.copyOf(fats);
    }

    /**
     * The times for a food. Between two columns the fatter one counts; for unknown fat, and for fat above the last
     * column, the last one (FSIS-GD-2021-14 p. 39).
     *
     * @param fatPercent [%] of the mass
     */
    public RequiredTime column(OptionalDouble fatPercent) {
        if (fatPercent.isPresent() && !(fatPercent.getAsDouble() >= 0.0 && fatPercent.getAsDouble() <= 100.0)) {
            throw new IllegalArgumentException("fat " + fatPercent.getAsDouble() + " % must lie between 0 and 100");
        }
        int column = seconds.length - 1;
        while (fatPercent.isPresent() && column > 0 && fatPercents[column - 1] >= fatPercent.getAsDouble()) {
            column--;
        }
        return new RequiredTime(id, target, temperaturesC, seconds[column], provenance);
    }
}
