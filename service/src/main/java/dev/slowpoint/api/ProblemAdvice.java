package dev.slowpoint.api;

import dev.slowpoint.heat.Halt;
import dev.slowpoint.ops.NoRoom;
import dev.slowpoint.ops.PlanMetrics;
import dev.slowpoint.ops.RequestLog;
import dev.slowpoint.ops.Whereabouts;
import dev.slowpoint.plan.Phrase;
import dev.slowpoint.plan.Refusal;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.net.SocketTimeoutException;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.apache.tomcat.util.http.InvalidParameterException;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.http.CacheControl;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatusCode;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.http.converter.HttpMessageNotReadableException;
import org.springframework.web.bind.annotation.ExceptionHandler;
import org.springframework.web.bind.annotation.RestControllerAdvice;
import org.springframework.web.context.request.ServletWebRequest;
import org.springframework.web.context.request.WebRequest;
import org.springframework.web.filter.ServerHttpObservationFilter;
import org.springframework.web.servlet.mvc.method.annotation.ResponseEntityExceptionHandler;

/** Turns everything that goes wrong behind the dispatcher into a problem document, in JSON whatever was asked for. */
@RestControllerAdvice
@Order(Ordered.HIGHEST_PRECEDENCE)
class ProblemAdvice extends ResponseEntityExceptionHandler {

    static final MediaType MEDIA_TYPE = MediaType.APPLICATION_PROBLEM_JSON;

    /** Names a failure in the log; in a header, so that bodies stay the same for the same request. */
    static final String INCIDENT = "Slowpoint-Incident";

    /** When to ask again for what took too long [s]. */
    private static final String RETRY_AFTER_S = "5";

    private static final Logger LOG = LoggerFactory.getLogger(ProblemAdvice.class);

    private final PlanMetrics metrics;
    private final Languages languages;

    ProblemAdvice(PlanMetrics metrics, Languages languages) {
        this.metrics = metrics;
        this.languages = languages;
    }

    @ExceptionHandler
    ResponseEntity<Object> refused(RequestRefused refused, HttpServletRequest request, HttpServletResponse response) {
        Sentences sentences = sentences(request, response);
        ProblemCode code = refused.faults().get(0).code();
        List<FaultEntry> faults = refused.faults().stream()
                .map(fault -> FaultEntry.of(fault, sentences))
                .toList();
        return answer(request, Problem.of(code, faults, refused.count(), sentences), new HttpHeaders());
    }

    @ExceptionHandler
    ResponseEntity<Object> refused(Refusal refusal, HttpServletRequest request, HttpServletResponse response) {
        Sentences sentences = sentences(request, response);
        List<FaultEntry> faults = refusal.faults().stream()
                .map(fault -> FaultEntry.of(fault, sentences))
                .toList();
        ProblemCode code = ProblemCode.find(faults.get(0).code())
                .filter(known -> known.status() == 422)
                .orElse(ProblemCode.REQUEST_REFUSED);
        List<Problem.Alternative> offered = refusal.alternatives().stream()
                .map(a -> new Problem.Alternative(
                        a.setpointC(), (int) Math.rint(a.safeNominal()), (int) Math.ceil(a.safeLate())))
                .toList();
        return answer(
                request, Problem.of(code, faults, faults.size(), sentences).offering(offered), new HttpHeaders());
    }

    @ExceptionHandler
    ResponseEntity<Object> halted(Halt.Halted halted, HttpServletRequest request, HttpServletResponse response) {
        HttpHeaders headers = new HttpHeaders();
        headers.set(HttpHeaders.RETRY_AFTER, RETRY_AFTER_S);
        return answer(request, Problem.of(ProblemCode.OUT_OF_TIME, sentences(request, response)), headers);
    }

    @ExceptionHandler
    ResponseEntity<Object> unknown(UnknownEntry unknown, HttpServletRequest request, HttpServletResponse response) {
        Problem problem = Problem.of(ProblemCode.NOT_FOUND, unknown.detail(), sentences(request, response));
        return answer(request, problem, new HttpHeaders());
    }

