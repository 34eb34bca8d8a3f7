package dev.slowpoint.heat;

import org.jspecify.annotations.Nullable;

/**
 * A body cut into cells: the flows between them, through the faces and from the bath, and the tridiagonal matrix of
 * their linearisation. The heart of the solver; both ways of stepping in time work on it.
 *
 * <p>State: enthalpy per volume of each node [J/m3], and, where the water has a temperature of its own or ramps, that
 * temperature [C] as one more unknown behind the node of the near face.
 */
final class Cells {

    private final Material material;
    private final int last;
    private final double bodyPerLoad;

    private final double[] g;
    private final double[] massBelow;
    private final double[] massDiagonal;
    private final double[] massAbove;
    private final Mesh.Factors massFactors;

    private final double[] temperaturesC;
    private final double[] temperatureSlopes;
    private final double[] theta;
    private final double[] diffusivities;
    private final double[] lower;
    private final double[] inverse;
    private final double[] upper;

    private Face near;
    private double nearMediumC;
    private @Nullable Face far;
    private double farMediumC;
    private @Nullable Heater heater;
    private boolean waterMoves;
    private double drift;
    private double loadPerCapacity;

    private double nearFall;
    private double farFall;
    private double faceFlow;
    private double waterPower;
    private double waterLoss;
    private double waterPowerSlope;
    private double waterLossSlope;

    Cells(Mesh mesh, Material material, double reach, Stage first) {
        this.material = material;
        this.last = mesh.intervals();
        double perReachSquared = 1.0 / (reach * reach);
        this.bodyPerLoad = mesh.layout().shapeExponent() + 1.0;
        int n = last + 2;
        g = new double[last];
        for (int i = 0; i < last; i++) {
            g[i] = mesh.conductance()[i] * perReachSquared;
        }
        massBelow = mesh.below();
        massDiagonal = mesh.diagonal();
        massAbove = mesh.above();
        massFactors = mesh.factors();
        temperaturesC = new double[n];
        temperatureSlopes = new double[n];
        theta = new double[n];
        diffusivities = new double[n];
        lower = new double[n];
        inverse = new double[n];
        upper = new double[n];
        near = new Face(first.surroundings(), reach);
        enter(first, reach, mesh.layout().twoFaced());
    }

    /** Changes the surroundings. */
    void enter(Stage stage, double reach, boolean twoFaced) {
        near = new Face(stage.surroundings(), reach);
        nearMediumC = stage.surroundings().temperatureC();
        Surroundings other = stage.farSurroundings().orElse(stage.surroundings());
        if (!twoFaced && stage.farSurroundings().isPresent()) {
            throw new IllegalArgumentException("only a slab has a far face");
        }
        far = twoFaced ? new Face(other, reach) : null;
        farMediumC = other.temperatureC();
        heater = stage.bath().map(Heater::new).orElse(null);
        waterMoves = heater != null || stage.rampsToC().isPresent();
        drift = (stage.mediumAtEndC() - nearMediumC) / stage.duration();
        waterPower = 0.0;
        waterLoss = 0.0;
        waterPowerSlope = 0.0;
        waterLossSlope = 0.0;
        loadPerCapacity = stage.bath()
                .map(b -> b.loadVolume() * bodyPerLoad / b.heatCapacity())
                .orElse(0.0);
    }

    /** Index of the last unknown: the near face, or the water behind it. */
    int lastUnknown() {
        return waterMoves ? last + 1 : last;
    }

    /** Temperatures, slopes and flows at a state, from which the matrix is made. */
    void evaluate(double[] state) {
        for (int i = 0; i <= last; i++) {
            material.read(state[i], i, temperaturesC, temperatureSlopes, theta, diffusivities);
        }
        if (!waterMoves) {
            return;
        }
        double waterC = state[last + 1];
        temperaturesC[last + 1] = waterC;
        temperatureSlopes[last + 1] = 1.0;
        if (heater != null) {
            waterPowerSlope = heater.powerSlope(waterC);
            waterLossSlope = heater.lossesSlope(waterC);
        }
    }

