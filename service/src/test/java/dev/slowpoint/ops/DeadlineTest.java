package dev.slowpoint.ops;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;

class DeadlineTest {

    private final AtomicLong now = new AtomicLong(-7);
    private final Deadline deadline = new Deadline(Duration.ofNanos(500), now::get);

    @Test
    void it_begins_when_it_is_asked_for_the_first_time_and_is_over_after_its_time_and_not_before() {
        now.addAndGet(600);
        assertThat(deadline.getAsBoolean()).isFalse();
        now.addAndGet(499);
        assertThat(deadline.getAsBoolean()).isFalse();
        now.addAndGet(1);
        assertThat(deadline.getAsBoolean()).isTrue();
    }

    @Test
    void no_time_at_all_is_over_at_once() {
        assertThat(new Deadline(Duration.ZERO).getAsBoolean()).isTrue();
    }
}
