package dev.slowpoint.safety;

import dev.slowpoint.heat.PointHistory;

/** Temperature histories for tests. */
final class Histories {

    private Histories() {}

    /** Constant temperature from zero for some seconds. */
    static PointHistory constant(double temperatureC, double seconds) {
        return PointHistory.straightLines(new double[] {0.0, seconds}, new double[] {temperatureC, temperatureC});
    }

    /** Straight lines through pairs of minutes and degrees. */
    static PointHistory minutes(double... minutesAndC) {
        int n = minutesAndC.length / 2;
        double[] t = new double[n];
        double[] y = new double[n];
        for (int i = 0; i < n; i++) {
            t[i] = 60.0 * minutesAndC[2 * i];
            y[i] = minutesAndC[2 * i + 1];
        }
        return PointHistory.straightLines(t, y);
    }

    /** {@code T = bath - (bath - start) exp(-t / tau)}, sampled with its slopes. */
    static PointHistory approach(double startC, double bathC, double tau, double seconds, int samples) {
        double[] t = new double[samples];
        double[] y = new double[samples];
        double[] s = new double[samples];
        for (int i = 0; i < samples; i++) {
            t[i] = seconds * i / (samples - 1);
            double left = (bathC - startC) * StrictMath.exp(-t[i] / tau);
            y[i] = bathC - left;
            s[i] = left / tau;
        }
        return new PointHistory(t, y, s);
    }
}
