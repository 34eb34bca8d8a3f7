package dev.slowpoint.ops.access;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A file of keys is read strictly; a fault is told by its place, and never by what stands there. */
class KeyFileTest {

    private static final String ONE = Keys.key(1);
    private static final String TWO = Keys.key(2);
    private static final String THREE = Keys.key(3);

    private static KeyRing read(String content) throws KeyFileFault {
        return KeyFile.read(content.getBytes(StandardCharsets.UTF_8));
    }

    private static void fault(String content, String... words) {
        assertThatThrownBy(() -> read(content)).isInstanceOf(KeyFileFault.class).hasMessageContainingAll(words);
    }

    @Test
    void a_file_with_comments_blank_lines_and_line_ends_of_windows_is_read() throws KeyFileFault {
        KeyRing ring = read("# who may ask\r\n\r\n"
                + Keys.file(Keys.line("hut", ONE, "0.5,20,2,,"), "", Keys.line("kitchen", TWO, "50,200,8,,"))
                        .replace("\n", "\r\n"));
        assertThat(ring.find(ONE).client()).isEqualTo("hut");
        assertThat(ring.find(TWO).client()).isEqualTo("kitchen");
        assertThat(KeyRing.isNobody(ring.find(THREE))).isTrue();
        assertThat(ring.clients().get("hut")).isEqualTo(new Allowance(0.5, 20, 2));
    }

    @Test
    void a_client_has_two_keys_while_they_are_changed() throws KeyFileFault {
        KeyRing ring = read(Keys.file(
                Keys.line("hut", ONE, "5,20,2,,2026-12-01"), Keys.line("hut", TWO, "5,20,2,2026-11-01T12:00:00Z,")));
        assertThat(ring.find(ONE).goodAt(Instant.parse("2026-11-30T23:59:59.999Z")))
                .isTrue();
        assertThat(ring.find(ONE).goodAt(Instant.parse("2026-12-01T00:00:00Z"))).isFalse();
        assertThat(ring.find(TWO).goodAt(Instant.parse("2026-11-01T11:59:59Z"))).isFalse();
        assertThat(ring.find(TWO).goodAt(Instant.parse("2026-11-01T12:00:00Z"))).isTrue();
        assertThat(ring.goodAt(Instant.parse("2026-11-15T00:00:00Z"))).isEqualTo(2);
        fault(
                Keys.file(
                        Keys.line("hut", ONE, "5,20,2,,"),
                        Keys.line("hut", TWO, "5,20,2,,"),
                        Keys.line("hut", THREE, "5,20,2,,")),
                "line 4, column client",
                "at most two");
        fault(
                Keys.file(Keys.line("hut", ONE, "5,20,2,,"), Keys.line("hut", TWO, "6,20,2,,")),
                "line 3",
                "say the same");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "Hut|5,20,2,,|client",
                "''|5,20,2,,|client",
                "hut|-5,20,2,,|perSecond",
                "hut|0,20,2,,|perSecond",
                "hut|NaN,20,2,,|perSecond",
                "hut|1e3,20,2,,|perSecond",
                "hut|10001,20,2,,|perSecond",
                "hut|5,19,2,,|burst",
                "hut|5,20.5,2,,|burst",
                "hut|5,100001,2,,|burst",
                "hut|5,20,0,,|atOnce",
                "hut|5,20,1001,,|atOnce",
                "hut|5,20,2,yesterday,|from",
                "hut|5,20,2,,2026-02-30|until",
                "hut|5,20,2,2026-12-01,2026-12-01|until",
            })
    void a_fault_names_line_and_column(String client, String rest, String column) {
        fault(Keys.file("# a comment", Keys.line(client, ONE, rest)), "line 3, column " + column + ": ");
    }

    @ParameterizedTest
    @ValueSource(strings = {"hut,5", "hut,a,b,c,d,e,f,g", "x"})
    void a_line_with_other_columns_is_a_fault(String line) {
        fault(Keys.file(line), "line 2", "7");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "5f4dcc3b5aa765d61d8327deb882cf99",
                "da39a3ee5e6b4b0d3255bfef95601890afd80709",
                "zz",
                "",
                "0000000000000000000000000000000000000000000000000000000000000000",
                "0123456789abcdef0123456789abcdef0123456789abcdef0123456789abcdef",
                "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855"
            })
    void short_hashes_and_those_of_no_random_key_are_refused(String hash) {
        fault(Keys.file("hut," + hash + ",5,20,2,,"), "line 2, column sha256");
    }

    @Test
    void a_key_in_the_place_of_its_hash_is_called_burnt_and_not_repeated() {
        assertThatThrownBy(() -> read(Keys.file("hut," + ONE + ",5,20,2,,")))
                .hasMessageContaining("make a new one")
                .hasMessageNotContaining(ONE);
    }

    @Test
    void what_people_make_up_lets_nobody_in_even_if_its_hash_stands_in_the_file() throws KeyFileFault {
        KeyRing ring = read(Keys.file(Keys.line("hut", "password", "5,20,2,,")));
        assertThat(KeyRing.isNobody(ring.find("password"))).isTrue();
    }

    @Test
    void a_file_must_have_its_head_a_key_and_a_bounded_size() {
        fault("", "holds no key");
        fault(KeyFile.HEADER, "holds no key");
        fault(Keys.line("hut", ONE, "5,20,2,,"), "line 1", KeyFile.HEADER);
        fault("#".repeat(KeyFile.LONGEST + 1), "1 MiB");
        assertThatThrownBy(() -> KeyFile.read(new byte[] {(byte) 0xff})).hasMessage("not UTF-8");
        fault(
                Keys.file(Keys.line("hut", ONE, "5,20,2,,"), Keys.line("kitchen", ONE, "5,20,2,,")),
                "line 3, column sha256",
                "twice");
        fault(
                Keys.file(IntStream.rangeClosed(0, KeyFile.MOST_CLIENTS)
                        .mapToObj(i -> Keys.line("c" + i, Keys.key(i), "5,20,2,,"))
                        .collect(Collectors.toList())
                        .toArray(String[]::new)),
                "line 1002",
                "more than 1000 clients");
    }

    /** 32 random bytes are never taken for made up. */
    @Test
    void hashes_of_random_keys_are_taken() {
        assertThat(IntStream.range(0, 20_000)
                        .filter(i -> Key.Hash.of(Keys.key(i)).isMadeUp())
                        .count())
                .isZero();
    }
}
