package dev.slowpoint.api;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.slowpoint.food.Condition;
import dev.slowpoint.food.Food;
import dev.slowpoint.food.FoodGroup;
import dev.slowpoint.food.Form;
import dev.slowpoint.parameters.ParameterSets;
import dev.slowpoint.plan.Card;
import dev.slowpoint.plan.CookPlan;
import dev.slowpoint.plan.DisplayUnits;
import dev.slowpoint.plan.Knowledge;
import dev.slowpoint.plan.LoadPlan;
import dev.slowpoint.plan.LogReview;
import dev.slowpoint.plan.LogTask;
import dev.slowpoint.plan.NoticeCode;
import dev.slowpoint.plan.NoticeRule;
import dev.slowpoint.plan.Phrase;
import dev.slowpoint.plan.ProcessWindow;
import dev.slowpoint.plan.Replan;
import dev.slowpoint.plan.SetpointAdvice;
import dev.slowpoint.plan.Step;
import dev.slowpoint.safety.Eater;
import dev.slowpoint.safety.Hazard;
import dev.slowpoint.safety.MarginBand;
import dev.slowpoint.safety.Purpose;
import dev.slowpoint.safety.Verdict;
import dev.slowpoint.texture.CloseLimit;
import dev.slowpoint.texture.Confidence;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.MissingResourceException;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The bundles say the same things in every language, and nothing that no code asks for. */
class BundlesTest {

    private static final Path SOURCES = Path.of("src", "main", "java");

    /** What is filled in, and quantities with their marks. */
    private static final Pattern PLACE = Pattern.compile("<[^>]*>|\\{\\d}");

    /** Two words of a sentence. */
    private static final Pattern WORDS = Pattern.compile("[A-Za-z]{2,},? [a-z]{2,}");

    private static final Pattern NUMBER = Pattern.compile("\\d+(?:[.,]\\d+)?");
    private static final Pattern LITERAL = Pattern.compile("\"((?:[^\"\\\\]|\\\\.)*)\"");

    /** Keys that are written out in code, all of them with one of these beginnings. */
    private static final Pattern WRITTEN_OUT =
            Pattern.compile("(FAULTS?|HINT|WORD|PICTURE|PAGE|CARD|SHEET|WINDOW)_\\w*[^_]");

    /** Keys that are written out in the files of the page to try the service on. */
    private static final Pattern TRIAL = Pattern.compile("\\bTRIAL_\\w*[A-Za-z0-9]\\b");

    private static final Knowledge KNOWLEDGE =
            ParameterSets.released().current().knowledge();

    private static final Map<String, String> ENGLISH = Languages.read(Locale.ENGLISH);

    private final Languages languages = new Languages();

    static Stream<Locale> translations() {
        return Languages.SPOKEN.stream().filter(locale -> !locale.equals(Locale.ENGLISH));
    }

    static Stream<Locale> spoken() {
        return Languages.SPOKEN.stream();
    }

    @Test
    @DisplayName("English, German, French and Spanish are spoken")
    void four_languages() {
        assertThat(Languages.SPOKEN.stream().map(Locale::toLanguageTag)).containsExactly("en", "de", "fr", "es");
    }

    @ParameterizedTest
    @MethodSource("translations")
    @DisplayName("a translation has every key of English, and no other")
    void same_keys(Locale locale) {
        assertThat(new TreeSet<>(Languages.read(locale).keySet())).isEqualTo(new TreeSet<>(ENGLISH.keySet()));
    }

    @Test
    @DisplayName("every key that code may ask for stands in the bundle")
    void no_key_is_missing() {
        Set<String> missing = new TreeSet<>(asked());
        missing.removeAll(ENGLISH.keySet());
        assertThat(missing).isEmpty();
    }

    @Test
    @DisplayName("no key stands in the bundle that no code asks for")
    void no_key_is_an_orphan() {
        Set<String> orphans = new TreeSet<>(ENGLISH.keySet());
        orphans.removeAll(asked());
        assertThat(orphans).isEmpty();
    }

