package dev.slowpoint.api;

import dev.slowpoint.plan.DisplayUnits;
import dev.slowpoint.safety.Hazard;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.springframework.core.io.ClassPathResource;

/**
 * The page to try the service on, in one language: its markup with each sentence in its place, and the sentences that its
 * scripts say later. It asks the service as any client does.
 */
final class TrialPage {

    /** Query parameter that asks for a language; the header decides where there is none. */
    static final String LANGUAGE = "language";

    /** Where its files are in the jar. */
    static final String FOLDER = "/page/";

    /** What the page loads, by name. */
    static final List<String> LOADED = List.of(
            "answer.js",
            "chart.js",
            "dom.js",
            "foods.js",
            "form.js",
            "mark.svg",
            "page.css",
            "page.js",
            "service.js",
            "units.js",
            "words.js");

    /** Nothing from elsewhere, no markup made from text (Trusted Types), and no frame around it. */
    static final String POLICY = PageGuard.POLICY + "; require-trusted-types-for 'script'; trusted-types 'none'";

    private static final Pattern PLACE = Pattern.compile("\\{\\{(\\w+)}}");

    /** Beginnings of the keys whose sentences the scripts may need. */
    private static final Pattern FOR_SCRIPTS = Pattern.compile("(TRIAL|PICTURE|WORD_HOURS|WORD_MINUTES).*");

    private final Locale locale;
    private final Sentences sentences;

    /**
     * What the scripts of the page know beforehand.
     *
     * @param language of the page (BCP 47)
     * @param sentences as they stand in the bundle, by their keys
     * @param organisms their names by their words in answers
     * @param growthC where bacteria grow
     */
    record Beforehand(String language, Map<String, String> sentences, Map<String, String> organisms, Growth growthC) {}

    /** From one temperature to another [C]. */
    record Growth(double from, double to) {}

    TrialPage(Locale locale, Languages languages) {
        this.locale = locale;
        this.sentences = languages.of(locale, DisplayUnits.METRIC);
    }

    /** The page, in UTF-8. */
    byte[] bytes() {
        String page = PLACE.matcher(new String(file("page.html"), StandardCharsets.UTF_8))
                .replaceAll(place -> Matcher.quoteReplacement(said(place.group(1))));
        return page.getBytes(StandardCharsets.UTF_8);
    }

    private String said(String place) {
        return switch (place) {
            case "language" -> sentences.language();
            case "languages" -> links();
            case "words" -> words();
            default -> Drawing.escaped(sentences.say(place));
        };
    }

    private String links() {
        return Languages.SPOKEN.stream()
                .map(spoken -> "<a href=\"/?" + LANGUAGE + "=" + spoken.toLanguageTag() + "\" hreflang=\""
                        + spoken.toLanguageTag() + "\" lang=\"" + spoken.toLanguageTag() + "\""
                        + (spoken.equals(locale) ? " aria-current=\"page\"" : "") + ">"
                        + Drawing.escaped(named(spoken)) + "</a>")
                .collect(Collectors.joining("\n      "));
    }

    /** What a language calls itself, as it stands alone. */
    private static String named(Locale spoken) {
        String name = spoken.getDisplayLanguage(spoken);
        return name.substring(0, 1).toUpperCase(spoken) + name.substring(1);
    }

    private String words() {
        Map<String, String> said = new TreeMap<>();
        Languages.read(locale).forEach((key, sentence) -> {
            if (FOR_SCRIPTS.matcher(key).matches()) {
                said.put(key, sentence);
            }
        });
        Map<String, String> organisms = new TreeMap<>();
        Arrays.stream(Hazard.values()).forEach(hazard -> organisms.put(Words.of(hazard), sentences.say(hazard.name())));
        Beforehand known = new Beforehand(
                sentences.language(),
                said,
                organisms,
                new Growth(TemperatureChart.GROWTH_FROM_C, TemperatureChart.GROWTH_TO_C));
        // No tag may begin within a script.
        return new String(Wire.JSON.write(known), StandardCharsets.UTF_8).replace("<", "\\u003c");
    }

    /** One of its files. */
    static byte[] file(String name) {
        try {
            return new ClassPathResource(FOLDER + name).getContentAsByteArray();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
