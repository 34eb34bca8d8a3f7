package dev.slowpoint.heat;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;

/**
 * How temperature and conduction follow from the heat content of a material: tables over enthalpy per volume, which
 * rises through freezing and thawing while temperature hardly does, so that melting needs no special case.
 *
 * <p>The conductivity enters as its integral over temperature (the Kirchhoff transform), so that heat flow between two
 * nodes is a plain difference and no mean conductivity has to be guessed. The tables are evenly spaced and read by
 * straight lines: heat is conserved to round-off, and reading is as cheap as it can be. Beyond the ends the last
 * straight line goes on.
 */
public final class Material {

    /** Spacing of the temperature grid from which the table is made [K]. */
    private static final double GRID_K = 0.02;

    /** Cells of the table: about 0.06 K each where nothing freezes, so that its error is below 1e-6 K there. */
    private static final int CELLS = 4096;

    private final double lowest;
    private final double perCell;
    private final double[] temperaturesC;
    private final double[] kirchhoff;
    private final double smoothAboveC;

    private Material(double lowest, double perCell, double[] temperaturesC, double[] kirchhoff, double smoothAboveC) {
        this.lowest = lowest;
        this.perCell = perCell;
        this.temperaturesC = temperaturesC;
        this.kirchhoff = kirchhoff;
        this.smoothAboveC = smoothAboveC;
    }

    /**
     * A material with the same properties at every temperature; enthalpy is zero at 0 C.
     *
     * @param conductivity [W/mK], greater than zero
     * @param volumetricHeat density times specific heat [J/m3K], greater than zero
     */
    public static Material constant(double conductivity, double volumetricHeat) {
        if (!(conductivity > 0.0) || !(volumetricHeat > 0.0)) {
            throw new IllegalArgumentException("conductivity = " + conductivity + " W/mK and volumetricHeat = "
                    + volumetricHeat + " J/m3K must be greater than zero");
        }
        double span = 100.0;
        return new Material(
                0.0,
                1.0 / (volumetricHeat * span),
                new double[] {0.0, span},
                new double[] {0.0, conductivity * span},
                Double.NEGATIVE_INFINITY);
    }

    /**
     * A material whose properties vary with temperature.
     *
     * @param lowestC lower end of the range [C]
     * @param highestC upper end [C]
     * @param conductivity [W/mK] at a temperature [C], greater than zero
     * @param volumetricEnthalpy [J/m3] at a temperature [C], strictly rising
     * @param kinksC temperatures [C] at which a property bends, such as the initial freezing point
     */
    public static Material tabulated(
            double lowestC,
            double highestC,
            DoubleUnaryOperator conductivity,
            DoubleUnaryOperator volumetricEnthalpy,
            double... kinksC) {
        double[] grid = grid(lowestC, highestC, kinksC);
        double[] enthalpies = Arrays.stream(grid).map(volumetricEnthalpy).toArray();
        double[] transforms = new double[grid.length];
        for (int i = 1; i < grid.length; i++) {
            double width = grid[i] - grid[i - 1];
            double nudge = 1e-9 * width;
            // Simpson's rule, looking just inside the interval so that a jump at a kink stays outside.
            transforms[i] = transforms[i - 1]
                    + width
                            / 6.0
                            * (conductivity.applyAsDouble(grid[i - 1] + nudge)
                                    + 4.0 * conductivity.applyAsDouble(grid[i] - 0.5 * width)
                                    + conductivity.applyAsDouble(grid[i] - nudge));
        }
        double highestKink = Arrays.stream(kinksC).max().orElse(Double.NEGATIVE_INFINITY);
        return fromKnots(enthalpies, grid, transforms, highestKink);
    }

    /**
     * A material given by knots joined by straight lines; a sharp melting point is two knots of one temperature.
     *
     * @param enthalpies [J/m3], strictly rising
     * @param temperaturesC [C], never falling
     * @param kirchhoff integral of the conductivity over temperature [W/m], never falling
     * @param smoothAboveC temperature [C] above which nothing melts or freezes
     */
    public static Material fromKnots(
            double[] enthalpies, double[] temperaturesC, double[] kirchhoff, double smoothAboveC) {
        int last = enthalpies.length - 1;
        double low = enthalpies[0];
        double cell = (enthalpies[last] - low) / CELLS;
        double[] t = new double[CELLS + 1];
        double[] k = new double[CELLS + 1];
        int piece = 0;
        for (int i = 0; i <= CELLS; i++) {
            double h = low + i * cell;
            while (piece < last - 1 && enthalpies[piece + 1] <= h) {
                piece++;
            }
            if (!(enthalpies[piece + 1] > enthalpies[piece])) {
                throw new IllegalArgumentException("enthalpy must rise, got " + enthalpies[piece] + " then "
                        + enthalpies[piece + 1] + " J/m3 at " + temperaturesC[piece] + " C");
            }
            double share = (h - enthalpies[piece]) / (enthalpies[piece + 1] - enthalpies[piece]);
            t[i] = temperaturesC[piece] + share * (temperaturesC[piece + 1] - temperaturesC[piece]);
            k[i] = kirchhoff[piece] + share * (kirchhoff[piece + 1] - kirchhoff[piece]);
        }
        return new Material(low, 1.0 / cell, t, k, smoothAboveC);
    }

