package dev.slowpoint.heat;

import java.util.Arrays;
import java.util.Optional;

/**
 * The temperature field of one body over time, as the solver left it: all nodes at every accepted step, with slopes.
 *
 * <p>Node 0 is the slowest-heating point, the last node the surface. Nodes stand for shares of the volume that add up
 * to one.
 */
public final class TemperatureHistory {

    private final double[] times;
    private final double[] temperaturesC;
    private final double[] slopes;
    private final double[] positions;
    private final double[] volumeShares;
    private final double[] sparseShares;
    private final double shapeExponent;
    private final double reach;
    private final boolean twoFaced;
    private final double[] stageEnds;
    private final Optional<PointHistory> bath;
    private final HeatBalance heatBalance;
    private final HeatTaken heatTaken;

    /**
     * A history from samples.
     *
     * @param times [s], never falling
     * @param temperaturesC [C], node after node for each sample
     * @param slopes [K/s], in the same order
     * @param positions of the nodes, from 0 at the slowest-heating point to 1 at the surface
     * @param volumeShares of the nodes, adding up to one
     * @param sparseShares by which few of them stand for the mean of a smooth field
     * @param shapeExponent of the body
     * @param reach length over which the positions run [m]
     * @param twoFaced whether the first node is a face as well, and the slowest-heating point lies in between
     * @param stageEnds time at which each stage ended [s]
     * @param bath temperature of the water, where it had one of its own
     * @param heatBalance from the first sample to the last
     * @param heatTaken what the body took up over time
     */
    TemperatureHistory(
            double[] times,
            double[] temperaturesC,
            double[] slopes,
            double[] positions,
            double[] volumeShares,
            double[] sparseShares,
            double shapeExponent,
            double reach,
            boolean twoFaced,
            double[] stageEnds,
            Optional<PointHistory> bath,
            HeatBalance heatBalance,
            HeatTaken heatTaken) {
        this.times = times;
        this.temperaturesC = temperaturesC;
        this.slopes = slopes;
        this.positions = positions;
        this.volumeShares = volumeShares;
        this.sparseShares = sparseShares;
        this.shapeExponent = shapeExponent;
        this.reach = reach;
        this.twoFaced = twoFaced;
        this.stageEnds = stageEnds;
        this.bath = bath;
        this.heatBalance = heatBalance;
        this.heatTaken = heatTaken;
    }

    /** The same history, the body warmer all through by a difference [K]; the account of the heat is left as it was. */
    public TemperatureHistory warmerBy(double differenceK) {
        double[] warmer = temperaturesC.clone();
        for (int i = 0; i < warmer.length; i++) {
            warmer[i] += differenceK;
        }
        return new TemperatureHistory(
                times,
                warmer,
                slopes,
                positions,
                volumeShares,
                sparseShares,
                shapeExponent,
                reach,
                twoFaced,
                stageEnds,
                bath,
                heatBalance,
                heatTaken);
    }

    /** Number of samples. */
    public int samples() {
        return times.length;
    }

    /** Number of nodes. */
    public int nodes() {
        return positions.length;
    }

    /** Time of a sample [s]. */
    public double time(int sample) {
        return times[sample];
    }

    /** End of the history [s]. */
    public double end() {
        return times[times.length - 1];
    }

    /** Position of a node: 0 at the slowest-heating point, 1 at the surface. */
    public double position(int node) {
        return positions[node];
    }

    /** Share of the volume that a node stands for. */
    public double volumeShare(int node) {
        return volumeShares[node];
    }

    /** Temperature of a node at a sample [C]. */
    public double temperatureC(int sample, int node) {
        return temperaturesC[sample * positions.length + node];
    }

    /** The heat account from the first sample to the last. */
    public HeatBalance heatBalance() {
        return heatBalance;
    }

    /** The heat that the body took up over time, through all its faces. */
    public HeatTaken heatTaken() {
        return heatTaken;
    }

    /** What one node went through. */
    public PointHistory node(int node) {
        return new PointHistory(times, temperaturesC, slopes, node, positions.length);
    }

    /** The node in the middle of the body. */
    public int coreNode() {
        return twoFaced ? positions.length / 2 : 0;
    }

    /** What the middle of the body went through: its slowest-heating point, unless its faces see different things. */
    public PointHistory core() {
        return node(coreNode());
    }

    /** What the surface went through; of a slab with two faces the near one. */
    public PointHistory surface() {
        return node(positions.length - 1);
    }

    /**
     * The slowest-heating point: the middle of a body heated alike on all sides; where the faces of a slab see different
     * things, its coldest point at each moment.
     */
    public PointHistory slowest() {
        return twoFaced ? coldest() : core();
    }

