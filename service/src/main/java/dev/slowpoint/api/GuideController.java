package dev.slowpoint.api;

import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.http.HttpServletResponse;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.TreeMap;
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

    GuideController() {
        new GuidePages().all().forEach((name, page) -> pages.put(name, Rendered.answer(page, HTML)));
    }

    @GetMapping(path = GuidePages.PATH)
    ResponseEntity<byte[]> first(HttpServletResponse response) {
        return page(GuidePages.FIRST, response);
    }

    @GetMapping(path = GuidePages.PATH + "/{name}")
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
