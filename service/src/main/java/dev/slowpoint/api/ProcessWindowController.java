package dev.slowpoint.api;

import dev.slowpoint.ops.PlanMetrics;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;
import org.springframework.http.CacheControl;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RestController;

/** Answers process windows. */
@RestController
@Tag(name = "plans")
class ProcessWindowController {

    private final ProcessWindows windows;
    private final PlanMetrics metrics;

    ProcessWindowController(ProcessWindows windows, PlanMetrics metrics) {
        this.windows = windows;
        this.metrics = metrics;
    }

    @PostMapping(
            path = "/v1/process-windows",
            consumes = {MediaType.APPLICATION_JSON_VALUE, MediaType.APPLICATION_CBOR_VALUE},
            produces = {
                MediaType.APPLICATION_JSON_VALUE,
                MediaType.APPLICATION_CBOR_VALUE,
                CookPicture.SVG_VALUE,
                LogTable.MEDIA_TYPE
            })
    @Answers(value = ProcessWindowAnswer.class, pictured = true, rows = ProcessWindowTable.FORMAT)
    @Operation(
            operationId = "planWindow",
            summary = "Look over a range of setpoints",
            description =
                    "For one food and size, over a range of bath temperatures: when hot through, safe, tender and past its"
                            + " best, and when the warm-up limit is used up; the region in which the piece can be cooked, a"
                            + " robust point in it, and how far that and a point of your own lie from each edge. Stateless"
                            + " and free of side effects: safe to repeat, and the same request gives the same bytes. No"
                            + " clock is read; all times are seconds from food in.")
    ResponseEntity<Object> planWindow(
            @RequestBody ProcessWindowRequest request,
            @RequestHeader(name = HttpHeaders.ACCEPT, required = false) @Nullable String accept,
            Sentences sentences) {
        ProcessWindowAnswer window = windows.answer(request, sentences);
        window.warnings().forEach(warning -> metrics.warned(warning.code()));
        ResponseEntity.BodyBuilder answer = ResponseEntity.ok().cacheControl(CacheControl.noStore());
        MediaType type = Accepted.of(accept)
                .best(Wire.JSON.mediaType(), Wire.CBOR.mediaType(), CookPicture.SVG, ProcessWindowTable.MEDIA_TYPE);
        if (type.equals(ProcessWindowTable.MEDIA_TYPE)) {
            return answer.contentType(ProcessWindowTable.MEDIA_TYPE).body(ProcessWindowTable.of(window));
        }
        if (type.equals(CookPicture.SVG)) {
            PictureWords words = new PictureWords(sentences);
            return answer.contentType(type)
                    .body(ProcessWindowPicture.of(
                            window, request.availableS(), words.piece(request.food(), request.geometry()), words));
        }
        return answer.body(window);
    }
}
