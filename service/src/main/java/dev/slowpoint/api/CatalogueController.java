package dev.slowpoint.api;

import dev.slowpoint.api.CatalogueAnswers.FoodEntry;
import dev.slowpoint.api.CatalogueAnswers.FoodList;
import dev.slowpoint.api.CatalogueAnswers.ParameterSetDifferences;
import dev.slowpoint.api.CatalogueAnswers.ParameterSetEntry;
import dev.slowpoint.api.CatalogueAnswers.ParameterSetList;
import dev.slowpoint.api.CatalogueAnswers.RuleEntry;
import dev.slowpoint.api.CatalogueAnswers.RuleList;
import dev.slowpoint.api.CatalogueAnswers.WarningEntry;
import dev.slowpoint.api.CatalogueAnswers.WarningList;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletRequest;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;

/** What requests may name: foods, rules, parameter sets; and what plans may warn of. */
@RestController
@RequestMapping(
        path = "/v1",
        produces = {MediaType.APPLICATION_JSON_VALUE, MediaType.APPLICATION_CBOR_VALUE})
@Tag(name = "catalogues")
class CatalogueController {

    private final Spoken<Catalogue> foods;
    private final Spoken<Catalogue> rules;
    private final Catalogue parameterSets;
    private final Spoken<Catalogue> warnings;
    private final Catalogues catalogues;
    private final Planners planners;

    /** Two sets that were compared. */
    private record Pair(String version, String from) {}

    private final Map<Pair, Rendered> differences = new ConcurrentHashMap<>();

    CatalogueController(Catalogues catalogues, Planners planners, Languages languages) {
        this.catalogues = catalogues;
        this.planners = planners;
        this.foods = new Spoken<>(
                languages.english(),
                said -> Catalogue.of("WORD_CATALOGUE_FOODS", catalogues.foods(said), FoodList::new, FoodEntry::id));
        this.rules = new Spoken<>(
                languages.english(),
                said -> Catalogue.of("WORD_CATALOGUE_RULES", catalogues.rules(said), RuleList::new, RuleEntry::id));
        this.parameterSets = Catalogue.of(
                "WORD_CATALOGUE_PARAMETER_SETS",
                catalogues.parameterSets(),
                ParameterSetList::new,
                ParameterSetEntry::version);
        this.warnings = new Spoken<>(
                languages.english(),
                said -> Catalogue.of(
                        "WORD_CATALOGUE_WARNINGS", catalogues.warnings(said), WarningList::new, WarningEntry::code));
    }

    @GetMapping("/foods")
    @Operation(
            operationId = "listFoods",
            summary = "List the foods",
            description =
                    "The foods that requests may name, with composition, forms, hazards and the source of each value.")
    @Answers(FoodList.class)
    ResponseEntity<byte[]> listFoods(
            @RequestHeader(name = HttpHeaders.ACCEPT, required = false) @Nullable String accept, Sentences sentences) {
        return foods.in(sentences).list(accept);
    }

    @GetMapping("/foods/{id}")
    @Operation(operationId = "getFood", summary = "Get one food", description = "One of the foods of the list.")
    @Answers(FoodEntry.class)
    ResponseEntity<byte[]> getFood(
            @PathVariable("id") String id,
            @RequestHeader(name = HttpHeaders.ACCEPT, required = false) @Nullable String accept,
            Sentences sentences) {
        return foods.in(sentences).entry(id, accept);
    }

    @GetMapping("/rules")
    @Operation(
            operationId = "listRules",
            summary = "List the published rules",
            description =
                    "The published rules that plans may be judged by: what each asks, of which food, and where it was read.")
    @Answers(RuleList.class)
    ResponseEntity<byte[]> listRules(
            @RequestHeader(name = HttpHeaders.ACCEPT, required = false) @Nullable String accept, Sentences sentences) {
        return rules.in(sentences).list(accept);
    }

    @GetMapping("/rules/{id}")
    @Operation(
            operationId = "getRule",
            summary = "Get one published rule",
            description = "One of the rules of the list.")
    @Answers(RuleEntry.class)
    ResponseEntity<byte[]> getRule(
            @PathVariable("id") String id,
            @RequestHeader(name = HttpHeaders.ACCEPT, required = false) @Nullable String accept,
            Sentences sentences) {
        return rules.in(sentences).entry(id, accept);
    }

    @GetMapping("/parameter-sets")
    @Operation(
            operationId = "listParameterSets",
            summary = "List the parameter sets",
            description =
                    "The parameter sets that requests may pin. A released set never changes; a deprecated one says since when, and what comes after it.")
    @Answers(ParameterSetList.class)
    ResponseEntity<byte[]> listParameterSets(
            @RequestHeader(name = HttpHeaders.ACCEPT, required = false) @Nullable String accept) {
        return parameterSets.list(accept);
    }

    @GetMapping("/parameter-sets/{version}")
    @Operation(
            operationId = "getParameterSet",
            summary = "Get one parameter set",
            description = "One of the parameter sets of the list.")
    @Answers(ParameterSetEntry.class)
    ResponseEntity<byte[]> getParameterSet(
            @PathVariable("version") String version,
            @RequestHeader(name = HttpHeaders.ACCEPT, required = false) @Nullable String accept) {
        return parameterSets.entry(version, accept);
    }

    @GetMapping("/parameter-sets/{version}/differences")
    @Operation(
            operationId = "listDifferences",
            summary = "List what differs between two parameter sets",
            description = "What a parameter set says otherwise than another one: to read before pinning it.")
    @Answers(ParameterSetDifferences.class)
    @Queried(DifferenceTerms.class)
    ResponseEntity<byte[]> listDifferences(
            @PathVariable("version") String version,
            @RequestHeader(name = HttpHeaders.ACCEPT, required = false) @Nullable String accept,
            HttpServletRequest request) {
        // Refuses a version that is none, before the query is looked at.
        parameterSets.entry(version, accept);
        DifferenceTerms terms = FlatMembers.query(request.getParameterMap(), DifferenceTerms.class);
        return differences
                .computeIfAbsent(
                        new Pair(version, terms.from()),
                        pair -> catalogues
                                .differences(pair.version(), pair.from())
                                .map(Rendered::new)
                                .orElseThrow(() -> planners.unknown("?from", pair.from())))
                .as(accept);
    }

    @GetMapping("/warnings")
    @Operation(
            operationId = "listWarnings",
            summary = "List the warnings",
            description = "The warnings and cautions that plans may carry: how grave, when, and what each rests on.")
    @Answers(WarningList.class)
    ResponseEntity<byte[]> listWarnings(
            @RequestHeader(name = HttpHeaders.ACCEPT, required = false) @Nullable String accept, Sentences sentences) {
        return warnings.in(sentences).list(accept);
    }

    @GetMapping("/warnings/{code}")
    @Operation(
            operationId = "getWarning",
            summary = "Get one warning",
            description = "One of the warnings of the list.")
    @Answers(WarningEntry.class)
    ResponseEntity<byte[]> getWarning(
            @PathVariable("code") String code,
            @RequestHeader(name = HttpHeaders.ACCEPT, required = false) @Nullable String accept,
            Sentences sentences) {
        return warnings.in(sentences).entry(code, accept);
    }
}
