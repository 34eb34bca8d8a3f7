package dev.slowpoint.bench;

import static org.assertj.core.api.Assertions.assertThat;

import dev.slowpoint.heat.Conduction;
import dev.slowpoint.heat.PointHistory;
import dev.slowpoint.heat.Resolution;
import dev.slowpoint.heat.Slab;
import dev.slowpoint.heat.StartField;
import org.junit.jupiter.api.Test;

/** A comparison of speed is fair only between equally accurate answers. */
class EqualAccuracyTest {

    /** The general-purpose integrator is given as few cells and as wide a tolerance as its error allows to match ours. */
    @Test
    void the_method_of_lines_in_the_benchmark_is_no_more_accurate_than_it_must_be() {
        for (double startC : new double[] {5.0, -18.0}) {
            PointHistory exact = run(startC, new Resolution(48, 200, 100, 1e-5, 2e-4));
            PointHistory ours = run(startC, Resolution.SERVICE);
            HistoryBenchmark benchmark = new HistoryBenchmark();
            double ourError = 0.0;
            double theirError = 0.0;
            for (double levelC : new double[] {40.0, 50.0, 55.0, 58.0, 59.0, 59.5}) {
                double time = exact.firstAtOrAbove(levelC);
                ourError = Math.max(ourError, Math.abs(ours.firstAtOrAbove(levelC) / time - 1.0));
                theirError = Math.max(theirError, Math.abs(benchmark.generalTimeTo(levelC, startC) / time - 1.0));
            }
            System.out.printf(
                    "equal accuracy: from %.0f C ours %.4f %%, general %.4f %%%n",
                    startC, 100 * ourError, 100 * theirError);
            assertThat(theirError).isBetween(0.5 * ourError, 2.0 * ourError);
        }
    }

    private static PointHistory run(double startC, Resolution resolution) {
        return Conduction.run(
                        new Slab(0.03),
                        HistoryBenchmark.PORK,
                        StartField.uniform(startC),
                        HistoryBenchmark.BATH,
                        resolution)
                .core();
    }
}
