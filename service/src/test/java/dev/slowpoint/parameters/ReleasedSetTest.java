package dev.slowpoint.parameters;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.slowpoint.food.Condition;
import dev.slowpoint.food.DonenessRange;
import dev.slowpoint.food.Film;
import dev.slowpoint.food.Food;
import dev.slowpoint.food.FoodGroup;
import dev.slowpoint.food.Form;
import dev.slowpoint.food.Mark;
import dev.slowpoint.food.Provenance;
import dev.slowpoint.safety.Clause;
import dev.slowpoint.safety.ColdStorage;
import dev.slowpoint.safety.CoolingRule;
import dev.slowpoint.safety.Rule;
import dev.slowpoint.safety.RuleBook;
import dev.slowpoint.safety.RuleLimits;
import dev.slowpoint.safety.SafetyKnowledge;
import dev.slowpoint.safety.Topic;
import dev.slowpoint.safety.WarmUpLimits;
import java.io.IOException;
import java.net.URI;
import java.net.URISyntaxException;
import java.net.URL;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What the released parameter set says, and that it still says it. */
class ReleasedSetTest {

    private static final ParameterSet SET = ParameterSets.released().current();

    private static final Set<String> HAZARDS = Set.of(
            "salmonella",
            "stec",
            "campylobacter",
            "yersinia",
            "listeria",
            "clostridium-perfringens",
            "clostridium-botulinum",
            "bacillus-cereus",
            "vibrio",
            "norovirus",
            "anisakis",
            "trichinella",
            "toxoplasma",
            "histamine",
            "lectins");

    private static Food food(String id) {
        return SET.knowledge().catalogue().find(id).orElseThrow(() -> new AssertionError("no food " + id));
    }

    // A released set never changes. A correction is a new version; this line is then left as it is.
    @Test
    void the_digest_of_the_set_is_pinned() {
        assertThat(SET.digest()).isEqualTo("1080c205f548fa40b7fd7d535b1b58488c81844058a095e75b89dad981415718");
    }

    @Test
    void the_manifest_names_every_file_of_the_folder() throws IOException, URISyntaxException {
        URL manifest = Objects.requireNonNull(ReleasedSetTest.class.getResource("/parameters/2026.1/manifest.csv"));
        Path folder =
                Objects.requireNonNull(Path.of(new URI(manifest.toString())).getParent());
        try (Stream<Path> files = Files.list(folder)) {
            Set<String> names =
                    files.map(Path::getFileName).map(String::valueOf).collect(Collectors.toCollection(TreeSet::new));
            assertThat(ParameterFiles.released("2026.1").names()).isEqualTo(names);
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "components.csv",
                "defaults.csv",
                "films.csv",
                "foods.csv",
                "reheating.csv",
                "sear.csv",
                "thermal-model.csv"
            })
    void every_row_has_a_mark_and_a_source(String file) {
        for (CsvTable.Row row : ParameterFiles.released("2026.1").table(file).rows()) {
            assertThat(row.provenance().source()).as(row.toString()).hasSizeGreaterThan(5);
        }
    }

    @Test
    void every_food_has_a_plain_id_a_readable_name_and_known_words() {
        assertThat(SET.knowledge().catalogue().foods()).hasSizeGreaterThan(100);
        for (Food food : SET.knowledge().catalogue().foods()) {
            assertThat(food.id()).matches("[a-z]+(-[a-z]+)*");
            assertThat(food.name()).as(food.id()).matches("[A-Z][A-Za-z0-9 ,%]{2,40}");
            assertThat(food.textureClass())
                    .as(food.id())
                    .matches(c -> c.isEmpty()
                            || SET.knowledge().texture().find(c.get()).isPresent());
            assertThat(HAZARDS).as(food.id()).containsAll(food.hazards());
            assertThat(food.hazards()).as(food.id()).isNotEmpty();
            assertThat(food.origins()).as(food.id()).hasSize(2);
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "beef-sirloin",
                "beef-ribeye",
                "beef-strip-loin",
                "beef-tenderloin",
                "beef-flank",
                "beef-chuck",
                "beef-brisket",
                "beef-short-ribs",
                "beef-shank",
                "beef-minced",
                "veal-loin",
                "lamb-leg",
                "lamb-shoulder",
                "pork-loin",
                "pork-tenderloin",
                "pork-shoulder",
                "pork-belly",
                "pork-spare-rib",
                "chicken-breast",
                "chicken-thigh",
                "turkey-breast",
                "duck-breast",
                "duck-leg",
                "salmon",
                "salmon-farmed",
                "salmon-wild",
                "trout",
                "cod",
                "tuna",
                "halibut",
                "sea-bass",
                "mackerel",
                "shrimp",
                "scallop",
                "octopus",
                "squid",
                "lobster",
                "egg-in-shell",
                "carrot",
                "potato",
                "sweet-potato",
                "beet",
                "asparagus",
                "sweetcorn",
                "cauliflower",
                "pumpkin",
                "squash",
                "fennel",
                "artichoke",
                "apple",
                "pear",
                "tofu-firm",
                "chicken-breast-cooked",
                "pork-shoulder-cooked",
                "beef-brisket-cooked"
            })
    void a_food_that_cooks_ask_for_is_there(String id) {
        assertThat(food(id).condition()).isEqualTo(id.endsWith("-cooked") ? Condition.COOKED : Condition.RAW);
    }

