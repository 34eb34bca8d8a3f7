package dev.slowpoint.heat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** The two ways of stepping in time. */
class StepperTest {

    /** Nonlinear but smooth: plain conduction into an open bath that loses vapour, the food a tenth of its heat capacity. */
    private static final Stage BATH = new Stage(new Surroundings(60.0, 200.0), 1.0)
            .inBath(new WaterBath(OptionalDouble.of(90.0), 60.0, 4e4, 0.0, 5.0, 0.1, 20.0, 1e-3));

    /** So large and so coarsely cut that no part of it is stiff: a stiff one would show less than the full order. */
    private static final double REACH = 0.05;

    private static final Material MEAT = Material.constant(0.48, 3.5e6);

    /** Halving the step must divide the error by two to the order. */
    @Test
    void the_linearly_implicit_method_is_of_fourth_order() {
        assertThat(order(true, 75.0)).isBetween(3.6, 4.6);
    }

    @Test
    void the_method_for_fronts_is_of_second_order() {
        assertThat(order(false, 300.0)).isBetween(1.85, 2.3);
    }

    /** Order conditions of Runge-Kutta methods to the second order (Butcher 1963), and of a stiffly accurate one. */
    @Test
    void the_weights_of_the_method_for_fronts_meet_the_conditions_of_order_two() {
        double diagonal = TrapezoidThenBdf.DIAGONAL;
        double outer = TrapezoidThenBdf.OUTER;
        assertThat(2.0 * outer + diagonal).isCloseTo(1.0, within(1e-15));
        assertThat(outer * 2.0 * diagonal + diagonal).isCloseTo(0.5, within(1e-15));
    }

    private static double order(boolean smooth, double step) {
        double[] exact = after(smooth, step / 64.0);
        double coarse = distance(after(smooth, step), exact);
        double fine = distance(after(smooth, step / 2.0), exact);
        return StrictMath.log(coarse / fine) / StrictMath.log(2.0);
    }

    /** The state after 9600 s in steps of one length. */
    private static double[] after(boolean smooth, double dt) {
        Mesh mesh = Mesh.of(new Mesh.Layout(0.0, 4, true, false, 0.5));
        int unknowns = mesh.intervals() + 2;
        Cells cells = new Cells(mesh, MEAT, REACH, BATH);
        Stepper stepper = smooth ? new Rosenbrock(cells, unknowns) : new TrapezoidThenBdf(cells, unknowns);
        double[] state = new double[unknowns];
        double[] next = new double[unknowns];
        double[] rates = new double[unknowns];
        for (int i = 0; i <= mesh.intervals(); i++) {
            double r = mesh.positions()[i];
            state[i] = MEAT.enthalpy(59.0 - 50.0 * StrictMath.cos(1.2 * r));
        }
        state[mesh.intervals() + 1] = 90.0;
        long steps = Math.round(9600.0 / dt);
        for (long s = 0; s < steps; s++) {
            cells.evaluate(state);
            cells.flows(rates);
            stepper.attempt(dt, state, rates, 1e-9, next);
            double[] before = state;
            state = next;
            next = before;
        }
        return state;
    }

    private static double distance(double[] a, double[] b) {
        double worst = 0.0;
        for (int i = 0; i < a.length - 1; i++) {
            worst = Math.max(worst, Math.abs(MEAT.temperatureC(a[i]) - MEAT.temperatureC(b[i])));
        }
        return worst;
    }
}