    /** The same material with its conductivity multiplied by {@code factor} (greater than zero) at all temperatures. */
    public Material withConductivityFactor(double factor) {
        if (!(factor > 0.0) || Double.isInfinite(factor)) {
            throw new IllegalArgumentException("conductivity factor = " + factor + " must be finite and above zero");
        }
        double[] scaled = Arrays.stream(kirchhoff).map(k -> k * factor).toArray();
        return new Material(lowest, perCell, temperaturesC, scaled, smoothAboveC);
    }

    /** Enthalpy per volume [J/m3] at a temperature [C]; inside a sharp melting point its lower end. */
    public double enthalpy(double temperatureC) {
        int cell = 0;
        int beyond = temperaturesC.length - 1;
        while (beyond - cell > 1) {
            int middle = (cell + beyond) >>> 1;
            if (temperaturesC[middle] < temperatureC) {
                cell = middle;
            } else {
                beyond = middle;
            }
        }
        double width = temperaturesC[beyond] - temperaturesC[cell];
        return lowest + (cell + (width > 0.0 ? (temperatureC - temperaturesC[cell]) / width : 0.0)) / perCell;
    }

    /** Temperature [C] at an enthalpy per volume [J/m3]. */
    public double temperatureC(double enthalpy) {
        double x = (enthalpy - lowest) * perCell;
        int cell = Math.min(Math.max((int) x, 0), temperaturesC.length - 2);
        return temperaturesC[cell] + (x - cell) * (temperaturesC[cell + 1] - temperaturesC[cell]);
    }

    /** Temperature above which nothing melts or freezes [C]; minus infinity when nothing ever does. */
    public double smoothAboveC() {
        return smoothAboveC;
    }

    private int cell(double enthalpy) {
        int cell = (int) ((enthalpy - lowest) * perCell);
        return Math.min(Math.max(cell, 0), temperaturesC.length - 2);
    }

    /**
     * Reads all that a solver needs at an enthalpy into one place of four arrays.
     *
     * @param enthalpy [J/m3]
     * @param at the place
     * @param temperatureC temperature [C]
     * @param temperatureSlope its rise per enthalpy [K m3/J]
     * @param theta integral of the conductivity over temperature [W/m]
     * @param diffusivity its rise per enthalpy [m2/s]
     */
    void read(
            double enthalpy,
            int at,
            double[] temperatureC,
            double[] temperatureSlope,
            double[] theta,
            double[] diffusivity) {
        double x = (enthalpy - lowest) * perCell;
        int cell = Math.min(Math.max((int) x, 0), temperaturesC.length - 2);
        double into = x - cell;
        double t = temperaturesC[cell];
        double rise = temperaturesC[cell + 1] - t;
        temperatureC[at] = t + into * rise;
        temperatureSlope[at] = rise * perCell;
        double k = kirchhoff[cell];
        double gain = kirchhoff[cell + 1] - k;
        theta[at] = k + into * gain;
        diffusivity[at] = gain * perCell;
    }

    /** Integral of the conductivity over temperature [W/m] at an enthalpy per volume [J/m3]. */
    double kirchhoff(double enthalpy) {
        double x = (enthalpy - lowest) * perCell;
        int cell = Math.min(Math.max((int) x, 0), temperaturesC.length - 2);
        return kirchhoff[cell] + (x - cell) * (kirchhoff[cell + 1] - kirchhoff[cell]);
    }

    /** Conductivity [W/mK] at a temperature [C]. */
    public double conductivity(double temperatureC) {
        int cell = cell(enthalpy(temperatureC));
        return (kirchhoff[cell + 1] - kirchhoff[cell]) / (temperaturesC[cell + 1] - temperaturesC[cell]);
    }

    private static double[] grid(double lowestC, double highestC, double[] kinksC) {
        if (!(highestC > lowestC)) {
            throw new IllegalArgumentException("range from " + lowestC + " C to " + highestC + " C is empty");
        }
        double[] fixed = Arrays.stream(kinksC)
                .filter(k -> k > lowestC && k < highestC)
                .sorted()
                .toArray();
        double[] ends = new double[fixed.length + 2];
        ends[0] = lowestC;
        System.arraycopy(fixed, 0, ends, 1, fixed.length);
        ends[ends.length - 1] = highestC;
        double[] grid = {lowestC};
        for (int e = 1; e < ends.length; e++) {
            int parts = Math.max(1, (int) Math.ceil((ends[e] - ends[e - 1]) / GRID_K));
            int from = grid.length;
            grid = Arrays.copyOf(grid, from + parts);
            for (int i = 1; i <= parts; i++) {
                grid[from + i - 1] = ends[e - 1] + (ends[e] - ends[e - 1]) * i / parts;
            }
        }
        return grid;
    }
}
