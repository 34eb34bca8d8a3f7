package dev.slowpoint.parameters;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.slowpoint.food.Food;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Foods and rules of whoever runs the service, with the example of the guide. */
class OverlayTest {

    /** The example of the guide. */
    public static final Path EXAMPLE = Path.of("src/main/guide/overlay-example");

    private static final ParameterSets RELEASED = ParameterSets.released();

    private static Map<String, byte[]> example() {
        Map<String, byte[]> files = new HashMap<>();
        try (Stream<Path> entries = Files.list(EXAMPLE)) {
            for (Path entry : entries.toList()) {
                files.put(String.valueOf(entry.getFileName()), Files.readAllBytes(entry));
            }
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
        return files;
    }

    private static ParameterSets with(Map<String, byte[]> files) {
        return RELEASED.with(Overlay.of(files));
    }

    @Test
    void it_adds_to_a_set_of_its_own_and_leaves_the_base_as_it_was() {
        ParameterSets sets = RELEASED.with(Overlay.read(EXAMPLE));
        ParameterSet own = sets.current();
        ParameterSet base = sets.find("2026.1").orElseThrow();
        assertThat(own.version()).isEqualTo("2026.1+hochmoor");
        assertThat(own.digest()).isNotEqualTo(base.digest());
        assertThat(base.digest()).isEqualTo(RELEASED.current().digest());
        assertThat(base.status()).isEqualTo(ParameterSet.Status.AVAILABLE);
        Food terrine = own.knowledge().catalogue().foods().stream()
                .filter(food -> food.id().equals("own-hut-terrine"))
                .findFirst()
                .orElseThrow();
        assertThat(terrine.name()).isEqualTo("Terrine of the hut");
        assertThat(own.knowledge().catalogue().foods())
                .containsAll(base.knowledge().catalogue().foods())
                .hasSize(base.knowledge().catalogue().foods().size() + 1);
        assertThat(own.knowledge().safety().rules().rule("own-house-rule").jurisdiction())
                .isEqualTo("The canteen");
        assertThat(own.knowledge().safety().rules().defaultRule())
                .isEqualTo(base.knowledge().safety().rules().defaultRule());
    }

    @Test
    void what_it_adds_is_what_differs_from_the_base() {
        ParameterSets sets = with(example());
        SetDifferences differences = SetDifferences.between(
                RELEASED.current().files(), sets.current().files());
        assertThat(differences.all())
                .allSatisfy(d -> {
                    assertThat(d.change()).isEqualTo(SetDifferences.Change.ADDED);
                    assertThat(d.table()).startsWith("overlay/");
                })
                .extracting(SetDifferences.Difference::key)
                .contains("own-hut-terrine", "own-house-rule", "own-house-listeria", "hochmoor");
    }

    @Test
    void the_digest_tells_two_overlays_apart() {
        Map<String, byte[]> other = example();
        other.put("foods.csv", edited(other, "foods.csv", ",0.62,0.17,0.19,", ",0.61,0.18,0.19,"));
        assertThat(with(other).current().digest())
                .isNotEqualTo(with(example()).current().digest());
        assertThat(with(example()).current().digest())
                .isEqualTo(with(example()).current().digest());
    }

    private static byte[] edited(Map<String, byte[]> files, String file, String from, String to) {
        String text = new String(files.get(file), StandardCharsets.UTF_8);
        assertThat(text).contains(from);
        return text.replace(from, to).getBytes(StandardCharsets.UTF_8);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "foods.csv; ,pork,raw,; ,beast,raw,; overlay/foods.csv line 2, column group: holds 'beast'",
                "foods.csv; ,0.62,; ,6.2,; overlay/foods.csv line 2, column water: holds 6.2",
                "foods.csv; own-hut-terrine; hut-terrine; overlay/foods.csv line 2, column id: holds 'hut-terrine', but ids",
                "foods.csv; own-hut-terrine; own-Hut; overlay/foods.csv line 2, column id: holds 'own-Hut', but ids",
                "foods.csv; ,wild,; ,feral,; overlay/foods.csv line 2, column feral: is no column of foods.csv",
                "foods.csv; Terrine of; Terrine <b> of; overlay/foods.csv line 2, column name: must hold none of",
                "foods.csv; Terrine of; Terrine {0} of; overlay/foods.csv line 2, column name: must hold none of",
                "rules.csv; FC-COOL; FC-KOOL; overlay/rules.csv line 2, column cooling: names 'FC-KOOL'",
                "rules.csv; own-house-rule; own-home-rule; no rule 'own-house-rule'",
                "rules.csv; ',Invented,no,'; ',Invented,yes,'; overlay/rules.csv line 2, column default: is a second default",
                "requirements.csv; own-house-rule,own; us-fsis-2021,own; overlay/requirements.csv line 2, column rule: holds",
                "requirements.csv; K-LM-UK; K-LM-UX; overlay/requirements.csv line 2, column line: names 'K-LM-UX'",
                "requirements.csv; READ_SECONDARY; MEMORY; must not decide",
                "requirements.csv; 'own,any,any,any'; 'own,pork,any,any'; overlay/rules.csv line 2, column id: names a rule for",
                "requirements.csv; 'own,any,any,any'; 'own,any,any,keep'; overlay/rules.csv line 2, column id: names a rule for",
                "overlay.csv; ,2026.1,; ,2031.1,; 'overlay/overlay.csv line 2, column base: names ''2031.1'', which is none of'",
                "overlay.csv; hochmoor; Hoch Moor; overlay/overlay.csv line 2, column name: holds 'Hoch Moor'"
            })
    void a_fault_is_refused_by_file_line_and_column(String file, String from, String to, String complaint) {
        Map<String, byte[]> files = example();
        files.put(file, edited(files, file, from, to));
        assertThatThrownBy(() -> with(files))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining(complaint);
    }

