package dev.slowpoint.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.slowpoint.food.Condition;
import dev.slowpoint.food.Form;
import dev.slowpoint.heat.Body;
import dev.slowpoint.heat.Brick;
import dev.slowpoint.heat.LongCylinder;
import dev.slowpoint.heat.Slab;
import dev.slowpoint.heat.StartField;
import dev.slowpoint.plan.Step.ChillMedium;
import dev.slowpoint.safety.Eater;
import dev.slowpoint.safety.Purpose;
import dev.slowpoint.safety.Verdict;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import org.hipparchus.special.Erf;
import org.hipparchus.special.Gamma;
import org.junit.jupiter.api.Test;

/** Bands of portions: what one card promises holds for each piece it serves. */
class SheetPlannerTest {

    private static final CookPlanner PLANNER = Kitchen.PLANNER;
    private static final SheetDefaults DEFAULTS = PLANNER.knowledge().sheets();
    private static final OptionalDouble USUAL = OptionalDouble.empty();
    private static final List<String> FOODS =
            List.of("pork-loin", "chicken-breast", "beef-sirloin", "salmon", "carrot", "turkey-breast");

    private static Sheet sheet(DisplayUnits units, Card... cards) {
        Set<Card> asked = EnumSet.noneOf(Card.class);
        Collections.addAll(asked, cards);
        return new Sheet(asked, units, ChillMedium.ICE_WATER, USUAL, USUAL, USUAL);
    }

    private static CookTask task(String food, Body body, double startC, OptionalDouble bathC, Purpose purpose) {
        return new CookTask(
                PLANNER.knowledge().catalogue().find(food).orElseThrow(),
                Form.INTACT,
                Condition.RAW,
                USUAL,
                false,
                body,
                Arrangement.FREE,
                StartField.uniform(startC),
                Optional.empty(),
                new CookTask.Bath(bathC, Stirring.PUMPED, Optional.empty()),
                0.0,
                new CookTask.Target(purpose, USUAL, USUAL, USUAL),
                Eater.GENERAL,
                Optional.empty(),
                new CookTask.Tolerances(USUAL, USUAL, USUAL, USUAL),
                Kitchen.NOTHING_ELSE,
                List.of());
    }

    private static CookTask slab(String food, double mm, double startC, double bathC) {
        return task(food, new Slab(mm / 1000.0), startC, OptionalDouble.of(bathC), Purpose.SERVE);
    }

    @Test
    void a_card_never_says_less_than_any_of_its_pieces_needs_by_a_plan_of_its_own() {
        Random random = new Random(20_261_126L);
        SheetPlanner planner = PLANNER.sheet(sheet(DisplayUnits.METRIC));
        int held = 0;
        for (int i = 0; i < 60; i++) {
            String food = FOODS.get(random.nextInt(FOODS.size()));
            double across = 0.010 + 0.05 * random.nextDouble();
            Body body = switch (random.nextInt(4)) {
                case 0 -> new LongCylinder(across);
                case 1 -> new Brick(across, across + 0.03 * random.nextDouble(), 0.12 + 0.05 * random.nextDouble());
                default -> new Slab(across);
            };
            double bathC = food.equals("carrot") ? 85.0 : 56.0 + random.nextInt(8);
            CookTask task =
                    task(food, body, random.nextInt(3) == 0 ? -18.0 : 4.0, OptionalDouble.of(bathC), Purpose.SERVE);
            Band band = planner.bandOf(Portion.spread(task, 0.003 * random.nextDouble()));
            Band.Heating card = band.cooks().get(0);
            if (card.time().isEmpty() || card.safety().verdict() != Verdict.MET) {
                continue;
            }
            CookPlan own = PLANNER.plan(task, Set.of());
            assertThat(card.time().getAsDouble())
                    .as(task.toString())
                    .isGreaterThanOrEqualTo(own.times().safe().orElseThrow().late());
            held++;
        }
        assertThat(held).isGreaterThan(25);
    }

