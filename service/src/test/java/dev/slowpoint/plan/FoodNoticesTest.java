package dev.slowpoint.plan;

import static org.assertj.core.api.Assertions.assertThat;

import dev.slowpoint.food.Condition;
import dev.slowpoint.food.Form;
import dev.slowpoint.heat.LongCylinder;
import dev.slowpoint.heat.Slab;
import dev.slowpoint.heat.Sphere;
import dev.slowpoint.heat.StartField;
import dev.slowpoint.safety.Purpose;
import java.util.EnumSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Notices of what the food is, what else is in the bag, and what follows: each by its trigger, and kept back without it. */
class FoodNoticesTest {

    private static final Kitchen PORK = Kitchen.of("pork-loin", new Slab(0.03), 4.0, 60.0);
    private static final Kitchen ROLLED =
            Kitchen.of("pork-loin", new LongCylinder(0.06), 4.0, 60.0).with(Form.ROLLED);
    private static final Kitchen BREAST = Kitchen.of("chicken-breast", new Slab(0.03), 4.0, 65.0);
    private static final Kitchen LAMB = Kitchen.of("lamb-leg", new Slab(0.028), 4.0, 52.0);
    private static final Kitchen BOAR = Kitchen.of("wild-boar", new Slab(0.03), 4.0, 65.0);
    private static final Kitchen SALMON = Kitchen.of("salmon-farmed", new Slab(0.025), 4.0, 52.0);
    private static final Kitchen CUSTARD = Kitchen.of("egg-custard", new Slab(0.03), 4.0, 80.0);
    private static final Kitchen EGG = Kitchen.of("egg-in-shell", new Sphere(0.044), 5.0, 64.0);
    private static final Kitchen POTATO = Kitchen.of("potato", new Slab(0.02), 10.0, 88.0);
    private static final Kitchen BEEF_ROAST =
            Kitchen.of("beef-sirloin", new LongCylinder(0.15), 5.0, 57.0).with(Form.ROLLED);
    private static final Kitchen KEPT = PORK.at(65.0).with(Purpose.KEEP);
    private static final Kitchen WARMED =
            PORK.with(Condition.COOKED).with(Purpose.REHEAT).at(65.0);
    private static final Step ICE = Afterwards.ice();
    private static final Step HELD_HOT = new Step.Bath(65.0, 3600.0);

    private static final CookTask.Pack GARLIC = bag(true, false, OptionalDouble.empty(), OptionalDouble.empty());
    private static final CookTask.Pack SALTED = bag(false, true, OptionalDouble.empty(), OptionalDouble.empty());
    private static final CookTask.Pack SOLD =
            new CookTask.Pack(false, false, OptionalDouble.empty(), OptionalDouble.empty(), true, false);
    private static final CookTask.Pack SEALED =
            new CookTask.Pack(false, false, OptionalDouble.empty(), OptionalDouble.empty(), false, true);

    private static CookTask.Pack bag(
            boolean garlic, boolean salted, OptionalDouble saltPercent, OptionalDouble waterActivity) {
        return new CookTask.Pack(garlic, salted, saltPercent, waterActivity, false, false);
    }

    private static CookTask.Pack salt(double percent) {
        return bag(false, false, OptionalDouble.of(percent), OptionalDouble.empty());
    }

    private static CookTask.Pack waterActivity(double activity) {
        return bag(false, false, OptionalDouble.empty(), OptionalDouble.of(activity));
    }

    /** The same piece, whose core and surface start at different temperatures [C]. */
    private static Asked uneven(Kitchen kitchen, double coreC, double surfaceC) {
        CookTask task = kitchen.task();
        CookTask changed = new CookTask(
                task.food(),
                task.form(),
                task.condition(),
                task.fatPercent(),
                task.previouslyFrozen(),
                task.body(),
                task.arrangement(),
                new StartField(coreC, surfaceC),
                task.earlierCook(),
                task.bath(),
                task.altitude(),
                task.target(),
                task.eater(),
                task.rule(),
                task.tolerances(),
                task.pack(),
                task.then());
        return asked(changed);
    }

