package dev.slowpoint.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.slowpoint.food.Form;
import dev.slowpoint.heat.Body;
import dev.slowpoint.heat.Brick;
import dev.slowpoint.heat.LongCylinder;
import dev.slowpoint.heat.Slab;
import dev.slowpoint.plan.CookPlan.Obstacle;
import dev.slowpoint.plan.CookPlan.TakeOut;
import dev.slowpoint.plan.ProcessWindow.AtSetpoint;
import dev.slowpoint.plan.ProcessWindow.Change;
import dev.slowpoint.plan.ProcessWindow.Distance;
import dev.slowpoint.plan.ProcessWindow.Edge;
import dev.slowpoint.plan.ProcessWindow.Interval;
import dev.slowpoint.plan.ProcessWindow.Line;
import dev.slowpoint.plan.ProcessWindow.Opening;
import dev.slowpoint.plan.ProcessWindow.ProcessPoint;
import dev.slowpoint.plan.ProcessWindow.Tolerances;
import dev.slowpoint.safety.Purpose;
import dev.slowpoint.safety.Verdict;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Process windows, each held against cook plans that are asked for one by one. */
class ProcessWindowTest {

    private static final OptionalDouble NONE = OptionalDouble.empty();

    /** A question, with the range to be looked over. */
    private record Asked(Kitchen kitchen, double lowestC, double highestC, double stepK) {

        ProcessWindow window() {
            return ProcessWindowTest.window(
                    kitchen.advised().task(),
                    OptionalDouble.of(lowestC),
                    OptionalDouble.of(highestC),
                    OptionalDouble.of(stepK),
                    NONE);
        }

        @Override
        public String toString() {
            return kitchen.food() + " " + kitchen.body() + " " + kitchen.purpose();
        }
    }

    private static ProcessWindow window(
            CookTask cook,
            OptionalDouble lowestC,
            OptionalDouble highestC,
            OptionalDouble stepK,
            OptionalDouble available) {
        return Kitchen.PLANNER.window(ProcessWindowTask.of(cook, lowestC, highestC, stepK, available, NONE));
    }

    private static ProcessWindow usual(String food, Body body) {
        return window(Kitchen.of(food, body, 4.0, 60.0).advised().task(), NONE, NONE, NONE, NONE);
    }

    static Stream<Asked> questions() {
        return Stream.of(
                new Asked(Kitchen.of("pork-loin", new Slab(0.045), 4.0, 60.0), 57.0, 67.0, 1.0),
                new Asked(Kitchen.of("chicken-breast", new Slab(0.03), 4.0, 60.0), 57.0, 66.0, 1.0),
                new Asked(Kitchen.of("beef-sirloin", new Slab(0.025), 4.0, 60.0), 52.0, 60.0, 1.0),
                new Asked(Kitchen.of("beef-chuck", new Brick(0.076, 0.12, 0.18), 4.0, 60.0), 53.0, 63.0, 2.0),
                new Asked(Kitchen.of("beef-minced", new Slab(0.025), 4.0, 60.0).with(Form.MINCED), 52.0, 64.0, 2.0),
                new Asked(
                        Kitchen.of("chicken-thigh", new Slab(0.025), -18.0, 60.0)
                                .with(Purpose.KEEP),
                        60.0,
                        90.0,
                        5.0),
                new Asked(Kitchen.of("carrot", new LongCylinder(0.025), 10.0, 85.0), 78.0, 90.0, 2.0),
                new Asked(Kitchen.of("salmon", new Slab(0.025), 4.0, 60.0), 48.0, 63.0, 1.5));
    }

    /** What a cook plan says, or nothing where it is refused. */
    private static Optional<CookPlan> plan(CookTask task) {
        try {
            return Optional.of(Kitchen.PLANNER.plan(task, EnumSet.noneOf(Detail.class)));
        } catch (Refusal refused) {
            return Optional.empty();
        }
    }

    private static boolean open(Optional<CookPlan> plan) {
        return plan.filter(p -> p.takeOut().obstacle().isEmpty()).isPresent();
    }

