package dev.slowpoint.heat;

import java.util.Arrays;
import java.util.Optional;

/**
 * Temperature histories of a body of constant properties in baths of one film coefficient, from the exact series
 * (Carslaw and Jaeger, Conduction of Heat in Solids, 1959, chapters 3, 7 and 9): independent of any solver.
 *
 * <p>The equation is linear, so that a change of the bath temperature adds the step response from that moment on.
 */
public final class ConstantPropertyReference {

    /** This reference keeps no heat account. */
    private static final HeatBalance NO_ACCOUNT = new HeatBalance(0.0, 0.0, 0.0, 0.0, 0.0);

    private static final int MODES = 60;
    private static final int INTERVALS = 40;
    /** Samples follow each other at this share of the time since the last change of the bath. */
    private static final double GROWTH = 0.04;

    private final Body body;
    private final double diffusivity;
    private final double biot;
    private final double[] positions = new double[INTERVALS + 1];
    private final double[] shares = new double[INTERVALS + 1];
    private final double[] roots = new double[MODES];
    /** Coefficient times shape, node after node for each mode. */
    private final double[] modes = new double[MODES * (INTERVALS + 1)];

    /**
     * The body and its properties.
     *
     * @param body slab, long cylinder or sphere
     * @param diffusivity [m2/s]
     * @param conductivity [W/mK]
     * @param film surface heat transfer coefficient [W/m2K], the same for all baths
     */
    public ConstantPropertyReference(Body body, double diffusivity, double conductivity, double film) {
        this.body = body;
        this.diffusivity = diffusivity;
        this.biot = film * body.reach() / conductivity;
        double power = body.standIn(1.0).shapeExponent() + 1.0;
        for (int j = 0; j <= INTERVALS; j++) {
            positions[j] = j / (double) INTERVALS;
            double inner = Math.max(0.0, (j - 0.5) / INTERVALS);
            double outer = Math.min(1.0, (j + 0.5) / INTERVALS);
            shares[j] = Math.pow(outer, power) - Math.pow(inner, power);
        }
        for (int n = 0; n < MODES; n++) {
            roots[n] = root(n);
            for (int j = 0; j <= INTERVALS; j++) {
                modes[n * (INTERVALS + 1) + j] = coefficient(roots[n]) * shape(roots[n], positions[j]);
            }
        }
    }

    /** One bath from time zero. */
    public TemperatureHistory bath(double startC, double bathC, double duration) {
        return baths(startC, new double[] {0.0}, new double[] {bathC}, duration);
    }

    /**
     * Baths one after another.
     *
     * @param startC even temperature before [C]
     * @param from when each bath begins [s], rising, the first at zero
     * @param bathsC their temperatures [C]
     * @param duration end of the history [s]
     */
    public TemperatureHistory baths(double startC, double[] from, double[] bathsC, double duration) {
        double[] times = sampleTimes(from, duration);
        int nodes = INTERVALS + 1;
        double[] temperaturesC = new double[times.length * nodes];
        double[] slopes = new double[times.length * nodes];
        for (int i = 0; i < times.length; i++) {
            Arrays.fill(temperaturesC, i * nodes, (i + 1) * nodes, startC);
            double before = startC;
            for (int b = 0; b < from.length && from[b] < times[i]; b++) {
                addStep(times[i] - from[b], bathsC[b] - before, temperaturesC, slopes, i * nodes);
                before = bathsC[b];
            }
        }
        return new TemperatureHistory(
                times,
                temperaturesC,
                slopes,
                positions.clone(),
                shares.clone(),
                shares.clone(),
                body.standIn(1.0).shapeExponent(),
                body.reach(),
                false,
                new double[] {duration},
                Optional.empty(),
                NO_ACCOUNT,
                new HeatTaken(times, new double[times.length], new double[times.length]));
    }

    /** A body of even temperature that follows straight lines; for holds and ramps. */
    public static TemperatureHistory even(double[] times, double[] temperaturesC) {
        PointHistory line = PointHistory.straightLines(times, temperaturesC);
        int samples = line.samples();
        double[] t = new double[samples];
        double[] y = new double[2 * samples];
        double[] s = new double[2 * samples];
        for (int i = 0; i < samples; i++) {
            int piece = i / 2;
            t[i] = line.time(i);
            y[2 * i] = line.temperatureC(i);
            y[2 * i + 1] = line.temperatureC(i);
            s[2 * i] = (temperaturesC[piece + 1] - temperaturesC[piece]) / (times[piece + 1] - times[piece]);
            s[2 * i + 1] = s[2 * i];
        }
        return new TemperatureHistory(
                t,
                y,
                s,
                new double[] {0.0, 1.0},
                new double[] {0.5, 0.5},
                new double[] {0.5, 0.5},
                0.0,
                1.0,
                false,
                new double[] {t[samples - 1]},
                Optional.empty(),
                NO_ACCOUNT,
                new HeatTaken(t, new double[t.length], new double[t.length]));
    }