    @Test
    void a_thicker_band_never_comes_out_sooner() {
        // No time does for salmon at 60 C: it is safe after its best.
        for (String food : List.of("pork-loin", "chicken-breast", "beef-sirloin", "carrot", "turkey-breast")) {
            SheetPlanner planner = PLANNER.sheet(sheet(DisplayUnits.METRIC));
            double before = 0.0;
            for (double mm = 6.0; mm < 75.0; mm += 1.7) {
                Band.Heating card = planner.bandOf(Portion.of(slab(food, mm, 4.0, food.equals("carrot") ? 85.0 : 60.0)))
                        .cooks()
                        .get(0);
                if (card.time().isPresent()) {
                    assertThat(card.time().getAsDouble()).as(food + " " + mm).isGreaterThanOrEqualTo(before);
                    before = card.time().getAsDouble();
                }
            }
            assertThat(before).as(food).isPositive();
        }
    }

    @Test
    void a_portion_gets_the_same_card_whatever_stands_before_it() {
        List<Portion> portions = new ArrayList<>();
        for (String food : List.of("pork-loin", "salmon")) {
            for (double mm = 11.0; mm < 50.0; mm += 4.3) {
                portions.add(Portion.spread(slab(food, mm, 4.0, 58.0), 0.002));
            }
        }
        SheetPlanner forwards =
                PLANNER.sheet(sheet(DisplayUnits.METRIC, Card.FRIDGE, Card.CHILL_AND_KEEP, Card.REHEAT));
        SheetPlanner backwards =
                PLANNER.sheet(sheet(DisplayUnits.METRIC, Card.FRIDGE, Card.CHILL_AND_KEEP, Card.REHEAT));
        List<Band> first = portions.stream().map(forwards::bandOf).toList();
        Collections.reverse(portions);
        List<Band> second =
                new ArrayList<>(portions.stream().map(backwards::bandOf).toList());
        Collections.reverse(second);
        for (int i = 0; i < first.size(); i++) {
            assertThat(second.get(i).place()).isEqualTo(first.get(i).place());
            same(second.get(i).cooks().get(0), first.get(i).cooks().get(0));
            same(second.get(i).reheat().orElseThrow(), first.get(i).reheat().orElseThrow());
            assertThat(second.get(i).setpointC()).isEqualTo(first.get(i).setpointC());
        }
    }

    private static void same(Band.Heating one, Band.Heating other) {
        assertThat(one.time()).isEqualTo(other.time());
        assertThat(one.latest()).isEqualTo(other.latest());
        assertThat(one.safe()).isEqualTo(other.safe());
        assertThat(one.hotThrough()).isEqualTo(other.hotThrough());
        assertThat(one.safety().marginS()).isEqualTo(other.safety().marginS());
        assertThat(one.worst()).isEqualTo(other.worst());
        assertThat(one.thinnest()).isEqualTo(other.thinnest());
        assertThat(one.notices()).isEqualTo(other.notices());
    }

    @Test
    void a_band_holds_its_portion_and_times_are_whole_steps() {
        for (DisplayUnits units : DisplayUnits.values()) {
            SheetPlanner planner = PLANNER.sheet(sheet(units));
            for (double mm = 12.0; mm < 60.0; mm += 3.1) {
                Portion portion = Portion.spread(slab("pork-loin", mm, 4.0, 60.0), 0.0025);
                Band band = planner.bandOf(portion);
                assertThat(band.place().from()).isLessThanOrEqualTo(portion.thinnest() + 1e-9);
                assertThat(band.place().to()).isGreaterThanOrEqualTo(portion.thickest() - 1e-9);
                assertThat(band.place().slowest().body().across()).isGreaterThanOrEqualTo(portion.thickest() - 1e-9);
                assertThat(band.cooks().get(0).time().orElseThrow() % 300.0).isZero();
            }
        }
    }