    @ParameterizedTest
    @MethodSource("questions")
    @DisplayName(
            "The lines at a setpoint are those of a cook plan at it, and the region holds just the setpoints with a time"
                    + " to take it out")
    void lines_and_region_are_those_of_cook_plans(Asked asked) {
        ProcessWindow window = asked.window();
        for (AtSetpoint at : window.setpoints()) {
            Optional<CookPlan> plan = plan(asked.kitchen().at(at.setpointC()).task());
            assertThat(at.lines().isPresent()).as("%s", at.setpointC()).isEqualTo(plan.isPresent());
            assertThat(at.lines().map(ProcessWindow.Lines::times)).isEqualTo(plan.map(CookPlan::times));
            assertThat(at.lines().map(ProcessWindow.Lines::takeOut)).isEqualTo(plan.map(CookPlan::takeOut));
            assertThat(at.lines().map(ProcessWindow.Lines::verdict))
                    .isEqualTo(plan.map(p -> p.safety().verdict()));
            assertThat(at.bar().isEmpty()).isEqualTo(open(plan));
            assertThat(window.region().stream()
                            .filter(i -> i.from().setpointC() <= at.setpointC() && i.to().setpointC() >= at.setpointC())
                            .count())
                    .isEqualTo(open(plan) ? 1L : 0L);
        }
        assertThat(window.recommended().isPresent()).isEqualTo(!window.region().isEmpty());
        assertThat(window.closed().isPresent()).isEqualTo(window.region().isEmpty());
    }

    @ParameterizedTest
    @MethodSource("questions")
    void an_end_of_the_region_is_inside_and_a_twentieth_of_a_kelvin_beyond_it_is_not(Asked asked) {
        for (Interval interval : asked.window().region()) {
            double fromC = interval.from().setpointC();
            double toC = interval.to().setpointC();
            assertThat(open(plan(asked.kitchen().at(fromC).task()))).isTrue();
            assertThat(open(plan(asked.kitchen().at(toC).task()))).isTrue();
            if (interval.cooler().isPresent()) {
                assertThat(open(plan(asked.kitchen()
                                .at(fromC - ProcessWindow.EDGE_WITHIN_K)
                                .task())))
                        .isFalse();
            }
            if (interval.hotter().isPresent()) {
                assertThat(open(plan(asked.kitchen()
                                .at(toC + ProcessWindow.EDGE_WITHIN_K)
                                .task())))
                        .isFalse();
            }
        }
    }

    /** A hotter bath makes safe sooner, always; tender sooner where it softens, and never much later where it is heat alone. */
    @ParameterizedTest
    @MethodSource("questions")
    void a_hotter_bath_is_safe_no_later(Asked asked) {
        List<AtSetpoint> setpoints = asked.window().setpoints();
        int compared = 0;
        for (int i = 1; i < setpoints.size(); i++) {
            if (setpoints.get(i - 1).lines().isEmpty()) {
                continue;
            }
            CookPlan.Times cooler = setpoints.get(i - 1).lines().orElseThrow().times();
            CookPlan.Times hotter = setpoints.get(i).lines().orElseThrow().times();
            assertThat(hotter.safe().orElseThrow().late())
                    .isLessThanOrEqualTo(cooler.safe().orElseThrow().late());
            compared++;
        }
        assertThat(compared).isPositive();
    }

    @Test
    void where_softening_opens_the_texture_a_hotter_bath_is_tender_sooner() {
        for (Asked asked : List.of(
                new Asked(Kitchen.of("beef-chuck", new Brick(0.076, 0.12, 0.18), 4.0, 60.0), 56.0, 72.0, 2.0),
                new Asked(Kitchen.of("carrot", new LongCylinder(0.025), 10.0, 85.0), 82.0, 94.0, 2.0))) {
            double before = Double.POSITIVE_INFINITY;
            for (AtSetpoint at : asked.window().setpoints()) {
                double tender =
                        at.lines().orElseThrow().times().tender().orElseThrow().nominal();
                assertThat(tender).isLessThan(before);
                before = tender;
            }
        }
    }

    /** All goes wrong k times one way, as {@link Robustness} says, and the cook is planned anew. */
    private static boolean holds(CookTask task, Tolerances once, ProcessPoint point, double k, double way) {
        CookTask off = task.with(task.body().across() - way * k * once.across(), way * k * once.startK())
                .at(point.setpointC() + way * k * once.bathK());
        Optional<CookPlan> plan = plan(off);
        if (!open(plan)) {
            return false;
        }
        TakeOut takeOut = plan.orElseThrow().takeOut();
        double soonest = takeOut.earliest();
        if (point.verdict() == Verdict.MET) {
            soonest = Math.max(
                    soonest, plan.orElseThrow().times().safe().orElseThrow().late());
        }
        return point.at() - k * once.moment() >= soonest && point.at() + k * once.moment() <= takeOut.latest();
    }

