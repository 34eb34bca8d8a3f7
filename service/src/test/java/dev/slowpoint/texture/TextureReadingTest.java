package dev.slowpoint.texture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.slowpoint.heat.ConstantPropertyReference;
import dev.slowpoint.heat.TemperatureHistory;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TextureReadingTest {

    private static final double HOUR = 3600.0;

    /** Chilled overnight in between; the exact series carries one field through all three baths. */
    private static TemperatureHistory tenHoursTwice(TextureClass textureClass) {
        return Released.piece(textureClass, "slab", 15.0)
                .baths(5.0, new double[] {0.0, 10.0 * HOUR, 22.0 * HOUR}, new double[] {55.0, 4.0, 55.0}, 32.0 * HOUR);
    }

    /** Blade steaks of 15 mm at 55 C: ten hours, a night in the fridge, ten hours more. */
    @ParameterizedTest
    @CsvSource({"beef_tender", "beef_medium", "beef_tough"})
    void a_second_cook_begins_where_the_first_ended(String id) {
        TextureClass beef = Released.MODEL.get(id);
        TemperatureHistory first = Released.bath(beef, "slab", 15.0, 55.0, 600.0);
        TemperatureHistory second = Released.piece(beef, "slab", 15.0).bath(4.0, 55.0, 10.0 * HOUR);
        EarlierDoses earlier = EarlierDoses.none(beef).then(beef, first, 10.0 * HOUR);
        TextureReading reading = TextureReading.of(beef, second, 54.0, earlier);
        TextureReading fresh = TextureReading.of(beef, second, 54.0);
        TextureReading whole = TextureReading.of(beef, tenHoursTwice(beef), 54.0);

        EarlierDoses sum = earlier.then(beef, second, 10.0 * HOUR);
        EarlierDoses once = EarlierDoses.none(beef).then(beef, tenHoursTwice(beef), 32.0 * HOUR);
        for (int i = 0; i < sum.doses().size(); i++) {
            assertThat(sum.doses().get(i))
                    .isCloseTo(once.doses().get(i), within(0.003 * once.doses().get(i)));
        }
        assertThat(sum.lossPercent()).isCloseTo(once.lossPercent(), within(0.05));
        assertThat(reading.window().closes()).isLessThanOrEqualTo(fresh.window().closes());
        assertThat(reading.lossPercentAt(10.0 * HOUR).orElseThrow())
                .isGreaterThan(fresh.lossPercentAt(10.0 * HOUR).orElseThrow() - 1e-9);
        if (whole.window().softFrom() < 10.0 * HOUR) {
            assertThat(reading.window().softFrom()).isZero();
        }
    }

    @Test
    void ten_hours_twice_is_too_long_for_a_tender_steak_and_past_the_best_for_a_medium_one() {
        TextureClass tender = Released.MODEL.get("beef_tender");
        TextureReading once = TextureReading.of(tender, Released.bath(tender, "slab", 15.0, 55.0, 600.0), 54.0);
        assertThat(once.verdict(HOUR)).isEqualTo(Verdict.WITHIN);
        assertThat(once.verdict(10.0 * HOUR)).isEqualTo(Verdict.PAST);
        assertThat(once.reachedAt(10.0 * HOUR).stream().map(l -> l.level().name()))
                .contains("mushy")
                .doesNotContain("ruined");

        TextureClass medium = Released.MODEL.get("beef_medium");
        TextureReading first = TextureReading.of(medium, Released.bath(medium, "slab", 15.0, 55.0, 600.0), 54.0);
        TextureReading both = TextureReading.of(medium, tenHoursTwice(medium), 54.0);
        assertThat(first.window().bestUntil()).isInfinite();
        assertThat(both.window().bestUntil()).isBetween(22.0 * HOUR, 32.0 * HOUR);
    }

    @Test
    void a_piece_already_past_its_close_has_no_window_left() {
        TextureClass tender = Released.MODEL.get("beef_tender");
        TemperatureHistory first = Released.bath(tender, "slab", 25.0, 55.0, 600.0);
        EarlierDoses earlier = EarlierDoses.none(tender).then(tender, first, 600.0 * 60.0);
        TextureReading again = TextureReading.of(tender, first, 54.0, earlier);
        assertThat(again.window().closes()).isZero();
        assertThat(again.verdict(HOUR)).isEqualTo(Verdict.NONE);
    }

    @Test
    void doses_of_another_class_are_refused() {
        TextureClass beef = Released.MODEL.get("beef_tender");
        TextureClass lamb = Released.MODEL.get("lamb_tender");
        TemperatureHistory hold = ConstantPropertyReference.hold(55.0, HOUR);
        EarlierDoses ofBeef = EarlierDoses.none(beef);
        assertThatThrownBy(() -> TextureReading.of(lamb, hold, 54.0, ofBeef))
                .hasMessageContaining("beef_tender")
                .hasMessageContaining("lamb_tender");
        assertThatThrownBy(() -> new EarlierDoses("beef_tender", List.of(-0.1), 0.0))
                .hasMessageContaining("-0.1");
        assertThatThrownBy(() -> new EarlierDoses("beef_tender", List.of(), 120.0))
                .hasMessageContaining("lossPercent = 120.0");
    }

    @Test
    void softening_and_dryness_close_separately_and_the_first_counts() {
        TextureReading hot = Released.read("pork_loin", "slab", 25.0, 69.0, 600.0);
        assertThat(hot.window().limit()).isEqualTo(CloseLimit.DRYNESS);
        assertThat(hot.window().closes())
                .isEqualTo(hot.window().dries())
                .isLessThan(hot.window().softens());
        assertThat(hot.window().bestUntil()).isEqualTo(hot.window().closes());
        assertThat(hot.lossPercentAt(hot.window().dries()).orElseThrow()).isCloseTo(25.0, within(1e-6));

        TextureReading mild = Released.read("pork_loin", "slab", 25.0, 60.0, 2000.0);
        assertThat(mild.window().limit()).isEqualTo(CloseLimit.SOFTENING);
        assertThat(mild.window().dries()).isInfinite();
        assertThat(mild.window().bestUntil())
                .isEqualTo(mild.window().bestLevel())
                .isLessThan(mild.window().closes());
    }

    @Test
    void a_close_beyond_the_history_is_told_as_not_reached() {
        TextureReading reading = Released.read("pork_loin", "slab", 25.0, 58.0, 300.0);
        assertThat(reading.window().limit()).isEqualTo(CloseLimit.NOT_REACHED);
        assertThat(reading.window().closes()).isInfinite();
        assertThat(reading.verdict(300.0 * 60.0)).isEqualTo(Verdict.WITHIN);
        assertThat(reading.verdict(60.0)).isEqualTo(Verdict.BEFORE);
    }

    @Test
    void a_class_that_knows_no_close_says_so() {
        TextureClass beef = Released.MODEL.get("beef_tender");
        TextureClass bare = new TextureClass(
                "bare",
                Opening.CORE_AND_DOSES,
                beef.processes().stream()
                        .filter(process -> process.kind() == ProcessKind.SET)
                        .toList(),
                Optional.empty(),
                false,
                Optional.empty(),
                beef.provenance());
        TextureReading reading = TextureReading.of(bare, Released.bath(bare, "slab", 25.0, 60.0, 600.0), 59.0);
        assertThat(reading.window().limit()).isEqualTo(CloseLimit.NOT_MODELLED);
        assertThat(reading.lossPercentAt(0.0)).isEmpty();
        assertThat(reading.confidence()).isEqualTo(Confidence.MEDIUM);
    }

    /** Enzymes of salmon die at 55 to 60 C (McGee 2004): in a hot bath nothing turns it to mush. */
    @Test
    void hot_salmon_does_not_turn_to_mush_but_dries() {
        TextureReading salmon = Released.read("salmon", "slab", 25.0, 70.0, 600.0);
        assertThat(salmon.window().softens()).isInfinite();
        assertThat(salmon.window().limit()).isEqualTo(CloseLimit.DRYNESS);
        assertThat(salmon.extrapolated()).isFalse();
    }

    @Test
    void vegetables_open_without_coming_near_the_bath() {
        TextureClass broccoli = Released.MODEL.get("broccoli");
        double hotThrough =
                Released.bath(broccoli, "cyl", 30.0, 95.0, 600.0).core().firstAtOrAbove(94.0);
        assertThat(Released.read("broccoli", "cyl", 30.0, 95.0, 600.0).window().opens())
                .isLessThan(hotThrough);
    }

    @Test
    void the_levels_of_the_white_are_told_beside_the_window_of_the_yolk() {
        TextureReading egg = Released.read("egg_yolk", "sphere", 45.0, 64.0, 200.0);
        assertThat(egg.verdict(60.0 * 60.0)).isEqualTo(Verdict.WITHIN);
        assertThat(egg.reachedAt(60.0 * 60.0).stream()
                        .map(l -> l.part() + " " + l.level().name()))
                .containsExactly("egg_yolk thickened_pourable", "egg_white loosely_set");
    }

    /** Bath at the target: a kelvin below. Bath set above it: half a kelvin below the target. */
    @Test
    void hot_through_is_a_kelvin_below_the_bath_or_half_a_kelvin_below_the_target() {
        assertThat(TextureWindow.hotThroughC(55.0, 55.0)).isEqualTo(54.0);
        assertThat(TextureWindow.hotThroughC(60.0, 55.0)).isEqualTo(54.5);
    }

    @Test
    void confidence_is_the_least_of_the_levels_used() {
        // Chicken breast: set and oversoften are medium, its loss curve low, so that only a dry close lowers it.
        assertThat(Released.read("chicken_breast", "slab", 25.0, 60.0, 600.0).confidence())
                .isEqualTo(Confidence.MEDIUM);
        assertThat(Released.read("chicken_breast", "slab", 25.0, 70.0, 600.0).confidence())
                .isEqualTo(Confidence.LOW);
        assertThat(Released.read("chicken_breast", "slab", 25.0, 60.0, 100.0).confidence())
                .isEqualTo(Confidence.LOW);
        assertThat(Released.read("carrot", "cyl", 20.0, 85.0, 600.0).confidence())
                .isEqualTo(Confidence.LOW);
        assertThat(Confidence.LOW.least(Confidence.MEDIUM)).isEqualTo(Confidence.LOW);
        assertThat(Confidence.MEDIUM.least(Confidence.MEDIUM)).isEqualTo(Confidence.MEDIUM);
    }

    /** The softening law of tender beef was made for 46 to 66 C. */
    @Test
    void a_hotter_bath_than_the_law_was_made_for_is_told() {
        assertThat(Released.read("beef_tender", "slab", 25.0, 65.0, 600.0).extrapolated())
                .isFalse();
        assertThat(Released.read("beef_tender", "slab", 25.0, 67.0, 600.0).extrapolated())
                .isTrue();
        // Set is long over before the core passes 60 C, and the softening of salmon stops at 58 C.
        assertThat(Released.read("salmon", "slab", 25.0, 70.0, 600.0).extrapolated())
                .isFalse();
        // The yolk law was made for up to 72 C.
        assertThat(Released.read("egg_yolk", "sphere", 45.0, 68.0, 60.0).extrapolated())
                .isFalse();
        assertThat(Released.read("egg_yolk", "sphere", 45.0, 85.0, 60.0).extrapolated())
                .isTrue();
    }

    @Test
    void a_place_grows_hot_when_its_hottest_node_does() {
        TemperatureHistory egg = Released.bath(Released.MODEL.get("egg_yolk"), "sphere", 45.0, 85.0, 60.0);
        double surface = Place.SURFACE.firstAbove(egg, 70.0);
        double yolk = Place.YOLK_MEAN.firstAbove(egg, 70.0);
        double core = Place.CORE.firstAbove(egg, 70.0);
        assertThat(surface).isPositive().isLessThan(yolk);
        assertThat(yolk).isLessThan(core);
        assertThat(Place.MEAN.firstAbove(egg, 70.0)).isEqualTo(surface);
        assertThat(Place.WHITE_MEAN.firstAbove(egg, 70.0)).isEqualTo(surface);
        assertThat(Place.SURFACE.firstAbove(egg, 90.0)).isInfinite();
    }

    @Test
    void collagen_actin_and_colour_are_explained_only_when_asked_for() {
        TextureClass beef = Released.MODEL.get("beef_tender");
        TemperatureHistory bath = Released.bath(beef, "slab", 25.0, 58.0, 240.0);
        List<Explanation> explanations = beef.explain(bath);
        assertThat(explanations.stream().map(e -> e.at().kind()).distinct())
                .containsExactly(ProcessKind.COLLAGEN_WEAKEN, ProcessKind.FIRM_ACTIN, ProcessKind.COLOUR_LOSS);
        assertThat(explanations).allSatisfy(e -> {
            assertThat(e.extent()).isCloseTo(1.0 - Math.exp(-e.dose()), within(1e-12));
            assertThat(e.at().time() < Double.POSITIVE_INFINITY)
                    .isEqualTo(e.dose() >= e.at().level().threshold());
        });
        // Collagen: half-time 11 min at 58 C (Machlik and Draudt 1963), so three hours at the core leave nothing.
        assertThat(explanations.get(0).extent()).isGreaterThan(0.999);
        assertThat(TextureReading.of(beef, bath, 57.0).levels().stream().map(LevelTime::kind))
                .containsOnly(ProcessKind.SET, ProcessKind.OVERSOFTEN);
    }

    @Test
    void classes_without_what_their_opening_needs_are_refused() {
        TextureClass beef = Released.MODEL.get("beef_tender");
        List<TextureProcess> softening = beef.processes().stream()
                .filter(process -> process.kind() == ProcessKind.OVERSOFTEN)
                .toList();
        List<TextureProcess> colour = beef.processes().stream()
                .filter(process -> process.kind() == ProcessKind.COLOUR_LOSS)
                .toList();
        assertThatThrownBy(() -> new TextureClass(
                        "x",
                        Opening.DOSES_ALONE,
                        softening,
                        Optional.empty(),
                        false,
                        Optional.empty(),
                        beef.provenance()))
                .hasMessageContaining("no level that opens it");
        assertThatThrownBy(() -> new TextureClass(
                        "x",
                        Opening.CORE_AND_DOSES,
                        colour,
                        Optional.empty(),
                        false,
                        Optional.empty(),
                        beef.provenance()))
                .hasMessageContaining("opens or closes");
    }
}
