package dev.slowpoint.api;

import dev.slowpoint.ops.PlanMetrics;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/** Answers cook plans. */
@RestController
@Tag(name = "plans")
class CookPlanController {

    private final CookPlanning planning;
    private final PlanMetrics metrics;

    CookPlanController(CookPlanning planning, PlanMetrics metrics) {
        this.planning = planning;
        this.metrics = metrics;
    }

    @PostMapping(
            path = "/v1/cook-plans",
            consumes = {MediaType.APPLICATION_JSON_VALUE, MediaType.APPLICATION_CBOR_VALUE},
            produces = {MediaType.APPLICATION_JSON_VALUE, MediaType.APPLICATION_CBOR_VALUE, CookPicture.SVG_VALUE})
    @Answers(value = CookPlanAnswer.class, pictured = true)
    @Operation(
            operationId = "planCook",
            summary = "Plan a cook",
            description =
                    "Time plan, safety margin and texture window for one food in one bath, and what steps after it do. Stateless and free of side"
                            + " effects: safe to repeat, and the same request gives the same bytes. No clock is read; all times"
                            + " are seconds from food in.")
    ResponseEntity<Object> planCook(
            @RequestBody CookPlanRequest request,
            @RequestParam(name = Include.PARAMETER, required = false) @Nullable List<String> include,
            @RequestHeader(name = HttpHeaders.ACCEPT, required = false) @Nullable String accept,
            Sentences sentences) {
        Accepted accepted = Accepted.of(accept);
        CookPlanAnswer plan = planning.plan(request, accepted.included(include, CookPlanAnswer.class), sentences);
        plan.warnings().forEach(warning -> metrics.warned(warning.code()));
        return accepted.answer(
                plan, sentences, words -> CookPicture.of(plan, words.piece(request.food(), request.geometry()), words));
    }
}
