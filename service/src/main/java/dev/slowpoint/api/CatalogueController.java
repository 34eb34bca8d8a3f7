package dev.slowpoint.api;

import dev.slowpoint.api.CatalogueAnswers.FoodEntry;
import dev.slowpoint.api.CatalogueAnswers.FoodList;
import dev.slowpoint.api.CatalogueAnswers.ParameterSetEntry;
import dev.slowpoint.api.CatalogueAnswers.ParameterSetList;
import dev.slowpoint.api.CatalogueAnswers.RuleEntry;
import dev.slowpoint.api.CatalogueAnswers.RuleList;
import dev.slowpoint.api.CatalogueAnswers.WarningEntry;
import dev.slowpoint.api.CatalogueAnswers.WarningList;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
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

    CatalogueController(Catalogues catalogues, Languages languages) {
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
    @Operation(operationId = "listFoods", summary = "List the foods")
    @Answers(FoodList.class)
    ResponseEntity<byte[]> listFoods(
            @RequestHeader(name = HttpHeaders.ACCEPT, required = false) @Nullable String accept, Sentences sentences) {
        return foods.in(sentences).list(accept);
    }

    @GetMapping("/foods/{id}")
    @Operation(operationId = "getFood", summary = "Get one food")
    @Answers(FoodEntry.class)
    ResponseEntity<byte[]> getFood(
            @PathVariable("id") String id,
            @RequestHeader(name = HttpHeaders.ACCEPT, required = false) @Nullable String accept,
            Sentences sentences) {
        return foods.in(sentences).entry(id, accept);
    }

    @GetMapping("/rules")
    @Operation(operationId = "listRules", summary = "List the published rules")
    @Answers(RuleList.class)
    ResponseEntity<byte[]> listRules(
            @RequestHeader(name = HttpHeaders.ACCEPT, required = false) @Nullable String accept, Sentences sentences) {
        return rules.in(sentences).list(accept);
    }

    @GetMapping("/rules/{id}")
    @Operation(operationId = "getRule", summary = "Get one published rule")
    @Answers(RuleEntry.class)
    ResponseEntity<byte[]> getRule(
            @PathVariable("id") String id,
            @RequestHeader(name = HttpHeaders.ACCEPT, required = false) @Nullable String accept,
            Sentences sentences) {
        return rules.in(sentences).entry(id, accept);
    }

    @GetMapping("/parameter-sets")
    @Operation(operationId = "listParameterSets", summary = "List the parameter sets")
    @Answers(ParameterSetList.class)
    ResponseEntity<byte[]> listParameterSets(
            @RequestHeader(name = HttpHeaders.ACCEPT, required = false) @Nullable String accept) {
        return parameterSets.list(accept);
    }

    @GetMapping("/parameter-sets/{version}")
    @Operation(operationId = "getParameterSet", summary = "Get one parameter set")
    @Answers(ParameterSetEntry.class)
    ResponseEntity<byte[]> getParameterSet(
            @PathVariable("version") String version,
            @RequestHeader(name = HttpHeaders.ACCEPT, required = false) @Nullable String accept) {
        return parameterSets.entry(version, accept);
    }

    @GetMapping("/warnings")
    @Operation(operationId = "listWarnings", summary = "List the warnings")
    @Answers(WarningList.class)
    ResponseEntity<byte[]> listWarnings(
            @RequestHeader(name = HttpHeaders.ACCEPT, required = false) @Nullable String accept, Sentences sentences) {
        return warnings.in(sentences).list(accept);
    }

    @GetMapping("/warnings/{code}")
    @Operation(operationId = "getWarning", summary = "Get one warning")
    @Answers(WarningEntry.class)
    ResponseEntity<byte[]> getWarning(
            @PathVariable("code") String code,
            @RequestHeader(name = HttpHeaders.ACCEPT, required = false) @Nullable String accept,
            Sentences sentences) {
        return warnings.in(sentences).entry(code, accept);
    }
}
