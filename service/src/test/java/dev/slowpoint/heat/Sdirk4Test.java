package dev.slowpoint.heat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Order conditions of Runge-Kutta methods: Butcher 1963; Hairer, Norsett and Wanner 1993, table II.2.2. */
class Sdirk4Test {

    private static final double[] C = new double[Sdirk4.STAGES];

    static {
        for (int i = 0; i < Sdirk4.STAGES; i++) {
            for (int j = 0; j < Sdirk4.STAGES; j++) {
                C[i] += Sdirk4.A[i][j];
            }
        }
    }

    @Test
    void the_solution_meets_all_eight_conditions_of_order_four() {
        double[] b = Sdirk4.A[Sdirk4.STAGES - 1];
        conditionsToOrderThree(b);
        double c3 = 0;
        double bcac = 0;
        double bac2 = 0;
        double baac = 0;
        for (int i = 0; i < Sdirk4.STAGES; i++) {
            c3 += b[i] * C[i] * C[i] * C[i];
            for (int j = 0; j < Sdirk4.STAGES; j++) {
                bcac += b[i] * C[i] * Sdirk4.A[i][j] * C[j];
                bac2 += b[i] * Sdirk4.A[i][j] * C[j] * C[j];
                for (int k = 0; k < Sdirk4.STAGES; k++) {
                    baac += b[i] * Sdirk4.A[i][j] * Sdirk4.A[j][k] * C[k];
                }
            }
        }
        assertThat(c3).isCloseTo(1.0 / 4, within(1e-13));
        assertThat(bcac).isCloseTo(1.0 / 8, within(1e-13));
        assertThat(bac2).isCloseTo(1.0 / 12, within(1e-13));
        assertThat(baac).isCloseTo(1.0 / 24, within(1e-13));
    }

    @Test
    void the_embedded_solution_meets_all_conditions_of_order_three() {
        conditionsToOrderThree(Sdirk4.EMBEDDED);
    }

    private static void conditionsToOrderThree(double[] b) {
        double sum = 0;
        double c1 = 0;
        double c2 = 0;
        double bac = 0;
        for (int i = 0; i < Sdirk4.STAGES; i++) {
            sum += b[i];
            c1 += b[i] * C[i];
            c2 += b[i] * C[i] * C[i];
            for (int j = 0; j < Sdirk4.STAGES; j++) {
                bac += b[i] * Sdirk4.A[i][j] * C[j];
            }
        }
        assertThat(sum).isCloseTo(1.0, within(1e-13));
        assertThat(c1).isCloseTo(1.0 / 2, within(1e-13));
        assertThat(c2).isCloseTo(1.0 / 3, within(1e-13));
        assertThat(bac).isCloseTo(1.0 / 6, within(1e-13));
    }
}
