package dev.slowpoint.api;

import dev.slowpoint.food.Food;
import dev.slowpoint.parameters.Overlay;
import dev.slowpoint.parameters.ParameterSet;
import dev.slowpoint.parameters.ParameterSets;
import dev.slowpoint.plan.DisplayUnits;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Locale.LanguageRange;
import java.util.Map;
import java.util.Objects;
import java.util.Properties;
import java.util.concurrent.ConcurrentHashMap;
import org.apache.tomcat.util.http.InvalidParameterException;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.core.MethodParameter;
import org.springframework.http.HttpHeaders;
import org.springframework.stereotype.Component;
import org.springframework.web.bind.support.WebDataBinderFactory;
import org.springframework.web.context.request.NativeWebRequest;
import org.springframework.web.method.support.HandlerMethodArgumentResolver;
import org.springframework.web.method.support.ModelAndViewContainer;

/**
 * Hands an operation the sentences in the language and units that a request asks for, and tells the client which language
 * that is. An operation that takes sentences speaks; all others have no language.
 *
 * <p>A header that cannot be read is passed over, as one that names no language of ours (RFC 9110, section 12.5.4, lets a
 * server do so): browsers and proxies write it, not those who ask, and no safety advice should fail for it. The units are
 * a parameter that someone chose, so an unknown word is refused.
 */
@Component
final class Languages implements HandlerMethodArgumentResolver {

    /** Query parameter that asks for units of texts. */
    static final String UNITS = "units";

    /** English stands first: it is spoken where nothing else fits. */
    static final List<Locale> SPOKEN =
            List.of(Locale.ENGLISH, Locale.GERMAN, Locale.FRENCH, Locale.forLanguageTag("es"));

    /** A longer header is not read. */
    private static final int LONGEST_HEADER = 512;

    /** In what somebody reads. */
    private record Reader(Locale locale, DisplayUnits units) {}

    private final Map<Locale, Map<String, String>> bundles = new ConcurrentHashMap<>();
    private final Map<Reader, Sentences> sentences = new ConcurrentHashMap<>();
    private final Map<String, String> ownFoods = new HashMap<>();
    private final Sentences english;

    /** Of all sets; a food of an overlay is called in every language as its file says. */
    @Autowired
    Languages(ParameterSets sets) {
        for (ParameterSet set : sets.all()) {
            for (Food food : set.knowledge().catalogue().foods()) {
                if (food.id().startsWith(Overlay.PREFIX)) {
                    ownFoods.put(Sentences.FOOD + food.id(), food.name());
                }
            }
        }
        this.english = of(Locale.ENGLISH, DisplayUnits.METRIC);
    }

    /** Of released foods alone. */
    Languages() {
        this.english = of(Locale.ENGLISH, DisplayUnits.METRIC);
    }

    /** The language of the contract. */
    Sentences english() {
        return english;
    }

    /** The sentences of a language that is spoken here. */
    Sentences of(Locale locale, DisplayUnits units) {
        return sentences.computeIfAbsent(new Reader(locale, units), r -> new Sentences(locale, units, bundle(locale)));
    }

    /**
     * The sentences that a request asks for.
     *
     * @throws RequestRefused if it asks for units that are not known
     */
    Sentences of(HttpServletRequest request) {
        String accepted = request.getHeader(HttpHeaders.ACCEPT_LANGUAGE);
        if (accepted == null && request.getQueryString() == null) {
            return english;
        }
        return of(locale(accepted), units(request));
    }

    /** The sentences to say what is wrong with a request in, whatever that is. */
    Sentences ofFaulty(HttpServletRequest request) {
        try {
            return of(request);
        } catch (RequestRefused | InvalidParameterException unread) {
            return of(locale(request.getHeader(HttpHeaders.ACCEPT_LANGUAGE)), DisplayUnits.METRIC);
        }
    }

    /** Tells a client, and caches between, which language an answer is in. */
    static void announce(Sentences said, HttpServletResponse response) {
        response.setHeader(HttpHeaders.CONTENT_LANGUAGE, said.language());
        if (!response.getHeaders(HttpHeaders.VARY).contains(HttpHeaders.ACCEPT_LANGUAGE)) {
            response.addHeader(HttpHeaders.VARY, HttpHeaders.ACCEPT_LANGUAGE);
        }
    }

    /** The language of ours that a header asks for (RFC 4647, section 3.4). */
    static Locale locale(@Nullable String accepted) {
        if (accepted == null || accepted.length() > LONGEST_HEADER) {
            return Locale.ENGLISH;
        }
        try {
            Locale found = Locale.lookup(LanguageRange.parse(accepted), SPOKEN);
            return found == null ? Locale.ENGLISH : found;
        } catch (IllegalArgumentException unreadable) {
            return Locale.ENGLISH;
        }
    }

    private static DisplayUnits units(HttpServletRequest request) {
        String[] sent = request.getParameterValues(UNITS);
        if (sent == null) {
            return DisplayUnits.METRIC;
        }
        String word = String.join(",", sent);
        Map<String, Object> known = Words.constants(DisplayUnits.class);
        if (known.get(word) instanceof DisplayUnits units) {
            return units;
        }
        List<String> words = List.copyOf(known.keySet());
        Fault fault = Fault.of(
                        Pointer.query(UNITS),
                        ProblemCode.UNKNOWN_WORD,
                        "FAULT_UNKNOWN_WORD",
                        UNITS,
                        String.join(", ", words))
                .value(word)
                .allowed(words);
        throw new RequestRefused(Words.nearest(word, words)
                .map(near -> fault.hint("HINT_MAYBE", near))
                .orElse(fault));
    }

    private Map<String, String> bundle(Locale locale) {
        return bundles.computeIfAbsent(locale, l -> {
            Map<String, String> all = new HashMap<>(read(l));
            all.putAll(ownFoods);
            return all;
        });
    }

    /** All sentences of a language, and none of another: what is missing is found by the tests, not filled in unseen. */
    static Map<String, String> read(Locale locale) {
        String name = "/messages" + (locale.equals(Locale.ENGLISH) ? "" : "_" + locale) + ".properties";
        Properties read = new Properties();
        try (InputStreamReader reader = new InputStreamReader(
                Objects.requireNonNull(Languages.class.getResourceAsStream(name), name), StandardCharsets.UTF_8)) {
            read.load(reader);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        Map<String, String> bundle = new HashMap<>();
        read.stringPropertyNames().forEach(key -> bundle.put(key, read.getProperty(key)));
        return Map.copyOf(bundle);
    }

    @Override
    public boolean supportsParameter(MethodParameter parameter) {
        return parameter.getParameterType() == Sentences.class;
    }

    @Override
    public Sentences resolveArgument(
            MethodParameter parameter,
            @Nullable ModelAndViewContainer container,
            NativeWebRequest request,
            @Nullable WebDataBinderFactory binders) {
        Sentences asked = of(Objects.requireNonNull(request.getNativeRequest(HttpServletRequest.class)));
        announce(asked, Objects.requireNonNull(request.getNativeResponse(HttpServletResponse.class)));
        return asked;
    }
}