    @Test
    @DisplayName("no sentence of a fault or of a hint stands in the code")
    void no_sentence_in_code() {
        Pattern call = Pattern.compile("Fault\\.of\\(|\\.withHint\\(|\\.hint\\(");
        List<String> sentences = new ArrayList<>();
        sources()
                .forEach((file, text) -> call.matcher(text)
                        .results()
                        .map(found -> arguments(text, found.end()))
                        .flatMap(arguments -> LITERAL.matcher(arguments).results())
                        .map(literal -> literal.group(1))
                        .filter(literal -> WORDS.matcher(literal).find())
                        .forEach(literal -> sentences.add(file + ": " + literal)));
        assertThat(sentences).isEmpty();
    }

    @ParameterizedTest
    @MethodSource("translations")
    @DisplayName("a translation names the same values, quantities and other numbers as English")
    void same_values_and_numbers(Locale locale) {
        Languages.read(locale).forEach((key, sentence) -> {
            String english = Objects.requireNonNull(ENGLISH.get(key), key);
            assertThat(places(sentence)).as("%s in %s", key, locale).isEqualTo(places(english));
            assertThat(numbers(sentence)).as("%s in %s", key, locale).isEqualTo(numbers(english));
        });
    }

    @ParameterizedTest
    @MethodSource("translations")
    @DisplayName("no sentence was left in English")
    void translated(Locale locale) {
        Languages.read(locale).forEach((key, sentence) -> {
            boolean scientific = Arrays.stream(Hazard.values()).anyMatch(hazard -> key.equals(hazard.name()));
            if (!scientific
                    && WORDS.matcher(PLACE.matcher(sentence).replaceAll("")).find()) {
                assertThat(sentence).as(key).isNotEqualTo(ENGLISH.get(key));
            }
        });
    }

    @ParameterizedTest
    @MethodSource("spoken")
    @DisplayName("every sentence can be said in both systems of units, and leaves no place open")
    void sayable(Locale locale) {
        for (DisplayUnits units : DisplayUnits.values()) {
            Sentences sentences = languages.of(locale, units);
            Languages.read(locale).forEach((key, written) -> {
                String said = sentences.say(key, Collections.nCopies(10, 60.0));
                assertThat(said)
                        .as(key)
                        .isNotBlank()
                        .isEqualTo(said.strip())
                        .doesNotContain("<", ">", "{", "}", "\ufffd");
                assertThat(said.chars().filter(letter -> letter == '\'').count())
                        .as("apostrophes of %s", key)
                        .isEqualTo(
                                written.chars().filter(letter -> letter == '\'').count());
                if (written.matches(".*<[^>#]* C[^>#]*>.*")) {
                    assertThat(said).as(key).contains(units == DisplayUnits.US ? "°F" : "°C");
                    assertThat(said).as(key).doesNotContain(units == DisplayUnits.US ? "°C" : "°F");
                }
            });
        }
    }

    @ParameterizedTest
    @MethodSource("spoken")
    @DisplayName("an apostrophe stands for itself, and is never doubled")
    void apostrophes(Locale locale) {
        assertThat(Languages.read(locale).values()).noneMatch(sentence -> sentence.contains("''"));
    }

    @Test
    @DisplayName("a French sentence keeps its apostrophe beside a value")
    void apostrophe_beside_a_value() {
        assertThat(languages.of(Locale.FRENCH, DisplayUnits.METRIC).say("START_WARM", List.of(12.5)))
                .startsWith("L'aliment part de 12,5 °C.");
    }

    @Test
    @DisplayName("what a bundle lacks is never said in another language")
    void no_silent_fallback() {
        Sentences german = new Sentences(Locale.GERMAN, DisplayUnits.METRIC, Map.of("PAGE_NAME", "Name"));
        assertThat(german.say("PAGE_NAME")).isEqualTo("Name");
        assertThatThrownBy(() -> german.say("PAGE_DATE")).isInstanceOf(MissingResourceException.class);
    }

