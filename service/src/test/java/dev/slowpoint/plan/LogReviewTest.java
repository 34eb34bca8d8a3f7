package dev.slowpoint.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.slowpoint.food.Condition;
import dev.slowpoint.food.Form;
import dev.slowpoint.heat.Slab;
import dev.slowpoint.heat.StartField;
import dev.slowpoint.parameters.ParameterSets;
import dev.slowpoint.plan.LogReview.CriticalLimit;
import dev.slowpoint.plan.LogReview.DeviationCode;
import dev.slowpoint.plan.LogReview.LogVerdict;
import dev.slowpoint.plan.LogReview.What;
import dev.slowpoint.plan.LogTask.Aspect;
import dev.slowpoint.plan.LogTask.SensorPlace;
import dev.slowpoint.safety.Eater;
import dev.slowpoint.safety.Hazard;
import dev.slowpoint.safety.Purpose;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Reviews of logs. Figures marked "check" are those of the published rules: FSIS-GD-2021-14 (cooking, December 2021),
 * FSIS stabilisation option 1 (1999), FDA Food Code 2022, 3-501.14; closed forms are worked out beside them.
 */
class LogReviewTest {

    private static final CookPlanner PLANNER =
            new CookPlanner(ParameterSets.released().current().knowledge());

    private static final double MINUTE = 60.0;

    /** The fattest column of the tables for poultry; the tables for meat have one column. */
    private static final double FAT_PERCENT = 12.0;

    /** A question, changed by its {@code with} methods. */
    private record Ask(
            String food,
            Form form,
            Condition condition,
            Purpose purpose,
            Eater eater,
            Optional<String> coolingRule,
            Set<Aspect> aspects,
            SensorPlace place,
            double errorK,
            double[] times,
            double[] readings,
            Optional<LogTask.Piece> piece) {

        static Ask of(String food, double[] times, double[] readings) {
            return new Ask(
                    food,
                    Form.INTACT,
                    Condition.RAW,
                    Purpose.SERVE,
                    Eater.GENERAL,
                    Optional.empty(),
                    Set.of(),
                    SensorPlace.CORE,
                    0.0,
                    times,
                    readings,
                    Optional.empty());
        }

        Ask at(SensorPlace changed) {
            return new Ask(
                    food,
                    form,
                    condition,
                    purpose,
                    eater,
                    coolingRule,
                    aspects,
                    changed,
                    errorK,
                    times,
                    readings,
                    piece);
        }

        Ask judging(Aspect... changed) {
            return new Ask(
                    food,
                    form,
                    condition,
                    purpose,
                    eater,
                    coolingRule,
                    Set.of(changed),
                    place,
                    errorK,
                    times,
                    readings,
                    piece);
        }

        Ask with(double changedErrorK) {
            return new Ask(
                    food,
                    form,
                    condition,
                    purpose,
                    eater,
                    coolingRule,
                    aspects,
                    place,
                    changedErrorK,
                    times,
                    readings,
                    piece);
        }

        Ask with(Form changed) {
            return new Ask(
                    food,
                    changed,
                    condition,
                    purpose,
                    eater,
                    coolingRule,
                    aspects,
                    place,
                    errorK,
                    times,
                    readings,
                    piece);
        }

        Ask with(Purpose changed) {
            return new Ask(
                    food, form, condition, changed, eater, coolingRule, aspects, place, errorK, times, readings, piece);
        }

        Ask cooked() {
            return new Ask(
                    food,
                    form,
                    Condition.COOKED,
                    purpose,
                    eater,
                    coolingRule,
                    aspects,
                    place,
                    errorK,
                    times,
                    readings,
                    piece);
        }

        Ask cooledBy(String rule) {
            return new Ask(
                    food,
                    form,
                    condition,
                    purpose,
                    eater,
                    Optional.of(rule),
                    aspects,
                    place,
                    errorK,
                    times,
                    readings,
                    piece);
        }

        Ask of(double thicknessMm, double startC) {
            return new Ask(
                    food,
                    form,
                    condition,
                    purpose,
                    eater,
                    coolingRule,
                    aspects,
                    SensorPlace.BATH,
                    errorK,
                    times,
                    readings,
                    Optional.of(new LogTask.Piece(
                            new Slab(thicknessMm / 1000.0),
                            new Arrangement(1, false, 0.0, OptionalDouble.empty()),
                            StartField.uniform(startC),
                            Stirring.PUMPED,
                            new CookTask.Tolerances(
                                    OptionalDouble.of(0.0),
                                    OptionalDouble.of(0.0),
                                    OptionalDouble.empty(),
                                    OptionalDouble.empty()))));
        }

        LogReview review() {
            return PLANNER.review(new LogTask(
                    PLANNER.knowledge().catalogue().find(food).orElseThrow(),
                    form,
                    condition,
                    OptionalDouble.of(FAT_PERCENT),
                    purpose,
                    eater,
                    Optional.empty(),
                    coolingRule,
                    aspects,
                    new LogTask.Sensor(place, OptionalDouble.of(errorK), OptionalDouble.empty()),
                    new LogTask.Log(times, readings, OptionalDouble.empty()),
                    piece));
        }
    }

