package dev.slowpoint.plan;

import static org.assertj.core.api.Assertions.assertThat;

import dev.slowpoint.food.Condition;
import dev.slowpoint.food.Form;
import dev.slowpoint.heat.LongCylinder;
import dev.slowpoint.heat.Slab;
import dev.slowpoint.heat.Sphere;
import dev.slowpoint.safety.Eater;
import dev.slowpoint.safety.Purpose;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.ResourceBundle;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Each notice is given when its trigger is true, and kept back when one thing is changed. */
class NoticesTest {

    private static final Set<NoticeCode> ALWAYS =
            EnumSet.of(NoticeCode.KEEP_UNDER_WATER, NoticeCode.ESTIMATE_NOT_GUARANTEE);

    private static final CookTask.Pack GARLIC = bag(true, false);
    private static final CookTask.Pack SALTED = bag(false, true);
    private static final Kitchen STEAK = Kitchen.of("beef-sirloin", new Slab(0.028), 4.0, 49.0);
    private static final Kitchen PORK = Kitchen.of("pork-loin", new Slab(0.03), 4.0, 60.0);
    private static final Kitchen MINCE =
            Kitchen.of("beef-minced", new Slab(0.025), 4.0, 60.0).with(Form.MINCED);
    private static final Kitchen BREAST = Kitchen.of("chicken-breast", new Slab(0.03), 4.0, 63.0);
    private static final Kitchen SALMON = Kitchen.of("salmon", new Slab(0.025), 4.0, 49.0);
    private static final Kitchen CARROT = Kitchen.of("carrot", new LongCylinder(0.025), 10.0, 85.0);
    private static final Kitchen EGG = Kitchen.of("egg-in-shell", new Sphere(0.044), 5.0, 64.0);
    private static final Kitchen KEPT = PORK.at(65.0).with(Purpose.KEEP);
    private static final Step ICE = Afterwards.ice();
    private static final Kitchen ROAST =
            Kitchen.of("beef-sirloin", new LongCylinder(0.15), 5.0, 57.0).with(Form.ROLLED);

    private static CookTask.Pack bag(boolean rawGarlicOrHerbs, boolean salted) {
        return new CookTask.Pack(
                rawGarlicOrHerbs, salted, OptionalDouble.empty(), OptionalDouble.empty(), false, false);
    }

    /** Taken out a minute after the rule is met in the worst case. */
    private static Kitchen justSafe(Kitchen kitchen) {
        return kitchen.servedAfter(kitchen.plan().times().safe().orElseThrow().late() + 60.0);
    }

