package dev.slowpoint.heat;

/**
 * One linearly implicit step: the six-stage, fourth-order, stiffly accurate and L-stable Rosenbrock method RODAS of
 * Hairer and Wanner (Solving Ordinary Differential Equations II, 1996, section IV.7), with its embedded solution of third
 * order. One matrix a step and no iteration: for fields in which nothing freezes or thaws.
 *
 * <p>Coefficients in the form without matrix products, from memory; the tests measure the order. The sums are written out
 * because they are most of the work.
 */
final class Rosenbrock implements Stepper {

    /** The one value on the diagonal. */
    private static final double GAMMA = 0.25;

    private static final double A21 = 1.544000000000000;
    private static final double A31 = 0.9466785280815826;
    private static final double A32 = 0.2557011698983284;
    private static final double A41 = 3.314825187068521;
    private static final double A42 = 2.896124015972201;
    private static final double A43 = 0.9986419139977817;
    private static final double A51 = 1.221224509226641;
    private static final double A52 = 6.019134481288629;
    private static final double A53 = 12.53708332932087;
    private static final double A54 = -0.6878860361058950;

    private static final double C21 = GAMMA * -5.668800000000000;
    private static final double C31 = GAMMA * -2.430093356833875;
    private static final double C32 = GAMMA * -0.2063599157091915;
    private static final double C41 = GAMMA * -0.1073529058151375;
    private static final double C42 = GAMMA * -9.594562251023355;
    private static final double C43 = GAMMA * -20.47028614809616;
    private static final double C51 = GAMMA * 7.496443313967647;
    private static final double C52 = GAMMA * -10.24680431464352;
    private static final double C53 = GAMMA * -33.99990352819905;
    private static final double C54 = GAMMA * 11.70890893206160;
    private static final double C61 = GAMMA * 8.083246795921522;
    private static final double C62 = GAMMA * -7.981132988064893;
    private static final double C63 = GAMMA * -31.52159432874371;
    private static final double C64 = GAMMA * 16.31930543123136;
    private static final double C65 = GAMMA * -6.058818238834054;

    private final Cells cells;
    private final double[] u1;
    private final double[] u2;
    private final double[] u3;
    private final double[] u4;
    private final double[] u5;
    private final double[] u6;
    private final double[] at;
    private final double[] carried;
    private Heat passed = Heat.NONE;

    Rosenbrock(Cells cells, int unknowns) {
        this.cells = cells;
        u1 = new double[unknowns];
        u2 = new double[unknowns];
        u3 = new double[unknowns];
        u4 = new double[unknowns];
        u5 = new double[unknowns];
        u6 = new double[unknowns];
        at = new double[unknowns];
        carried = new double[unknowns];
    }

    @Override
    public double errorOrder() {
        return 4.0;
    }

    @Override
    public Heat passed() {
        return passed;
    }

    @Override
    public double attempt(double dt, double[] state, double[] rates, double toleranceK, double[] result) {
        int n = cells.lastUnknown() + 1;
        double weight = GAMMA * dt;
        cells.factor(weight);
        for (int i = 0; i < n; i++) {
            u1[i] = weight * rates[i];
        }
        cells.solve(u1);
        Heat h1 = cells.heat(weight, u1);
        for (int i = 0; i < n; i++) {
            at[i] = state[i] + A21 * u1[i];
            carried[i] = C21 * u1[i];
        }
        cells.solveStage(at, carried, weight, u2);
        Heat h2 = cells.heat(weight, u2).plus(C21, h1);
        for (int i = 0; i < n; i++) {
            at[i] = state[i] + A31 * u1[i] + A32 * u2[i];
            carried[i] = C31 * u1[i] + C32 * u2[i];
        }
        cells.solveStage(at, carried, weight, u3);
        Heat h3 = cells.heat(weight, u3).plus(C31, h1).plus(C32, h2);
        for (int i = 0; i < n; i++) {
            at[i] = state[i] + A41 * u1[i] + A42 * u2[i] + A43 * u3[i];
            carried[i] = C41 * u1[i] + C42 * u2[i] + C43 * u3[i];
        }
        cells.solveStage(at, carried, weight, u4);
        Heat h4 = cells.heat(weight, u4).plus(C41, h1).plus(C42, h2).plus(C43, h3);
        for (int i = 0; i < n; i++) {
            at[i] = state[i] + A51 * u1[i] + A52 * u2[i] + A53 * u3[i] + A54 * u4[i];
            carried[i] = C51 * u1[i] + C52 * u2[i] + C53 * u3[i] + C54 * u4[i];
        }
        cells.solveStage(at, carried, weight, u5);
        Heat h5 =
                cells.heat(weight, u5).plus(C51, h1).plus(C52, h2).plus(C53, h3).plus(C54, h4);
        for (int i = 0; i < n; i++) {
            at[i] += u5[i];
            carried[i] = C61 * u1[i] + C62 * u2[i] + C63 * u3[i] + C64 * u4[i] + C65 * u5[i];
        }
        cells.solveStage(at, carried, weight, u6);
        Heat h6 = cells.heat(weight, u6)
                .plus(C61, h1)
                .plus(C62, h2)
                .plus(C63, h3)
                .plus(C64, h4)
                .plus(C65, h5);
        double worst = 0.0;
        for (int i = 0; i < n; i++) {
            result[i] = at[i] + u6[i];
            worst = Math.max(worst, Math.abs(u6[i]) * cells.temperatureSlope(i));
        }
        passed = h6.plus(A51, h1).plus(A52, h2).plus(A53, h3).plus(A54, h4).plus(1.0, h5);
        return Double.isNaN(worst) ? Double.POSITIVE_INFINITY : worst / toleranceK;
    }
}
