package dev.slowpoint.ops;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;

class LineBudgetTest {

    private static final long SECOND = TimeUnit.SECONDS.toNanos(1);

    @Test
    void a_flood_becomes_a_few_lines_and_the_next_says_how_many_were_left_out() {
        LineBudget budget = new LineBudget(2);
        assertThat(budget.ask(5 * SECOND)).isZero();
        assertThat(budget.ask(5 * SECOND + 1)).isZero();
        for (int i = 0; i < 7; i++) {
            assertThat(budget.ask(5 * SECOND + 2 + i)).isEqualTo(LineBudget.NONE);
        }
        assertThat(budget.ask(6 * SECOND)).isEqualTo(7);
        assertThat(budget.ask(6 * SECOND + 1)).isZero();
        assertThat(budget.ask(6 * SECOND + 2)).isEqualTo(LineBudget.NONE);
    }

    @Test
    void a_clock_that_counts_from_below_zero_makes_no_difference() {
        LineBudget budget = new LineBudget(1);
        assertThat(budget.ask(-1)).isZero();
        assertThat(budget.ask(-2)).isEqualTo(LineBudget.NONE);
        assertThat(budget.ask(0)).isEqualTo(1);
    }
}