    /** Straight lines between corners given in minutes and degrees, read every minute. */
    private static Ask lines(String food, double... corners) {
        int minutes = (int) corners[corners.length - 2];
        double[] times = new double[minutes + 1];
        double[] readings = new double[minutes + 1];
        int corner = 0;
        for (int i = 0; i <= minutes; i++) {
            while (corner + 3 < corners.length - 1 && i > corners[corner + 2]) {
                corner += 2;
            }
            double share = (i - corners[corner]) / (corners[corner + 2] - corners[corner]);
            times[i] = MINUTE * i;
            readings[i] = share == 1.0
                    ? corners[corner + 3]
                    : corners[corner + 1] + share * (corners[corner + 3] - corners[corner + 1]);
        }
        return Ask.of(food, times, readings);
    }

    private static CriticalLimit limit(LogReview review, What what) {
        return review.limits().stream()
                .filter(l -> l.what() == what)
                .findFirst()
                .orElseThrow(() -> new AssertionError(what + " not in " + review.limits()));
    }

    private static List<DeviationCode> codes(LogReview review) {
        return review.deviations().stream().map(LogReview.Deviation::code).toList();
    }

    // ---- lethality: closed forms and published tables ----

    /** From 20 to 60 C at half a kelvin a minute: 2.5205 log, by z/(r ln10) (10^((T2-Tr)/z)-10^((Tf-Tr)/z))/D (check C064). */
    @Test
    void a_ramp_gives_the_kill_of_its_closed_form() {
        LogReview review = lines("pork-loin", 0, 20, 80, 60).review();

        assertThat(limit(review, What.LETHALITY).measured()).isCloseTo(2.5205, within(0.005));
        assertThat(review.verdict()).isEqualTo(LogVerdict.NOT_MET);
        assertThat(codes(review)).contains(DeviationCode.LETHALITY_NOT_REACHED);
    }

    /** The same and ten minutes at 60 C: 8.3240 log (check C066); the table asks for 12 min at 60 C and is not met. */
    @Test
    void a_ramp_and_a_hold_give_the_kill_of_their_closed_form() {
        LogReview review = lines("pork-loin", 0, 20, 80, 60, 90, 60).review();

        assertThat(limit(review, What.LETHALITY).measured()).isCloseTo(8.3240, within(0.005));
        assertThat(limit(review, What.LETHALITY).met()).isEqualTo(LogVerdict.MET);
    }

    /** From 65 to 20 C at 1.5 K/min: 7.3217 log that are not credited (check C068). */
    @Test
    void cooling_earns_no_kill() {
        LogReview review = lines("pork-loin", 0, 65, 30, 20).review();

        assertThat(limit(review, What.LETHALITY).measured()).isLessThan(7.3217 / 2.0);
    }

