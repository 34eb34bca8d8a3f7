package dev.slowpoint.heat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

/** A slab whose faces see different things. */
class FacesTest {

    private static final Material MEAT = Material.constant(0.48, 3.5e6);
    private static final Surroundings WATER = new Surroundings(60.0, 200.0);

    @Test
    void a_slab_with_the_same_water_on_both_faces_is_the_symmetric_slab() {
        PointHistory symmetric = run(0.03, new Stage(WATER, 7200.0)).core();
        TemperatureHistory both = run(0.03, new Stage(WATER, 7200.0).farFace(WATER));
        for (double time = 200.0; time <= 7200.0; time += 200.0) {
            assertThat(both.core().atC(time)).isCloseTo(symmetric.atC(time), within(0.02));
            assertThat(both.coldest().atC(time)).isCloseTo(symmetric.atC(time), within(0.03));
        }
    }

    /** Exact: an insulated face is a plane of symmetry. */
    @Test
    void a_slab_with_one_face_insulated_heats_like_one_of_twice_the_thickness() {
        PointHistory twice = run(0.06, new Stage(WATER, 20_000.0)).core();
        TemperatureHistory oneSided = run(0.03, new Stage(WATER, 20_000.0).farFace(Surroundings.insulated()));
        for (double time = 500.0; time <= 20_000.0; time += 500.0) {
            assertThat(oneSided.node(0).atC(time)).isCloseTo(twice.atC(time), within(0.03));
            assertThat(oneSided.coldest().atC(time)).isCloseTo(twice.atC(time), within(0.03));
        }
    }

    /** Exact: steady conduction through three resistances in series. */
    @Test
    void a_face_in_air_settles_where_the_resistances_in_series_put_it() {
        double waterFilm = 200.0;
        double airFilm = 12.0;
        TemperatureHistory history = run(
                0.03, new Stage(new Surroundings(62.0, waterFilm), 40_000.0).farFace(new Surroundings(22.0, airFilm)));
        double flux = (62.0 - 22.0) / (1.0 / waterFilm + 0.03 / 0.48 + 1.0 / airFilm);
        assertThat(history.node(0).atC(40_000.0)).isCloseTo(22.0 + flux / airFilm, within(0.01));
        assertThat(history.surface().atC(40_000.0)).isCloseTo(62.0 - flux / waterFilm, within(0.01));
    }

    @Test
    void turning_a_slab_over_changes_nothing_but_the_names_of_its_faces() {
        Surroundings air = new Surroundings(22.0, 12.0);
        TemperatureHistory one = run(0.03, new Stage(WATER, 5000.0).farFace(air));
        TemperatureHistory other = run(0.03, new Stage(air, 5000.0).farFace(WATER));
        for (double time = 100.0; time <= 5000.0; time += 100.0) {
            assertThat(other.node(0).atC(time)).isCloseTo(one.surface().atC(time), within(0.02));
            assertThat(other.core().atC(time)).isCloseTo(one.core().atC(time), within(0.02));
        }
    }

    @Test
    void the_coldest_point_is_never_above_any_node_and_the_warmest_never_below() {
        TemperatureHistory history = run(
                0.03,
                new Stage(WATER, 3000.0).farFace(new Surroundings(22.0, 12.0)),
                new Stage(new Surroundings(1.0, 300.0), 2000.0).farFace(new Surroundings(4.0, 7.0)));
        PointHistory coldest = history.coldest();
        PointHistory warmest = history.warmest();
        for (int sample = 0; sample < history.samples(); sample++) {
            for (int node = 0; node < history.nodes(); node++) {
                assertThat(coldest.temperatureC(sample)).isLessThanOrEqualTo(history.temperatureC(sample, node));
                assertThat(warmest.temperatureC(sample)).isGreaterThanOrEqualTo(history.temperatureC(sample, node));
            }
        }
    }

    @Test
    void a_stage_ends_when_all_of_the_body_has_passed_its_level() {
        TemperatureHistory history = run(
                0.03,
                new Stage(WATER, 40_000.0).endingAt(CoreLevel.risesTo(55.0)),
                new Stage(new Surroundings(1.0, 300.0), 40_000.0).endingAt(CoreLevel.fallsTo(5.0)));
        assertThat(history.coldest().atC(history.stageEnd(0))).isCloseTo(55.0, within(2e-3));
        assertThat(history.warmest().atC(history.stageEnd(1))).isCloseTo(5.0, within(2e-3));
        PointHistory plain = run(0.03, new Stage(WATER, 40_000.0)).core();
        assertThat(history.stageEnd(0)).isCloseTo(plain.firstAtOrAbove(55.0), within(2.0));
    }

    @Test
    void a_stage_whose_level_is_passed_already_takes_no_time() {
        TemperatureHistory history =
                run(0.03, new Stage(WATER, 1000.0).endingAt(CoreLevel.fallsTo(30.0)), new Stage(WATER, 1000.0));
        assertThat(history.stageEnd(0)).isZero();
        assertThat(history.end()).isEqualTo(1000.0);
    }

    @Test
    void only_a_slab_has_a_far_face() {
        Programme oneFaceInAir = Programme.of(new Stage(WATER, 100.0).farFace(new Surroundings(22.0, 12.0)));
        assertThatThrownBy(() -> Conduction.run(
                        new Sphere(0.05), MEAT, StartField.uniform(5.0), oneFaceInAir, Resolution.SERVICE))
                .hasMessageContaining("only a slab");
    }

    private static TemperatureHistory run(double thickness, Stage... stages) {
        return Conduction.run(
                new Slab(thickness), MEAT, StartField.uniform(5.0), new Programme(List.of(stages)), Resolution.SERVICE);
    }
}