    /** An address whose query cannot be decoded; found only when its parameters are first asked for. */
    @ExceptionHandler
    ResponseEntity<Object> undecodable(
            InvalidParameterException undecodable, HttpServletRequest request, HttpServletResponse response) {
        return answer(
                request,
                Problem.of(ProblemCode.BAD_REQUEST, Phrase.of("FAULT_QUERY_UNDECODABLE"), sentences(request, response)),
                new HttpHeaders());
    }

    @ExceptionHandler
    ResponseEntity<Object> failed(Exception failure, HttpServletRequest request, HttpServletResponse response) {
        String incident = UUID.randomUUID().toString();
        LOG.error("incident {} on {}", incident, RequestLog.route(request), new Whereabouts(failure));
        ServerHttpObservationFilter.findObservationContext(request).ifPresent(context -> context.setError(failure));
        HttpHeaders headers = new HttpHeaders();
        headers.set(INCIDENT, incident);
        return answer(request, Problem.of(ProblemCode.INTERNAL_ERROR, sentences(request, response)), headers);
    }

    /** The framework does not ask the reader when there is no byte to read; every other cause is a broken connection. */
    @Override
    protected @Nullable ResponseEntity<Object> handleHttpMessageNotReadable(
            HttpMessageNotReadableException exception, HttpHeaders headers, HttpStatusCode status, WebRequest request) {
        Throwable cause = exception.getCause();
        if (cause instanceof SocketTimeoutException late) {
            return late(late, asked(request), answered(request));
        }
        if (cause instanceof NoRoom none) {
            return noRoom(none, asked(request), answered(request));
        }
        return cause == null
                ? refused(RequestReader.empty(), asked(request), answered(request))
                : super.handleHttpMessageNotReadable(exception, headers, status, request);
    }

    /** A body that did not come in time. The connection is of no more use: the rest may still be under way on it. */
    @ExceptionHandler
    ResponseEntity<Object> late(SocketTimeoutException late, HttpServletRequest request, HttpServletResponse response) {
        HttpHeaders headers = new HttpHeaders();
        headers.set(HttpHeaders.CONNECTION, "close");
        return answer(request, Problem.of(ProblemCode.REQUEST_TIMEOUT, sentences(request, response)), headers);
    }

    /** A client that would have to be waited for, while too many others are. */
    @ExceptionHandler
    ResponseEntity<Object> noRoom(NoRoom none, HttpServletRequest request, HttpServletResponse response) {
        HttpHeaders headers = new HttpHeaders();
        headers.set(HttpHeaders.RETRY_AFTER, "1");
        return answer(request, Problem.of(ProblemCode.OVERLOADED, sentences(request, response)), headers);
    }

    @Override
    protected ResponseEntity<Object> handleExceptionInternal(
            Exception exception,
            @Nullable Object body,
            HttpHeaders headers,
            HttpStatusCode status,
            WebRequest request) {
        return answer(
                asked(request),
                Problem.of(ProblemCode.ofStatus(status.value()), sentences(asked(request), answered(request))),
                headers);
    }

    private static HttpServletRequest asked(WebRequest request) {
        return ((ServletWebRequest) request).getRequest();
    }

    private static HttpServletResponse answered(WebRequest request) {
        return Objects.requireNonNull(((ServletWebRequest) request).getResponse());
    }

    /** The sentences to say it in, announced to the client. */
    private Sentences sentences(HttpServletRequest request, HttpServletResponse response) {
        Sentences sentences = languages.ofFaulty(request);
        Languages.announce(sentences, response);
        return sentences;
    }

    private ResponseEntity<Object> answer(HttpServletRequest request, Problem problem, HttpHeaders headers) {
        metrics.refused(problem.code());
        RequestLog.tell(request, problem.code());
        return ResponseEntity.status(problem.status())
                .headers(headers)
                .contentType(MEDIA_TYPE)
                .cacheControl(CacheControl.noStore())
                .body(Wire.JSON.write(problem));
    }
}