    @Test
    void a_setpoint_is_never_rounded_down() {
        for (double asked = 54.0; asked < 66.0; asked += 0.37) {
            double metric = DisplayUnits.METRIC.settable(asked, DEFAULTS);
            assertThat(metric).isBetween(asked - 1e-9, asked + 0.5);
            assertThat(2.0 * metric).isCloseTo(Math.rint(2.0 * metric), within(1e-9));
            double us = DisplayUnits.US.settable(asked, DEFAULTS);
            assertThat(us).isBetween(asked - 1e-9, asked + 1.0 / 1.8);
            assertThat(DisplayUnits.fahrenheit(us)).isCloseTo(Math.rint(DisplayUnits.fahrenheit(us)), within(1e-6));
        }
        // 140 F is 60 C: what can be set already stays.
        assertThat(DisplayUnits.US.settable(60.0, DEFAULTS)).isCloseTo(60.0, within(1e-9));
        assertThat(DisplayUnits.METRIC.settable(60.0, DEFAULTS)).isEqualTo(60.0);
    }

    @Test
    void a_card_is_planned_with_the_rounded_setpoint() {
        Band band = PLANNER.sheet(sheet(DisplayUnits.US)).bandOf(Portion.of(slab("pork-loin", 40.0, 4.0, 58.2)));
        assertThat(DisplayUnits.fahrenheit(band.setpointC())).isCloseTo(137.0, within(1e-6));
        CookPlan plan = PLANNER.plan(band.place().slowest().at(band.setpointC()), Set.of());
        assertThat(band.cooks().get(0).safe().orElseThrow().late())
                .isEqualTo(plan.times().safe().orElseThrow().late());
    }

    @Test
    void a_band_whose_thinnest_piece_would_be_past_its_best_is_narrower() {
        // What is only warmed up is past its best soon after it is hot through.
        SheetPlanner planner = PLANNER.sheet(sheet(DisplayUnits.METRIC));
        int narrowed = 0;
        int cured = 0;
        for (double mm = 31.0; mm < 70.0; mm += 2.3) {
            for (double spread = 0.001; spread < 0.013; spread += 0.0015) {
                Portion portion =
                        Portion.spread(slab("pork-loin", mm, 4.0, 60.0).reheatedFrom(4.0), spread);
                Band band = planner.bandOf(portion);
                Ladder.Rungs widest =
                        Ladder.of(DisplayUnits.METRIC, DEFAULTS, 0).around(portion.thinnest(), portion.thickest());
                Ladder.Rungs finest = Ladder.of(DisplayUnits.METRIC, DEFAULTS, DEFAULTS.halvings())
                        .around(portion.thinnest(), portion.thickest());
                boolean past = band.cooks().get(0).pastBest() > 0.0;
                if (past) {
                    assertThat(band.place().from()).isEqualTo(finest.from());
                    assertThat(band.place().to()).isEqualTo(finest.to());
                }
                boolean narrower =
                        band.place().from() > widest.from() || band.place().to() < widest.to();
                narrowed += narrower ? 1 : 0;
                cured += narrower && !past ? 1 : 0;
            }
        }
        assertThat(narrowed).isPositive();
        assertThat(cured).isPositive();
    }

    @Test
    void one_setpoint_is_recommended_for_a_food_as_far_as_it_does() {
        SheetPlanner planner = PLANNER.sheet(sheet(DisplayUnits.METRIC));
        Set<Double> setpoints = new TreeSet<>();
        for (double mm = 14.0; mm < 40.0; mm += 5.0) {
            setpoints.add(
                    planner.bandOf(Portion.of(task("chicken-breast", new Slab(mm / 1000.0), 4.0, USUAL, Purpose.SERVE)))
                            .setpointC());
        }
        assertThat(setpoints).hasSize(1);
    }

    @Test
    void both_starts_share_one_setpoint_and_frozen_takes_longer() {
        Band band = PLANNER.sheet(sheet(DisplayUnits.METRIC, Card.FRIDGE, Card.FROZEN))
                .bandOf(Portion.of(slab("pork-loin", 33.0, 4.0, 60.0)));
        assertThat(band.cooks()).extracting(Band.Heating::card).containsExactly(Card.FRIDGE, Card.FROZEN);
        assertThat(band.cooks().get(1).time().orElseThrow())
                .isGreaterThan(band.cooks().get(0).time().orElseThrow());
        assertThat(band.cooks().get(1).startC()).isEqualTo(-18.0);
    }

