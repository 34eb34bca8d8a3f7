package dev.slowpoint.parameters;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.Map;
import org.junit.jupiter.api.Test;

class ParameterFilesTest {

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    // Worked out in a shell, with files a.csv holding "1", b.csv holding nothing: LC_ALL=C sha256sum * | sha256sum
    @Test
    void the_digest_is_that_of_a_checksum_list() {
        ParameterFiles files = ParameterFiles.of("x", Map.of("b.csv", bytes(""), "a.csv", bytes("1")));

        assertThat(files.digest()).isEqualTo("7754389debcfb8c850d03374d2c2aff98dbdb2e2928c2c116ee9fc7d71649876");
    }

    @Test
    void the_digest_changes_with_a_name_and_with_a_byte() {
        String digest = ParameterFiles.of("x", Map.of("a.csv", bytes("1"))).digest();

        assertThat(ParameterFiles.of("y", Map.of("a.csv", bytes("1"))).digest()).isEqualTo(digest);
        assertThat(ParameterFiles.of("x", Map.of("b.csv", bytes("1"))).digest()).isNotEqualTo(digest);
        assertThat(ParameterFiles.of("x", Map.of("a.csv", bytes("2"))).digest()).isNotEqualTo(digest);
    }

    @Test
    void bytes_are_handed_out_as_copies() {
        ParameterFiles files = ParameterFiles.of("x", Map.of("a.csv", bytes("1")));

        files.bytes("a.csv")[0] = 0;

        assertThat(files.bytes("a.csv")).containsExactly('1');
        assertThat(files.names()).containsExactly("a.csv");
    }

    @Test
    void a_file_or_a_version_that_is_not_there_is_named() {
        assertThatThrownBy(() -> ParameterFiles.of("x", Map.of()).bytes("foods.csv"))
                .hasMessageContaining("parameter set x has no file 'foods.csv'");
        assertThatThrownBy(() -> ParameterFiles.released("1999.1")).hasMessageContaining("'1999.1/manifest.csv'");
    }
}