    /** Rates of gain of the cells [W/m3 times their volume], at the state last evaluated; leaves the flows of the faces. */
    void flows(double[] rates) {
        double inner = 0.0;
        if (far != null) {
            inner = -far.flow(temperaturesC[0], farMediumC);
        }
        faceFlow = -inner;
        for (int i = 0; i < last; i++) {
            double outer = g[i] * (theta[i + 1] - theta[i]);
            rates[i] = outer - inner;
            inner = outer;
        }
        double mediumC = waterMoves ? temperaturesC[last + 1] : nearMediumC;
        double through = near.flow(temperaturesC[last], mediumC);
        rates[last] = through - inner;
        faceFlow += through;
        if (heater != null) {
            waterPower = heater.power(mediumC);
            waterLoss = heater.losses(mediumC);
            rates[last + 1] = (waterPower - waterLoss) / heater.capacity() - loadPerCapacity * through;
        } else if (waterMoves) {
            rates[last + 1] = drift;
        }
    }

    /** The flow through the faces into the body last computed [W/m3 times the unit volume of the mesh]. */
    double intoBody() {
        return faceFlow;
    }

    /** The heat that the flows last computed move in a time [s]. */
    Heat heat(double time) {
        return new Heat(time * faceFlow, time * waterPower, time * waterLoss);
    }

    /** The same with the change of the flows that goes with a change of state, by the linearisation of the matrix. */
    Heat heat(double time, double[] change) {
        double flow = faceFlow - nearFall * change[last] - farFall * change[0];
        if (!waterMoves) {
            return new Heat(time * flow, 0.0, 0.0);
        }
        double warmer = change[last + 1];
        return new Heat(
                time * (flow + near.film() * warmer),
                time * (waterPower + waterPowerSlope * warmer),
                time * (waterLoss + waterLossSlope * warmer));
    }

    /** Sets up and eliminates (Thomas' algorithm) the matrix {@code M - weight J} at the state last evaluated. */
    void factor(double weight) {
        nearFall = near.fall(temperaturesC[last]) * temperatureSlopes[last];
        farFall = far == null ? 0.0 : far.fall(temperaturesC[0]) * temperatureSlopes[0];
        double gIn = 0.0;
        double pivot = 0.0;
        double high = 0.0;
        double d = diffusivities[0];
        for (int i = 0; i < last; i++) {
            double gOut = weight * g[i];
            double dOut = diffusivities[i + 1];
            double mid;
            if (i == 0) {
                mid = massDiagonal[0] + gOut * d + weight * farFall;
            } else {
                double factor = (massBelow[i] - gIn * diffusivities[i - 1]) * pivot;
                lower[i] = factor;
                mid = massDiagonal[i] + (gIn + gOut) * d - factor * high;
            }
            pivot = 1.0 / mid;
            inverse[i] = pivot;
            high = massAbove[i] - gOut * dOut;
            upper[i] = high * pivot;
            gIn = gOut;
            d = dOut;
        }
        double fall = weight * nearFall;
        double factor = (massBelow[last] - gIn * diffusivities[last - 1]) * pivot;
        lower[last] = factor;
        inverse[last] = 1.0 / (massDiagonal[last] + gIn * d + fall - factor * high);
        if (waterMoves) {
            double film = weight * near.film();
            upper[last] = -film * inverse[last];
            double down = -loadPerCapacity * fall * inverse[last];
            lower[last + 1] = down;
            double net = heater == null ? 0.0 : (waterPowerSlope - waterLossSlope) / heater.capacity();
            inverse[last + 1] = 1.0 / (1.0 - weight * net + loadPerCapacity * film + down * film);
        }
    }

    /** Solves with the eliminated matrix, in place. */
    void solve(double[] x) {
        int end = lastUnknown();
        double above = 0.0;
        for (int i = 0; i <= end; i++) {
            above = x[i] - lower[i] * above;
            x[i] = above * inverse[i];
        }
        substitute(x, end);
    }