    /** T = 60 - 55 exp(-t/30 min): 40.385 log in three hours (check C069), of which twelve are ever credited. */
    @Test
    void no_more_than_twelve_reductions_are_credited() {
        LogReview review = approach(60.0, 5.0, 30.0, 180).review();

        assertThat(limit(review, What.LETHALITY).measured()).isEqualTo(12.0);
        assertThat(review.verdict()).isEqualTo(LogVerdict.MET);
        assertThat(review.rule().orElseThrow().id()).isEqualTo("us-fsis-2021");
    }

    private static Ask approach(double bathC, double startC, double tauMin, int minutes) {
        double[] times = new double[2 * minutes + 1];
        double[] readings = new double[2 * minutes + 1];
        for (int i = 0; i < times.length; i++) {
            times[i] = 30.0 * i;
            readings[i] = bathC - (bathC - startC) * StrictMath.exp(-times[i] / (tauMin * MINUTE));
        }
        return Ask.of("pork-loin", times, readings);
    }

    /** FSIS-GD-2021-14 Table 3: chicken of 12 % fat or less, 7 log at 60 C in 35 min; one minute less is not met. */
    @ParameterizedTest
    @CsvSource({"36, MET", "33, NOT_MET"})
    void the_table_of_a_rule_is_met_by_its_time(int minutes, LogVerdict expected) {
        LogReview review = lines("chicken-thigh", 0, 20, 60, 60.0, 60 + minutes, 60.0)
                .judging(Aspect.COOKING)
                .review();

        CriticalLimit table = limit(review, What.TABLE_TIME);
        assertThat(table.fromC().getAsDouble()).isCloseTo(60.0, within(0.01));
        assertThat(table.measured()).isCloseTo(minutes * MINUTE, within(1.0));
        assertThat(table.met()).isEqualTo(expected);
    }

    /** FSIS-GD-2021-14 p. 20: an error of the instrument is added to the limit (check C082). */
    @Test
    void the_error_of_the_instrument_is_added_to_every_limit() {
        Ask ask = lines("pork-loin", 0, 20, 40, 60, 60, 60);

        LogReview exact = ask.review();
        LogReview rough = ask.with(1.0).review();

        assertThat(limit(rough, What.LETHALITY).fromC().getAsDouble())
                .isEqualTo(limit(exact, What.LETHALITY).fromC().getAsDouble() + 1.0);
        assertThat(limit(rough, What.LETHALITY).measured())
                .isLessThan(limit(exact, What.LETHALITY).measured());
        assertThat(limit(rough, What.WARM_UP).measured())
                .isGreaterThan(limit(exact, What.WARM_UP).measured());
        assertThat(rough.readings().errorK()).isEqualTo(1.0);
    }

    @Test
    void food_to_be_kept_needs_listeria_killed_as_well() {
        LogReview served = lines("pork-loin", 0, 20, 60, 60, 80, 60).review();
        LogReview kept =
                lines("pork-loin", 0, 20, 60, 60, 80, 60).with(Purpose.KEEP).review();

        assertThat(served.verdict()).isEqualTo(LogVerdict.MET);
        assertThat(kept.verdict()).isEqualTo(LogVerdict.NOT_MET);
        assertThat(kept.limits())
                .anyMatch(l ->
                        l.hazard().equals(Optional.of(Hazard.LISTERIA_MONOCYTOGENES)) && l.met() == LogVerdict.NOT_MET);
        assertThat(kept.notices()).anyMatch(n -> n.code() == NoticeCode.SPORES_SURVIVE);
    }

    // ---- warm-up ----

    /** 359 and 361 min between 10 and 54.44 C against six hours (FSIS-GD-2021-14 p. 24; checks C073 and C074). */
    @ParameterizedTest
    @CsvSource({"369, MET", "371, NOT_MET"})
    void six_hours_of_warm_up_are_the_limit(int minute, LogVerdict expected) {
        LogReview review =
                lines("pork-loin", 0, 5, 10, 10, minute, 54.444, 900, 58).review();

        assertThat(limit(review, What.WARM_UP).met()).isEqualTo(expected);
        assertThat(limit(review, What.WARM_UP).measured()).isCloseTo((minute - 10) * MINUTE, within(1.0));
        assertThat(review.verdict()).isEqualTo(expected);
        assertThat(codes(review).contains(DeviationCode.WARM_UP_TOO_SLOW)).isEqualTo(expected == LogVerdict.NOT_MET);
    }