    @ParameterizedTest
    @MethodSource("questions")
    @DisplayName(
            "With all wrong by a hundredth less than the spare the recommended point is still inside, by a hundredth more it is not")
    void the_spare_is_where_plans_asked_anew_say_it_is(Asked asked) {
        ProcessWindow window = asked.window();
        ProcessPoint point = window.recommended().orElseThrow();
        assertThat(point.inside()).isTrue();
        CookTask task = asked.kitchen().task();
        double spare = point.spare().orElseThrow();
        double inside = Math.max(0.0, spare - Robustness.FINEST);
        double outside = spare + Robustness.FINEST;
        assertThat(holds(task, window.tolerances(), point, inside, -1.0)).isTrue();
        assertThat(holds(task, window.tolerances(), point, inside, 1.0)).isTrue();
        assertThat(holds(task, window.tolerances(), point, outside, -1.0)
                        && holds(task, window.tolerances(), point, outside, 1.0))
                .as("%s holds %s times", point, outside)
                .isFalse();
    }

    @Test
    void a_point_with_a_spare_of_one_is_the_coolest_usual_one_that_has_it() {
        ProcessWindow window = usual("pork-loin", new Slab(0.045));
        ProcessPoint point = window.recommended().orElseThrow();
        assertThat(point.spare().orElseThrow()).isGreaterThanOrEqualTo(1.0 - Robustness.FINEST);
        assertThat(point.verdict()).isEqualTo(Verdict.MET);
        CookTask task = Kitchen.of("pork-loin", new Slab(0.045), 4.0, 60.0).task();
        double lowC = task.food().doneness().orElseThrow().lowC();
        for (AtSetpoint at : window.setpoints()) {
            if (at.setpointC() >= lowC && at.setpointC() < point.setpointC()) {
                assertThat(new Robustness(
                                        new Tries(task, Kitchen.PLANNER.terms(task), new SolverRuns()),
                                        window.tolerances(),
                                        Double.POSITIVE_INFINITY)
                                .moments(at.setpointC(), 1.0))
                        .isEmpty();
            }
        }
    }

    @Test
    void the_setpoint_a_cook_plan_chooses_lies_in_the_region_and_the_recommended_one_has_no_less_in_hand() {
        for (String food : List.of("pork-loin", "chicken-breast", "beef-sirloin", "salmon")) {
            Kitchen kitchen = Kitchen.of(food, new Slab(0.03), 4.0, 60.0).advised();
            CookPlan chosen = kitchen.plan();
            ProcessWindow window = Kitchen.PLANNER.window(ProcessWindowTask.of(
                    kitchen.at(chosen.setpointC())
                            .servedAfter(chosen.takeOut().best())
                            .task(),
                    NONE,
                    NONE,
                    NONE,
                    NONE,
                    NONE));
            ProcessPoint own = window.own().orElseThrow();
            assertThat(own.inside()).as(food).isTrue();
            ProcessPoint recommended = window.recommended().orElseThrow();
            assertThat(recommended.verdict()).as(food).isEqualTo(Verdict.MET);
            if (recommended.spare().orElseThrow() < 1.0) {
                assertThat(recommended.spare().orElseThrow())
                        .as(food)
                        .isGreaterThanOrEqualTo(own.spare().orElseThrow() - Robustness.FINEST);
            }
        }
    }

    private static Distance distance(ProcessPoint point, Edge edge) {
        return point.distances().stream()
                .filter(d -> d.edge() == edge)
                .findFirst()
                .orElseThrow();
    }

    /** The margins of a cook plan at the same setpoint and moment are searched by other code. */
    @ParameterizedTest
    @CsvSource({
        "pork-loin, 0.045, 60, 13400",
        "chicken-breast, 0.03, 62, 9000",
        "beef-sirloin, 0.025, 57, 11000",
        "pork-loin, 0.045, 60, 10500"
    })
    void distances_from_safe_are_the_margins_of_a_cook_plan(String food, double across, double setpointC, double at) {
        Kitchen kitchen = Kitchen.of(food, new Slab(across), 4.0, setpointC).servedAfter(at);
        ProcessPoint own = Kitchen.PLANNER
                .window(ProcessWindowTask.of(
                        kitchen.task(), OptionalDouble.of(setpointC), OptionalDouble.of(setpointC), NONE, NONE, NONE))
                .own()
                .orElseThrow();
        CookPlan.Safety safety = kitchen.plan().safety();
        Distance safe = distance(own, Edge.SAFE);
        assertThat(own.verdict()).isEqualTo(safety.verdict());
        if (safety.margins().seconds().isPresent()) {
            assertThat(safe.seconds().orElseThrow())
                    .isCloseTo(safety.margins().seconds().getAsDouble(), within(2.0));
            assertThat(safe.kelvin().orElseThrow())
                    .isCloseTo(safety.margins().kelvin().orElseThrow(), within(0.11));
            assertThat(safe.metres().orElseThrow())
                    .isCloseTo(safety.margins().metres().orElseThrow(), within(0.0011));
        } else {
            assertThat(safe.seconds().orElseThrow()).isNegative();
            assertThat(own.inside()).isFalse();
        }
    }

