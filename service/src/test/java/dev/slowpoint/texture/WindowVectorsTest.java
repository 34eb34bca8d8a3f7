package dev.slowpoint.texture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Windows of typical pieces, worked out once with another implementation of the same model and another solver of the
 * same constant-property conduction. They guard against change; they are no evidence for the constants.
 *
 * <p>The tables print whole minutes: a row holds when it is met within a minute or 1 %, whichever is more. The dry limit
 * is not applied in them.
 */
class WindowVectorsTest {

    /** Longer than the latest edge of the tables, 5546 min. */
    private static final double HORIZON_MINUTES = 6000.0;

    static Stream<Released.Vector> windows() {
        return Released.vectors("windows.csv").stream();
    }

    static Stream<Released.Vector> eggWindows() {
        return Released.vectors("egg-windows.csv").stream();
    }

    @Test
    void every_row_of_the_tables_is_read() {
        assertThat(windows().count()).isEqualTo(182);
        assertThat(eggWindows().count()).isEqualTo(10);
    }

    @ParameterizedTest
    @MethodSource("windows")
    void a_window_is_the_one_of_the_table(Released.Vector row) {
        TextureReading reading = Released.read(
                row.text("food_class"),
                row.text("shape"),
                row.number("thickness_mm"),
                row.number("bath_C"),
                HORIZON_MINUTES);
        TextureWindow window = reading.window();
        meets("opens", window.opens(), row.text("open_min"));
        meets("best", window.bestLevel(), row.text("best_until_min"));
        meets("closes", window.softens(), row.text("good_until_min"));
        meets("soft", window.softFrom(), row.text("mushy_or_rubbery_min"));
        meets("ruined", window.ruinedFrom(), row.text("ruined_min"));
    }

    @ParameterizedTest
    @MethodSource("eggWindows")
    void an_egg_is_as_in_the_table(Released.Vector row) {
        TextureReading reading = Released.read("egg_yolk", "sphere", 45.0, row.number("bath_C"), 500.0);
        meets("thickened", reading.window().opens(), row.text("yolk_thickened_min"));
        meets("soft until", reading.window().softens(), row.text("yolk_soft_until_min"));
        meets("sliceable", time(reading.levels(), "egg_yolk", "sliceable"), row.text("yolk_sliceable_min"));
        meets("white loose", time(reading.levels(), "egg_white", "loosely_set"), row.text("white_loosely_set_min"));
        meets("white tender", time(reading.levels(), "egg_white", "tender_set"), row.text("white_tender_set_min"));
    }

    private static double time(List<LevelTime> levels, String part, String level) {
        return levels.stream()
                .filter(l -> l.part().equals(part) && l.level().name().equals(level))
                .findFirst()
                .orElseThrow()
                .time();
    }

    private static void meets(String what, double seconds, String minutes) {
        if (minutes.isBlank()) {
            return;
        }
        double expected = Double.parseDouble(minutes);
        assertThat(seconds / 60.0).as(what).isCloseTo(expected, within(Math.max(1.0, 0.01 * expected)));
    }
}
