package dev.slowpoint.plan;

import static org.assertj.core.api.Assertions.assertThat;

import dev.slowpoint.heat.Slab;
import dev.slowpoint.plan.Outcome.SearEffect;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

/**
 * Slabs at 54 C, seared side by side on 30 to 90 s each and left to rest: the whole chain against an independent
 * one-dimensional model with a wet surface held at 103 C. Its low and high values are a rest at 60 and at 25 W/m2K; the
 * nominal rest of the service lies in between, so the nominal answer has to.
 */
class ComputedSearsTest {

    /**
     * The depths of that model come in steps of 0.7 mm, whatever the thickness (2.9, 3.6, 4.4, 5.1 mm): it tells them to half
     * such a step.
     */
    private static final double HALF_A_STEP_MM = 0.35;

    /** That model ends eight minutes after the sear: a peak it gives there may come later. */
    private static final double ITS_END_MIN = 8.0;

    @ParameterizedTest(name = "{0} mm, {1} s a side")
    @CsvFileSource(resources = "/plan/computed-sears.csv", numLinesToSkip = 1)
    void the_core_rises_as_computed(
            double thicknessMm,
            double perSide,
            double depthLowMm,
            double depthHighMm,
            double riseLowK,
            double riseHighK,
            double peakLowMin,
            double peakHighMin) {
        Kitchen hot = Kitchen.of("beef-sirloin", new Slab(thicknessMm / 1000.0), 4.0, 54.0)
                .servedAfter(6 * 3600.0);
        SearEffect sear =
                Afterwards.of(hot, Afterwards.pan(perSide)).last().sear().orElseThrow();
        assertThat(sear.riseK().nominal()).isBetween(riseLowK, riseHighK);
        assertThat(sear.riseK().low()).isLessThan(sear.riseK().nominal());
        assertThat(sear.riseK().high()).isGreaterThan(sear.riseK().nominal());
        assertThat(1000.0 * sear.depth().nominal())
                .isBetween(depthLowMm - HALF_A_STEP_MM, depthHighMm + HALF_A_STEP_MM);
        double peakMin = sear.peaksAfter() / 60.0;
        assertThat(peakMin).isGreaterThan(peakLowMin);
        if (peakHighMin < ITS_END_MIN) {
            assertThat(peakMin).isLessThan(peakHighMin);
        }
    }
}
