package dev.slowpoint.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.slowpoint.food.Condition;
import dev.slowpoint.food.Form;
import dev.slowpoint.heat.Slab;
import dev.slowpoint.plan.CookPlan.Unknown;
import dev.slowpoint.safety.Hazard;
import dev.slowpoint.safety.MarginBand;
import dev.slowpoint.safety.ProbabilityMargin;
import dev.slowpoint.safety.Purpose;
import dev.slowpoint.safety.TableView;
import dev.slowpoint.safety.Verdict;
import java.util.EnumSet;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MarginViewsTest {

    private static final double HOUR = 3600.0;

    private static CookPlan.Safety safety(Kitchen kitchen) {
        return Kitchen.PLANNER.plan(kitchen.task(), EnumSet.of(Detail.MARGINS)).safety();
    }

    private static CookPlan.Organism governing(Kitchen kitchen) {
        return safety(kitchen).governing().orElseThrow();
    }

    private static Kitchen steak() {
        return Kitchen.of("beef-sirloin", new Slab(0.03), 4, 57);
    }

    @Test
    void a_rule_that_is_a_table_shows_the_table_beside_the_margin() {
        CookPlan.Organism done = governing(steak());
        TableView table = done.table().orElseThrow();
        assertThat(table.table()).isEqualTo("fsis-meat-6.5");
        assertThat(table.marginS()).isPositive();
        // FSIS 2021 Table 2: 131 F 89 min, 132 F 71 min, 133 F 56 min, 134 F 45 min.
        assertThat(table.requiredS() / 60.0).isIn(89.0, 71.0, 56.0, 45.0);
        assertThat(table.marginRatio().orElseThrow()).isCloseTo(table.dwellS() / table.requiredS(), within(1e-12));
        assertThat(done.nominalMarginLog10()).isGreaterThanOrEqualTo(done.marginLog10());
        CookPlan.Safety soon = safety(steak().servedAfter(7000));
        assertThat(soon.verdict()).isEqualTo(Verdict.SURFACE_ONLY);
        assertThat(soon.band()).contains(MarginBand.NOT_MET);
        assertThat(soon.governing().orElseThrow().table().orElseThrow().marginS())
                .isNegative();
    }

    @Test
    void a_probability_comes_from_measured_kill_alone() {
        CookPlan.Missing missing = safety(steak()).missing().orElseThrow();
        assertThat(missing.by().orElseThrow().line().id()).isEqualTo("KC-SALM-BEEF");
        assertThat(missing.probability().orElseThrow()).isBetween(ProbabilityMargin.LEAST_MISSING, 0.5);
        assertThat(unknown(Kitchen.of("chicken-breast", new Slab(0.03), 4, 63))).isEqualTo(Unknown.NO_CENTRAL_KINETICS);
        Kitchen mussels = Kitchen.of("mussel", new Slab(0.02), 4, 92);
        double safe = mussels.plan().times().safe().orElseThrow().late();
        assertThat(unknown(mussels.servedAfter(safe + 30.0))).isEqualTo(Unknown.WHOLE_TREATMENT);
        assertThat(unknown(Kitchen.of("chicken-breast-cooked", new Slab(0.03), 4, 63)
                        .with(Purpose.REHEAT)
                        .with(Condition.COOKED)))
                .isEqualTo(Unknown.NOTHING_ASKED);
        assertThat(steak().plan().safety().missing()).as("only if asked for").isEmpty();
    }

    private static Unknown unknown(Kitchen kitchen) {
        CookPlan.Missing missing = safety(kitchen).missing().orElseThrow();
        assertThat(missing.probability()).isEmpty();
        return missing.unknown().orElseThrow();
    }

    /** The longer it stays in the bath, the less likely the target is missed; never told as nothing. */
    @Test
    void a_probability_falls_with_time_and_stops_short_of_nothing() {
        double before = 1.0;
        boolean between = false;
        for (double at = HOUR; at < 5 * HOUR; at += 600.0) {
            CookPlan.Safety safety = safety(steak().servedAfter(at));
            double now = safety.missing().orElseThrow().probability().orElseThrow();
            assertThat(now).isBetween(ProbabilityMargin.LEAST_MISSING, before);
            between |= now > 0.01 && now < 0.99;
            before = now;
        }
        assertThat(between).isTrue();
        assertThat(before).isEqualTo(ProbabilityMargin.LEAST_MISSING);
    }

    /** D doubled after slow warm-up: DMRI 2014, Quintavalla and Campanini 1991; not in beef of normal pH. */
    @Test
    void slow_warm_up_is_told_as_a_smaller_margin_except_in_beef() {
        Kitchen pork = Kitchen.of("pork-loin", new Slab(0.045), 4, 58).servedAfter(2.9 * HOUR);
        CookPlan.Organism slow = governing(pork);
        double achieved = slow.achievedLog10();
        assertThat(achieved).isBetween(1.0, 11.9);
        assertThat(slow.adaptedMarginLog10().orElseThrow())
                .isCloseTo(achieved / 2.0 - slow.requiredLog10() - slow.growthLog10(), within(1e-9));
        Kitchen beef = Kitchen.of("beef-sirloin", new Slab(0.045), 4, 58).servedAfter(2.9 * HOUR);
        assertThat(governing(beef).adaptedMarginLog10()).isEmpty();
        assertThat(governing(Kitchen.of("pork-loin", new Slab(0.01), 4, 60)).adaptedMarginLog10())
                .isEmpty();
    }

    // At 61.5 C the line of 70 C 2 min with z 7.5 takes 4.5 min for each log of Listeria (UK FSA).
    @ParameterizedTest
    @CsvSource({"-3, NOT_MET", "2, THIN", "9, NORMAL", "18, WIDE"})
    void bands_say_the_margin_in_words(double minutesAfterSafe, MarginBand band) {
        Kitchen salmon = Kitchen.of("salmon-farmed", new Slab(0.02), 4, 62);
        double safe = salmon.plan().times().safe().orElseThrow().late();
        CookPlan.Safety then = safety(salmon.servedAfter(safe + 60.0 * minutesAfterSafe));
        assertThat(then.band()).as("%s", then.governing()).contains(band);
    }

    // FSIS 2021 Table 2 gives no credit for the way up, so the integral alone is there before the table is met.
    @Test
    void a_table_that_is_not_met_is_not_met_whatever_the_integral_says() {
        CookPlan.Safety minced = safety(Kitchen.of("beef-minced", new Slab(0.03), 4, 57)
                .with(Form.MINCED)
                .servedAfter(150 * 60.0));
        CookPlan.Organism salmonella = minced.governing().orElseThrow();
        assertThat(salmonella.marginLog10()).isPositive();
        assertThat(salmonella.table().orElseThrow().marginS()).isNegative();
        assertThat(minced.verdict()).isEqualTo(Verdict.NOT_MET);
        assertThat(minced.band()).contains(MarginBand.NOT_MET);
        assertThat(minced.margins().seconds().orElseThrow()).isNegative();
    }

    // FSIS-GD-2021-14 pp. 14 and 70-72: 3 log of S. aureus mean toxin. Five hours at 47 C keep the 6 h and grow far
    // more by
    // the milk model, whose rate of 41 C is held: (0.0442 x 35.593)^2 / ln 10 log an hour.
    @Test
    void growth_of_staphylococci_in_a_cool_bath_is_told_though_the_six_hours_are_kept() {
        CookPlan.Safety lukewarm =
                safety(Kitchen.of("beef-sirloin", new Slab(0.025), 4, 47).servedAfter(5 * HOUR));
        Outcome.Growth staphylococci = lukewarm.warmUpGrowth().get(0);
        assertThat(staphylococci.hazard()).isEqualTo(Hazard.S_AUREUS);
        double perHour = StrictMath.pow(0.0442 * 35.593, 2) / StrictMath.log(10.0);
        assertThat(staphylococci.log10()).isBetween(4.5 * perHour, 5.0 * perHour);
        assertThat(staphylococci.untestedS()).isPositive();
        assertThat(lukewarm.warmUpLeft()).isPositive();
        assertThat(safety(Kitchen.of("pork-loin", new Slab(0.03), 4, 62))
                        .warmUpGrowth()
                        .get(0)
                        .log10())
                .isLessThan(1.0);
    }

    @Test
    void a_spoiled_cook_has_no_margin_left_to_tell() {
        Kitchen butt = Kitchen.of("pork-shoulder", new Slab(0.09), 4, 73.9).servedAfter(8 * HOUR);
        Step off = new Step.Unheated(OptionalDouble.of(4.75 * HOUR), OptionalDouble.of(40));
        CookPlan.Safety spoiled = Afterwards.of(butt, off).plan().safety();
        assertThat(spoiled.verdict()).isEqualTo(Verdict.NOT_MET);
        assertThat(spoiled.band()).contains(MarginBand.NOT_MET);
        assertThat(spoiled.margins()).isEqualTo(CookPlan.Margins.NONE);
    }

    // A start of 5 C or colder may grow by one log (FSIS-GD-2021-14 pp. 70-71); a warmer one pays for all.
    @Test
    void growth_on_the_way_up_is_added_to_what_is_required() {
        CookPlan.Organism cold = governing(Kitchen.of("pork-loin", new Slab(0.045), 4, 60));
        CookPlan.Organism warm = governing(Kitchen.of("pork-loin", new Slab(0.045), 20, 60));
        assertThat(cold.growthLog10()).isZero();
        assertThat(warm.growthLog10()).isBetween(0.1, 1.5);
        assertThat(warm.marginLog10())
                .isCloseTo(warm.achievedLog10() - warm.requiredLog10() - warm.growthLog10(), within(1e-9));
    }
}
