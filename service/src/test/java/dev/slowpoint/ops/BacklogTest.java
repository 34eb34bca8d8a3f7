package dev.slowpoint.ops;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import org.junit.jupiter.api.Test;

class BacklogTest {

    private static final long MS = 1_000_000L;

    private final Backlog backlog = new Backlog(3, Duration.ofMillis(100));

    @Test
    void a_burst_is_no_backlog() {
        assertThat(backlog.lasts(60, 0)).isFalse();
        assertThat(backlog.lasts(40, 60 * MS)).isFalse();
        assertThat(backlog.lasts(3, 99 * MS)).isFalse();
        assertThat(backlog.lasts(60, 150 * MS)).as("a second burst begins anew").isFalse();
    }

    @Test
    void what_stays_above_the_limit_is_a_backlog_until_it_has_drained() {
        assertThat(backlog.lasts(4, 0)).isFalse();
        assertThat(backlog.lasts(4, 100 * MS)).isTrue();
        assertThat(backlog.lasts(9, 500 * MS)).isTrue();
        assertThat(backlog.lasts(3, 501 * MS)).isFalse();
    }

    @Test
    void without_patience_the_first_look_tells() {
        assertThat(new Backlog(3, Duration.ZERO).lasts(4, -5 * MS)).isTrue();
    }
}