    /** A body of even temperature held at it. */
    public static TemperatureHistory hold(double temperatureC, double duration) {
        return even(new double[] {0.0, duration}, new double[] {temperatureC, temperatureC});
    }

    private double[] sampleTimes(double[] from, double duration) {
        double scale = body.reach() * body.reach() / diffusivity;
        double[] times = new double[4096];
        int count = 0;
        times[count++] = 0.0;
        for (int b = 0; b < from.length; b++) {
            double end = b + 1 < from.length ? from[b + 1] : duration;
            double since = 1e-4 * scale;
            while (from[b] + since < end) {
                times[count++] = from[b] + since;
                since *= 1.0 + GROWTH;
            }
            times[count++] = end;
        }
        return Arrays.copyOf(times, count);
    }

    private void addStep(double since, double stepK, double[] temperaturesC, double[] slopes, int at) {
        double perSecond = diffusivity / (body.reach() * body.reach());
        for (int j = 0; j <= INTERVALS; j++) {
            temperaturesC[at + j] += stepK;
        }
        for (int n = 0; n < MODES; n++) {
            double decay = roots[n] * roots[n] * perSecond;
            double left = stepK * Math.exp(-decay * since);
            if (Math.abs(left) < 1e-12) {
                break;
            }
            for (int j = 0; j <= INTERVALS; j++) {
                double part = left * modes[n * (INTERVALS + 1) + j];
                temperaturesC[at + j] -= part;
                slopes[at + j] += decay * part;
            }
        }
    }

    /** The n-th root of {@code z X'(z) + Bi X(z) = 0}; it lies between two zeros of the derivative of the shape. */
    private double root(int n) {
        double low;
        double high;
        if (body instanceof Slab) {
            low = n * Math.PI;
            high = low + Math.PI / 2.0;
        } else if (body instanceof Sphere) {
            low = n * Math.PI;
            high = low + Math.PI;
        } else {
            low = n == 0 ? 0.0 : zeroOfJ1(n);
            high = zeroOfJ1(n + 1);
        }
        low += 1e-9;
        high -= 1e-9;
        double signLow = Math.signum(boundary(low));
        for (int i = 0; i < 80; i++) {
            double middle = 0.5 * (low + high);
            if (Math.signum(boundary(middle)) == signLow) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return 0.5 * (low + high);
    }

    private double boundary(double z) {
        if (body instanceof Slab) {
            return z * Math.sin(z) - biot * Math.cos(z);
        }
        if (body instanceof Sphere) {
            return (biot - 1.0) * Math.sin(z) + z * Math.cos(z);
        }
        return z * bessel(1, z) - biot * bessel(0, z);
    }

    private double coefficient(double z) {
        if (body instanceof Slab) {
            return 4.0 * Math.sin(z) / (2.0 * z + Math.sin(2.0 * z));
        }
        if (body instanceof Sphere) {
            return 4.0 * (Math.sin(z) - z * Math.cos(z)) / (2.0 * z - Math.sin(2.0 * z));
        }
        double j0 = bessel(0, z);
        double j1 = bessel(1, z);
        return 2.0 * j1 / (z * (j0 * j0 + j1 * j1));
    }

    private double shape(double z, double x) {
        if (body instanceof Slab) {
            return Math.cos(z * x);
        }
        if (body instanceof Sphere) {
            return x == 0.0 ? 1.0 : Math.sin(z * x) / (z * x);
        }
        return bessel(0, z * x);
    }

    private static double zeroOfJ1(int n) {
        double guess = (n + 0.25) * Math.PI;
        double low = guess - 0.5;
        double high = guess + 0.5;
        double signLow = Math.signum(bessel(1, low));
        for (int i = 0; i < 60; i++) {
            double middle = 0.5 * (low + high);
            if (Math.signum(bessel(1, middle)) == signLow) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return 0.5 * (low + high);
    }

    /** Bessel's integral by the trapezium rule, which converges faster than any power for a periodic function. */
    private static double bessel(int order, double x) {
        int points = 40 + (int) (1.5 * x);
        double sum = 0.0;
        for (int i = 0; i <= points; i++) {
            double tau = Math.PI * i / points;
            double term = Math.cos(order * tau - x * Math.sin(tau));
            sum += i == 0 || i == points ? 0.5 * term : term;
        }
        return sum / points;
    }
}