    @ParameterizedTest
    @MethodSource("questions")
    void distances_are_where_the_line_of_a_changed_plan_passes_the_moment(Asked asked) {
        ProcessPoint point = asked.window().recommended().orElseThrow();
        CookTask task = asked.kitchen().task();
        int checked = 0;
        for (Distance distance : point.distances()) {
            if (distance.edge() == Edge.SAFE && distance.kelvin().isPresent()) {
                double k = distance.kelvin().getAsDouble();
                assertThat(safeLate(task.at(point.setpointC() - k))).isLessThanOrEqualTo(point.at());
                assertThat(safeLate(task.at(point.setpointC() - k - 0.06))).isGreaterThan(point.at());
                checked++;
            }
            if (distance.edge() == Edge.GOOD_UNTIL && distance.kelvin().isPresent()) {
                double k = distance.kelvin().getAsDouble();
                assertThat(closes(task.at(point.setpointC() + k))).isGreaterThanOrEqualTo(point.at());
                assertThat(closes(task.at(point.setpointC() + k + 0.06))).isLessThan(point.at());
                checked++;
            }
            if (distance.edge() == Edge.SAFE && distance.metres().isPresent()) {
                double across = task.body().across() + distance.metres().getAsDouble();
                assertThat(safeLate(task.with(across, 0.0).at(point.setpointC())))
                        .isLessThanOrEqualTo(point.at());
                assertThat(safeLate(task.with(across + 0.0006, 0.0).at(point.setpointC())))
                        .isGreaterThan(point.at());
                checked++;
            }
        }
        assertThat(checked).isPositive();
    }

    private static double safeLate(CookTask task) {
        return plan(task).flatMap(p -> p.times().safe()).map(Span::late).orElse(Double.POSITIVE_INFINITY);
    }

    private static double closes(CookTask task) {
        return plan(task).orElseThrow().times().goodUntil().orElseThrow().early();
    }

    /**
     * A piece so thin that it is hot at once is safe after the time of the row its bath lies above: FSIS-GD-2021-14 table 2,
     * 6.5 log (READ: 130 F 112 min, 132 F 71, 135 F 36, 138 F 18, 140 F 12). Half a kelvin is taken off the bath, and it lies
     * a quarter of a kelvin above the row, less than half the way to the next. In the worst case 4.5 mm thick, the piece is
     * that near to its bath after some ten minutes.
     */
    @ParameterizedTest
    @CsvSource({"130, 112", "132, 71", "135, 36", "138, 18", "140, 12"})
    void a_thin_piece_is_safe_after_the_time_of_the_published_table(double fahrenheit, double minutes) {
        double rowC = (fahrenheit - 32.0) / 1.8;
        CookTask thin =
                Kitchen.of("beef-sirloin", new Slab(0.003), 4.0, 60.0).advised().task();
        double setpointC = rowC + Kitchen.PLANNER.terms(thin).errorK() + 0.25;
        ProcessWindow window =
                window(thin, OptionalDouble.of(setpointC), OptionalDouble.of(setpointC), OptionalDouble.of(1.0), NONE);
        double safe = window.setpoints()
                .get(0)
                .lines()
                .orElseThrow()
                .times()
                .safe()
                .orElseThrow()
                .late();
        assertThat(safe / 60.0).isBetween(minutes, minutes + 10.0);
    }

    @Test
    void a_roast_that_warms_up_too_slowly_is_told_what_would_open_the_window() {
        ProcessWindow window =
                new Asked(Kitchen.of("beef-sirloin", new LongCylinder(0.15), 5.0, 55.0), 54.0, 60.0, 1.0).window();
        assertThat(window.region()).isEmpty();
        assertThat(window.recommended()).isEmpty();
        ProcessWindow.Closed closed = window.closed().orElseThrow();
        assertThat(closed.bar()).isEqualTo(new Line(Obstacle.WARM_UP_TOO_SLOW));
        Opening thinner = closed.openings().stream()
                .filter(o -> o.change() == Change.THINNER)
                .findFirst()
                .orElseThrow();
        // Limits for six hours in a bath of 55 C: a cylinder of 115 mm nominal, 110 in the worst case (situation S26).
        assertThat(thinner.across().orElseThrow()).isBetween(0.08, 0.125);
        assertThat(open(plan(Kitchen.of(
                                "beef-sirloin",
                                new LongCylinder(thinner.across().orElseThrow()),
                                5.0,
                                thinner.setpointC())
                        .task())))
                .isTrue();
        for (AtSetpoint at : window.setpoints()) {
            double usedUp = at.lines().orElseThrow().warmUpUsedUp();
            assertThat(usedUp).isBetween(6.0 * 3600.0, 9.0 * 3600.0);
        }
        assertThat(window.notices().stream().map(Notice::code)).contains(NoticeCode.WARM_UP_OVER_6H);
    }