    static Stream<Arguments> triggers() {
        return Stream.of(
                Arguments.of(NoticeCode.CORE_BELOW_54, STEAK, STEAK.at(57.0)),
                Arguments.of(NoticeCode.SURFACE_ONLY, STEAK, STEAK.at(60.0)),
                Arguments.of(NoticeCode.SEAR_BOTH_FACES, STEAK, STEAK.at(60.0)),
                Arguments.of(NoticeCode.WARM_UP_OVER_6H, ROAST, ROAST.with(new LongCylinder(0.06))),
                Arguments.of(
                        NoticeCode.WARM_UP_OVER_4H,
                        ROAST.with(new LongCylinder(0.11)),
                        ROAST.with(new LongCylinder(0.06))),
                Arguments.of(NoticeCode.HOLD_55_60_OVER_6H, PORK.at(58.0).servedAfter(30_000), PORK.at(58.0)),
                Arguments.of(NoticeCode.HOLD_BELOW_57, PORK.at(56.0).servedAfter(30_000), PORK.at(58.0)),
                Arguments.of(NoticeCode.NONINTACT_MEAT, MINCE, PORK),
                Arguments.of(
                        NoticeCode.ROLLED_WARMS_SLOWLY,
                        ROAST.with(new LongCylinder(0.09)),
                        ROAST.with(new LongCylinder(0.05))),
                Arguments.of(NoticeCode.MINCED_BELOW_STEC_LINE, MINCE, MINCE.at(68.0)),
                Arguments.of(NoticeCode.POULTRY_BELOW_58, BREAST.at(57.0), BREAST),
                Arguments.of(NoticeCode.NOT_MET, BREAST.servedAfter(1800), BREAST),
                Arguments.of(NoticeCode.EATEN_UNDERCOOKED, BREAST.servedAfter(1800), BREAST),
                Arguments.of(NoticeCode.VULNERABLE_EATERS, STEAK.with(Eater.VULNERABLE), PORK.with(Eater.VULNERABLE)),
                Arguments.of(
                        NoticeCode.THIN_MARGIN_54_60, justSafe(PORK.at(55.0).with(new Slab(0.015))), PORK),
                Arguments.of(
                        NoticeCode.SLOW_WARM_UP_ADAPTS,
                        justSafe(PORK.at(55.5)),
                        PORK.at(62.0).with(new Slab(0.015))),
                Arguments.of(NoticeCode.RAW_GARLIC_OR_HERBS, PORK.with(GARLIC), PORK.with(SALTED)),
                Arguments.of(NoticeCode.SALTED_KEEPS_TOUGHER, PORK.with(SALTED), PORK.with(GARLIC)),
                Arguments.of(NoticeCode.CHILL_IN_ICE_WATER, PORK.with(Purpose.KEEP), PORK),
                Arguments.of(NoticeCode.KEEP_COLD_7_DAYS, PORK.with(Purpose.KEEP), PORK),
                Arguments.of(
                        NoticeCode.KEEP_NEEDS_LISTERIA_TARGET,
                        PORK.at(57.0).with(Purpose.KEEP),
                        PORK.at(65.0).with(Purpose.KEEP)),
                Arguments.of(
                        NoticeCode.SPORES_SURVIVE,
                        PORK.with(Purpose.KEEP),
                        CARROT.at(95.0).with(Purpose.KEEP).servedAfter(7200)),
                Arguments.of(NoticeCode.FROM_FROZEN, PORK.from(-18.0), PORK),
                Arguments.of(NoticeCode.START_WARM, PORK.from(12.0), PORK),
                Arguments.of(NoticeCode.FISH_PARASITES, SALMON, SALMON.frozenBefore()),
                Arguments.of(NoticeCode.FISH_NOT_PASTEURISED, SALMON, SALMON.at(65.0)),
                Arguments.of(
                        NoticeCode.SHELLFISH_VIRUSES,
                        Kitchen.of("scallop", new Slab(0.028), 4.0, 52.0),
                        Kitchen.of("shrimp", new LongCylinder(0.015), 4.0, 65.0)),
                Arguments.of(NoticeCode.SOFT_EGG, EGG.servedAfter(1800), EGG.servedAfter(6000)),
                Arguments.of(
                        NoticeCode.PULSES_MUST_BOIL,
                        Kitchen.of("kidney-bean-soaked", new Sphere(0.009), 10.0, 90.0),
                        Kitchen.of("kidney-bean-soaked", new Sphere(0.009), 10.0, 98.0)),
                Arguments.of(NoticeCode.STAYS_FIRM, CARROT.at(80.0), CARROT),
                Arguments.of(NoticeCode.BAG_MAY_FLOAT, CARROT, PORK),
                Arguments.of(NoticeCode.TEXTURE_PAST, PORK.servedAfter(200_000), PORK),
                Arguments.of(NoticeCode.TEXTURE_NOT_YET, PORK.servedAfter(900), PORK),
                Arguments.of(NoticeCode.SAFE_AFTER_TEXTURE, MINCE.at(55.0).with(new Slab(0.035)), MINCE),
                Arguments.of(NoticeCode.HOLD_BELOW_57, then(PORK, new Step.Bath(55.0, 600.0)), then(PORK, ICE)),
                Arguments.of(
                        NoticeCode.HOLD_BELOW_RULE,
                        Ruled.by("uk-fsa", PORK.at(61.0).servedAfter(30_000).task()),
                        Ruled.by("uk-fsa", PORK.at(63.0).servedAfter(30_000).task())),
                Arguments.of(
                        NoticeCode.HOLD_BELOW_RULE,
                        Ruled.by(
                                "au-fsanz",
                                then(PORK, new Step.Bath(58.0, 600.0)).task()),
                        PORK.at(58.0).servedAfter(30_000)),
                Arguments.of(NoticeCode.TEXTURE_PAST, then(PORK, new Step.Bath(60.0, 200_000.0)), then(PORK, ICE)),
                Arguments.of(NoticeCode.SPORES_SURVIVE, then(KEPT, ICE, Afterwards.days(4.0, 2.0)), then(PORK, ICE)),
                Arguments.of(NoticeCode.COOLING_NOT_KEPT, then(KEPT, Afterwards.fridgeChill()), then(KEPT, ICE)),
                Arguments.of(NoticeCode.INTERRUPTED_COOK, then(PORK, found(40.0)), then(PORK, found(58.0))),
                Arguments.of(
                        NoticeCode.BATH_IN_GROWTH_RANGE,
                        then(PORK, new Step.Bath(50.0, 3600.0)),
                        then(PORK, new Step.Bath(55.0, 3600.0))),
                Arguments.of(
                        NoticeCode.BATH_IN_GROWTH_RANGE,
                        then(KEPT, ICE, Afterwards.reheat(48.0, 60.0)),
                        then(KEPT, ICE, Afterwards.reheat(58.0, 60.0))),
                Arguments.of(
                        NoticeCode.WARM_UP_OVER_6H,
                        then(KEPT.with(new Slab(0.06)), ICE, Afterwards.reheat(54.6, 600.0)),
                        then(KEPT, ICE, Afterwards.reheat(60.0, 600.0))),
                Arguments.of(
                        NoticeCode.REST_TOO_LONG,
                        then(PORK, new Step.Rest(9000.0), new Step.Rest(9000.0)),
                        then(PORK, new Step.Rest(9000.0), new Step.Bath(60.0, 3600.0), new Step.Rest(9000.0))),
                Arguments.of(
                        NoticeCode.STORE_TOO_LONG,
                        then(KEPT, ICE, Afterwards.days(4.0, 9.0)),
                        then(KEPT, ICE, Afterwards.days(4.0, 6.0))),
                Arguments.of(
                        NoticeCode.REHEAT_IS_NO_KILL_STEP,
                        then(KEPT, ICE, Afterwards.reheat(60.0, 30.0)),
                        then(KEPT, ICE, Afterwards.reheat(80.0, 90.0))),
                Arguments.of(
                        NoticeCode.SEAR_OVERSHOOTS,
                        then(STEAK, Afterwards.pan(60.0)),
                        then(STEAK.with(new Slab(0.06)), Afterwards.pan(15.0))),
                Arguments.of(
                        NoticeCode.FACE_IN_AIR, then(PORK).lying(lying(1, false, 0.0, OptionalDouble.of(21.0))), PORK),
                Arguments.of(
                        NoticeCode.PACKS_TOUCH, then(PORK).lying(lying(2, false, 0.0, OptionalDouble.empty())), PORK),
                Arguments.of(
                        NoticeCode.PACKS_TOUCH, then(PORK).lying(lying(1, true, 0.0, OptionalDouble.empty())), PORK),
                Arguments.of(
                        NoticeCode.TRAPPED_AIR,
                        then(PORK).lying(lying(1, false, 0.0005, OptionalDouble.empty())),
                        PORK));
    }