    @Test
    @DisplayName("foods are called in English as the catalogue names them")
    void names_of_foods() {
        for (Food food : KNOWLEDGE.catalogue().foods()) {
            assertThat(languages.english().food(food.id())).isEqualTo(food.name());
        }
    }

    @ParameterizedTest
    @MethodSource("spoken")
    @DisplayName("no two foods have one name")
    void foods_differ(Locale locale) {
        Sentences sentences = languages.of(locale, DisplayUnits.METRIC);
        assertThat(KNOWLEDGE.catalogue().foods().stream().map(food -> sentences.food(food.id())))
                .doesNotHaveDuplicates();
    }

    @Test
    @DisplayName("text from outside is said as it stands, even if it looks like a key or a quantity")
    void text_from_outside() {
        for (String sent : List.of("SALMONELLA", "{0}", "<54.4 C>", "HINT_MAYBE")) {
            assertThat(languages.english().of(Phrase.of("HINT_MAYBE", sent))).isEqualTo("Maybe " + sent + "?");
        }
    }

    /** Every key that code may ask for. */
    private static Set<String> asked() {
        Set<String> keys = new TreeSet<>();
        add(keys, "", NoticeCode.values());
        add(keys, "", Hazard.values());
        add(keys, "OBSTACLE_", CookPlan.Obstacle.values());
        add(keys, "UNKNOWN_", CookPlan.Unknown.values());
        add(keys, "REPLAN_", Replan.Reason.values());
        add(keys, "ADVICE_", SetpointAdvice.Reason.values());
        add(keys, "DEVIATION_", LogReview.DeviationCode.values());
        for (ProblemCode code : ProblemCode.values()) {
            Stream.of("_TITLE", "_CAUSE", "_REMEDY").forEach(part -> keys.add("PROBLEM_" + code.name() + part));
        }
        KNOWLEDGE.safety().cooling().keySet().forEach(id -> keys.add("COOLING_RULE_" + id));
        KNOWLEDGE.catalogue().foods().forEach(food -> keys.add("FOOD_" + food.id()));
        add(keys, "WORD_SHAPE_", Geometry.Shape.values());
        add(keys, "WORD_STEP_", FollowingStep.StepKind.values());
        words(keys, "PICTURE_VERDICT_", Verdict.values());
        words(keys, "PICTURE_STEP_", FollowingStep.StepKind.values());
        add(keys, "LOAD_REASON_", LoadPlan.Reason.values());
        add(keys, "LOAD_CONFLICT_", LoadPlan.Obstacle.values());
        add(keys, "WINDOW_", ProcessWindow.Change.values());
        keys.add("WINDOW_" + ProcessWindow.TooLong.CODE);
        words(keys, "WINDOW_PURPOSE_", Purpose.values());
        words(keys, "CARD_TITLE_", Card.values());
        words(keys, "CARD_TITLE_warm_", Card.FRIDGE, Card.FROZEN, Card.REHEAT);
        words(keys, "CARD_CHILL_", Step.ChillMedium.values());
        words(keys, "PICTURE_MEDIUM_", Step.ChillMedium.values());
        words(keys, "PICTURE_DECISION_", Replan.Decision.values());
        words(keys, "PICTURE_LOAD_TITLE_", LoadPlan.Schedule.values());
        words(keys, "PICTURE_LOAD_VERDICT_", Verdict.values());
        words(keys, "PAGE_SAID_", LogReview.LogVerdict.values());
        words(keys, "PAGE_MEANS_", LogReview.LogVerdict.values());
        words(keys, "PAGE_WHAT_", LogReview.What.values());
        words(keys, "PAGE_WORD_", Form.values());
        words(keys, "PAGE_WORD_", Condition.values());
        words(keys, "PAGE_WORD_", Purpose.values());
        words(keys, "PAGE_WORD_", Eater.values());
        words(keys, "PAGE_WORD_", LogTask.SensorPlace.values());
        sources()
                .values()
                .forEach(text -> LITERAL.matcher(text)
                        .results()
                        .map(literal -> literal.group(1))
                        .filter(literal -> WRITTEN_OUT.matcher(literal).matches()
                                || literal.equals("softening")
                                || literal.equals("dryness"))
                        .forEach(keys::add));
        askedByPage(keys);
        // What a reading may be, not a sentence.
        keys.remove(LogReview.DeviationCode.FAULT_VALUE.name());
        return keys;
    }