    @Test
    void every_opening_opens() {
        for (Asked asked : List.of(
                new Asked(Kitchen.of("pork-loin", new Slab(0.045), 4.0, 60.0), 66.0, 70.0, 1.0),
                new Asked(Kitchen.of("chicken-breast", new Slab(0.03), 4.0, 60.0), 50.0, 56.0, 2.0),
                new Asked(
                        Kitchen.of("chicken-breast", new Slab(0.03), 4.0, 60.0).with(Purpose.KEEP), 52.0, 57.0, 1.0))) {
            ProcessWindow window = asked.window();
            assertThat(window.region()).as("%s", asked).isEmpty();
            List<Opening> openings = window.closed().orElseThrow().openings();
            assertThat(openings).as("%s", asked).isNotEmpty();
            for (Opening opening : openings) {
                Kitchen changed = asked.kitchen().at(opening.setpointC());
                if (opening.across().isPresent()) {
                    changed = changed.with(
                            asked.kitchen().body().withAcross(opening.across().getAsDouble()));
                }
                if (opening.purpose().isPresent()) {
                    changed = changed.with(opening.purpose().get());
                }
                assertThat(open(plan(changed.task()))).as("%s", opening).isTrue();
                assertThat(changed.plan().safety().verdict()).isEqualTo(opening.verdict());
                assertThat(opening.setpointC() > asked.highestC()).isEqualTo(opening.change() == Change.HOTTER);
                assertThat(opening.setpointC() < asked.lowestC()).isEqualTo(opening.change() == Change.COOLER);
            }
        }
    }

    @Test
    void a_cook_has_to_fit_in_the_time_available() {
        CookTask loin =
                Kitchen.of("pork-loin", new Slab(0.045), 4.0, 60.0).advised().task();
        OptionalDouble low = OptionalDouble.of(58.0);
        OptionalDouble high = OptionalDouble.of(64.0);
        OptionalDouble step = OptionalDouble.of(1.0);
        ProcessWindow free = window(loin, low, high, step, NONE);
        ProcessWindow bound = window(loin, low, high, step, OptionalDouble.of(12_000.0));
        assertThat(bound.region().get(0).from().setpointC())
                .isGreaterThan(free.region().get(0).from().setpointC());
        for (AtSetpoint at : bound.setpoints()) {
            double earliest = at.lines().orElseThrow().takeOut().earliest();
            assertThat(at.bar().isEmpty()).isEqualTo(earliest <= 12_000.0);
        }
        ProcessPoint point = bound.recommended().orElseThrow();
        assertThat(point.at()).isLessThan(12_000.0);
        assertThat(distance(point, Edge.AVAILABLE_TIME).seconds().orElseThrow())
                .isCloseTo(12_000.0 - point.at(), within(1e-9));

        ProcessWindow closed = window(loin, low, high, step, OptionalDouble.of(6000.0));
        Opening longer = closed.closed().orElseThrow().openings().stream()
                .filter(o -> o.change() == Change.LONGER)
                .findFirst()
                .orElseThrow();
        assertThat(window(loin, low, high, step, longer.available()).region()).isNotEmpty();
    }

    @Test
    void without_a_range_the_usual_temperatures_and_the_floor_of_the_rule_lie_well_inside() {
        ProcessWindow chicken = usual("chicken-breast", new Slab(0.03));
        List<AtSetpoint> setpoints = chicken.setpoints();
        assertThat(setpoints.get(0).setpointC()).isLessThan(60.0);
        assertThat(setpoints.get(setpoints.size() - 1).setpointC()).isGreaterThan(63.0);
        assertThat(setpoints).hasSizeLessThanOrEqualTo(ProcessWindowTask.MOST);
        ProcessWindow salmon = usual("salmon", new Slab(0.025));
        assertThat(salmon.setpoints().get(0).setpointC()).isLessThan(47.0);
        assertThat(salmon.setpoints().get(salmon.setpoints().size() - 1).setpointC())
                .isGreaterThan(61.0);
    }
}
