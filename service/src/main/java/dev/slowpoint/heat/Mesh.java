package dev.slowpoint.heat;

import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Nodes across a body of unit length, with the two tridiagonal operators of the scheme {@code M dH/dt = G theta(H)}:
 * conduction between neighbours, and the mass matrix. A mesh with one face runs from the slowest-heating point (0) to
 * the surface (1); one with two faces from the far surface of a slab (0) to the near one (1).
 *
 * <p>The mass matrix decides the order of accuracy. A lumped one gives every node the volume of its cell: second order,
 * and never an overshoot, for fields with a sharp thawing front. A compact one spreads the mass over the neighbours so
 * that the scheme is exact whenever the rate of change is a polynomial (with one face {@code a + b r^2 + c r^4}, with two
 * {@code a + b x + c x^2}): fourth order from the same three-point stencil, for smooth fields. In both, whatever enters
 * through a face is what the weighted sum of the nodes gains, to round-off.
 *
 * @param layout that it was made for
 * @param positions of the nodes
 * @param conductance between a node and the next
 * @param below mass matrix, below the diagonal
 * @param diagonal of the mass matrix
 * @param above the diagonal
 * @param factors of the mass matrix eliminated downwards: what a row takes of the one before, and its inverse pivot
 * @param shares column sums of the mass matrix, as shares of the whole: the volume a node stands for
 * @param sparse shares by which few nodes stand for the volume mean of a smooth field; zero for the others
 */
