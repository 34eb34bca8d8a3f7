package dev.slowpoint.api;

import dev.slowpoint.plan.DisplayUnits;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.http.HttpServletResponse;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.springframework.http.CacheControl;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/** Shows the page to try the service on. It is no part of the contract. */
@RestController
@Hidden
class TrialController {

    private static final MediaType HTML = new MediaType(MediaType.TEXT_HTML, StandardCharsets.UTF_8);

    private static final Map<String, MediaType> TYPES = Map.of(
            "js", new MediaType("text", "javascript", StandardCharsets.UTF_8),
            "css", new MediaType("text", "css", StandardCharsets.UTF_8),
            "svg", CookPicture.SVG);

    /** Asked for each time, and not sent again: the page and its files must be of one version. */
    private static final CacheControl CHECKED = CacheControl.noCache();

    private final Spoken<ResponseEntity<byte[]>> pages;
    private final Languages languages;
    private final Map<String, ResponseEntity<byte[]>> files = new TreeMap<>();

    TrialController(Languages languages) {
        this.languages = languages;
        this.pages = new Spoken<>(
                languages.english(),
                said -> Rendered.answer(
                        new TrialPage(Locale.forLanguageTag(said.language()), languages).bytes(), HTML, CHECKED));
        for (String name : TrialPage.LOADED) {
            MediaType type = TYPES.get(name.substring(name.lastIndexOf('.') + 1));
            files.put(name, Rendered.answer(TrialPage.file(name), Objects.requireNonNull(type), CHECKED));
        }
    }

    @GetMapping(path = "/")
    ResponseEntity<byte[]> page(
            @RequestParam(name = TrialPage.LANGUAGE, required = false) @Nullable String language,
            @RequestHeader(name = HttpHeaders.ACCEPT_LANGUAGE, required = false) @Nullable String accepted,
            HttpServletResponse response) {
        Sentences said = languages.of(Languages.locale(language == null ? accepted : language), DisplayUnits.METRIC);
        Languages.announce(said, response);
        response.setHeader("Content-Security-Policy", TrialPage.POLICY);
        return pages.in(said);
    }

    @GetMapping(path = "/trial/{name}")
    ResponseEntity<byte[]> file(@PathVariable String name) {
        ResponseEntity<byte[]> file = files.get(name);
        if (file == null) {
            throw new UnknownEntry("WORD_CATALOGUE_FILES", name, files.keySet());
        }
        return file;
    }
}
