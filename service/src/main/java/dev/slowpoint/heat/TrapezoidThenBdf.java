package dev.slowpoint.heat;

/**
 * One implicit step by the trapezoidal rule and the second backward difference formula in one (TR-BDF2: Bank et al. 1985;
 * as an embedded Runge-Kutta pair with an error estimate of third order: Hosea and Shampine 1996; coefficients from memory,
 * their order conditions are tested). Second order, L-stable, each half solved by Newton's method: for fields across
 * which a thawing or freezing front moves.
 */
final class TrapezoidThenBdf implements Stepper {

    static final double DIAGONAL = 1.0 - Math.sqrt(2.0) / 2.0;
    static final double OUTER = Math.sqrt(2.0) / 4.0;

    private static final double[] ERROR = {
        OUTER - (1.0 - OUTER) / 3.0, OUTER - (3.0 * OUTER + 1.0) / 3.0, DIAGONAL - DIAGONAL / 3.0
    };

    /** What Newton's method leaves, as a share of the tolerance of the step. */
    private static final double SETTLED = 0.1;

    /** A Newton correction [K] that shows the method has lost its way. */
    private static final double RUNAWAY_K = 1e6;

    private static final int MAX_NEWTON = 12;

    private final Cells cells;
    private final double[] first;
    private final double[] second;
    private final double[] third;
    private final double[] base;
    private final double[] gains;
    private final double[] correction;
    private final double[] offset;
    private final double[] foretoldC;
    private Heat passed = Heat.NONE;
    private Heat settled = Heat.NONE;

    TrapezoidThenBdf(Cells cells, int unknowns) {
        this.cells = cells;
        first = new double[unknowns];
        second = new double[unknowns];
        third = new double[unknowns];
        base = new double[unknowns];
        gains = new double[unknowns];
        correction = new double[unknowns];
        offset = new double[unknowns];
        foretoldC = new double[unknowns];
    }

    @Override
    public double errorOrder() {
        return 3.0;
    }

    @Override
    public Heat passed() {
        return passed;
    }

    @Override
    public double attempt(double dt, double[] state, double[] rates, double toleranceK, double[] result) {
        int end = cells.lastUnknown();
        double weight = DIAGONAL * dt;
        cells.massSolve(rates, first);
        passed = cells.heat(OUTER * dt);
        for (int i = 0; i <= end; i++) {
            base[i] = state[i] + weight * first[i];
            result[i] = base[i] + weight * first[i];
        }
        if (!solve(weight, toleranceK, result)) {
            return Double.POSITIVE_INFINITY;
        }
        passed = passed.plus(OUTER * dt, settled);
        double perWeight = 1.0 / weight;
        for (int i = 0; i <= end; i++) {
            second[i] = (result[i] - base[i]) * perWeight;
            base[i] = state[i] + OUTER * dt * (first[i] + second[i]);
            result[i] = base[i] + weight * second[i];
        }
        if (!solve(weight, toleranceK, result)) {
            return Double.POSITIVE_INFINITY;
        }
        for (int i = 0; i <= end; i++) {
            third[i] = (result[i] - base[i]) * perWeight;
            offset[i] = dt * (ERROR[0] * first[i] + ERROR[1] * second[i] + ERROR[2] * third[i]);
        }
        passed = passed.plus(weight, settled);
        return error(end, toleranceK);
    }

    /**
     * Newton's method for {@code M (u - base) = weight F(u)}; leaves the flows of the last linearisation. It has settled when
     * the temperatures are those that the linearisation foretold.
     */
    private boolean solve(double weight, double toleranceK, double[] u) {
        int end = cells.lastUnknown();
        double enoughK = SETTLED * toleranceK;
        for (int iteration = 0; iteration < MAX_NEWTON; iteration++) {
            cells.evaluate(u);
            if (iteration > 0 && missK(end) <= enoughK) {
                return true;
            }
            cells.flows(gains);
            cells.factor(weight);
            for (int i = 0; i <= end; i++) {
                offset[i] = base[i] - u[i];
            }
            cells.massTimes(offset, weight, gains, correction);
            cells.solve(correction);
            double changeK = 0.0;
            for (int i = 0; i <= end; i++) {
                double changeHereK = correction[i] * cells.temperatureSlope(i);
                u[i] += correction[i];
                foretoldC[i] = cells.temperatureC(i) + changeHereK;
                changeK = Math.max(changeK, Math.abs(changeHereK));
            }
            settled = cells.heat(1.0, correction);
            if (!(changeK < RUNAWAY_K)) {
                return false;
            }
        }
        return false;
    }

    private double missK(int end) {
        double miss = 0.0;
        for (int i = 0; i <= end; i++) {
            miss = Math.max(miss, Math.abs(cells.temperatureC(i) - foretoldC[i]));
        }
        return miss;
    }

    /** Error of the step over the tolerance, filtered through the last matrix so that stiff parts do not dominate. */
    private double error(int end, double toleranceK) {
        cells.massTimes(offset, 0.0, gains, correction);
        cells.solve(correction);
        double worst = 0.0;
        for (int i = 0; i <= end; i++) {
            worst = Math.max(worst, Math.abs(correction[i]) * cells.temperatureSlope(i));
        }
        return worst / toleranceK;
    }
}
