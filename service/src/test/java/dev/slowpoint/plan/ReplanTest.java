package dev.slowpoint.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.slowpoint.heat.Slab;
import dev.slowpoint.plan.Replan.Decision;
import dev.slowpoint.plan.SoFar.CoreReading;
import dev.slowpoint.plan.SoFar.Event;
import dev.slowpoint.safety.Plausibility;
import dev.slowpoint.safety.Recording;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ReplanTest {

    private static final Kitchen PORK = Kitchen.of("pork-loin", new Slab(0.045), 4.0, 60.0);
    private static final Plausibility WATER =
            new Plausibility(900.0, -1.0, 105.0, 200.0, 200.0, Double.POSITIVE_INFINITY, 200.0);

    private static Replan after(double elapsed, Event... events) {
        return replan(new SoFar(elapsed, Optional.empty(), List.of(events), List.of(), OptionalDouble.empty()));
    }

    private static Replan replan(SoFar soFar) {
        return Kitchen.PLANNER.replan(new ReplanTask(PORK.task(), soFar), EnumSet.noneOf(Detail.class));
    }

    private static Replan logged(double elapsed, double[] times, double[] temperaturesC) {
        return replan(new SoFar(
                elapsed,
                Optional.of(Recording.of(times, temperaturesC, WATER)),
                List.of(),
                List.of(),
                OptionalDouble.empty()));
    }

    private static Replan read(double at, double coreC, double errorK) {
        return replan(new SoFar(
                at,
                Optional.empty(),
                List.of(),
                List.of(new CoreReading(at, coreC, OptionalDouble.of(errorK))),
                OptionalDouble.empty()));
    }

    private static SoFar coreRead(double elapsed, double... timesAndCores) {
        List<CoreReading> readings = new ArrayList<>();
        for (int i = 0; i < timesAndCores.length; i += 2) {
            readings.add(new CoreReading(timesAndCores[i], timesAndCores[i + 1], OptionalDouble.empty()));
        }
        return new SoFar(elapsed, Optional.empty(), List.of(), readings, OptionalDouble.empty());
    }

    private static List<NoticeCode> codes(Replan replan) {
        return replan.plan().notices().stream().map(Notice::code).toList();
    }

    @Test
    void an_undisturbed_cook_goes_on_as_planned() {
        CookPlan plan = PORK.plan();
        Replan replan = after(3600.0);
        assertThat(replan.plan().times()).isEqualTo(plan.times());
        assertThat(replan.plan().takeOut()).isEqualTo(plan.takeOut());
        assertThat(replan.plan().safety().organisms()).isEqualTo(plan.safety().organisms());
        assertThat(replan.plan().notices()).isEqualTo(plan.notices());
        assertThat(replan.decision()).isEqualTo(Decision.CARRY_ON);
        assertThat(after(plan.takeOut().earliest() + 1.0).decision()).isEqualTo(Decision.READY);
    }

    @Test
    void a_log_that_stood_at_the_setpoint_changes_nothing_and_its_density_neither() {
        Span safe = PORK.plan().times().safe().orElseThrow();
        double[] coarse = new double[10];
        double[] dense = new double[1201];
        double[] at60 = new double[10];
        double[] all60 = new double[1201];
        for (int i = 0; i < 10; i++) {
            coarse[i] = 400.0 * i;
            at60[i] = 60.0;
        }
        for (int i = 0; i < 1201; i++) {
            dense[i] = 3.0 * i;
            all60[i] = 60.0;
        }
        for (Replan replan : List.of(logged(3600.0, coarse, at60), logged(3600.0, dense, all60))) {
            Span found = replan.plan().times().safe().orElseThrow();
            assertThat(found.nominal()).isCloseTo(safe.nominal(), within(5.0));
            assertThat(found.late()).isCloseTo(safe.late(), within(5.0));
        }
    }

    @Test
    void a_wobbling_log_is_kept_within_its_tolerance_and_bounded() {
        double[] times = new double[2000];
        double[] temperaturesC = new double[2000];
        for (int i = 0; i < 2000; i++) {
            times[i] = 5.0 * i;
            temperaturesC[i] = 60.0 + 0.3 * StrictMath.sin(i / 7.0);
        }
        LogPath path = LogPath.of(Recording.of(times, temperaturesC, WATER), 0.05);
        assertThat(path.times().length).isLessThanOrEqualTo(LogPath.MOST);
        double worst = 0.0;
        for (int i = 0; i < 2000; i++) {
            int next = 1;
            while (path.times()[next] < times[i]) {
                next++;
            }
            double share = (times[i] - path.times()[next - 1]) / (path.times()[next] - path.times()[next - 1]);
            double lineC = path.temperaturesC()[next - 1]
                    + share * (path.temperaturesC()[next] - path.temperaturesC()[next - 1]);
            worst = Math.max(worst, Math.abs(lineC - temperaturesC[i]));
        }
        assertThat(worst).isLessThanOrEqualTo(path.errorK() + 1e-9);
        System.out.printf("replan: 2000 readings as %d within %.3f K%n", path.times().length, path.errorK());
        long started = System.nanoTime();
        Replan replan = logged(9995.0, times, temperaturesC);
        System.out.printf("replan: wobbling log in %.1f ms%n", (System.nanoTime() - started) / 1e6);
        assertThat(replan.plan().times().safe().orElseThrow().nominal())
                .isCloseTo(PORK.plan().times().safe().orElseThrow().nominal(), within(120.0));
    }

    /** A reading computed for another thickness gives that thickness back. */
    @ParameterizedTest
    @ValueSource(doubles = {0.030, 0.045, 0.070})
    void a_reading_gives_back_the_thickness_that_made_it(double across) {
        CookTask made = PORK.with(new Slab(across)).task();
        double at = 4000.0;
        double coreC = Kitchen.PLANNER
                .plan(PORK.with(new Slab(across)).servedAfter(at).task(), EnumSet.noneOf(Detail.class))
                .atServe()
                .orElseThrow()
                .coreC();
        Replan.Fit fit = read(at, coreC, 0.2).fit().orElseThrow();
        assertThat(made.body().across()).isEqualTo(across);
        assertThat(fit.across().nominal()).isCloseTo(across, within(0.0003));
        assertThat(fit.across().low()).isLessThan(across);
        assertThat(fit.across().high()).isGreaterThan(across);
        assertThat(fit.missK()).isLessThan(0.05);
    }

    @Test
    void a_short_time_without_heater_costs_time_and_a_long_one_the_food() {
        double planned = PORK.plan().times().safe().orElseThrow().late();
        Replan brief = after(3600.0, new SoFar.HeaterOff(OptionalDouble.of(2400.0), 3600.0, OptionalDouble.of(57.0)));
        assertThat(brief.plan().times().safe().orElseThrow().late()).isGreaterThan(planned + 60.0);
        assertThat(brief.decision()).isEqualTo(Decision.CARRY_ON);
        assertThat(codes(brief)).contains(NoticeCode.HEATER_WAS_OFF).doesNotContain(NoticeCode.TOXIN_NOT_UNDONE);
        Replan night =
                after(50_000.0, new SoFar.HeaterOff(OptionalDouble.of(14_000.0), 50_000.0, OptionalDouble.empty()));
        assertThat(night.decision()).isEqualTo(Decision.DISCARD);
        assertThat(night.plan().safety().verdict()).isEqualTo(dev.slowpoint.safety.Verdict.NOT_MET);
        assertThat(codes(night)).contains(NoticeCode.TOXIN_NOT_UNDONE, NoticeCode.FELL_BACK);
    }

    @Test
    void readings_that_no_piece_explains_pin_nothing_and_make_nothing_safe_sooner() {
        Replan scattered = replan(new SoFar(
                7200.0,
                Optional.empty(),
                List.of(),
                List.of(
                        new CoreReading(3600.0, 50.0, OptionalDouble.of(0.5)),
                        new CoreReading(7200.0, 40.0, OptionalDouble.of(0.5))),
                OptionalDouble.empty()));
        assertThat(scattered.fit().orElseThrow().pinned()).isEqualTo(Replan.Pinned.POORLY);
        assertThat(scattered.plan().times().safe().orElseThrow().late())
                .isGreaterThanOrEqualTo(PORK.plan().times().safe().orElseThrow().late() - 1.0);
    }

    /** While a slab heats its middle is its coldest point (Carslaw and Jaeger 1959, section 3.4): a tip beside it reads high. */
    @Test
    void readings_that_are_too_high_bring_nothing_forward_and_are_told() {
        CookPlan planned = after(3600.0).plan();
        for (SoFar high : List.of(
                coreRead(3600.0, 3000.0, 59.5, 3600.0, 59.5),
                coreRead(3600.0, 3600.0, 54.0),
                coreRead(0.0, 0.0, 4.5))) {
            CookPlan plan = replan(high).plan();
            assertThat(plan.times().safe().orElseThrow().late())
                    .isGreaterThanOrEqualTo(planned.times().safe().orElseThrow().late());
            assertThat(plan.takeOut().best())
                    .isGreaterThanOrEqualTo(planned.takeOut().best());
        }
        Replan high = replan(coreRead(3600.0, 3000.0, 59.5, 3600.0, 59.5));
        assertThat(codes(high)).contains(NoticeCode.READINGS_MEAN_THINNER);
        assertThat(high.fit().orElseThrow().across().nominal()).isLessThan(0.035);
        assertThat(high.plan().times().safe().orElseThrow().nominal())
                .isLessThan(planned.times().safe().orElseThrow().nominal());
    }

    @Test
    void readings_that_are_low_make_a_plan_longer() {
        CookPlan planned = after(3600.0).plan();
        CookPlan plan = replan(coreRead(3600.0, 3600.0, 30.0)).plan();
        assertThat(plan.times().safe().orElseThrow().late())
                .isGreaterThan(planned.times().safe().orElseThrow().late() + 3600.0);
        assertThat(plan.takeOut().best()).isGreaterThan(planned.takeOut().best() + 3600.0);
    }

    @ParameterizedTest
    @ValueSource(doubles = {6000.0, 6600.0, 7200.0, 8100.0, 9000.0})
    void a_fall_that_is_still_coming_is_decided_on_before_a_moment_is_told(double until) {
        Replan replan = after(until, new SoFar.HeaterOff(OptionalDouble.of(3600.0), until, OptionalDouble.of(48.0)));
        assertThat(replan.decision()).isEqualTo(Decision.GET_DECISION);
        assertThat(replan.reason()).contains(Replan.Reason.SPORES_MAY_HAVE_GROWN);
        assertThat(replan.plan().safety().verdict()).isEqualTo(dev.slowpoint.safety.Verdict.NOT_MET);
        assertThat(codes(replan)).contains(NoticeCode.TOXIN_NOT_UNDONE, NoticeCode.FELL_BACK);
    }

    @Test
    void a_guess_of_hours_in_the_bath_is_warned_of_and_its_worst_case_is_the_longest_time_without_heater() {
        Replan guessed =
                after(14_000.0, new SoFar.HeaterOff(OptionalDouble.empty(), 14_000.0, OptionalDouble.of(55.0)));
        assertThat(codes(guessed)).contains(NoticeCode.OFF_TIME_WORKED_OUT, NoticeCode.HEATER_WAS_OFF);
        Span off = guessed.off().get(0).length();
        assertThat(off.late()).isGreaterThan(off.nominal());
        double planned = PORK.plan().times().safe().orElseThrow().late();
        assertThat(guessed.plan().times().safe().orElseThrow().late()).isGreaterThan(planned);
    }

    @Test
    void a_gap_is_never_better_than_a_record_of_the_setpoint() {
        Replan recorded = after(9000.0);
        Replan gap = logged(9000.0, new double[] {0.0, 3000.0, 9000.0}, new double[] {60.0, 60.0, 60.0});
        assertThat(gap.plan().times().safe().orElseThrow().late())
                .isGreaterThanOrEqualTo(
                        recorded.plan().times().safe().orElseThrow().late());
        assertThat(gap.now().coreC().low())
                .isLessThanOrEqualTo(recorded.now().coreC().low());
    }
}