    /** tau ln(50/5.5556) = 65.917 min in a bath of 60 C (check C071). */
    @Test
    void the_warm_up_clock_counts_what_its_closed_form_says() {
        LogReview review = approach(60.0, 5.0, 30.0, 180).review();

        assertThat(limit(review, What.WARM_UP).measured()).isCloseTo(65.917 * MINUTE, within(3.0));
    }

    @Test
    void a_core_that_falls_back_before_it_is_cooled_is_left_to_a_person() {
        LogReview review = lines("pork-loin", 0, 20, 60, 60, 120, 60, 150, 48, 180, 60, 240, 60)
                .review();

        assertThat(limit(review, What.FALLEN_BACK).met()).isEqualTo(LogVerdict.UNDECIDED);
        assertThat(limit(review, What.FALLEN_BACK).measured()).isGreaterThan(10 * MINUTE);
        assertThat(review.verdict()).isEqualTo(LogVerdict.UNDECIDED);
        assertThat(codes(review)).contains(DeviationCode.FELL_BACK);
    }

    @Test
    void noise_on_the_way_up_is_no_fall() {
        Ask ask = lines("pork-loin", 0, 20, 80, 60, 120, 60);
        double[] noisy = ask.readings().clone();
        for (int i = 0; i < noisy.length; i++) {
            noisy[i] += i % 2 == 0 ? 0.4 : -0.4;
        }
        LogReview review = Ask.of("pork-loin", ask.times(), noisy).review();

        assertThat(limit(review, What.FALLEN_BACK).measured()).isZero();
        assertThat(review.verdict()).isEqualTo(LogVerdict.MET);
    }

    // ---- cooling ----

    /** FDA Food Code 2022, 3-501.14(A) and FSIS stabilisation option 1 (checks C075 to C079). */
    @ParameterizedTest
    @CsvSource({
        "FC-COOL, 57, 115, 21, 350, 5, MET",
        "FC-COOL, 57, 125, 21, 300, 5, NOT_MET",
        "FC-COOL, 57, 100, 21, 365, 5, NOT_MET",
        "S-OPT1, 54.4, 89, 26.7, 388, 4.4, MET",
        "S-OPT1, 54.4, 95, 26.7, 300, 4.4, NOT_MET"
    })
    void a_cooling_is_judged_by_its_rule(
            String rule, double fromC, double first, double middleC, double second, double endC, LogVerdict expected) {
        LogReview review = lines("pork-loin", 0, fromC, first, middleC, second, endC)
                .cooked()
                .cooledBy(rule)
                .review();

        assertThat(review.verdict()).isEqualTo(expected);
        assertThat(review.rule()).isEmpty();
        assertThat(review.coolingRule().orElseThrow().id()).isEqualTo(rule);
        assertThat(codes(review).contains(DeviationCode.COOLING_TOO_SLOW)).isEqualTo(expected == LogVerdict.NOT_MET);
        assertThat(review.growth()).isNotEmpty();
    }

    @Test
    void a_cooling_that_the_log_does_not_finish_is_undecided() {
        LogReview review = lines("pork-loin", 0, 20, 60, 61, 120, 61, 180, 40).review();

        assertThat(review.verdict()).isEqualTo(LogVerdict.UNDECIDED);
        assertThat(codes(review)).contains(DeviationCode.COOLING_NOT_FINISHED);
        assertThat(lines("pork-loin", 0, 20, 60, 61, 120, 61, 180, 40)
                        .judging(Aspect.COOKING)
                        .review()
                        .verdict())
                .isEqualTo(LogVerdict.MET);
    }

    @Test
    void a_log_that_begins_while_the_food_cools_does_not_show_the_begin() {
        LogReview review = lines("pork-loin", 0, 40, 30, 20, 120, 4).cooked().review();

        assertThat(review.verdict()).isEqualTo(LogVerdict.UNDECIDED);
        assertThat(codes(review)).contains(DeviationCode.COOLING_BEGAN_EARLIER);
    }

