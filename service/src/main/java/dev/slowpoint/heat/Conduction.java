package dev.slowpoint.heat;

import java.util.Arrays;

/**
 * Moves heat through one body and leaves its temperature history.
 *
 * <p>Space: finite volumes on a {@link Mesh}, enthalpy as the unknown. Time: the five-stage, fourth-order, L-stable
 * singly diagonally implicit Runge-Kutta method of Hairer and Wanner (Solving Ordinary Differential Equations II, 1996,
 * table 6.5; coefficients from memory, their order conditions are tested), each stage solved by Newton's method with a
 * tridiagonal matrix, the step chosen from the error of the embedded third-order solution. The method looks at one step
 * only, so that every change of the surroundings restarts cleanly.
 *
 * <p>Heat is counted by the very flows of the last Newton iteration, so that the content of the body and the heat that
 * entered agree to round-off, however large the steps.
 */
public final class Conduction {

    /** Film coefficient [W/m2K] that stands for an infinite one: the surface follows the medium within 1e-6 of the step. */
    private static final double HOLDING_FILM = 1e9;

    /** A Newton correction [K] that shows the method has lost its way. */
    private static final double RUNAWAY_K = 1e6;

    private static final int MAX_STEPS = 200_000;

    private static final int MAX_NEWTON = 12;

    private final Mesh mesh;
    private final Material material;
    private final Resolution resolution;
    private double toleranceK;
    private double settledK;
    private final int last;
    private final double reach;

    private final double[] enthalpies;
    private final double[] base;
    private final double[] unknown;
    private final double[] residual;
    private final double[] lower;
    private final double[] inverse;
    private final double[] upper;
    private final double[] theta;
    private final double[] thetaSlope;
    private final double[] temperatureSlope;
    private final double[][] rates;
    private final double[] stageFlows;
    private double surfaceFlow;

    private double[] times = new double[64];
    private double[] temperaturesC;
    private double[] slopes;
    private double[] heatTaken = new double[64];
    private int samples;

    private Conduction(Body body, Material material, boolean smooth, Resolution resolution) {
        this.mesh = Mesh.of(
                body.shapeExponent(), smooth ? resolution.smoothIntervals() : resolution.frozenIntervals(), smooth);
        this.material = material;
        this.resolution = resolution;
        this.reach = body.reach();
        this.last = mesh.intervals();
        int n = last + 1;
        enthalpies = new double[n];
        base = new double[n];
        unknown = new double[n];
        residual = new double[n];
        lower = new double[n];
        inverse = new double[n];
        upper = new double[n];
        theta = new double[n];
        thetaSlope = new double[n];
        temperatureSlope = new double[n];
        rates = new double[Sdirk4.STAGES][n];
        stageFlows = new double[Sdirk4.STAGES];
        temperaturesC = new double[64 * n];
        slopes = new double[64 * n];
    }

    /**
     * Runs a programme.
     *
     * @param body what is heated or cooled
     * @param material what it is made of
     * @param start its temperatures at time zero
     * @param programme what it passes through
     * @param resolution how finely to work
     * @return the history from time zero to the end of the programme
     */
    public static TemperatureHistory run(
            Body body, Material material, StartField start, Programme programme, Resolution resolution) {
        double lowestC = start.lowestC();
        for (Stage stage : programme.stages()) {
            lowestC = Math.min(lowestC, stage.surroundings().temperatureC());
        }
        Conduction conduction = new Conduction(body, material, lowestC > material.smoothAboveC(), resolution);
        return conduction.run(start, programme);
    }

    private TemperatureHistory run(StartField start, Programme programme) {
        for (int i = 0; i <= last; i++) {
            enthalpies[i] = material.enthalpy(start.atC(mesh.positions()[i]));
        }
        double time = 0.0;
        for (Stage stage : programme.stages()) {
            time = runStage(stage, time);
        }
        double volume = Arrays.stream(mesh.weights()).sum();
        double[] shares = Arrays.stream(mesh.weights()).map(w -> w / volume).toArray();
        double[] content = new double[] {startContent(start, shares), content(shares)};
        return new TemperatureHistory(
                Arrays.copyOf(times, samples),
                Arrays.copyOf(temperaturesC, samples * (last + 1)),
                Arrays.copyOf(slopes, samples * (last + 1)),
                mesh.positions(),
                shares,
                mesh.shapeExponent(),
                new HeatBalance(content[0], content[1], heatTaken[samples - 1] / volume));
    }

    private double startContent(StartField start, double[] shares) {
        double sum = 0.0;
        for (int i = 0; i <= last; i++) {
            sum += shares[i] * material.enthalpy(start.atC(mesh.positions()[i]));
        }
        return sum;
    }

    private double content(double[] shares) {
        double sum = 0.0;
        for (int i = 0; i <= last; i++) {
            sum += shares[i] * enthalpies[i];
        }
        return sum;
    }