    // USDA National Nutrient Database, SR28 (READ): percent of water and fat, divided by the sum of the fractions.
    @Test
    void compositions_are_those_of_the_database_made_to_add_up() {
        assertThat(food("beef-sirloin").composition().fat()).isCloseTo(14.28 / 100.04, within(1e-9));
        assertThat(food("salmon").composition().water()).isCloseTo(64.89 / 99.86, within(1e-9));
        assertThat(food("carrot").composition().fibre()).isCloseTo(2.80 / 100.01, within(1e-9));
        assertThat(food("salmon").composition()).isEqualTo(food("salmon-farmed").composition());
    }

    @Test
    void duck_breast_with_skin_lies_between_the_bird_and_its_meat_and_says_that_it_was_derived() {
        assertThat(food("duck-breast").composition().fat())
                .isBetween(food("duck-breast-skinless").composition().fat(), 0.3934);
        assertThat(food("duck-breast").origins().get(0).mark()).isEqualTo(Mark.DERIVED);
    }

    @Test
    void only_whole_pieces_are_intact_and_minced_beef_never_is() {
        assertThat(food("beef-minced").forms()).containsExactlyInAnyOrder(Form.MINCED, Form.FORMED);
        for (Food food : SET.knowledge().catalogue().foods()) {
            boolean minced = food.forms().stream().noneMatch(Form::intact);
            assertThat(minced)
                    .as(food.id())
                    .isEqualTo(Set.of("beef-minced", "pork-pulled-in-sauce").contains(food.id()));
        }
    }

    @Test
    void wild_fish_that_may_carry_anisakis_says_so_and_nothing_but_fish_and_game_is_wild() {
        for (Food food : SET.knowledge().catalogue().foods()) {
            if (food.wild()) {
                assertThat(food.group() == FoodGroup.FISH || food.id().equals("wild-boar"))
                        .as(food.id())
                        .isTrue();
            }
            if (food.group() == FoodGroup.FISH && food.hazards().contains("anisakis")) {
                assertThat(food.wild()).as(food.id()).isTrue();
            }
        }
        assertThat(food("salmon-wild").hazards()).contains("anisakis");
        assertThat(food("salmon-farmed").wild()).isFalse();
        assertThat(food("salmon").wild()).as("origin not known").isTrue();
    }

    @Test
    void freezing_points_that_were_derived_follow_from_the_composition() {
        for (Food food : SET.knowledge().catalogue().foods()) {
            if (food.origins().get(1).mark() == Mark.DERIVED) {
                assertThat(SET.knowledge().thermal().freezing().freezingPointC(food.group(), food.composition()))
                        .as(food.id())
                        .isCloseTo(food.freezingPointC(), within(0.0051));
            }
        }
    }

    @Test
    void foods_that_are_eaten_tender_have_a_core_temperature() {
        assertThat(food("beef-sirloin").doneness().map(DonenessRange::lowC)).contains(54.0);
        assertThat(food("chicken-breast").doneness().map(DonenessRange::highC)).contains(63.0);
        assertThat(food("lobster").doneness()).isEmpty();
    }

    // Carino-Sarabia and Velez-Ruiz 2013 (READ_ABSTRACT): 57 to 248 W/(m2 K) in still water.
    @Test
    void moving_water_is_better_than_still_water_and_air_is_far_worse() {
        Film pumped = Objects.requireNonNull(SET.knowledge().films().get("bath-pumped"));
        Film still = Objects.requireNonNull(SET.knowledge().films().get("bath-still"));
        Film fridge = Objects.requireNonNull(SET.knowledge().films().get("fridge-still-air"));

        assertThat(still.low()).isEqualTo(57.0);
        assertThat(still.high()).isEqualTo(248.0);
        assertThat(pumped.typical()).isEqualTo(200.0).isGreaterThan(still.typical());
        assertThat(fridge.high()).isLessThan(still.low());
        assertThat(pumped.origin().mark()).isEqualTo(Mark.JUDGEMENT);
    }

    @Test
    void defaults_are_found_by_name_and_unit() {
        NamedValues defaults = SET.defaults();

        assertThat(defaults.number("reading_tolerance", "K")).isEqualTo(0.3);
        assertThat(defaults.number("within", "K")).isEqualTo(0.5);
        assertThat(SET.knowledge().films()).containsKey(defaults.id("film_bath_pumped"));
        assertThat(defaults.origin("horizon"))
                .isEqualTo(new Provenance(Mark.JUDGEMENT, "longest bath anyone was found to ask about is 72 h"));
        assertThat(defaults.names()).contains("thickness_tolerance", "thickness_tolerance_relative", "start_tolerance");
    }

