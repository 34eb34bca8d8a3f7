package dev.slowpoint.heat;

/**
 * The exact cooling of the middle of a body whose cross-section grows as {@code r^shapeExponent}, from an even start, in
 * surroundings with a constant film coefficient: a sum of decaying modes. The exponent may have any value from 0 (slab)
 * over 1 (long cylinder) to 2 (sphere) and beyond.
 *
 * <p>The modes are {@code phi(z) = 0F1(; nu+1; -z^2/4)} with {@code nu = (shapeExponent-1)/2} (the cosine, J0 and sin z/z
 * for the three bodies), their roots those of {@code z psi(z) = Bi phi(z)} with {@code psi = -phi'}; Carslaw and Jaeger,
 * Conduction of Heat in Solids, 1959, chapters III, VII and IX, for the three bodies.
 */
final class RadialSeries {

    /** Below this Fourier number the middle knows nothing: it is off by less than 1e-5 of the step in every body. */
    private static final double SILENT = 0.02;

    /** A mode that has died to this share no longer counts. */
    private static final double DEAD_EXPONENT = 14.0;

    /** Roots lie at least this far apart (they tend to pi). */
    private static final double ROOTS_APART = 2.4;

    private static final int MOST_MODES = 16;

    private final double shapeExponent;
    private final double biot;
    private final double[] squares = new double[MOST_MODES];
    private final double[] coefficients = new double[MOST_MODES];
    private int modes;
    private double lastRoot;
    private double phi;
    private double psi;

    /**
     * A series.
     *
     * @param shapeExponent zero or more
     * @param biot film coefficient times reach over conductivity, above zero, or infinite
     */
    RadialSeries(double shapeExponent, double biot) {
        this.shapeExponent = shapeExponent;
        this.biot = biot;
    }

    /** What is left of the temperature step in the middle, from one to zero, at a Fourier number {@code alpha t / reach^2}. */
    double atCentre(double fourier) {
        if (fourier < SILENT) {
            return 1.0;
        }
        double sum = 0.0;
        for (int n = 0; ; n++) {
            if (n == modes) {
                double nearest = lastRoot + ROOTS_APART;
                boolean dead = modes > 0 && (nearest * nearest - squares[0]) * fourier > DEAD_EXPONENT;
                if (dead || modes == MOST_MODES) {
                    break;
                }
                addMode();
            }
            double decay = squares[n] * fourier;
            if (decay > DEAD_EXPONENT + squares[0] * fourier) {
                break;
            }
            sum += coefficients[n] * Exp.exp(-decay);
        }
        return sum;
    }

    /** Square of the first root: the rate at which the last mode dies. */
    double slowestRate() {
        if (modes == 0) {
            addMode();
        }
        return squares[0];
    }

    private void addMode() {
        double root = nextRoot();
        evaluate(root);
        double norm = 0.5 * (phi * phi + psi * psi - (shapeExponent - 1.0) / root * phi * psi);
        squares[modes] = root * root;
        coefficients[modes] = psi / (root * norm);
        lastRoot = root;
        modes++;
    }

    /** Roots lie about pi apart, one between each zero of psi and the next zero of phi: scanned, then narrowed. */
    private double nextRoot() {
        double low = modes == 0 ? 1e-4 : lastRoot + ROOTS_APART;
        double below = residual(low);
        double step = modes == 0 ? Math.min(1.2, 0.3 + 0.5 * biot) : 0.5;
        double high = low;
        double above = below;
        while (below > 0.0 == above > 0.0) {
            low = high;
            below = above;
            high = low + step;
            above = residual(high);
        }
        double z = low + (high - low) * below / (below - above);
        for (int i = 0; i < 60; i++) {
            double found = residual(z);
            if (found > 0.0 == below > 0.0) {
                low = z;
            } else {
                high = z;
            }
            double next = z - found / slope(z);
            if (!(next > low && next < high)) {
                next = 0.5 * (low + high);
            }
            if (Math.abs(next - z) < 1e-12 * z) {
                return next;
            }
            z = next;
        }
        return z;
    }

    /** Positive before a root of odd number, negative after it; scaled so that an infinite Biot number needs no special case. */
    private double residual(double z) {
        evaluate(z);
        return biot > 1.0 ? phi - z * psi / biot : biot * phi - z * psi;
    }

    /** Derivative of the residual at the place last evaluated, by {@code psi' = phi - shapeExponent psi / z}. */
    private double slope(double z) {
        double conducted = z * phi + (1.0 - shapeExponent) * psi;
        return biot > 1.0 ? -psi - conducted / biot : -biot * psi - conducted;
    }

    /** The mode and its derivative: in closed form for slab and sphere, else by the power series. */
    private void evaluate(double z) {
        if (shapeExponent == 0.0) {
            phi = StrictMath.cos(z);
            psi = StrictMath.sin(z);
            return;
        }
        double x = -0.25 * z * z;
        double half = 0.5 * (shapeExponent + 1.0);
        double term = 1.0;
        double next = 1.0;
        double sum = 1.0;
        double nextSum = 1.0;
        for (int k = 1; k < 200; k++) {
            term *= x / (k * (half + k - 1.0));
            next *= x / (k * (half + k));
            sum += term;
            nextSum += next;
            if (Math.abs(term) + Math.abs(next) < 1e-17) {
                break;
            }
        }
        phi = sum;
        psi = z / (2.0 * half) * nextSum;
    }
}
