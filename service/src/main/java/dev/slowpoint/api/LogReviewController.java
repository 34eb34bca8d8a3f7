package dev.slowpoint.api;

import io.swagger.v3.oas.annotations.Hidden;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.springframework.http.CacheControl;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.http.server.ServletServerHttpRequest;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/** Answers reviews of logs, as data or as a page to print. */
@RestController
@Tag(name = "plans")
class LogReviewController {

    private static final String PATH = "/v1/log-reviews";

    private final ReviewedLogs reviewing;

    LogReviewController(ReviewedLogs reviewing) {
        this.reviewing = reviewing;
    }

    @PostMapping(
            path = PATH,
            consumes = {MediaType.APPLICATION_JSON_VALUE, MediaType.APPLICATION_CBOR_VALUE},
            produces = {MediaType.APPLICATION_JSON_VALUE, MediaType.APPLICATION_CBOR_VALUE, MediaType.TEXT_HTML_VALUE})
    @Operation(
            operationId = "reviewLog",
            summary = "Review a log",
            description =
                    "Whether a recorded log of a core or a bath shows that a published rule was met, with its critical"
                            + " limits, deviations and a record that can be filed. A log may come as JSON, CBOR or a table of up to"
                            + " 100 000 readings; the record is given as data, or as a page to print. Stateless and free of side"
                            + " effects: nothing is kept, no clock is read, and the same request gives the same bytes.")
    @Answers(LogReviewAnswer.class)
    ResponseEntity<byte[]> reviewLog(
            @RequestBody LogReviewRequest request,
            @RequestParam(name = Include.PARAMETER, required = false) @Nullable List<String> include,
            @RequestHeader(name = HttpHeaders.ACCEPT, required = false) @Nullable String accept,
            Sentences sentences) {
        return answer(request, include, accept, sentences);
    }

    /** The same operation with the log as a table; the contract tells of both in one place. */
    @PostMapping(
            path = PATH,
            consumes = LogTable.MEDIA_TYPE,
            produces = {MediaType.APPLICATION_JSON_VALUE, MediaType.APPLICATION_CBOR_VALUE, MediaType.TEXT_HTML_VALUE})
    @Hidden
    @Queried(LogReviewQuery.class)
    ResponseEntity<byte[]> reviewTable(
            HttpServletRequest request,
            @RequestParam(name = Include.PARAMETER, required = false) @Nullable List<String> include,
            @RequestHeader(name = HttpHeaders.ACCEPT, required = false) @Nullable String accept,
            Sentences sentences)
            throws IOException {
        byte[] body = WireConverter.body(new ServletServerHttpRequest(request), LogReviewRequest.class);
        return answer(LogTable.read(body, request.getParameterMap()), include, accept, sentences);
    }

    private ResponseEntity<byte[]> answer(
            LogReviewRequest request, @Nullable List<String> include, @Nullable String accept, Sentences sentences) {
        Set<Include> parts = EnumSet.noneOf(Include.class);
        parts.addAll(Include.of(include, LogReviewAnswer.class));
        MediaType type = type(accept);
        boolean page = type.equals(LogPage.MEDIA_TYPE);
        if (page) {
            parts.addAll(ReviewedLogs.PAGE);
        }
        LogReviewAnswer review = reviewing.review(request, parts, sentences);
        ResponseEntity.BodyBuilder answer =
                ResponseEntity.ok().cacheControl(CacheControl.noStore()).contentType(type);
        if (page) {
            return answer.header("Content-Security-Policy", LogPage.POLICY)
                    .header("Referrer-Policy", "no-referrer")
                    .body(new LogPage(review, sentences).bytes());
        }
        Wire wire = type.equals(Wire.CBOR.mediaType()) ? Wire.CBOR : Wire.JSON;
        return answer.body(wire.write(review));
    }

    /** What to answer with, for an {@code Accept} header that has been found acceptable before; JSON among equals. */
    private static MediaType type(@Nullable String accept) {
        return Accepted.of(accept).best(Wire.JSON.mediaType(), Wire.CBOR.mediaType(), LogPage.MEDIA_TYPE);
    }
}
