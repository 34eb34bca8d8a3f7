package dev.slowpoint.api;

import dev.slowpoint.ops.PlanMetrics;
import dev.slowpoint.plan.Refusal;
import jakarta.servlet.http.HttpServletRequest;
import java.util.List;
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

    private static final Logger LOG = LoggerFactory.getLogger(ProblemAdvice.class);

    private final PlanMetrics metrics;

    ProblemAdvice(PlanMetrics metrics) {
        this.metrics = metrics;
    }

    @ExceptionHandler
    ResponseEntity<Object> refused(RequestRefused refused) {
        ProblemCode code = ProblemCode.valueOf(refused.faults().get(0).code());
        return answer(Problem.of(code, refused.faults(), refused.count()), new HttpHeaders());
    }

    @ExceptionHandler
    ResponseEntity<Object> refused(Refusal refusal) {
        List<Fault> faults =
                refusal.faults().stream().map(ProblemAdvice::translated).toList();
        ProblemCode code = ProblemCode.find(faults.get(0).code())
                .filter(known -> known.status() == 422)
                .orElse(ProblemCode.REQUEST_REFUSED);
        List<Problem.Alternative> offered = refusal.alternatives().stream()
                .map(a -> new Problem.Alternative(
                        a.setpointC(), (int) Math.rint(a.safeNominal()), (int) Math.ceil(a.safeLate())))
                .toList();
        return answer(Problem.of(code, faults, faults.size()).offering(offered), new HttpHeaders());
    }

    private static Fault translated(Refusal.Fault fault) {
        return new Fault(
                fault.pointer(),
                fault.code(),
                fault.detail(),
                fault.hint().orElse(null),
                fault.value().orElse(null),
                fault.minimum().isPresent() ? fault.minimum().getAsDouble() : null,
                fault.maximum().isPresent() ? fault.maximum().getAsDouble() : null,
                fault.unit().orElse(null),
                null);
    }

    @ExceptionHandler
    ResponseEntity<Object> unknown(UnknownEntry unknown) {
        Problem problem = Problem.of(ProblemCode.NOT_FOUND, unknown.detail());
        return answer(problem, new HttpHeaders());
    }

    /** An address whose query cannot be decoded; found only when its parameters are first asked for. */
    @ExceptionHandler
    ResponseEntity<Object> undecodable(InvalidParameterException undecodable) {
        return answer(
                Problem.of(ProblemCode.BAD_REQUEST, "The query of the address cannot be decoded."), new HttpHeaders());
    }

    @ExceptionHandler
    ResponseEntity<Object> failed(Exception failure, HttpServletRequest request) {
        String incident = UUID.randomUUID().toString();
        LOG.error("incident {} on {} {}", incident, request.getMethod(), request.getRequestURI(), failure);
        ServerHttpObservationFilter.findObservationContext(request).ifPresent(context -> context.setError(failure));
        HttpHeaders headers = new HttpHeaders();
        headers.set(INCIDENT, incident);
        ProblemCode code = ProblemCode.INTERNAL_ERROR;
        return answer(Problem.of(code, code.cause()), headers);
    }

    /** The framework does not ask the reader when there is no byte to read; every other cause is a broken connection. */
    @Override
    protected @Nullable ResponseEntity<Object> handleHttpMessageNotReadable(
            HttpMessageNotReadableException exception, HttpHeaders headers, HttpStatusCode status, WebRequest request) {
        return exception.getCause() == null
                ? refused(RequestReader.empty())
                : super.handleHttpMessageNotReadable(exception, headers, status, request);
    }

    @Override
    protected ResponseEntity<Object> handleExceptionInternal(
            Exception exception,
            @Nullable Object body,
            HttpHeaders headers,
            HttpStatusCode status,
            WebRequest request) {
        ProblemCode code = ProblemCode.ofStatus(status.value());
        return answer(Problem.of(code, code.cause()), headers);
    }

    private ResponseEntity<Object> answer(Problem problem, HttpHeaders headers) {
        metrics.refused(problem.code());
        return ResponseEntity.status(problem.status())
                .headers(headers)
                .contentType(MEDIA_TYPE)
                .cacheControl(CacheControl.noStore())
                .body(Wire.JSON.write(problem));
    }
}
