package dev.slowpoint.parameters;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.slowpoint.food.Mark;
import dev.slowpoint.texture.ArrheniusLaw;
import dev.slowpoint.texture.Confidence;
import dev.slowpoint.texture.Doneness;
import dev.slowpoint.texture.Edge;
import dev.slowpoint.texture.MoistureModel;
import dev.slowpoint.texture.Place;
import dev.slowpoint.texture.ProcessKind;
import dev.slowpoint.texture.TextureClass;
import dev.slowpoint.texture.TextureLevel;
import dev.slowpoint.texture.TextureModel;
import dev.slowpoint.texture.TextureProcess;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TextureFilesTest {

    private static final TextureModel MODEL = TextureFiles.read(TextureFilesTest::released);

    private static byte[] released(String name) {
        String resource = "/parameters/2026.1/" + name;
        try (InputStream in = TextureFilesTest.class.getResourceAsStream(resource)) {
            return Objects.requireNonNull(in, resource).readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The released files with one text replaced in one of them. */
    private static TextureModel changed(String file, String from, String to) {
        return TextureFiles.read(name -> {
            byte[] bytes = released(name);
            if (!name.equals(file)) {
                return bytes;
            }
            String text = new String(bytes, StandardCharsets.UTF_8);
            assertThat(text).contains(from);
            return text.replace(from, to).getBytes(StandardCharsets.UTF_8);
        });
    }

    @Test
    void every_row_of_the_table_is_a_level_of_a_class() {
        long rows = CsvTable.read("texture.csv", released("texture.csv")).rows().size();
        long levels = MODEL.classes().stream()
                .flatMap(textureClass -> textureClass.processes().stream())
                .mapToLong(process -> process.levels().size())
                .sum();
        assertThat(levels).isEqualTo(rows).isEqualTo(159);
        assertThat(MODEL.classes()).hasSize(39);
        assertThat(TextureFiles.NAMES).hasSize(4);
    }

    /** The table prints z beside Ea, the same law said twice: z = ln 10 R T^2 / Ea at the reference. */
    @Test
    void every_z_value_belongs_to_its_activation_energy() {
        for (CsvTable.Row row :
                CsvTable.read("texture.csv", released("texture.csv")).rows()) {
            double kelvin = row.number("T_ref_C") + 273.15;
            double z =
                    Math.log(10.0) * ArrheniusLaw.GAS_CONSTANT * kelvin * kelvin / (1000.0 * row.number("Ea_kJ_mol"));
            assertThat(z).as(row.text("food_class")).isCloseTo(row.number("z_K"), within(0.051));
        }
    }

    @Test
    void rates_become_per_second_and_energies_joule() {
        TextureProcess set = process("beef_tender", ProcessKind.SET);
        assertThat(set.law().perSecond(56.0)).isCloseTo(2.68 / 60.0, within(1e-15));
        assertThat(set.law().activationEnergy()).isEqualTo(241_000.0);
        assertThat(set.place()).isEqualTo(Place.CORE);
        MoistureModel loss = MODEL.get("shrimp").moisture().orElseThrow();
        assertThat(loss.rate().perSecond(60.0)).isCloseTo(0.05 / 60.0, within(1e-15));
        assertThat(loss.rate().activationEnergy()).isEqualTo(71_000.0);
        assertThat(loss.dryPercent()).isEqualTo(20.0);
    }

    @Test
    void levels_of_one_clock_are_one_process() {
        TextureProcess softening = process("beef_tender", ProcessKind.OVERSOFTEN);
        assertThat(softening.levels().stream().map(TextureLevel::edge))
                .containsExactly(Edge.BEST_UNTIL, Edge.CLOSES, Edge.SOFT_FROM, Edge.RUINED_FROM);
        assertThat(process("egg_yolk", ProcessKind.OVERSOFTEN).levels()).hasSize(3);
    }

    @Test
    void only_the_clock_of_fish_stops_in_the_heat() {
        List<String> stopping = MODEL.classes().stream()
                .filter(c -> c.processes().stream().anyMatch(p -> p.law().stops()))
                .map(TextureClass::id)
                .toList();
        assertThat(stopping).containsExactly("salmon", "white_fish", "tuna");
    }

    @Test
    void every_level_says_how_it_is_known_and_practice_without_a_source_says_so() {
        List<TextureLevel> levels = MODEL.classes().stream()
                .flatMap(c -> c.processes().stream())
                .flatMap(p -> p.levels().stream())
                .toList();
        assertThat(levels)
                .allSatisfy(level -> assertThat(level.provenance().source()).isNotBlank());
        // No rate for softening past the good was ever read: only fitted, recalled or published with a fitted
        // threshold.
        assertThat(levels.stream()
                        .filter(level -> level.edge() == Edge.CLOSES)
                        .map(level -> level.provenance().mark())
                        .distinct())
                .containsExactlyInAnyOrder(Mark.FITTED, Mark.MEMORY, Mark.READ_AND_FITTED);
        assertThat(process("beef_tender", ProcessKind.OVERSOFTEN).levels())
                .allSatisfy(level -> assertThat(level.provenance().source()).contains("common practice, no source"));
    }

    @ParameterizedTest
    @CsvSource({
        "beef_tender, beef_tender, 27", "beef_medium, red_meat_poultry_general, 25", "beef_tough, tough_cuts, 38",
        "duck_leg, tough_cuts, 38", "white_fish, white_fish, 12", "octopus, cephalopod, 35"
    })
    void each_class_loses_juice_along_its_curve(String id, String curve, double dryPercent) {
        MoistureModel loss = MODEL.get(id).moisture().orElseThrow();
        assertThat(loss.id()).isEqualTo(curve);
        assertThat(loss.dryPercent()).isEqualTo(dryPercent);
        assertThat(loss.provenance().source()).isNotBlank();
        assertThat(loss.note()).isNotBlank();
    }

    @ParameterizedTest
    @CsvSource({"carrot", "egg_yolk", "apple_pear", "dried_pulse_soaked", "custard", "scallop"})
    void what_loses_no_juice_has_no_curve(String id) {
        assertThat(MODEL.get(id).moisture()).isEmpty();
    }

    @Test
    void the_loss_of_long_cooked_squid_and_octopus_is_told_and_not_judged() {
        assertThat(MODEL.classes().stream()
                        .filter(c -> c.moisture().isPresent() && !c.dryCloses())
                        .map(TextureClass::id))
                .containsExactly("squid_long", "octopus");
    }

    @Test
    void words_for_doneness_belong_to_scales() {
        TextureClass beef = MODEL.get("beef_tender");
        List<Doneness> words = MODEL.doneness(beef);
        assertThat(words.stream().map(Doneness::term))
                .containsExactly("very-rare", "rare", "medium-rare", "medium", "medium-well", "well-done");
        assertThat(words.stream().map(Doneness::lowC)).isSorted();
        // The scale of meat research lies above that of the trade: say which is meant.
        double trade = word("beef-steak", "medium").highC();
        assertThat(word("beef-steak-research", "medium").lowC()).isGreaterThan(trade);
        assertThat(word("beef-steak-research", "medium").provenance().mark()).isEqualTo(Mark.READ_ABSTRACT);
        assertThat(MODEL.doneness(MODEL.get("lamb_shoulder_shank"))).isEmpty();
        assertThat(MODEL.doneness()).hasSize(87);
    }

    @Test
    void an_unknown_class_is_refused_with_the_known_ones() {
        assertThat(MODEL.find("unicorn")).isEmpty();
        assertThatThrownBy(() -> MODEL.get("unicorn"))
                .hasMessageContaining("'unicorn'")
                .hasMessageContaining("beef_tender");
    }

    @Test
    void the_confidence_of_a_curve_is_read() {
        assertThat(MODEL.get("pork_loin").moisture().orElseThrow().confidence()).isEqualTo(Confidence.MEDIUM);
        assertThat(MODEL.get("salmon").moisture().orElseThrow().confidence()).isEqualTo(Confidence.LOW);
    }

    @Test
    void a_fault_names_file_line_and_column() {
        assertThatThrownBy(() -> changed("texture.csv", ",zero,", ",stop,"))
                .hasMessageContaining("texture.csv line")
                .hasMessageContaining("above_T_max");
        assertThatThrownBy(() -> changed("texture-classes.csv", "egg_yolk egg_white egg_yolk_alt", "egg_yolk"))
                .hasMessageContaining("egg_white");
        assertThatThrownBy(() -> changed("texture-classes.csv", ",salmon,closes,salmon,", ",trout,closes,salmon,"))
                .hasMessageContaining("moisture")
                .hasMessageContaining("trout");
        assertThatThrownBy(() -> changed("texture-classes.csv", ",cephalopod,told,", ",cephalopod,perhaps,"))
                .hasMessageContaining("dryness");
        assertThatThrownBy(() -> changed("texture-classes.csv", "core_and_doses,scallop,", "core_and_doses,oyster,"))
                .hasMessageContaining("parts")
                .hasMessageContaining("oyster");
        assertThatThrownBy(() -> changed("texture-classes.csv", ",scallop,JUDGEMENT", ",oyster,JUDGEMENT"))
                .hasMessageContaining("oyster");
        assertThatThrownBy(() -> changed("doneness.csv", "beef-steak,rare,49,53", "beef-steak,rare,59,53"))
                .hasMessageContaining("59.0");
        assertThatThrownBy(() -> changed(
                        "texture.csv",
                        "mushy,soft_from,0.004167,55,40,51.5,2.0",
                        "mushy,soft_from,0.004167,55,40,51.5,0.1"))
                .hasMessageContaining("mushy");
    }

    private static TextureProcess process(String id, ProcessKind kind) {
        return MODEL.get(id).processes().stream()
                .filter(process -> process.kind() == kind)
                .findFirst()
                .orElseThrow();
    }

    private static Doneness word(String scale, String term) {
        return MODEL.doneness().stream()
                .filter(d -> d.scale().equals(scale) && d.term().equals(term))
                .findFirst()
                .orElseThrow();
    }
}