    /**
     * Solves for one stage of a step, {@code (M - weight J) x = weight F(at) + M carried}: flows, right-hand side and
     * elimination in one pass over the cells. Leaves the flows of the faces.
     */
    void solveStage(double[] at, double[] carried, double weight, double[] x) {
        double inner = 0.0;
        if (far != null) {
            inner = -far.flow(material.temperatureC(at[0]), farMediumC);
        }
        faceFlow = -inner;
        double above = 0.0;
        double behind = 0.0;
        double here = carried[0];
        double thetaHere = material.kirchhoff(at[0]);
        for (int i = 0; i < last; i++) {
            double thetaAhead = material.kirchhoff(at[i + 1]);
            double outer = g[i] * (thetaAhead - thetaHere);
            double ahead = carried[i + 1];
            double right =
                    weight * (outer - inner) + massBelow[i] * behind + massDiagonal[i] * here + massAbove[i] * ahead;
            above = right - lower[i] * above;
            x[i] = above * inverse[i];
            inner = outer;
            thetaHere = thetaAhead;
            behind = here;
            here = ahead;
        }
        double mediumC = waterMoves ? at[last + 1] : nearMediumC;
        double through = near.flow(material.temperatureC(at[last]), mediumC);
        faceFlow += through;
        above = weight * (through - inner) + massBelow[last] * behind + massDiagonal[last] * here - lower[last] * above;
        x[last] = above * inverse[last];
        if (!waterMoves) {
            substitute(x, last);
            return;
        }
        double rate = drift;
        if (heater != null) {
            waterPower = heater.power(mediumC);
            waterLoss = heater.losses(mediumC);
            rate = (waterPower - waterLoss) / heater.capacity() - loadPerCapacity * through;
        }
        x[last + 1] = (weight * rate + carried[last + 1] - lower[last + 1] * above) * inverse[last + 1];
        substitute(x, last + 1);
    }

    private void substitute(double[] x, int end) {
        double below = x[end];
        for (int i = end - 1; i >= 0; i--) {
            below = x[i] - upper[i] * below;
            x[i] = below;
        }
    }

    /** The mass matrix times a vector, added to {@code scale} times another. */
    void massTimes(double[] v, double scale, double[] rates, double[] result) {
        double behind = 0.0;
        double here = v[0];
        for (int i = 0; i < last; i++) {
            double ahead = v[i + 1];
            result[i] = scale * rates[i] + massBelow[i] * behind + massDiagonal[i] * here + massAbove[i] * ahead;
            behind = here;
            here = ahead;
        }
        result[last] = scale * rates[last] + massBelow[last] * behind + massDiagonal[last] * here;
        if (waterMoves) {
            result[last + 1] = scale * rates[last + 1] + v[last + 1];
        }
    }

    /** Solves with the mass matrix: from rates of gain of the cells to rates of change of the nodes. */
    void massSolve(double[] rates, double[] result) {
        double[] massLower = massFactors.lower();
        double[] massInverse = massFactors.inverse();
        double[] massUpper = massFactors.upper();
        double above = 0.0;
        for (int i = 0; i <= last; i++) {
            above = rates[i] - massLower[i] * above;
            result[i] = above * massInverse[i];
        }
        double below = result[last];
        for (int i = last - 1; i >= 0; i--) {
            below = result[i] - massUpper[i] * below;
            result[i] = below;
        }
        if (waterMoves) {
            result[last + 1] = rates[last + 1];
        }
    }

    /** Temperature of an unknown [C] at the state last evaluated. */
    double temperatureC(int unknown) {
        return temperaturesC[unknown];
    }

    /** Rise of the temperature of an unknown per unit of it, at the state last evaluated. */
    double temperatureSlope(int unknown) {
        return temperatureSlopes[unknown];
    }

    /** The smallest diffusivity of a cell [m2/s] at the state last evaluated. */
    double smallestDiffusivity() {
        double smallest = diffusivities[0];
        for (int i = 1; i <= last; i++) {
            smallest = Math.min(smallest, diffusivities[i]);
        }
        return smallest;
    }

    /** Widest difference of temperature between a face, the middle or first node and what the faces see [K]. */
    double spreadK() {
        double mediumC = waterMoves ? temperaturesC[last + 1] : nearMediumC;
        double low = Math.min(Math.min(temperaturesC[0], temperaturesC[last]), temperaturesC[last / 2]);
        double high = Math.max(Math.max(temperaturesC[0], temperaturesC[last]), temperaturesC[last / 2]);
        if (near.film() > 0.0) {
            low = Math.min(low, mediumC);
            high = Math.max(high, mediumC);
        }
        if (far != null && far.film() > 0.0) {
            low = Math.min(low, farMediumC);
            high = Math.max(high, farMediumC);
        }
        return high - low;
    }

    /** Temperature of the coldest medium in sight [C]. */
    double coldestMediumC() {
        double nearC = waterMoves ? temperaturesC[last + 1] : nearMediumC;
        return far == null ? nearC : Math.min(nearC, farMediumC);
    }
}
