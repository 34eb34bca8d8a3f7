package dev.slowpoint.safety;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.slowpoint.food.Mark;
import dev.slowpoint.food.Provenance;
import dev.slowpoint.heat.RateLaw;
import dev.slowpoint.parameters.ShippedSafety;
import java.util.Objects;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class TimeTableTest {

    private static final Provenance KNOWN = new Provenance(Mark.READ, "test");
    private static final OptionalDouble UNKNOWN_FAT = OptionalDouble.empty();

    private static TimeTable table(String id) {
        return Objects.requireNonNull(ShippedSafety.KNOWLEDGE.tables().get(id), id);
    }

    private static double fahrenheit(double f) {
        return Math.round((f - 32.0) / 1.8 * 1000.0) / 1000.0;
    }

    @Test
    void meat_line_returns_every_row_but_those_that_were_rounded_up() {
        InactivationLine line =
                Objects.requireNonNull(ShippedSafety.KNOWLEDGE.lines().get("K-SALM-MEAT-FSIS"));
        RequiredTime times = table("fsis-meat-6.5").column(UNKNOWN_FAT);
        for (int f = 130; f <= 157; f++) {
            double printed = times.atRowBelowS(fahrenheit(f));
            double byLine = line.requiredS(6.5, fahrenheit(f));
            double unit = printed >= 240.0 ? 60.0 : 1.0;
            if (f >= 139 && f <= 145) {
                // FSIS rounded up to whole minutes there, by up to 13 %.
                assertThat(printed / byLine).as("%d F", f).isBetween(0.999, 1.14);
            } else {
                assertThat(printed).as("%d F", f).isCloseTo(byLine, within(unit));
            }
        }
    }

    @Test
    void more_fat_never_asks_for_less_time() {
        for (String bird : new String[] {"fsis-chicken-7.0", "fsis-turkey-7.0"}) {
            for (int f = 136; f <= 165; f++) {
                double before = 0.0;
                for (int fat = 1; fat <= 12; fat++) {
                    double time = table(bird).column(OptionalDouble.of(fat)).atRowBelowS(fahrenheit(f));
                    assertThat(time).as("%s %d F %d %%", bird, f, fat).isGreaterThanOrEqualTo(before);
                    before = time;
                }
            }
        }
    }

    @Test
    void fat_between_columns_takes_the_fatter_and_unknown_fat_the_fattest() {
        TimeTable chicken = table("fsis-chicken-7.0");
        double five = chicken.column(OptionalDouble.of(5.0)).atRowBelowS(60.0);
        assertThat(chicken.column(OptionalDouble.of(4.2)).atRowBelowS(60.0)).isEqualTo(five);
        assertThat(chicken.column(OptionalDouble.of(0.0)).atRowBelowS(60.0))
                .isEqualTo(chicken.column(OptionalDouble.of(1.0)).atRowBelowS(60.0));
        assertThat(chicken.column(UNKNOWN_FAT).atRowBelowS(60.0))
                .isEqualTo(chicken.column(OptionalDouble.of(12.0)).atRowBelowS(60.0))
                .isEqualTo(chicken.column(OptionalDouble.of(30.0)).atRowBelowS(60.0))
                .isEqualTo(2100.0);
        assertThatThrownBy(() -> chicken.column(OptionalDouble.of(120.0))).hasMessageContaining("120");
    }

    @Test
    void last_time_is_held_until_the_instant_row() {
        RequiredTime meat = table("fsis-meat-6.5").column(UNKNOWN_FAT);
        // Table 2: 157 F 14 s, 158 F instant.
        assertThat(meat.interpolatedS(69.444)).isEqualTo(14.0);
        assertThat(meat.interpolatedS(69.99)).isEqualTo(14.0);
        assertThat(meat.interpolatedS(70.0)).isZero();
        RateLaw rate = meat.rate();
        assertThat(rate.perSecond(75.0)).isEqualTo(rate.perSecond(69.444)).isCloseTo(6.5 / 14.0, within(1e-12));
    }

    @Test
    void nothing_is_supported_below_the_lowest_row() {
        RequiredTime turkey = table("fsis-turkey-7.0").column(UNKNOWN_FAT);
        assertThat(turkey.lowestC()).isEqualTo(57.778);
        assertThat(turkey.interpolatedS(57.777)).isInfinite();
        assertThat(turkey.atRowBelowS(57.777)).isInfinite();
        assertThat(turkey.rate().perSecond(57.777)).isZero();
    }

    @Test
    void rate_follows_the_rows_and_bends_at_them() {
        RequiredTime meat = table("fsis-meat-6.5").column(UNKNOWN_FAT);
        assertThat(meat.rate().perSecond(60.0)).isCloseTo(6.5 / 720.0, within(1e-12));
        assertThat(meat.rate().breaksC()).hasSize(28).startsWith(54.444).endsWith(69.444);
    }

    @Test
    void extension_for_nominal_estimates_continues_the_slope_of_the_lowest_rows() {
        RequiredTime meat = table("fsis-meat-6.5").column(UNKNOWN_FAT).extendedBy(0.556);
        // 112 min and 89 min in the two lowest rows: 112 * 112 / 89 one row further down.
        assertThat(meat.atRowBelowS(meat.lowestC()) / 60.0).isCloseTo(112.0 * 112.0 / 89.0, within(1e-6));
        assertThat(meat.lowestC()).isCloseTo(53.888, within(1e-9));
        assertThat(meat.atRowBelowS(54.444)).isEqualTo(6720.0);
    }

    @Test
    void trichinella_is_dead_wherever_the_meat_table_is_met() {
        RequiredTime meat = table("fsis-meat-6.5").column(UNKNOWN_FAT);
        RequiredTime worm = table("trichinella").column(UNKNOWN_FAT);
        for (int f = 130; f <= 160; f++) {
            assertThat(worm.atRowBelowS(fahrenheit(f)))
                    .as("%d F", f)
                    .isLessThanOrEqualTo(meat.atRowBelowS(fahrenheit(f)));
        }
    }

    @Test
    void tables_without_sense_are_refused() {
        double[] rows = {60.0, 61.0};
        double[] none = {};
        assertThatThrownBy(() ->
                        new TimeTable("t", "p", Hazard.SALMONELLA, 7, rows, none, new double[][] {{10.0, 20.0}}, KNOWN))
                .hasMessageContaining("61");
        assertThatThrownBy(() ->
                        new TimeTable("t", "p", Hazard.SALMONELLA, 7, rows, none, new double[][] {{0.0, 0.0}}, KNOWN))
                .hasMessageContaining("lowest");
        assertThatThrownBy(() -> new TimeTable(
                        "t", "p", Hazard.SALMONELLA, 7, rows, new double[] {1.0, 2.0}, new double[][] {{2, 1}}, KNOWN))
                .hasMessageContaining("columns");
        assertThatThrownBy(() -> TimeTable.longerOf(table("fsis-meat-6.5"), table("fsis-meat-7.0")))
                .hasMessageContaining("differ");
    }
}