    private double runStage(Stage stage, double begin) {
        Surroundings surroundings = stage.surroundings();
        double end = begin + stage.duration();
        double heat = samples == 0 ? 0.0 : heatTaken[samples - 1];
        for (double[] rate : rates) {
            Arrays.fill(rate, 0.0);
        }
        int startSample = sample(begin, heat, rates[0]);
        double step = Math.min(stage.duration(), firstStep());
        double time = begin;
        boolean first = true;
        for (int count = 0; time < end; count++) {
            if (count > MAX_STEPS) {
                throw new IllegalStateException("the solver needs more than " + MAX_STEPS + " steps");
            }
            double left = end - time;
            double dt = step >= left ? left : (step > 0.5 * left ? 0.5 * left : step);
            choosePrecision(surroundings);
            double error = attempt(dt, surroundings);
            if (error > 1.0) {
                step = dt * Math.max(0.2, 0.9 * fourthRoot(1.0 / error));
                continue;
            }
            time = dt == left ? end : time + dt;
            System.arraycopy(unknown, 0, enthalpies, 0, last + 1);
            heat += dt * surfaceFlow;
            sample(time, heat, rates[Sdirk4.STAGES - 1]);
            if (first) {
                levelFirstPiece(startSample);
                first = false;
            }
            step = dt * Math.min(4.0, 0.9 * fourthRoot(1.0 / Math.max(error, 1e-8)));
        }
        return end;
    }

    /**
     * While a front moves, its passing of a node is a jolt that no order of accuracy helps, so the tolerance is wider, and
     * Newton's method must really settle; elsewhere what a correction of d kelvin leaves is about 0.002 d^2 (the change
     * of diffusivity per kelvin).
     */
    private void choosePrecision(Surroundings surroundings) {
        double lowestC = surroundings.temperatureC();
        for (int i = 0; i <= last; i++) {
            lowestC = Math.min(lowestC, material.temperatureC(enthalpies[i]));
        }
        boolean calm = lowestC > material.smoothAboveC();
        toleranceK = calm ? resolution.toleranceK() : resolution.frontToleranceK();
        settledK = calm ? 0.5 * Math.sqrt(toleranceK / 0.003) : 0.05 * toleranceK;
    }

    /** A step in which heat passes through a few thousandths of the body; the error control takes it from there. */
    private double firstStep() {
        double slowest = Double.POSITIVE_INFINITY;
        for (int i = 0; i <= last; i++) {
            slowest = Math.min(slowest, material.kirchhoffSlope(material.cell(enthalpies[i])));
        }
        return 1e-3 * reach * reach / Math.max(slowest, 1e-9);
    }

    /**
     * Tries a step of {@code dt} from {@link #enthalpies}; leaves the result in {@link #unknown}.
     *
     * @return error over tolerance; infinity when Newton's method does not settle
     */
    private double attempt(double dt, Surroundings surroundings) {
        double weight = Sdirk4.DIAGONAL * dt / (reach * reach);
        for (int stage = 0; stage < Sdirk4.STAGES; stage++) {
            double[] row = Sdirk4.A[stage];
            double[] guess = rates[stage == 0 ? Sdirk4.STAGES - 1 : stage - 1];
            for (int i = 0; i <= last; i++) {
                double sum = enthalpies[i];
                for (int j = 0; j < stage; j++) {
                    sum += dt * row[j] * rates[j][i];
                }
                base[i] = sum;
                unknown[i] = sum + Sdirk4.DIAGONAL * dt * guess[i];
            }
            if (!solveStage(weight, surroundings)) {
                return Double.POSITIVE_INFINITY;
            }
            double perTime = 1.0 / (Sdirk4.DIAGONAL * dt);
            double[] rate = rates[stage];
            for (int i = 0; i <= last; i++) {
                rate[i] = (unknown[i] - base[i]) * perTime;
            }
            stageFlows[stage] = surfaceFlow;
        }
        surfaceFlow = 0.0;
        for (int stage = 0; stage < Sdirk4.STAGES; stage++) {
            surfaceFlow += Sdirk4.A[Sdirk4.STAGES - 1][stage] * stageFlows[stage];
        }
        return error(dt);
    }

    /** Newton's method for {@code M (H - base) = weight F(H)}; leaves the flow through the surface of the last one. */
    private boolean solveStage(double weight, Surroundings surroundings) {
        double film = Math.min(surroundings.filmCoefficient(), HOLDING_FILM) * reach;
        for (int iteration = 0; iteration < MAX_NEWTON; iteration++) {
            for (int i = 0; i <= last; i++) {
                int cell = material.cell(unknown[i]);
                theta[i] = material.kirchhoff(cell, unknown[i]);
                thetaSlope[i] = material.kirchhoffSlope(cell);
                temperatureSlope[i] = material.temperatureSlope(cell);
            }
            double flow = film * (surroundings.temperatureC() - material.temperatureC(unknown[last]));
            double flowSlope = film * temperatureSlope[last];
            eliminate(weight, flow, flowSlope);
            double changeK = substitute();
            surfaceFlow = (flow - flowSlope * residual[last]) / (reach * reach);
            if (!(changeK < RUNAWAY_K)) {
                return false;
            }
            if (changeK <= settledK) {
                return true;
            }
        }
        return false;
    }

