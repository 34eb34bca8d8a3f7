package dev.slowpoint.ops;

import io.micrometer.common.KeyValue;
import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.time.Duration;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.slf4j.spi.LoggingEventBuilder;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;
import org.springframework.web.filter.OncePerRequestFilter;
import org.springframework.web.filter.ServerHttpObservationFilter;
import org.springframework.web.servlet.HandlerMapping;

/**
 * Writes a line for each request that failed by our fault or took long, and for no other. Every word of it is known before a
 * request comes: the route and not the address, the method if it is one, the code and not the sentence. Behind the filter
 * that opens the span of a request, so that lines carry its trace.
 */
@Component
@Order(Ordered.HIGHEST_PRECEDENCE + 10)
public class RequestLog extends OncePerRequestFilter {

    /** What is told as the route of a request that no operation saw. */
    static final String NO_ROUTE = "/v1/*";

    private static final String PROBLEM = RequestLog.class.getName() + ".problem";
    private static final Set<String> METHODS =
            Set.of("GET", "HEAD", "POST", "PUT", "PATCH", "DELETE", "OPTIONS", "TRACE");
    private static final Logger LOG = LoggerFactory.getLogger(RequestLog.class);

    private final PlanMetrics metrics;
    private final long slow;
    private final LineBudget budget;

    RequestLog(
            PlanMetrics metrics,
            @Value("${slowpoint.logs.slow-request}") Duration slow,
            @Value("${slowpoint.logs.most-lines-per-second}") int mostLinesPerSecond) {
        this.metrics = metrics;
        this.slow = slow.toNanos();
        this.budget = new LineBudget(mostLinesPerSecond);
    }

    /** Tells the code of the problem that a request is answered with, for its line and its span. */
    public static void tell(HttpServletRequest request, String code) {
        request.setAttribute(PROBLEM, code);
        ServerHttpObservationFilter.findObservationContext(request)
                .ifPresent(context -> context.addHighCardinalityKeyValue(KeyValue.of("slowpoint.problem", code)));
    }

    /** Method and template of the address of a request, in words that are known before it comes. */
    public static String route(HttpServletRequest request) {
        return method(request) + " " + template(request);
    }

    @Override
    protected boolean shouldNotFilter(HttpServletRequest request) {
        return !Contracted.is(request);
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        long began = System.nanoTime();
        boolean escaped = true;
        try {
            chain.doFilter(request, response);
            escaped = false;
        } finally {
            int status = escaped ? HttpServletResponse.SC_INTERNAL_SERVER_ERROR : response.getStatus();
            answered(request, status, response.getContentType(), System.nanoTime() - began);
        }
    }

    private void answered(HttpServletRequest request, int status, @Nullable String media, long took) {
        metrics.responded(media);
        boolean failed = status >= HttpServletResponse.SC_INTERNAL_SERVER_ERROR;
        if (template(request).equals(NO_ROUTE)) {
            // No operation saw it: it counts as one of the contract all the same.
            ServerHttpObservationFilter.findObservationContext(request)
                    .ifPresent(context -> context.setPathPattern(NO_ROUTE));
        }
        if (failed || took >= slow) {
            int leftOut = budget.ask(System.nanoTime());
            if (leftOut != LineBudget.NONE) {
                write(request, status, took, failed, leftOut);
            }
        }
    }

    private static void write(HttpServletRequest request, int status, long took, boolean failed, int leftOut) {
        Object problem = request.getAttribute(PROBLEM);
        String code = problem == null ? "none" : problem.toString();
        long millis = TimeUnit.NANOSECONDS.toMillis(took);
        LoggingEventBuilder line = failed ? LOG.atError() : LOG.atWarn();
        line.addKeyValue("http.request.method", method(request))
                .addKeyValue("http.route", template(request))
                .addKeyValue("http.response.status_code", status)
                .addKeyValue("event.duration", took)
                .addKeyValue("slowpoint.problem", code)
                .addKeyValue("slowpoint.lines_left_out", leftOut)
                .log(
                        "{} {} {} answered {} in {} ms, problem {}, {} lines like this left out before",
                        failed ? "failed:" : "slow:",
                        method(request),
                        template(request),
                        status,
                        millis,
                        code,
                        leftOut);
    }

    private static String method(HttpServletRequest request) {
        return METHODS.contains(request.getMethod()) ? request.getMethod() : "OTHER";
    }

    private static String template(HttpServletRequest request) {
        Object template = request.getAttribute(HandlerMapping.BEST_MATCHING_PATTERN_ATTRIBUTE);
        return template != null && template.toString().startsWith(Contracted.ROOT) ? template.toString() : NO_ROUTE;
    }
}