    @Test
    void a_row_that_stands_twice_is_refused() {
        Map<String, byte[]> files = example();
        String foods = new String(files.get("foods.csv"), StandardCharsets.UTF_8);
        files.put("foods.csv", (foods + foods.lines().toList().get(1) + "\n").getBytes(StandardCharsets.UTF_8));
        assertThatThrownBy(() -> with(files)).hasMessageContaining("overlay/foods.csv line 3, column id: stands twice");
    }

    @Test
    void a_file_that_is_none_of_an_overlay_is_refused() {
        for (String name : new String[] {"food.csv", "defaults.csv", "limits.csv", "README.md"}) {
            Map<String, byte[]> files = example();
            files.put(name, new byte[0]);
            assertThatThrownBy(() -> with(files)).hasMessageContaining("overlay/" + name + " is no file of an overlay");
        }
    }

    @Test
    void a_folder_that_is_empty_or_missing_is_refused(@TempDir Path folder) {
        assertThatThrownBy(() -> Overlay.read(folder)).hasMessageContaining("holds no overlay.csv");
        assertThatThrownBy(() -> Overlay.read(folder.resolve("none")))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("cannot be read");
    }

    @Test
    void the_hidden_folders_of_mounted_configuration_are_passed_over(@TempDir Path folder) throws IOException {
        Path versions = Files.createDirectory(folder.resolve("..2026_11_26"));
        for (Map.Entry<String, byte[]> file : example().entrySet()) {
            Path held = Files.write(versions.resolve(file.getKey()), file.getValue());
            Files.createSymbolicLink(folder.resolve(file.getKey()), held);
        }
        Files.createSymbolicLink(folder.resolve("..data"), versions);
        assertThat(Overlay.read(folder).name()).isEqualTo("hochmoor");
    }

    @Test
    void a_file_too_long_to_be_meant_is_refused(@TempDir Path folder) throws IOException {
        Files.write(folder.resolve("overlay.csv"), new byte[(1 << 20) + 1]);
        assertThatThrownBy(() -> Overlay.read(folder)).hasMessageContaining("overlay/overlay.csv is longer than");
    }
}