    /** Sets up the linear system of one Newton iteration and eliminates downwards (Thomas' algorithm) on the way. */
    private void eliminate(double weight, double flow, double flowSlope) {
        double[] g = mesh.conductance();
        double[] below = mesh.below();
        double[] diagonal = mesh.diagonal();
        double[] above = mesh.above();
        double gain = weight * g[0] * (theta[1] - theta[0]);
        double slopeIn = 0.0;
        double ahead = unknown[0] - base[0];
        double behind = 0.0;
        double pivot = 0.0;
        for (int i = 0; i < last; i++) {
            double here = ahead;
            ahead = unknown[i + 1] - base[i + 1];
            double conductance = weight * g[i];
            double low = below[i] - (i > 0 ? slopeIn * thetaSlope[i - 1] : 0.0);
            double mid = diagonal[i] + (slopeIn + conductance) * thetaSlope[i];
            double high = above[i] - conductance * thetaSlope[i + 1];
            double outer = conductance * (theta[i + 1] - theta[i]);
            double right = (i > 0 ? outer - gain : outer) - below[i] * behind - diagonal[i] * here - above[i] * ahead;
            if (i > 0) {
                double factor = low * pivot;
                lower[i] = factor;
                mid -= factor * upper[i - 1];
                right -= factor * residual[i - 1];
            }
            pivot = 1.0 / mid;
            inverse[i] = pivot;
            upper[i] = high;
            residual[i] = right;
            gain = outer;
            slopeIn = conductance;
            behind = here;
        }
        double low = below[last] - slopeIn * thetaSlope[last - 1];
        double factor = low * pivot;
        lower[last] = factor;
        inverse[last] =
                1.0 / (diagonal[last] + slopeIn * thetaSlope[last] + weight * flowSlope - factor * upper[last - 1]);
        residual[last] =
                weight * flow - gain - below[last] * behind - diagonal[last] * ahead - factor * residual[last - 1];
    }

    /** Substitutes upwards and applies the correction; its largest effect on a temperature [K]. */
    private double substitute() {
        double correction = residual[last] * inverse[last];
        residual[last] = correction;
        unknown[last] += correction;
        double changeK = Math.abs(correction) * temperatureSlope[last];
        for (int i = last - 1; i >= 0; i--) {
            correction = (residual[i] - upper[i] * correction) * inverse[i];
            residual[i] = correction;
            unknown[i] += correction;
            changeK = Math.max(changeK, Math.abs(correction) * temperatureSlope[i]);
        }
        return changeK;
    }

    /** Error of the step over the tolerance, filtered through the last matrix so that stiff parts do not dominate. */
    private double error(double dt) {
        for (int i = 0; i <= last; i++) {
            double sum = 0.0;
            for (int stage = 0; stage < Sdirk4.STAGES; stage++) {
                sum += Sdirk4.ERROR[stage] * rates[stage][i];
            }
            base[i] = dt * sum;
        }
        for (int i = 0; i <= last; i++) {
            double sum = mesh.diagonal()[i] * base[i];
            if (i > 0) {
                sum += mesh.below()[i] * base[i - 1];
            }
            if (i < last) {
                sum += mesh.above()[i] * base[i + 1];
            }
            residual[i] = i > 0 ? sum - lower[i] * residual[i - 1] : sum;
        }
        double worst = 0.0;
        for (int i = last; i >= 0; i--) {
            residual[i] = (i < last ? residual[i] - upper[i] * residual[i + 1] : residual[i]) * inverse[i];
            worst = Math.max(worst, Math.abs(residual[i]) * temperatureSlope[i]);
        }
        return worst / toleranceK;
    }

    private int sample(double time, double heat, double[] rate) {
        int n = last + 1;
        if (samples == times.length) {
            times = Arrays.copyOf(times, 2 * samples);
            heatTaken = Arrays.copyOf(heatTaken, 2 * samples);
            temperaturesC = Arrays.copyOf(temperaturesC, 2 * samples * n);
            slopes = Arrays.copyOf(slopes, 2 * samples * n);
        }
        times[samples] = time;
        heatTaken[samples] = heat;
        for (int i = 0; i < n; i++) {
            temperaturesC[samples * n + i] = material.temperatureC(enthalpies[i]);
            slopes[samples * n + i] = rate[i] * material.temperatureSlope(material.cell(enthalpies[i]));
        }
        return samples++;
    }

    /** Right after a change of surroundings the slope is not defined; the first piece is made a straight line. */
    private void levelFirstPiece(int sample) {
        int n = last + 1;
        double span = times[sample + 1] - times[sample];
        for (int i = 0; i < n; i++) {
            slopes[sample * n + i] = (temperaturesC[(sample + 1) * n + i] - temperaturesC[sample * n + i]) / span;
        }
    }

    private static double fourthRoot(double x) {
        return Math.sqrt(Math.sqrt(x));
    }
}
