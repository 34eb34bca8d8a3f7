package dev.slowpoint.heat;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Nodes from the slowest-heating point (0) to the surface (1) of a body of unit reach, with the two tridiagonal operators
 * of the scheme {@code M dH/dt = G theta(H)}: conduction between neighbours, and the mass matrix.
 *
 * <p>The mass matrix decides the order of accuracy. {@link #lumped} gives every node the volume of its cell: second
 * order, and never an overshoot, for fields with a sharp thawing front. {@link #compact} spreads the mass over the
 * neighbours so that the scheme is exact whenever the rate of change is a polynomial {@code a + b r^2 + c r^4}: fourth
 * order from the same three-point stencil, for smooth fields. In both, whatever enters through the surface is what the
 * weighted sum of the nodes gains, to round-off.
 *
 * @param positions of the nodes
 * @param conductance between a node and the next
 * @param below mass matrix, below the diagonal
 * @param diagonal of the mass matrix
 * @param above the diagonal
 * @param weights column sums of the mass matrix: the volume a node stands for
 * @param shapeExponent of the body
 */
record Mesh(
        double[] positions,
        double[] conductance,
        double[] below,
        double[] diagonal,
        double[] above,
        double[] weights,
        double shapeExponent) {

    /** Number of intervals between nodes. */
    int intervals() {
        return conductance.length;
    }

    private static final Map<Key, Mesh> KNOWN = new ConcurrentHashMap<>();

    private record Key(double shapeExponent, int intervals, boolean compact) {}

    /** How strongly the nodes crowd towards the surface, from 0 (evenly spaced) to 1. */
    private static final double CLUSTERING = 0.5;

    /** The mesh for a body; kept, because there are few and a plan asks for the same one dozens of times. */
    static Mesh of(double shapeExponent, int intervals, boolean compact) {
        return KNOWN.computeIfAbsent(
                new Key(shapeExponent, intervals, compact),
                key -> compact
                        ? compact(shapeExponent, intervals, CLUSTERING)
                        : lumped(shapeExponent, intervals, CLUSTERING));
    }

    /** A mesh of second order that never overshoots. */
    static Mesh lumped(double shapeExponent, int intervals, double clustering) {
        double[] r = positions(intervals, clustering);
        double[] volumes = new double[intervals + 1];
        double inner = 0.0;
        for (int i = 0; i <= intervals; i++) {
            double face = i < intervals ? 0.5 * (r[i] + r[i + 1]) : 1.0;
            double outer = StrictMath.pow(face, shapeExponent + 1.0) / (shapeExponent + 1.0);
            volumes[i] = outer - inner;
            inner = outer;
        }
        double[] none = new double[intervals + 1];
        return new Mesh(r, conductance(r, shapeExponent), none, volumes, none, volumes, shapeExponent);
    }

    /** A mesh of fourth order for smooth fields. */
    static Mesh compact(double shapeExponent, int intervals, double clustering) {
        double[] r = positions(intervals, clustering);
        double[] g = conductance(r, shapeExponent);
        double[] below = new double[intervals + 1];
        double[] diagonal = new double[intervals + 1];
        double[] above = new double[intervals + 1];
        for (int i = 0; i <= intervals; i++) {
            double q0 = imbalance(r, g, shapeExponent, i, 0);
            double q2 = imbalance(r, g, shapeExponent, i, 2);
            double c = r[i] * r[i];
            if (i == 0) {
                double outer = r[1] * r[1];
                above[0] = q2 / outer;
                diagonal[0] = q0 - above[0];
            } else if (i == intervals) {
                double inner = r[i - 1] * r[i - 1];
                below[i] = (q2 - c * q0) / (inner - c);
                diagonal[i] = q0 - below[i];
            } else {
                double q4 = imbalance(r, g, shapeExponent, i, 4);
                double inner = r[i - 1] * r[i - 1];
                double outer = r[i + 1] * r[i + 1];
                // Lagrange weights in r^2: exact for 1, r^2 and r^4.
                below[i] = (q4 - (c + outer) * q2 + c * outer * q0) / ((inner - c) * (inner - outer));
                diagonal[i] = (q4 - (inner + outer) * q2 + inner * outer * q0) / ((c - inner) * (c - outer));
                above[i] = (q4 - (inner + c) * q2 + inner * c * q0) / ((outer - inner) * (outer - c));
            }
        }
        double[] weights = new double[intervals + 1];
        for (int i = 0; i <= intervals; i++) {
            weights[i] = diagonal[i] + (i > 0 ? above[i - 1] : 0.0) + (i < intervals ? below[i + 1] : 0.0);
        }
        return new Mesh(r, g, below, diagonal, above, weights, shapeExponent);
    }

    private static double[] positions(int intervals, double clustering) {
        double[] r = new double[intervals + 1];
        for (int i = 0; i <= intervals; i++) {
            double x = (double) i / intervals;
            r[i] = (1.0 - clustering) * x + clustering * StrictMath.sin(0.5 * StrictMath.PI * x);
        }
        r[intervals] = 1.0;
        return r;
    }

    private static double[] conductance(double[] r, double shapeExponent) {
        double[] g = new double[r.length - 1];
        for (int i = 0; i < g.length; i++) {
            g[i] = StrictMath.pow(0.5 * (r[i] + r[i + 1]), shapeExponent) / (r[i + 1] - r[i]);
        }
        return g;
    }

    /** What a node gains per time in the field whose rate of change is everywhere {@code r^power}. */
    private static double imbalance(double[] r, double[] g, double shapeExponent, int node, int power) {
        double scale = (power + 2.0) * (power + 1.0 + shapeExponent);
        double here = StrictMath.pow(r[node], power + 2.0);
        double gain =
                node == r.length - 1 ? (power + 2.0) : g[node] * (StrictMath.pow(r[node + 1], power + 2.0) - here);
        if (node > 0) {
            gain -= g[node - 1] * (here - StrictMath.pow(r[node - 1], power + 2.0));
        }
        return gain / scale;
    }
}