    // ---- hot holding and reheating ----

    @Test
    void waiting_hot_decides_only_if_it_is_asked_for() {
        Ask ask = lines("pork-loin", 0, 20, 60, 62, 120, 62, 130, 56, 140, 62, 200, 62);

        assertThat(ask.review().verdict()).isEqualTo(LogVerdict.MET);
        assertThat(codes(ask.review())).contains(DeviationCode.HOT_HOLDING_DROP);
        LogReview asked = ask.judging(Aspect.HOT_HOLDING).review();
        assertThat(asked.verdict()).isEqualTo(LogVerdict.NOT_MET);
        assertThat(limit(asked, What.HOT_HOLDING).measured()).isCloseTo(56.0, within(0.01));
    }

    /** FDA Food Code 2022, 3-403.11: 74 C for 15 s within two hours. */
    @ParameterizedTest
    @CsvSource({"100, MET", "130, NOT_MET"})
    void reheating_has_two_hours(int minutes, LogVerdict expected) {
        LogReview review = lines("pork-loin", 0, 4, minutes, 74, minutes + 5, 75)
                .cooked()
                .judging(Aspect.REHEATING)
                .review();

        assertThat(review.verdict()).isEqualTo(expected);
    }

    // ---- gaps and faults ----

    private static Ask without(Ask ask, double fromMin, double untilMin) {
        int[] kept = IntStream.range(0, ask.times().length)
                .filter(i -> ask.times()[i] <= fromMin * MINUTE || ask.times()[i] >= untilMin * MINUTE)
                .toArray();
        return Ask.of(
                ask.food(),
                Arrays.stream(kept).mapToDouble(i -> ask.times()[i]).toArray(),
                Arrays.stream(kept).mapToDouble(i -> ask.readings()[i]).toArray());
    }

    @Test
    void a_gap_in_a_long_hold_changes_nothing_but_is_named() {
        LogReview review =
                without(lines("pork-loin", 0, 20, 60, 60, 180, 60), 100, 120).review();

        assertThat(review.verdict()).isEqualTo(LogVerdict.MET);
        assertThat(codes(review)).containsExactly(DeviationCode.GAP);
        assertThat(review.deviations().get(0).fromS()).isEqualTo(6000.0);
        assertThat(review.deviations().get(0).untilS()).isEqualTo(7200.0);
    }

    @Test
    void a_gap_that_could_hide_the_kill_leaves_it_undecided() {
        Ask whole = lines("pork-loin", 0, 20, 60, 60, 75, 60);
        LogReview gapped = without(whole, 61, 74).review();

        assertThat(whole.review().verdict()).isEqualTo(LogVerdict.MET);
        assertThat(gapped.verdict()).isEqualTo(LogVerdict.UNDECIDED);
        assertThat(limit(gapped, What.LETHALITY).met()).isEqualTo(LogVerdict.UNDECIDED);
    }

    @Test
    void a_gap_too_short_to_make_good_what_is_missing_leaves_it_not_met() {
        LogReview review =
                without(lines("pork-loin", 0, 20, 60, 55, 80, 55), 65, 75).review();

        assertThat(review.verdict()).isEqualTo(LogVerdict.NOT_MET);
    }

    @Test
    void a_gap_in_the_warm_up_counts_in_full_and_grows() {
        Ask whole = lines("pork-loin", 0, 4, 150, 60, 240, 60);
        LogReview gapped = without(whole, 30, 90).review();

        assertThat(limit(gapped, What.WARM_UP).measured())
                .isCloseTo(limit(whole.review(), What.WARM_UP).measured(), within(1.0));
        assertThat(limit(gapped, What.LETHALITY).required())
                .isGreaterThanOrEqualTo(limit(whole.review(), What.LETHALITY).required());
    }

