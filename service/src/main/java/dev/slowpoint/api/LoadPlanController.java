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

/** Answers load plans. */
@RestController
@Tag(name = "plans")
class LoadPlanController {

    private final PlannedLoads planning;
    private final PlanMetrics metrics;

    LoadPlanController(PlannedLoads planning, PlanMetrics metrics) {
        this.planning = planning;
        this.metrics = metrics;
    }

    @PostMapping(
            path = "/v1/load-plans",
            consumes = {MediaType.APPLICATION_JSON_VALUE, MediaType.APPLICATION_CBOR_VALUE},
            produces = {MediaType.APPLICATION_JSON_VALUE, MediaType.APPLICATION_CBOR_VALUE, CookPicture.SVG_VALUE})
    @Answers(value = LoadPlanAnswer.class, pictured = true)
    @Operation(
            operationId = "planLoad",
            summary = "Plan several foods in one bath",
            description =
                    "How several foods share a bath: all together, one after the other, at two setpoints with the hotter"
                            + " food first, or not at all and why. The water that all of them cool is computed for the"
                            + " whole load. Stateless and free of side effects: safe to repeat, and the same request gives"
                            + " the same bytes. No clock is read.")
    ResponseEntity<Object> planLoad(
            @RequestBody LoadPlanRequest request,
            @RequestParam(name = Include.PARAMETER, required = false) @Nullable List<String> include,
            @RequestHeader(name = HttpHeaders.ACCEPT, required = false) @Nullable String accept,
            Sentences sentences) {
        Accepted accepted = Accepted.of(accept);
        LoadPlanAnswer plan = planning.plan(request, accepted.included(include, LoadPlanAnswer.class), sentences);
        plan.warnings().forEach(warning -> metrics.warned(warning.code()));
        plan.items().forEach(item -> item.warnings().forEach(warning -> metrics.warned(warning.code())));
        return accepted.answer(plan, sentences, words -> LoadPicture.of(plan, words));
    }
}
