package dev.slowpoint.heat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;

/** The solver stops where it is told to, and only there. */
class HaltTest {

    private static TemperatureHistory cook() {
        return Conduction.run(
                new Slab(0.04),
                ConductionTest.meatLike(),
                StartField.uniform(-18.0),
                Programme.of(new Stage(new Surroundings(60.0, 200.0), 20_000.0)),
                Resolution.SERVICE);
    }

    @Test
    void the_solver_asks_again_and_again_and_stops_at_the_first_yes() {
        AtomicInteger asked = new AtomicInteger();
        try (Halt halt = Halt.on(() -> asked.incrementAndGet() == 3)) {
            assertThatThrownBy(HaltTest::cook).isInstanceOf(Halt.Halted.class);
        }
        assertThat(asked).hasValue(3);
    }

    @Test
    void nothing_stops_it_before_and_after_and_the_history_is_the_same() {
        TemperatureHistory before = cook();
        AtomicInteger asked = new AtomicInteger();
        TemperatureHistory watched;
        try (Halt halt = Halt.on(() -> asked.incrementAndGet() < 0)) {
            watched = cook();
        }
        assertThat(asked.get()).isGreaterThan(3);
        assertThat(watched.core().firstAtOrAbove(59.0)).isEqualTo(before.core().firstAtOrAbove(59.0));
        assertThat(Halt.ofThread().getAsBoolean()).isFalse();
        assertThat(cook().core().firstAtOrAbove(59.0)).isEqualTo(before.core().firstAtOrAbove(59.0));
    }

    @Test
    void what_was_asked_before_is_asked_again_afterwards() {
        try (Halt outer = Halt.on(() -> true)) {
            try (Halt inner = Halt.on(() -> false)) {
                assertThat(Halt.ofThread().getAsBoolean()).isFalse();
            }
            assertThat(Halt.ofThread().getAsBoolean()).isTrue();
        }
        assertThat(Halt.ofThread().getAsBoolean()).isFalse();
    }

    @Test
    void it_is_asked_in_its_own_thread_alone() throws InterruptedException {
        AtomicBoolean elsewhere = new AtomicBoolean(true);
        try (Halt halt = Halt.on(() -> true)) {
            Thread other = new Thread(() -> elsewhere.set(Halt.ofThread().getAsBoolean()));
            other.start();
            other.join();
        }
        assertThat(elsewhere).isFalse();
    }
}