    /** A logger that is off for hours before the food warms up may hide that it was warm before. */
    @Test
    void a_gap_outside_the_warm_up_range_may_still_hide_time_in_it() {
        Ask whole = lines("pork-loin", 0, 4, 420, 4, 520, 60, 640, 60);

        assertThat(whole.review().verdict()).isEqualTo(LogVerdict.MET);
        LogReview gapped = without(whole, 10, 400).review();
        assertThat(limit(gapped, What.WARM_UP).met()).isEqualTo(LogVerdict.UNDECIDED);
        assertThat(gapped.verdict()).isEqualTo(LogVerdict.UNDECIDED);
    }

    @Test
    void a_gap_in_a_cooling_that_could_hide_too_slow_a_stage_leaves_it_undecided() {
        Ask whole = lines("pork-loin", 0, 58, 110, 21, 300, 4).cooked();

        assertThat(whole.review().verdict()).isEqualTo(LogVerdict.MET);
        Ask gapped = without(whole, 95, 130).cooked();
        assertThat(gapped.review().verdict()).isEqualTo(LogVerdict.UNDECIDED);
    }

    @Test
    void faulty_readings_earn_no_kill() {
        Ask ask = lines("pork-loin", 0, 20, 60, 54, 180, 54);
        double[] readings = ask.readings().clone();
        Arrays.fill(readings, 100, 130, 85.0);
        readings[150] = -127.0;
        LogReview review = Ask.of("pork-loin", ask.times(), readings).review();

        assertThat(codes(review)).contains(DeviationCode.FAULT_VALUE);
        assertThat(review.readings().used()).isEqualTo(181 - 31);
        assertThat(review.readings().highestC()).isEqualTo(54.0);
        assertThat(limit(review, What.LETHALITY).measured()).isZero();
        assertThat(review.verdict()).isEqualTo(LogVerdict.NOT_MET);
    }

    @Test
    void a_log_without_believable_readings_is_refused() {
        assertThatThrownBy(() -> Ask.of("pork-loin", new double[] {0, 10}, new double[] {-127, 60})
                        .review())
                .isInstanceOfSatisfying(
                        Refusal.class, r -> assertThat(r.faults().get(0).code()).isEqualTo("NO_USABLE_READINGS"));
    }

    // ---- places ----

    @Test
    void a_surface_never_shows_that_the_inside_is_done() {
        LogReview review = lines("pork-loin", 0, 20, 60, 65, 180, 65)
                .at(SensorPlace.SURFACE)
                .review();

        assertThat(review.verdict()).isEqualTo(LogVerdict.NOT_APPLICABLE);
        assertThat(limit(review, What.WARM_UP).met()).isEqualTo(LogVerdict.MET);
        assertThat(review.notices()).anyMatch(n -> n.code() == NoticeCode.LOG_SHOWS_NO_CORE);
        assertThat(lines("pork-loin", 0, 20, 60, 65, 180, 65)
                        .at(SensorPlace.SURFACE)
                        .with(Form.ROLLED)
                        .review()
                        .limits())
                .isEmpty();
    }

    /** Notices of reviews, fired and silent in the tests around. */
    static final Set<NoticeCode> TRIED = Set.of(NoticeCode.LOG_SHOWS_NO_CORE, NoticeCode.LOG_SHOWS_ONE_PLACE);

    @Test
    void water_alone_shows_nothing_of_the_food() {
        LogReview review =
                lines("pork-loin", 0, 60, 180, 60).at(SensorPlace.BATH).review();

        assertThat(review.verdict()).isEqualTo(LogVerdict.NOT_APPLICABLE);
        assertThat(review.limits()).isEmpty();
        assertThat(review.notices()).anyMatch(n -> n.code() == NoticeCode.LOG_SHOWS_NO_CORE);
        assertThat(lines("pork-loin", 0, 20, 60, 60, 180, 60).review().notices())
                .noneMatch(n -> n.code() == NoticeCode.LOG_SHOWS_NO_CORE)
                .anyMatch(n -> n.code() == NoticeCode.LOG_SHOWS_ONE_PLACE);
        assertThat(Kitchen.of("pork-loin", new Slab(0.03), 4, 60).plan().notices())
                .noneMatch(n -> n.code() == NoticeCode.LOG_SHOWS_ONE_PLACE);
    }

