package dev.slowpoint.api;

import dev.slowpoint.api.CatalogueAnswers.ProblemEntry;
import dev.slowpoint.api.CatalogueAnswers.ProblemList;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;

/** Explains every problem, also at the path that is its type. */
@RestController
@RequestMapping(produces = {MediaType.APPLICATION_JSON_VALUE, MediaType.APPLICATION_CBOR_VALUE})
@Tag(name = "catalogues")
class ProblemController {

    private final Spoken<Catalogue> problems;

    ProblemController(Languages languages) {
        this.problems = new Spoken<>(languages.english(), ProblemController::catalogue);
    }

    private static Catalogue catalogue(Sentences sentences) {
        List<ProblemEntry> entries = Arrays.stream(ProblemCode.values())
                .sorted(Comparator.comparing(ProblemCode::status).thenComparing(ProblemCode::name))
                .map(code -> ProblemEntry.of(code, sentences))
                .toList();
        return Catalogue.of("WORD_CATALOGUE_PROBLEMS", entries, ProblemList::new, ProblemEntry::code);
    }

    @GetMapping("/v1/problems")
    @Operation(
            operationId = "listProblems",
            summary = "List the problems",
            description = "Every problem and fault that may be answered, with its status, its cause and what to do.")
    @Answers(ProblemList.class)
    ResponseEntity<byte[]> listProblems(
            @RequestHeader(name = HttpHeaders.ACCEPT, required = false) @Nullable String accept, Sentences sentences) {
        return problems.in(sentences).list(accept);
    }

    @GetMapping("/v1/problems/{code}")
    @Operation(
            operationId = "getProblem",
            summary = "Get one problem",
            description = "By its code, or by the last part of its type.")
    @Answers(ProblemEntry.class)
    ResponseEntity<byte[]> getProblem(
            @PathVariable("code") String code,
            @RequestHeader(name = HttpHeaders.ACCEPT, required = false) @Nullable String accept,
            Sentences sentences) {
        return problems.in(sentences)
                .entry(ProblemCode.find(code).map(ProblemCode::name).orElse(code), accept);
    }

    @GetMapping("/problems/{slug}")
    @Operation(
            operationId = "explainProblem",
            summary = "Explain the type of a problem",
            description = "The path in the `type` of every problem.")
    @Answers(ProblemEntry.class)
    ResponseEntity<byte[]> explainProblem(
            @PathVariable("slug") String slug,
            @RequestHeader(name = HttpHeaders.ACCEPT, required = false) @Nullable String accept,
            Sentences sentences) {
        return getProblem(slug, accept, sentences);
    }
}