    /** What a rule calls its own stands among its clauses with the same numbers. */
    @Test
    void the_limits_of_a_rule_are_those_of_its_clauses() {
        SafetyKnowledge safety = SET.knowledge().safety();
        for (Rule rule : safety.rules().rules()) {
            RuleLimits limits = safety.limits(rule.id());
            if (limits.own().contains(Topic.WARM_UP)) {
                Clause clause = clause(limits.warmUp().id(), rule, Topic.WARM_UP);
                assertThat(clause.limit().orElseThrow() * 3600.0)
                        .isEqualTo(limits.warmUp().longestS());
                assertThat(clause.toC()).hasValue(limits.warmUp().toC());
                assertThat(clause.fromC().orElse(WarmUpLimits.ABSOLUTE_ZERO_C))
                        .isEqualTo(limits.warmUp().fromC());
            }
            if (limits.own().contains(Topic.HOLDING)) {
                Clause clause = clause(limits.hotHolding().id(), rule, Topic.HOLDING);
                assertThat(clause.fromC()).hasValue(limits.hotHolding().lowestC());
            }
            if (limits.own().contains(Topic.COOLING)) {
                Clause clause = clause(limits.cooling().id(), rule, Topic.COOLING);
                CoolingRule.Stage last =
                        limits.cooling().stages().get(limits.cooling().stages().size() - 1);
                assertThat(clause.fromC()).hasValue(last.fromC());
                assertThat(clause.toC()).hasValue(last.toC());
                assertThat(clause.limit().orElseThrow() * 3600.0).isEqualTo(last.longestS());
            }
            if (limits.own().contains(Topic.STORAGE)) {
                ColdStorage.Cap cap = limits.coldStorage().cap();
                Clause clause = clause(cap.id(), rule, Topic.STORAGE);
                assertThat(clause.toC()).hasValue(cap.toC());
                assertThat(clause.limit().orElseThrow() * 86400.0).isEqualTo(cap.longestS());
            }
        }
    }

    private static Clause clause(String id, Rule rule, Topic topic) {
        return SET.knowledge().safety().rules().clauses(rule.id(), topic).stream()
                .filter(c -> c.id().equals(id))
                .findFirst()
                .orElseThrow(() -> new AssertionError(rule.id() + " has no clause " + id));
    }

    @Test
    void every_rule_says_what_a_cook_must_do_and_whether_it_says_so_itself() {
        RuleBook book = SET.knowledge().safety().rules();
        assertThat(book.rules())
                .extracting(Rule::jurisdiction)
                .containsExactlyInAnyOrder(
                        "United States",
                        "United States",
                        "United Kingdom",
                        "European Union",
                        "Canada",
                        "Australia",
                        "New South Wales, Australia",
                        "Victoria, Australia",
                        "New Zealand");
        for (Rule rule : book.rules()) {
            assertThat(book.provisions().stream().filter(p -> p.rule().equals(rule.id())))
                    .as(rule.id())
                    .isNotEmpty();
            assertThat(book.clauses().stream().filter(c -> c.rules().contains(rule.id())))
                    .as(rule.id())
                    .isNotEmpty();
            assertThat(rule.provenance().recalled()).as(rule.id()).isFalse();
        }
        for (Clause clause : book.clauses()) {
            assertThat(clause.provenance().source()).as(clause.id()).hasSizeGreaterThan(5);
            assertThat(clause.text()).as(clause.id()).endsWith(".").hasSizeLessThan(200);
        }
    }

    @Test
    void the_usual_cooling_rule_is_that_of_the_usual_rule() {
        SafetyKnowledge safety = SET.knowledge().safety();
        assertThat(safety.cooling(safety.rules().defaultRule()).id())
                .isEqualTo(SET.defaults().id("cooling_rule"));
        assertThat(safety.warmUp()).isEqualTo(safety.warmUp(safety.rules().defaultRule()));
        assertThat(safety.coldStorage())
                .isEqualTo(safety.coldStorage(safety.rules().defaultRule()));
    }

    @Test
    void a_default_that_is_missing_or_asked_for_in_another_unit_is_refused() {
        assertThatThrownBy(() -> SET.defaults().number("probe", "K"))
                .hasMessageStartingWith("defaults.csv has no value named 'probe'. Maybe one of [");
        assertThatThrownBy(() -> SET.defaults().number("horizon", "s"))
                .hasMessageContaining("column unit: must be 's' for horizon, but is 'h'");
        assertThatThrownBy(() -> SET.defaults().id("horizon")).hasMessageContaining("must be 'id'");
    }
}