    /** A bath that stood still at its setpoint is what a plan computes for: its late corner lies just above the least core. */
    @Test
    void the_core_in_a_steady_bath_is_that_of_a_plan() {
        LogReview review = lines("pork-loin", 0, 60, 180, 60).of(40, 4).review();
        CookPlan plan = Kitchen.of("pork-loin", new Slab(0.04), 4, 60).plan();

        assertThat(review.verdict()).isEqualTo(LogVerdict.MET);
        assertThat(review.computedCore().orElseThrow().endsC()).isBetween(59.0, 60.0);
        assertThat(review.computedCore().orElseThrow().bathWithinK()).isZero();
        assertThat(limit(review, What.WARM_UP).measured())
                .isCloseTo(plan.safety().warmUp(), within(0.15 * plan.safety().warmUp()));
    }

    @Test
    void a_core_computed_from_a_sagging_bath_lies_between_those_of_its_extremes() {
        double[] corners = {0, 60, 20, 60, 40, 57, 60, 58.5, 90, 60, 240, 60};
        double sagging = limit(lines("pork-loin", corners).of(30, 4).review(), What.WARM_UP)
                .measured();

        assertThat(sagging)
                .isGreaterThan(
                        limit(lines("pork-loin", 0, 60, 240, 60).of(30, 4).review(), What.WARM_UP)
                                .measured())
                .isLessThan(limit(lines("pork-loin", 0, 57, 240, 57).of(30, 4).review(), What.WARM_UP)
                        .measured());
    }

    @Test
    void a_gap_in_a_bath_log_may_hide_that_the_water_cooled() {
        Ask whole = lines("pork-loin", 0, 60, 110, 60);
        Ask gapped = without(whole, 20, 100);

        assertThat(whole.of(30, 4).review().verdict()).isEqualTo(LogVerdict.MET);
        assertThat(gapped.of(30, 4).review().verdict()).isEqualTo(LogVerdict.UNDECIDED);
    }

    @Test
    void only_a_core_shows_cooling() {
        assertThatThrownBy(() -> lines("pork-loin", 0, 60, 110, 60)
                        .at(SensorPlace.BATH)
                        .judging(Aspect.COOLING)
                        .review())
                .isInstanceOfSatisfying(
                        Refusal.class, r -> assertThat(r.faults().get(0).code()).isEqualTo("ASPECT_NEEDS_CORE"));
    }

    // ---- size ----

    @Test
    void a_hundred_thousand_readings_that_swing_are_reviewed() {
        int n = 100_000;
        double[] times = new double[n];
        double[] readings = new double[n];
        for (int i = 0; i < n; i++) {
            times[i] = 0.6 * i;
            readings[i] = 60.0 - 55.0 * StrictMath.exp(-times[i] / 1800.0) + (i % 2 == 0 ? 0.7 : -0.7);
        }
        LogReview review = Ask.of("pork-loin", times, readings)
                .with(0.5)
                .judging(Aspect.COOKING)
                .review();

        assertThat(review.readings().used()).isEqualTo(n);
        assertThat(review.curve().timesS()).hasSizeLessThanOrEqualTo(200);
        assertThat(limit(review, What.LETHALITY).hazard()).contains(Hazard.SALMONELLA);
        assertThat(limit(review, What.LETHALITY).measured()).isPositive();
    }

    @Test
    void a_gap_after_each_reading_is_counted_and_some_are_listed() {
        double[] times = new double[400];
        double[] readings = new double[400];
        for (int i = 0; i < times.length; i++) {
            times[i] = 400.0 * i;
            readings[i] = 60.0;
        }
        LogReview review = Ask.of("pork-loin", times, readings).review();

        assertThat(review.deviations()).hasSize(50);
        assertThat(review.deviationCount()).isGreaterThanOrEqualTo(399);
        assertThat(limit(review, What.LETHALITY).measured()).isZero();
        assertThat(Ask.of("pork-loin", times, readings).of(30, 4).review().verdict())
                .isEqualTo(LogVerdict.UNDECIDED);
    }
}
