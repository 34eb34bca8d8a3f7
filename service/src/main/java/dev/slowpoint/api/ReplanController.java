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

/** Answers replans. */
@RestController
@Tag(name = "plans")
class ReplanController {

    private final ReplannedCooks planning;
    private final PlanMetrics metrics;

    ReplanController(ReplannedCooks planning, PlanMetrics metrics) {
        this.planning = planning;
        this.metrics = metrics;
    }

    @PostMapping(
            path = "/v1/replans",
            consumes = {MediaType.APPLICATION_JSON_VALUE, MediaType.APPLICATION_CBOR_VALUE},
            produces = {MediaType.APPLICATION_JSON_VALUE, MediaType.APPLICATION_CBOR_VALUE, CookPicture.SVG_VALUE})
    @Answers(value = ReplanAnswer.class, pictured = true)
    @Operation(
            operationId = "planAnew",
            summary = "Plan a cook under way anew",
            description =
                    "What to do with a cook under way, given what really happened so far: a log of the bath, events such as a"
                            + " time without heater, readings of the core, a size measured now. Stateless and free of side"
                            + " effects: safe to repeat, and the same request gives the same bytes. No clock is read; all"
                            + " times are seconds from food in.")
    ResponseEntity<Object> replanCook(
            @RequestBody ReplanRequest request,
            @RequestParam(name = Include.PARAMETER, required = false) @Nullable List<String> include,
            @RequestHeader(name = HttpHeaders.ACCEPT, required = false) @Nullable String accept,
            Sentences sentences) {
        Accepted accepted = Accepted.of(accept);
        ReplanAnswer plan = planning.plan(request, accepted.included(include, ReplanAnswer.class), sentences);
        plan.warnings().forEach(warning -> metrics.warned(warning.code()));
        return accepted.answer(
                plan, sentences, words -> CookPicture.of(plan, words.piece(request.food(), request.geometry()), words));
    }
}
