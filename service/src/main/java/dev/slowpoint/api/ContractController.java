package dev.slowpoint.api;

import com.fasterxml.jackson.core.JsonProcessingException;
import io.swagger.v3.oas.annotations.Hidden;
import io.swagger.v3.oas.models.media.Content;
import jakarta.servlet.http.HttpServletRequest;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.springdoc.core.providers.ObjectMapperProvider;
import org.springdoc.webmvc.api.OpenApiWebMvcResource;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RestController;

/** Serves the contract at the paths that people look for, made once and then kept. */
@RestController
@Hidden
class ContractController {

    /** Not read for anything: the contract names its server itself. */
    private static final String ANY_PATH = "/";

    private final OpenApiWebMvcResource generator;
    private volatile @Nullable ResponseEntity<byte[]> yaml;
    private volatile @Nullable ResponseEntity<byte[]> json;

    ContractController(OpenApiWebMvcResource generator, ObjectMapperProvider writers) {
        this.generator = generator;
        writers.yamlMapper().addMixIn(Content.class, JsonFirst.OnContent.class);
        writers.jsonMapper().addMixIn(Content.class, JsonFirst.OnContent.class);
    }

    @GetMapping(path = "/openapi.yaml")
    ResponseEntity<byte[]> yaml(HttpServletRequest request) throws JsonProcessingException {
        ResponseEntity<byte[]> kept = yaml;
        if (kept == null) {
            // One at a time: those who ask together wait for one rendering, and do not all make it.
            synchronized (generator) {
                kept = yaml;
                if (kept == null) {
                    kept = Rendered.answer(
                            generator.openapiYaml(request, ANY_PATH, Locale.ROOT), MediaType.APPLICATION_YAML);
                    yaml = kept;
                }
            }
        }
        return kept;
    }

    @GetMapping(path = "/openapi.json")
    ResponseEntity<byte[]> json(HttpServletRequest request) throws JsonProcessingException {
        ResponseEntity<byte[]> kept = json;
        if (kept == null) {
            // One at a time: those who ask together wait for one rendering, and do not all make it.
            synchronized (generator) {
                kept = json;
                if (kept == null) {
                    kept = Rendered.answer(
                            generator.openapiJson(request, ANY_PATH, Locale.ROOT), MediaType.APPLICATION_JSON);
                    json = kept;
                }
            }
        }
        return kept;
    }
}
