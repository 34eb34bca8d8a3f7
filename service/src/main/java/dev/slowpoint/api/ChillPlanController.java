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

/** Answers chill plans. */
@RestController
@Tag(name = "plans")
class ChillPlanController {

    private final PlannedChills planning;
    private final PlanMetrics metrics;

    ChillPlanController(PlannedChills planning, PlanMetrics metrics) {
        this.planning = planning;
        this.metrics = metrics;
    }

    @PostMapping(
            path = "/v1/chill-plans",
            consumes = {MediaType.APPLICATION_JSON_VALUE, MediaType.APPLICATION_CBOR_VALUE},
            produces = {MediaType.APPLICATION_JSON_VALUE, MediaType.APPLICATION_CBOR_VALUE, CookPicture.SVG_VALUE})
    @Answers(value = ChillPlanAnswer.class, pictured = true)
    @Operation(
            operationId = "planChill",
            summary = "Plan a chill",
            description =
                    "How long one cooked piece takes to cool, whether that keeps a published cooling rule, and how long it may"
                            + " be stored. Stateless and free of side effects: safe to repeat, and the same request gives the"
                            + " same bytes. No clock is read; all times are seconds from the moment the piece goes in.")
    ResponseEntity<Object> planChill(
            @RequestBody ChillPlanRequest request,
            @RequestParam(name = Include.PARAMETER, required = false) @Nullable List<String> include,
            @RequestHeader(name = HttpHeaders.ACCEPT, required = false) @Nullable String accept,
            Sentences sentences) {
        Accepted accepted = Accepted.of(accept);
        ChillPlanAnswer plan = planning.plan(request, accepted.included(include, ChillPlanAnswer.class), sentences);
        plan.warnings().forEach(warning -> metrics.warned(warning.code()));
        return accepted.answer(
                plan,
                sentences,
                words -> ChillPicture.of(
                        plan,
                        words.piece(request.food(), request.geometry()),
                        words.medium(request.chill().medium()),
                        words));
    }
}
