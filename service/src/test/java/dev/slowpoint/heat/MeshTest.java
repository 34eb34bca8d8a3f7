package dev.slowpoint.heat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Nodes and the shares they stand for. */
class MeshTest {

    private static final RateLaw STEEP = new RateLaw() {
        @Override
        public double perSecond(double temperatureC) {
            return Exp.pow10((temperatureC - 70.0) / 7.5);
        }

        @Override
        public double[] breaksC() {
            return new double[0];
        }
    };

    /** Exact: the mean of r^p over a body whose cross-section grows as r^b is (b + 1) / (b + 1 + p). */
    @Test
    void few_nodes_give_the_exact_mean_of_even_powers() {
        for (double exponent : new double[] {0.0, 0.1, 0.2}) {
            for (int intervals : new int[] {12, 18}) {
                Mesh mesh = Mesh.of(new Mesh.Layout(exponent, intervals, intervals == 12, false, 0.5));
                for (int power = 0; power <= 12; power += 2) {
                    double sum = 0.0;
                    for (int i = 0; i <= intervals; i++) {
                        sum += mesh.sparse()[i] * StrictMath.pow(mesh.positions()[i], power);
                        assertThat(mesh.sparse()[i]).isGreaterThanOrEqualTo(0.0);
                    }
                    assertThat(sum).isCloseTo((exponent + 1.0) / (exponent + 1.0 + power), within(1e-9));
                }
            }
        }
    }

    @Test
    void no_share_is_below_zero_for_any_body() {
        for (double exponent = 0.0; exponent <= 2.0; exponent += 0.1) {
            Mesh mesh = Mesh.of(new Mesh.Layout(exponent, 12, true, false, 0.5));
            for (double share : mesh.sparse()) {
                assertThat(share).isGreaterThanOrEqualTo(0.0);
            }
        }
    }

    @Test
    void shares_of_all_nodes_add_up_to_one() {
        for (boolean twoFaced : new boolean[] {false, true}) {
            Mesh mesh = Mesh.of(new Mesh.Layout(0.0, 24, true, twoFaced, 0.5));
            double sum = 0.0;
            for (double share : mesh.shares()) {
                sum += share;
            }
            assertThat(sum).isCloseTo(1.0, within(1e-12));
        }
    }

    /** Against the mean over all nodes of a far finer mesh, once the middle has warmed up and the dose counts. */
    @Test
    void the_mean_dose_on_few_nodes_is_that_of_a_fine_mesh() {
        Material meat = Material.constant(0.48, 3.5e6);
        for (Body body : new Body[] {new Slab(0.04), new LongCylinder(0.05), new Sphere(0.06)}) {
            for (double time : new double[] {2400.0, 7200.0}) {
                double coarse = mean(body, meat, time, Resolution.SERVICE);
                double fine = mean(body, meat, time, Resolution.YARDSTICK);
                assertThat(coarse).isCloseTo(fine, within(0.005 * fine));
            }
        }
    }

    private static double mean(Body body, Material meat, double time, Resolution resolution) {
        return Conduction.run(
                        body,
                        meat,
                        StartField.uniform(5.0),
                        Programme.of(new Stage(new Surroundings(62.0, 300.0), 7200.0)),
                        resolution)
                .meanDose(STEEP)
                .at(time);
    }
}
