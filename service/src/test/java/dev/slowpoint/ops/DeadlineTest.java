package dev.slowpoint.ops;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import org.junit.jupiter.api.Test;

class DeadlineTest {

    @Test
    void it_is_over_once_its_time_is_over_and_not_before() {
        assertThat(new Deadline(Duration.ZERO).getAsBoolean()).isTrue();
        assertThat(new Deadline(Duration.ofHours(1)).getAsBoolean()).isFalse();
    }

    @Test
    void it_begins_when_it_is_asked_for_the_first_time() throws InterruptedException {
        Deadline deadline = new Deadline(Duration.ofMillis(500));
        Thread.sleep(600);
        assertThat(deadline.getAsBoolean()).isFalse();
        Thread.sleep(600);
        assertThat(deadline.getAsBoolean()).isTrue();
    }
}
