package dev.slowpoint.bench;

import dev.slowpoint.heat.Material;
import dev.slowpoint.heat.RateLaw;
import org.hipparchus.ode.ODEIntegrator;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.ODEStateAndDerivative;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.sampling.ODEStateInterpolator;

/**
 * The same history as anybody would compute it with a general-purpose library: a slab cut into cells, enthalpies as
 * unknowns, the doses of core, surface and mean as three more, handed to an integrator with error control.
 *
 * <p>Nothing of the solver is used but the temperature that the tables of the material give for an enthalpy.
 */
final class MethodOfLines implements OrdinaryDifferentialEquation {

    private static final double GRID_K = 0.25;
    private static final double LOWEST_C = -30.0;

    /** Enthalpies are of the order of 1e8 J/m3; the integrator sees them in kelvin of thawed meat. */
    private static final double SCALE = 3.6e6;

    private final int last;
    private final double cell;
    private final double film;
    private final double bathC;
    private final Material material;
    private final RateLaw law;
    private final double[] conductivities = new double[600];
    private final double[] temperaturesC;

    MethodOfLines(double thickness, int intervals, double film, double bathC, Material material, RateLaw law) {
        this.last = intervals;
        this.cell = 0.5 * thickness / intervals;
        this.film = film;
        this.bathC = bathC;
        this.material = material;
        this.law = law;
        for (int i = 0; i < conductivities.length; i++) {
            conductivities[i] = material.conductivity(LOWEST_C + i * GRID_K);
        }
        temperaturesC = new double[last + 1];
    }

    @Override
    public int getDimension() {
        return last + 4;
    }

    @Override
    public double[] computeDerivatives(double time, double[] y) {
        double[] rates = new double[last + 4];
        for (int i = 0; i <= last; i++) {
            temperaturesC[i] = material.temperatureC(y[i] * SCALE);
        }
        double inner = 0.0;
        double mean = 0.0;
        for (int i = 0; i <= last; i++) {
            double outer = i < last
                    ? conductivity(0.5 * (temperaturesC[i] + temperaturesC[i + 1]))
                            * (temperaturesC[i + 1] - temperaturesC[i])
                            / cell
                    : film * (bathC - temperaturesC[i]);
            double width = i == 0 || i == last ? 0.5 * cell : cell;
            rates[i] = (outer - inner) / (width * SCALE);
            inner = outer;
            double rate = law.perSecond(temperaturesC[i]);
            mean += width * rate;
            if (i == 0) {
                rates[last + 1] = rate;
            }
            if (i == last) {
                rates[last + 2] = rate;
            }
        }
        rates[last + 3] = mean / (last * cell);
        return rates;
    }

    private double conductivity(double temperatureC) {
        double x = (temperatureC - LOWEST_C) / GRID_K;
        int i = Math.min(Math.max((int) x, 0), conductivities.length - 2);
        return conductivities[i] + (x - i) * (conductivities[i + 1] - conductivities[i]);
    }

    /** The sum of the three doses after a time. */
    double doses(ODEIntegrator integrator, double startC, double duration) {
        ODEStateAndDerivative end = integrator.integrate(this, start(startC), duration);
        double[] y = end.getPrimaryState();
        return y[last + 1] + y[last + 2] + y[last + 3];
    }

    /** When the core reaches a level [s]. */
    double timeTo(double levelC, ODEIntegrator integrator, double startC, double duration) {
        double[] found = {Double.POSITIVE_INFINITY};
        integrator.clearStepHandlers();
        integrator.addStepHandler((ODEStateInterpolator step) -> {
            double before = coreC(step.getPreviousState());
            double after = coreC(step.getCurrentState());
            if (before < levelC && after >= levelC) {
                double low = step.getPreviousState().getTime();
                double high = step.getCurrentState().getTime();
                for (int i = 0; i < 50; i++) {
                    double middle = 0.5 * (low + high);
                    if (coreC(step.getInterpolatedState(middle)) < levelC) {
                        low = middle;
                    } else {
                        high = middle;
                    }
                }
                found[0] = high;
            }
        });
        integrator.integrate(this, start(startC), duration);
        integrator.clearStepHandlers();
        return found[0];
    }

    private double coreC(ODEState state) {
        return material.temperatureC(state.getPrimaryState()[0] * SCALE);
    }

    private ODEState start(double startC) {
        double[] y = new double[last + 4];
        for (int i = 0; i <= last; i++) {
            y[i] = material.enthalpy(startC) / SCALE;
        }
        return new ODEState(0.0, y);
    }
}