    /** What the page to try the service on says. */
    private static void askedByPage(Set<String> keys) {
        pageFiles().forEach(text -> TRIAL.matcher(text).results().forEach(found -> keys.add(found.group())));
        for (String margin : List.of("TIME", "BATH", "SIZE", "TABLE")) {
            keys.add("TRIAL_MARGIN_" + margin);
            keys.add("TRIAL_MISSING_" + margin);
        }
        words(keys, "TRIAL_SHAPE_", Geometry.Shape.values());
        words(keys, "TRIAL_SAY_", Verdict.values());
        words(keys, "TRIAL_VERDICT_", Verdict.values());
        words(keys, "TRIAL_TEXTURE_IS_", dev.slowpoint.texture.Verdict.values());
        words(keys, "TRIAL_METHOD_", Step.SearMethod.values());
        words(keys, "TRIAL_GROUP_", FoodGroup.values());
        words(keys, "TRIAL_BAND_", MarginBand.values());
        words(keys, "TRIAL_SEVERITY_", NoticeRule.Severity.values());
        words(keys, "TRIAL_LIMIT_", CloseLimit.values());
        words(keys, "TRIAL_CONFIDENCE_", Confidence.values());
        Arrays.stream(FollowingStep.class.getRecordComponents())
                .filter(member -> !List.of("step", "heatC", "mediumC").contains(member.getName()))
                .forEach(member -> keys.add("TRIAL_STEP_" + member.getName()));
    }

    private static void add(Set<String> keys, String before, Enum<?>... constants) {
        Arrays.stream(constants).forEach(constant -> keys.add(before + constant.name()));
    }

    private static void words(Set<String> keys, String before, Enum<?>... constants) {
        Arrays.stream(constants).forEach(constant -> keys.add(before + Words.of(constant)));
    }

    /** All sources by their names. */
    private static Map<String, String> sources() {
        try (Stream<Path> files = Files.walk(SOURCES)) {
            Map<String, String> sources = new TreeMap<>();
            for (Path file : files.filter(f -> f.toString().endsWith(".java")).toList()) {
                sources.put(file.getFileName().toString(), Files.readString(file, StandardCharsets.UTF_8));
            }
            assertThat(sources).containsKey("ProblemAdvice.java");
            return sources;
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    /** The files of the page to try the service on. */
    private static List<String> pageFiles() {
        try (Stream<Path> files = Files.list(Path.of("src", "main", "page"))) {
            List<String> texts = new ArrayList<>();
            for (Path file : files.toList()) {
                texts.add(Files.readString(file, StandardCharsets.UTF_8));
            }
            assertThat(texts).hasSizeGreaterThan(5);
            return texts;
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    /** What stands between a bracket that was just opened and the one that closes it. */
    private static String arguments(String text, int from) {
        int depth = 1;
        boolean quoted = false;
        int at = from;
        while (depth > 0) {
            char letter = text.charAt(at++);
            if (letter == '\\') {
                at++;
            } else if (letter == '"') {
                quoted = !quoted;
            } else if (!quoted && letter == '(') {
                depth++;
            } else if (!quoted && letter == ')') {
                depth--;
            }
        }
        return text.substring(from, at - 1);
    }

    private static List<String> places(String sentence) {
        return PLACE.matcher(sentence)
                .results()
                .map(MatchResult::group)
                .sorted()
                .toList();
    }

    private static List<String> numbers(String sentence) {
        return NUMBER.matcher(PLACE.matcher(sentence).replaceAll(" "))
                .results()
                .map(number -> number.group().replace(',', '.'))
                .sorted()
                .collect(Collectors.toList());
    }
}
