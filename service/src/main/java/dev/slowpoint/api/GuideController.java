package dev.slowpoint.api;

import dev.slowpoint.parameters.ParameterSets;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.http.HttpServletResponse;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.TreeMap;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RestController;

/** Shows the guide to people. It is no part of the contract. */
@RestController
@Hidden
class GuideController {

    private static final MediaType HTML = new MediaType(MediaType.TEXT_HTML, StandardCharsets.UTF_8);

    private final Map<String, ResponseEntity<byte[]>> pages = new TreeMap<>();

    /**
     * Makes all pages.
     *
     * @param sets what the current one of them rests on is shown
     * @param access mode in which callers show who they are
     */
    GuideController(ParameterSets sets, @Value("${slowpoint.access.mode}") String access) {
        new GuidePages(SourcesPage.of(sets, access.equals("open")))
                .all()
                .forEach((name, page) -> pages.put(name, Rendered.answer(page, HTML)));
    }

    @GetMapping(path = GuideMap.PATH)
    ResponseEntity<byte[]> first(HttpServletResponse response) {
        return page(GuideMap.FIRST, response);
    }

    @GetMapping(path = GuideMap.PATH + "/{name}")
    ResponseEntity<byte[]> page(@PathVariable String name, HttpServletResponse response) {
        ResponseEntity<byte[]> page = pages.get(name);
        if (page == null) {
            throw new UnknownEntry("WORD_CATALOGUE_GUIDE", name, pages.keySet());
        }
        // In the place of the policy for all documentation, which lets scripts in.
        response.setHeader("Content-Security-Policy", GuidePages.POLICY);
        return page;
    }
}