record Mesh(
        Layout layout,
        double[] positions,
        double[] conductance,
        double[] below,
        double[] diagonal,
        double[] above,
        Factors factors,
        double[] shares,
        double[] sparse) {

    /**
     * The mass matrix, eliminated.
     *
     * @param lower what a row takes of the one before
     * @param inverse of the pivot
     * @param upper what a node takes of the next
     */
    record Factors(double[] lower, double[] inverse, double[] upper) {

        static Factors of(double[] below, double[] diagonal, double[] above) {
            int n = diagonal.length;
            double[] lower = new double[n];
            double[] inverse = new double[n];
            double[] upper = new double[n];
            for (int i = 0; i < n; i++) {
                lower[i] = i > 0 ? below[i] * inverse[i - 1] : 0.0;
                inverse[i] = 1.0 / (diagonal[i] - (i > 0 ? lower[i] * above[i - 1] : 0.0));
                upper[i] = above[i] * inverse[i];
            }
            return new Factors(lower, inverse, upper);
        }
    }

    /**
     * What a mesh is made for.
     *
     * @param shapeExponent of the body
     * @param intervals between nodes
     * @param compact whether the mass matrix is spread
     * @param twoFaced whether both ends are faces; only for a slab, with an even number of intervals
     * @param clustering how strongly the nodes crowd towards the faces, from 0 (evenly spaced) to 1
     */
    record Layout(double shapeExponent, int intervals, boolean compact, boolean twoFaced, double clustering) {

        Layout {
            if (twoFaced && (shapeExponent != 0.0 || intervals % 2 != 0)) {
                throw new IllegalArgumentException("only a slab has two faces, and its middle must be a node");
            }
        }
    }

    /** Meshes kept: bodies with ends have exponents of any value, so that there is no end to them. */
    private static final int KEPT = 256;

    /** About how many intervals a mean of doses is read on, and the largest mesh that is thinned for it. */
    private static final float SPARSE_INTERVALS = 6.0f;

    private static final int MOST_THINNED = 40;

    /** A clustering above this is made for a sear. */
    private static final double CROWDED = 0.6;

    private static final Map<Layout, Mesh> KNOWN = new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Layout, Mesh> eldest) {
            return size() > KEPT;
        }
    };

    /** The mesh of a layout; the latest are kept, because a plan asks for the same one dozens of times. */
    static Mesh of(Layout layout) {
        synchronized (KNOWN) {
            Mesh known = KNOWN.get(layout);
            if (known != null) {
                return known;
            }
        }
        Mesh made = make(layout);
        synchronized (KNOWN) {
            KNOWN.put(layout, made);
        }
        return made;
    }

    /** Number of intervals between nodes. */
    int intervals() {
        return conductance.length;
    }

    private static Mesh make(Layout layout) {
        double[] r = positions(layout);
        double[] g = conductance(r, layout.shapeExponent());
        int last = layout.intervals();
        double[] below = new double[last + 1];
        double[] diagonal = new double[last + 1];
        double[] above = new double[last + 1];
        if (layout.compact()) {
            spread(layout, r, g, below, diagonal, above);
        } else {
            lump(layout, r, diagonal);
        }
        double[] weights = new double[last + 1];
        double volume = 0.0;
        for (int i = 0; i <= last; i++) {
            weights[i] = diagonal[i] + (i > 0 ? above[i - 1] : 0.0) + (i < last ? below[i + 1] : 0.0);
            volume += weights[i];
        }
        double[] shares = new double[last + 1];
        for (int i = 0; i <= last; i++) {
            shares[i] = weights[i] / volume;
        }
        return new Mesh(
                layout,
                r,
                g,
                below,
                diagonal,
                above,
                Factors.of(below, diagonal, above),
                shares,
                sparse(layout, r, shares));
    }

    /**
     * Shares of every second or third node, so that the mean of a polynomial in r^2 (with two faces in x) of as many terms as
     * there are such nodes is exact: a smooth field needs no more, and a mean of doses costs that much less. Where the mesh
     * crowds towards a sear, or a share would fall below zero (round bodies), all nodes are kept.
     */
    private static double[] sparse(Layout layout, double[] r, double[] shares) {
        int intervals = layout.intervals();
        int stride = Math.round(intervals / SPARSE_INTERVALS);
        if (stride < 2 || intervals % stride != 0 || intervals > MOST_THINNED || layout.clustering() > CROWDED) {
            return withoutNegatives(shares);
        }
        int n = intervals / stride + 1;
        int degree = layout.twoFaced() ? 1 : 2;
        double[][] rows = new double[n][n + 1];
        for (int m = 0; m < n; m++) {
            for (int j = 0; j < n; j++) {
                rows[m][j] = m == 0 ? 1.0 : rows[m - 1][j] * power(r[j * stride], degree);
            }
            double whole = layout.shapeExponent() + 1.0;
            rows[m][n] = whole / (degree * m + whole);
        }
        solve(rows);
        double[] sparse = new double[r.length];
        for (int j = 0; j < n; j++) {
            if (rows[j][n] < 0.0) {
                return withoutNegatives(shares);
            }
            sparse[j * stride] = rows[j][n];
        }
        return sparse;
    }

    /** In a ball the middle node of a compact mesh can stand for a hair less than nothing; a dose must never fall. */
    private static double[] withoutNegatives(double[] shares) {
        double[] kept = new double[shares.length];
        double sum = 0.0;
        for (int i = 0; i < shares.length; i++) {
            kept[i] = Math.max(shares[i], 0.0);
            sum += kept[i];
        }
        for (int i = 0; i < shares.length; i++) {
            kept[i] /= sum;
        }
        return kept;
    }

    /** Gauss's elimination with row pivots; leaves the solution in the last column. */
    private static void solve(double[][] rows) {
        int n = rows.length;
        for (int column = 0; column < n; column++) {
            int pivot = column;
            for (int row = column + 1; row < n; row++) {
                if (Math.abs(rows[row][column]) > Math.abs(rows[pivot][column])) {
                    pivot = row;
                }
            }
            double[] found = rows[pivot];
            rows[pivot] = rows[column];
            rows[column] = found;
            for (int row = 0; row < n; row++) {
                if (row != column) {
                    double factor = rows[row][column] / found[column];
                    for (int j = column; j <= n; j++) {
                        rows[row][j] -= factor * found[j];
                    }
                }
            }
        }
        for (int row = 0; row < n; row++) {
            rows[row][n] /= rows[row][row];
        }
    }

    private static void lump(Layout layout, double[] r, double[] volumes) {
        double exponent = layout.shapeExponent() + 1.0;
        double inner = 0.0;
        for (int i = 0; i < r.length; i++) {
            double face = i + 1 < r.length ? 0.5 * (r[i] + r[i + 1]) : 1.0;
            double outer = StrictMath.pow(face, exponent) / exponent;
            volumes[i] = outer - inner;
            inner = outer;
        }
    }

    /** Lagrange weights in r^2 (with two faces in x), so that each row is exact for as many polynomials as it has nodes. */
    private static void spread(
            Layout layout, double[] r, double[] g, double[] below, double[] diagonal, double[] above) {
        int last = r.length - 1;
        int degree = layout.twoFaced() ? 1 : 2;
        for (int i = 0; i <= last; i++) {
            double q0 = imbalance(layout, r, g, i, 0);
            double q1 = imbalance(layout, r, g, i, degree);
            double c = power(r[i], degree);
            if (i == 0) {
                double outer = power(r[1], degree);
                above[0] = (q1 - c * q0) / (outer - c);
                diagonal[0] = q0 - above[0];
            } else if (i == last) {
                double inner = power(r[i - 1], degree);
                below[i] = (q1 - c * q0) / (inner - c);
                diagonal[i] = q0 - below[i];
            } else {
                double q2 = imbalance(layout, r, g, i, 2 * degree);
                double inner = power(r[i - 1], degree);
                double outer = power(r[i + 1], degree);
                below[i] = (q2 - (c + outer) * q1 + c * outer * q0) / ((inner - c) * (inner - outer));
                diagonal[i] = (q2 - (inner + outer) * q1 + inner * outer * q0) / ((c - inner) * (c - outer));
                above[i] = (q2 - (inner + c) * q1 + inner * c * q0) / ((outer - inner) * (outer - c));
            }
        }
    }

    private static double[] positions(Layout layout) {
        double[] r = new double[layout.intervals() + 1];
        double clustering = layout.clustering();
        for (int i = 0; i < r.length; i++) {
            double x = (double) i / layout.intervals();
            double s = layout.twoFaced() ? 2.0 * x - 1.0 : x;
            double crowded = (1.0 - clustering) * s + clustering * StrictMath.sin(0.5 * StrictMath.PI * s);
            r[i] = layout.twoFaced() ? 0.5 * (1.0 + crowded) : crowded;
        }
        r[0] = 0.0;
        r[layout.intervals()] = 1.0;
        return r;
    }

    private static double[] conductance(double[] r, double shapeExponent) {
        double[] g = new double[r.length - 1];
        for (int i = 0; i < g.length; i++) {
            double section = shapeExponent == 0.0 ? 1.0 : StrictMath.pow(0.5 * (r[i] + r[i + 1]), shapeExponent);
            g[i] = section / (r[i + 1] - r[i]);
        }
        return g;
    }

    /** What a node gains per time in the field whose rate of change is everywhere {@code r^power}. */
    private static double imbalance(Layout layout, double[] r, double[] g, int node, int power) {
        double scale = (power + 2.0) * (power + 1.0 + layout.shapeExponent());
        double here = power(r[node], power + 2);
        double gain = node == r.length - 1 ? power + 2.0 : g[node] * (power(r[node + 1], power + 2) - here);
        if (node > 0) {
            gain -= g[node - 1] * (here - power(r[node - 1], power + 2));
        }
        return gain / scale;
    }

    private static double power(double x, int exponent) {
        double product = x;
        for (int i = 1; i < exponent; i++) {
            product *= x;
        }
        return product;
    }
}
