package dev.slowpoint.ops.access;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.slowpoint.ops.StartRefused;
import io.micrometer.core.instrument.simple.SimpleMeterRegistry;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.springframework.boot.test.system.CapturedOutput;
import org.springframework.boot.test.system.OutputCaptureExtension;

/** Keys change without a restart, and a file that cannot be taken changes nothing. */
@ExtendWith(OutputCaptureExtension.class)
class KeyCredentialsTest {

    private static final String OLD = Keys.key(1);
    private static final String NEW = Keys.key(2);
    private static final String MAY = "5,20,2,,";

    @TempDir
    private Path folder;

    private final SimpleMeterRegistry registry = new SimpleMeterRegistry();
    private Instant now = Instant.parse("2026-11-26T12:00:00Z");

    private Path write(String... lines) throws IOException {
        return Files.writeString(folder.resolve("keys.csv"), Keys.file(lines));
    }

    /** Looks at its file only when told to. */
    private KeyCredentials credentials(Path file) {
        return new KeyCredentials(file, Duration.ofDays(1), () -> now, new AccountTest.Clock(), registry);
    }

    private double count(String meter) {
        return registry.get(meter).counter().count();
    }

    private static Account account(KeyCredentials credentials, String key) {
        return ((Identity.Known) credentials.of(key)).account();
    }

    @Test
    void a_key_is_changed_for_another_while_both_are_good() throws IOException {
        try (KeyCredentials credentials = credentials(write(Keys.line("hut", OLD, MAY)))) {
            Account before = account(credentials, OLD);
            write(Keys.line("hut", OLD, MAY), Keys.line("hut", NEW, MAY));
            credentials.look();
            assertThat(account(credentials, OLD)).isSameAs(before);
            assertThat(account(credentials, NEW))
                    .as("one client, one allowance")
                    .isSameAs(before);
            write(Keys.line("hut", NEW, MAY));
            credentials.look();
            assertThat(credentials.of(OLD)).isEqualTo(new Identity.Unknown(Identity.Reason.UNKNOWN));
            assertThat(account(credentials, NEW)).isSameAs(before);
        }
    }

    @Test
    void another_allowance_counts_from_the_next_look() throws IOException {
        try (KeyCredentials credentials = credentials(write(Keys.line("hut", OLD, MAY)))) {
            write(Keys.line("hut", OLD, "50,200,8,,"));
            credentials.look();
            assertThat(account(credentials, OLD).allowance()).isEqualTo(new Allowance(50, 200, 8));
        }
    }

    @Test
    void a_key_is_good_from_and_until_its_moments_and_the_gauge_tells() throws IOException {
        try (KeyCredentials credentials = credentials(
                write(Keys.line("hut", OLD, "5,20,2,,2026-12-01"), Keys.line("hut", NEW, "5,20,2,2026-12-01,")))) {
            assertThat(credentials.of(OLD)).isInstanceOf(Identity.Known.class);
            assertThat(credentials.of(NEW)).isEqualTo(new Identity.Unknown(Identity.Reason.NOT_NOW));
            now = Instant.parse("2026-12-01T00:00:00Z");
            assertThat(credentials.of(OLD)).isEqualTo(new Identity.Unknown(Identity.Reason.NOT_NOW));
            assertThat(credentials.of(NEW)).isInstanceOf(Identity.Known.class);
            assertThat(registry.get(KeyCredentials.KEYS).gauge().value()).isEqualTo(1.0);
        }
    }

    @Test
    void a_file_that_cannot_be_taken_keeps_the_keys_before_is_logged_once_and_counted(CapturedOutput output)
            throws IOException {
        Path file = write(Keys.line("hut", OLD, MAY));
        try (KeyCredentials credentials = credentials(file)) {
            write(Keys.line("hut", NEW, "5,1,2,,"));
            credentials.look();
            credentials.look();
            assertThat(credentials.of(OLD)).isInstanceOf(Identity.Known.class);
            assertThat(credentials.of(NEW)).isInstanceOf(Identity.Unknown.class);
            assertThat(count(KeyCredentials.RELOAD_FAILED)).isEqualTo(2.0);
            assertThat(output.getOut().split("line 2, column burst", -1)).hasSize(2);
            Files.delete(file);
            credentials.look();
            credentials.look();
            assertThat(credentials.of(OLD)).isInstanceOf(Identity.Known.class);
            assertThat(output.getOut().split("NoSuchFileException", -1)).hasSize(2);
            write(Keys.line("hut", NEW, MAY));
            credentials.look();
            assertThat(credentials.of(NEW)).isInstanceOf(Identity.Known.class);
            assertThat(count(KeyCredentials.RELOAD_FAILED)).isEqualTo(4.0);
            assertThat(output.getOut()).doesNotContain(Keys.hash(NEW)).doesNotContain(Keys.hash(OLD));
        }
    }

    @Test
    void clients_are_counted_by_name_and_forgotten_when_they_are_gone() throws IOException {
        try (KeyCredentials credentials =
                credentials(write(Keys.line("hut", OLD, MAY), Keys.line("kitchen", NEW, MAY)))) {
            Account hut = account(credentials, OLD);
            hut.take(1);
            hut.take(1);
            hut.take(1);
            assertThat(registry.get(KeyCredentials.CLIENT_REQUESTS)
                            .tags("client", "hut", "outcome", "taken")
                            .counter()
                            .count())
                    .isEqualTo(2.0);
            assertThat(registry.get(KeyCredentials.CLIENT_REQUESTS)
                            .tags("client", "hut", "outcome", "refused")
                            .counter()
                            .count())
                    .isEqualTo(1.0);
            write(Keys.line("kitchen", NEW, MAY));
            credentials.look();
            assertThat(registry.find(KeyCredentials.CLIENT_REQUESTS)
                            .tags("client", "hut")
                            .counters())
                    .isEmpty();
            assertThat(registry.find(KeyCredentials.CLIENT_REQUESTS)
                            .tags("client", "kitchen")
                            .counters())
                    .hasSize(2);
        }
    }

    /** Nobody is told apart: what is not a key, an unknown one, one whose hash begins like a known one. */
    @Test
    void whatever_is_shown_is_unknown_but_a_key() throws IOException {
        try (KeyCredentials credentials = credentials(write(Keys.line("hut", OLD, MAY)))) {
            for (String shown : new String[] {
                "", "x", Keys.hash(OLD), OLD + "x", OLD.substring(1), OLD.toLowerCase(java.util.Locale.ROOT), NEW
            }) {
                assertThat(credentials.of(shown)).as(shown).isInstanceOf(Identity.Unknown.class);
            }
        }
    }

    @Test
    void at_the_start_a_fault_is_told_with_file_line_and_column() throws IOException {
        Path file = write(Keys.line("hut", OLD, "5,1,2,,"));
        assertThatThrownBy(() -> credentials(file))
                .isInstanceOf(StartRefused.class)
                .hasMessageContainingAll(file.toString(), "line 2, column burst");
        assertThatThrownBy(() -> credentials(folder.resolve("none")))
                .isInstanceOf(StartRefused.class)
                .hasMessageContaining("NoSuchFileException");
    }
}