    private static Afterwards then(Kitchen kitchen, Step... then) {
        return Afterwards.of(kitchen, then);
    }

    private static Step found(double foundC) {
        return new Step.Unheated(OptionalDouble.empty(), OptionalDouble.of(foundC));
    }

    private static Arrangement lying(int pileOf, boolean blocked, double air, OptionalDouble faceInAirC) {
        return new Arrangement(pileOf, blocked, air, faceInAirC);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("triggers")
    void a_notice_is_given_by_its_trigger_and_kept_back_without_it(NoticeCode code, Asked fires, Asked silent) {
        assertThat(fires.notices()).contains(code);
        assertThat(silent.notices()).doesNotContain(code);
    }

    @Test
    void every_notice_has_such_a_test_or_stands_always() {
        Set<NoticeCode> tried = EnumSet.copyOf(ALWAYS);
        tried.addAll(LogReviewTest.TRIED);
        tried.addAll(LookupTableTest.TRIED);
        Stream.of(
                        triggers(),
                        BathNoticesTest.triggers(),
                        FoodNoticesTest.triggers(),
                        ReplanNoticesTest.triggers(),
                        LoadNoticesTest.triggers())
                .flatMap(rows -> rows)
                .forEach(t -> tried.add((NoticeCode) t.get()[0]));
        assertThat(tried).containsExactlyInAnyOrder(NoticeCode.values());
    }

    @Test
    void two_cautions_stand_always() {
        for (Kitchen kitchen : new Kitchen[] {STEAK, PORK, BREAST, SALMON, CARROT, EGG}) {
            assertThat(kitchen.notices()).containsAll(ALWAYS);
        }
        assertThat(BREAST.notices()).containsExactlyInAnyOrderElementsOf(ALWAYS);
    }

    @Test
    void the_most_severe_come_first() {
        var rules = Kitchen.PLANNER.knowledge().notices();
        var severities = STEAK.with(Eater.VULNERABLE).with(GARLIC).plan().notices().stream()
                .map(n -> Objects.requireNonNull(rules.get(n.code())).severity())
                .toList();
        assertThat(severities).isSortedAccordingTo(Comparator.reverseOrder());
    }

    @Test
    void every_notice_has_a_sentence() {
        ResourceBundle sentences = ResourceBundle.getBundle("messages", Locale.ROOT);
        for (NoticeCode code : NoticeCode.values()) {
            assertThat(sentences.getString(code.name())).as(code.name()).endsWith(".");
        }
    }

    @Test
    void cooked_food_that_is_warmed_is_not_called_undercooked() {
        assertThat(PORK.with(Condition.COOKED)
                        .with(Purpose.REHEAT)
                        .servedAfter(900)
                        .notices())
                .doesNotContain(NoticeCode.EATEN_UNDERCOOKED, NoticeCode.NOT_MET);
    }
}