    /**
     * The coldest point of the body at each moment. What it has been given, every point has; while a body is heated alike on
     * all sides it is the core.
     */
    public PointHistory coldest() {
        return extreme(1.0);
    }

    /** The warmest point of the body at each moment: while it cools alike on all sides, the core. */
    public PointHistory warmest() {
        return extreme(-1.0);
    }

    private PointHistory extreme(double sign) {
        int n = positions.length;
        double[] t = new double[times.length];
        double[] s = new double[times.length];
        for (int i = 0; i < times.length; i++) {
            int found = i * n;
            for (int j = found + 1; j < (i + 1) * n; j++) {
                if (sign * temperaturesC[j] < sign * temperaturesC[found]) {
                    found = j;
                }
            }
            t[i] = temperaturesC[found];
            s[i] = slopes[found];
        }
        return new PointHistory(times, t, s, 0, 1);
    }

    /** Time [s] at which a stage (counted from 0) ended. */
    public double stageEnd(int stage) {
        return stageEnds[stage];
    }

    /** Temperature of the water over time, where it had one of its own in every stage. */
    public Optional<PointHistory> bath() {
        return bath;
    }

    /**
     * How deep below the surface the body was ever as warm as a level.
     *
     * @param levelC [C]
     * @return depth from the (near) surface [m], zero when even the surface stayed below, the whole reach when all of it was
     */
    public double depthEverAtOrAbove(double levelC) {
        int n = positions.length;
        double outer = Double.NaN;
        for (int j = n - 1; j >= 0; j--) {
            double peakC = node(j).highestC();
            if (peakC < levelC) {
                if (j == n - 1) {
                    return 0.0;
                }
                double share = (levelC - peakC) / (outer - peakC);
                return reach * (1.0 - positions[j] - share * (positions[j + 1] - positions[j]));
            }
            outer = peakC;
        }
        return reach;
    }

    /** The volume mean of the temperature. */
    public PointHistory mean() {
        int n = positions.length;
        double[] t = new double[times.length];
        double[] s = new double[times.length];
        for (int i = 0; i < times.length; i++) {
            for (int j = 0; j < n; j++) {
                t[i] += volumeShares[j] * temperaturesC[i * n + j];
                s[i] += volumeShares[j] * slopes[i * n + j];
            }
        }
        return new PointHistory(times, t, s, 0, 1);
    }

    /** The volume mean of the doses of all nodes. */
    public Dose meanDose(RateLaw law) {
        return weightedDose(law, sparseShares);
    }

    /**
     * The mean of the doses of all nodes over the shell between two positions, such as a yolk or a white.
     *
     * @param from 0 (the slowest-heating point) or more
     * @param to more than {@code from}, at most 1 (the surface)
     */
    public Dose meanDose(RateLaw law, double from, double to) {
        return weightedDose(law, shellShares(from, to));
    }

    /** Weights of the nodes, adding up to one, for a mean over the shell between two positions. */
    public double[] shellShares(double from, double to) {
        if (!(from >= 0.0 && to > from && to <= 1.0)) {
            throw new IllegalArgumentException("a shell runs from 0 or more to 1 or less, got " + from + " to " + to);
        }
        int n = positions.length;
        double[] shares = new double[n];
        double volume = 0.0;
        for (int j = 0; j + 1 < n; j++) {
            double left = Math.max(positions[j], from);
            double right = Math.min(positions[j + 1], to);
            if (right <= left) {
                continue;
            }
            // Simpson's rule is exact here for straight lines between nodes and whole shape exponents up to two.
            double[] x = {left, 0.5 * (left + right), right};
            double[] w = {1.0 / 6.0, 4.0 / 6.0, 1.0 / 6.0};
            for (int q = 0; q < 3; q++) {
                double part = w[q] * (right - left) * StrictMath.pow(x[q], shapeExponent);
                double share = (x[q] - positions[j]) / (positions[j + 1] - positions[j]);
                shares[j] += part * (1.0 - share);
                shares[j + 1] += part * share;
                volume += part;
            }
        }
        for (int j = 0; j < n; j++) {
            shares[j] /= volume;
        }
        return shares;
    }

    private Dose weightedDose(RateLaw law, double[] shares) {
        int[] used = java.util.stream.IntStream.range(0, shares.length)
                .filter(j -> shares[j] != 0.0)
                .toArray();
        PointHistory[] histories = Arrays.stream(used).mapToObj(this::node).toArray(PointHistory[]::new);
        double[] weights = Arrays.stream(used).mapToDouble(j -> shares[j]).toArray();
        return Dose.weighted(law, histories, weights);
    }
}