    /** The same piece with its fat told [%]. */
    private static Asked fat(Kitchen kitchen, double percent) {
        CookTask task = kitchen.task();
        return asked(new CookTask(
                task.food(),
                task.form(),
                task.condition(),
                OptionalDouble.of(percent),
                task.previouslyFrozen(),
                task.body(),
                task.arrangement(),
                task.start(),
                task.earlierCook(),
                task.bath(),
                task.altitude(),
                task.target(),
                task.eater(),
                task.rule(),
                task.tolerances(),
                task.pack(),
                task.then()));
    }

    private static Asked asked(CookTask task) {
        return new Asked() {
            @Override
            public List<NoticeCode> notices() {
                return Kitchen.PLANNER.plan(task, EnumSet.noneOf(Detail.class)).notices().stream()
                        .map(Notice::code)
                        .toList();
            }
        };
    }

    private static Afterwards then(Kitchen kitchen, Step... then) {
        return Afterwards.of(kitchen, then);
    }

    static Stream<Arguments> triggers() {
        return Stream.of(
                Arguments.of(NoticeCode.FAT_UNKNOWN, BREAST.with(Form.MINCED), BREAST),
                Arguments.of(NoticeCode.FAT_UNKNOWN, BREAST.with(Form.FORMED), fat(BREAST.with(Form.FORMED), 5.0)),
                Arguments.of(NoticeCode.NO_TABLE_SO_COOL, EGG.at(55.0), EGG),
                Arguments.of(NoticeCode.NO_TABLE_SO_COOL, EGG.at(55.0), SALMON),
                Arguments.of(NoticeCode.TOXIN_STAYS, BEEF_ROAST, BEEF_ROAST.with(new LongCylinder(0.06))),
                Arguments.of(NoticeCode.HALF_THAWED, uneven(PORK, -3.0, 3.0), PORK.from(-18.0)),
                Arguments.of(NoticeCode.FROM_FROZEN, PORK.from(-18.0), uneven(PORK, -3.0, 3.0)),
                Arguments.of(NoticeCode.STUFFED_PIECE, BREAST.with(Form.STUFFED).at(80.0), BREAST.at(80.0)),
                Arguments.of(NoticeCode.MUSCLE_PARASITES, LAMB, LAMB.at(60.0)),
                Arguments.of(NoticeCode.WILD_GAME, BOAR, BOAR.at(78.0)),
                Arguments.of(NoticeCode.WILD_GAME, BOAR, PORK),
                Arguments.of(NoticeCode.FISH_SEALED_RAW, SALMON.with(SEALED), SALMON),
                Arguments.of(NoticeCode.FISH_SEALED_RAW, SALMON.with(SEALED), PORK.with(SEALED)),
                Arguments.of(NoticeCode.SWEET_OR_SALTED_EGG, CUSTARD.at(61.0), CUSTARD),
                Arguments.of(
                        NoticeCode.SWEET_OR_SALTED_EGG,
                        Kitchen.of("egg-yolk", new Slab(0.02), 4.0, 61.0).with(salt(5.0)),
                        Kitchen.of("egg-yolk", new Slab(0.02), 4.0, 61.0)),
                Arguments.of(
                        NoticeCode.LYSOZYME_HELPS_SPORES,
                        CUSTARD.at(95.0).with(Purpose.KEEP).servedAfter(7200),
                        CUSTARD.with(Purpose.KEEP).servedAfter(7200)),
                Arguments.of(NoticeCode.COOL_STARCH_FAST, POTATO.with(Purpose.KEEP), POTATO),
                Arguments.of(
                        NoticeCode.COOL_STARCH_FAST,
                        Kitchen.of("rice-cooked", new Slab(0.02), 4.0, 65.0)
                                .with(Condition.COOKED)
                                .with(Purpose.REHEAT),
                        WARMED),
                Arguments.of(NoticeCode.RAW_GARLIC_KEPT, PORK.with(GARLIC).with(Purpose.KEEP), PORK.with(GARLIC)),
                Arguments.of(
                        NoticeCode.RAW_GARLIC_OR_HERBS,
                        PORK.with(GARLIC),
                        Kitchen.of("carrot", new LongCylinder(0.02), 10.0, 92.0).with(GARLIC)),
                Arguments.of(NoticeCode.BAG_SOLD, PORK.with(SOLD), PORK),
                Arguments.of(NoticeCode.CURED_OR_DRIED, PORK.with(salt(3.0)), PORK.with(salt(2.0))),
                Arguments.of(NoticeCode.CURED_OR_DRIED, PORK.with(waterActivity(0.95)), PORK.with(waterActivity(0.97))),
                Arguments.of(NoticeCode.CURED_OR_DRIED, Kitchen.of("ham-cured", new Slab(0.03), 4.0, 60.0), PORK),
                Arguments.of(NoticeCode.SALTED_ROLLED_MEAT, ROLLED.with(SALTED), ROLLED),
                Arguments.of(
                        NoticeCode.SALTED_ROLLED_MEAT,
                        ROLLED.with(SALTED),
                        ROLLED.with(SALTED).at(68.0).servedAfter(14_400)),
                Arguments.of(
                        NoticeCode.STORE_OVER_10_DAYS,
                        then(KEPT, ICE, Afterwards.days(4.0, 12.0)),
                        then(KEPT, ICE, Afterwards.days(4.0, 9.0))),
                Arguments.of(
                        NoticeCode.STORE_OVER_10_DAYS,
                        then(KEPT, ICE, Afterwards.days(4.0, 6.0), Afterwards.days(2.0, 6.0)),
                        then(KEPT, ICE, Afterwards.days(-20.0, 50.0))),
                Arguments.of(
                        NoticeCode.SEALED_AND_WARM,
                        then(KEPT, ICE, Afterwards.days(20.0, 0.3)),
                        then(KEPT, ICE, Afterwards.days(8.0, 1.0))),
                Arguments.of(
                        NoticeCode.KEEP_COLD_7_DAYS,
                        then(KEPT, ICE, Afterwards.days(4.0, 2.0)),
                        then(KEPT, ICE, Afterwards.days(-20.0, 50.0))),
                Arguments.of(NoticeCode.CHILL_IN_ICE_WATER, KEPT, then(KEPT, ICE)),
                Arguments.of(
                        NoticeCode.REHEAT_TO_74,
                        then(KEPT, ICE, Afterwards.reheat(65.0, 60.0), HELD_HOT),
                        then(KEPT, ICE, Afterwards.reheat(80.0, 100.0), HELD_HOT)),
                Arguments.of(
                        NoticeCode.REHEAT_TO_74,
                        then(WARMED, HELD_HOT),
                        then(WARMED.at(80.0).servedAfter(6000), HELD_HOT)),
                Arguments.of(
                        NoticeCode.REHEAT_TO_74,
                        then(KEPT, ICE, Afterwards.reheat(65.0, 60.0), HELD_HOT),
                        then(KEPT, ICE, Afterwards.reheat(65.0, 60.0))),
                Arguments.of(
                        NoticeCode.REHEAT_TOO_SLOW,
                        then(KEPT.with(new Slab(0.07)), ICE, Afterwards.reheat(76.0, 240.0), HELD_HOT),
                        then(KEPT, ICE, Afterwards.reheat(80.0, 100.0), HELD_HOT)),
                Arguments.of(
                        NoticeCode.REHEAT_TOO_SLOW,
                        then(WARMED.at(76.0).with(new Slab(0.07)).servedAfter(14_400), HELD_HOT),
                        then(WARMED.at(80.0).servedAfter(6000), HELD_HOT)));
    }

    // FSIS-GD-2021-14 p. 14: growth of S. aureus by three orders is a concern whatever the clock says.
    @Test
    void toxin_is_told_of_within_six_hours_where_the_bath_is_warm_and_no_more() {
        Kitchen lukewarm = SALMON.at(46.0);
        assertThat(lukewarm.servedAfter(14_400).notices())
                .contains(NoticeCode.TOXIN_STAYS)
                .doesNotContain(NoticeCode.WARM_UP_OVER_6H);
        assertThat(lukewarm.servedAfter(3600).notices()).doesNotContain(NoticeCode.TOXIN_STAYS);
    }

    @ParameterizedTest(name = "{0} {index}")
    @MethodSource("triggers")
    void a_notice_is_given_by_its_trigger_and_kept_back_without_it(NoticeCode code, Asked fires, Asked silent) {
        assertThat(fires.notices()).contains(code);
        assertThat(silent.notices()).doesNotContain(code);
    }
}
