package dev.slowpoint.heat;

import java.util.Arrays;

/**
 * A plain solution in two or three dimensions for bodies with ends, by which the stand-in is checked: cell-centred finite
 * volumes on an even grid over one eighth of a brick, or one quarter of a cylinder's cross-section, enthalpy as the unknown,
 * small explicit steps. Slow, and nothing in it is shared with the solver but the tables of the material.
 */
final class FiniteVolumeReference {

    private final double[] halves;
    private final int[] cells;
    private final boolean round;
    private final Material material;

    private FiniteVolumeReference(double[] halves, int[] cells, boolean round, Material material) {
        this.halves = halves;
        this.cells = cells;
        this.round = round;
        this.material = material;
    }

    /** A brick by its half sizes. */
    static FiniteVolumeReference brick(double[] halves, int[] cells, Material material) {
        return new FiniteVolumeReference(halves, cells, false, material);
    }

    /** A cylinder by radius and half length. */
    static FiniteVolumeReference cylinder(double radius, double halfLength, int radial, int axial, Material material) {
        return new FiniteVolumeReference(
                new double[] {radius, halfLength, 1.0}, new int[] {radial, axial, 1}, true, material);
    }

    /** Temperature of the middle [C] over time, even start, constant surroundings, one pair of values a minute. */
    PointHistory core(double startC, Surroundings surroundings, double duration) {
        int nx = cells[0];
        int ny = cells[1];
        int nz = cells[2];
        int n = nx * ny * nz;
        double[] h = new double[n];
        Arrays.fill(h, material.enthalpy(startC));
        double[] theta = new double[n];
        double[] t = new double[n];
        double[] gain = new double[n];
        double[] d = {halves[0] / nx, halves[1] / ny, halves[2] / nz};
        int axes = round ? 2 : 3;
        double stiffness = 0.0;
        for (int a = 0; a < axes; a++) {
            stiffness += 2.0 / (d[a] * d[a]);
        }
        double fastest = Math.max(diffusivity(startC), diffusivity(surroundings.temperatureC()));
        double dt = 0.8 / (stiffness * fastest);
        int samples = (int) (duration / 60.0) + 1;
        double[] times = new double[samples];
        double[] coreC = new double[samples];
        double time = 0.0;
        for (int s = 0; s < samples; s++) {
            times[s] = s * 60.0;
            while (time < times[s] - 1e-9) {
                double step = Math.min(dt, times[s] - time);
                for (int i = 0; i < n; i++) {
                    t[i] = material.temperatureC(h[i]);
                    theta[i] = material.kirchhoff(h[i]);
                    gain[i] = 0.0;
                }
                exchange(theta, t, gain, d, surroundings, axes);
                for (int i = 0; i < n; i++) {
                    h[i] += step * gain[i];
                }
                time += step;
            }
            coreC[s] = middle(h, nx, ny);
        }
        double[] slopes = new double[samples];
        for (int s = 1; s < samples - 1; s++) {
            slopes[s] = (coreC[s + 1] - coreC[s - 1]) / 120.0;
        }
        return new PointHistory(times, coreC, slopes);
    }

    private double diffusivity(double temperatureC) {
        double step = 0.05;
        return material.conductivity(temperatureC)
                * 2.0
                * step
                / (material.enthalpy(temperatureC + step) - material.enthalpy(temperatureC - step));
    }

    private void exchange(double[] theta, double[] t, double[] gain, double[] d, Surroundings surroundings, int axes) {
        int[] strides = {1, cells[0], cells[0] * cells[1]};
        int n = theta.length;
        for (int axis = 0; axis < axes; axis++) {
            int stride = strides[axis];
            int count = cells[axis];
            boolean radial = round && axis == 0;
            for (int i = 0; i < n; i++) {
                int at = i / stride % count;
                double outerArea = radial ? (at + 1.0) / (at + 0.5) : 1.0;
                if (at + 1 < count) {
                    double flow = (theta[i + stride] - theta[i]) / (d[axis] * d[axis]);
                    double innerArea = radial ? (at + 1.0) / (at + 1.5) : 1.0;
                    gain[i] += flow * outerArea;
                    gain[i + stride] -= flow * innerArea;
                } else {
                    double resistance =
                            1.0 / surroundings.filmCoefficient() + 0.5 * d[axis] / material.conductivity(t[i]);
                    gain[i] += (surroundings.temperatureC() - t[i]) / resistance / d[axis] * outerArea;
                }
            }
        }
    }

    /** In the middle itself, from the two cells next to it along each axis, where the field is even. */
    private double middle(double[] h, int nx, int ny) {
        double first = material.temperatureC(h[0]);
        double sum = first;
        int[] strides = {1, nx, nx * ny};
        for (int axis = 0; axis < (round ? 2 : 3); axis++) {
            sum += (first - material.temperatureC(h[strides[axis]])) / 8.0;
        }
        return sum;
    }
}