    @Test
    void food_is_kept_for_days_only_where_its_cook_killed_listeria() {
        Sheet sheet = sheet(DisplayUnits.METRIC, Card.FRIDGE, Card.CHILL_AND_KEEP);
        double served = PLANNER.sheet(sheet)
                .bandOf(Portion.of(task("pork-loin", new Slab(0.033), 4.0, OptionalDouble.of(57.0), Purpose.SERVE)))
                .cold()
                .orElseThrow()
                .longest();
        double kept = PLANNER.sheet(sheet)
                .bandOf(Portion.of(task("pork-loin", new Slab(0.033), 4.0, OptionalDouble.of(66.0), Purpose.KEEP)))
                .cold()
                .orElseThrow()
                .longest();
        assertThat(kept).isEqualTo(7 * 86_400.0);
        assertThat(served).isLessThan(kept);
    }

    @Test
    void what_is_safe_on_its_outside_only_is_not_kept() {
        Band band = PLANNER.sheet(sheet(DisplayUnits.METRIC, Card.FRIDGE, Card.CHILL_AND_KEEP))
                .bandOf(Portion.of(slab("beef-sirloin", 28.0, 4.0, 52.0)));
        assertThat(band.cooks().get(0).safety().verdict()).isEqualTo(Verdict.SURFACE_ONLY);
        assertThat(band.cold().orElseThrow().longest()).isZero();
    }

    @Test
    void the_worst_of_measured_pieces_is_never_smaller_than_any_of_them() {
        CookTask task = slab("pork-loin", 25.0, 4.0, 60.0);
        // Mean 25, standard deviation 1.5811; five pieces: factor 4.203.
        Portion five = Portion.measured(task, new double[] {0.023, 0.024, 0.025, 0.026, 0.027}, DEFAULTS);
        assertThat(five.thickest()).isCloseTo(0.025 + 4.203 * 0.0015811, within(1e-6));
        assertThat(five.thinnest()).isCloseTo(0.025 - 4.203 * 0.0015811, within(1e-6));
        Portion alike = Portion.measured(task, new double[] {0.024, 0.024, 0.024, 0.024, 0.024}, DEFAULTS);
        assertThat(alike.thickest()).isEqualTo(0.025);
        double[] outlier = new double[50];
        Arrays.fill(outlier, 0.025);
        outlier[7] = 0.045;
        assertThat(Portion.measured(task, outlier, DEFAULTS).thickest()).isEqualTo(0.045);
    }

    /**
     * The factor k of n pieces is such that mean + k s exceeds the 95th percentile with a probability of 95 %: the integral of
     * Phi(sqrt(n) (k w - z)) over the distribution of w = s / sigma, whose square times n - 1 is chi-square distributed.
     */
    @Test
    void the_tolerance_factors_cover_what_they_promise() {
        double z = Math.sqrt(2.0) * Erf.erfInv(0.9);
        DEFAULTS.factors().forEach((n, k) -> {
            assertThat(confidence(n, k, z)).as("pieces: " + n).isGreaterThanOrEqualTo(0.95);
            // Rounded up to three decimals: one less in the last of them does not do.
            assertThat(confidence(n, k - 0.001, z)).as("pieces: " + n).isLessThan(0.95);
        });
    }

    private static double confidence(int n, double k, double z) {
        double nu = n - 1.0;
        double norm = Math.log(2.0) + 0.5 * nu * Math.log(0.5 * nu) - Gamma.logGamma(0.5 * nu);
        double covered = 0.0;
        double step = 1e-3;
        for (double w = 0.5 * step; w < 4.0; w += step) {
            double density = Math.exp(norm + (nu - 1.0) * Math.log(w) - 0.5 * nu * w * w);
            covered += step * density * 0.5 * (1.0 + Erf.erf(Math.sqrt(n) * (k * w - z) / Math.sqrt(2.0)));
        }
        return covered;
    }
}
