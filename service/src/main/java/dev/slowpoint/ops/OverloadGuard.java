package dev.slowpoint.ops;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.time.Duration;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.core.annotation.Order;
import org.springframework.http.HttpHeaders;
import org.springframework.stereotype.Component;
import org.springframework.web.filter.OncePerRequestFilter;

/**
 * Sends requests away at once while too many others wait for a thread, so that those admitted are answered in time and the
 * queue drains. Probes and documents are always let in.
 */
@Component
@Order(OverloadGuard.ORDER)
class OverloadGuard extends OncePerRequestFilter {

    /** Before all guards that cost more. */
    static final int ORDER = 100;

    private final Capacity capacity;
    private final Backlog backlog;
    private final PlanMetrics metrics;

    OverloadGuard(
            Capacity capacity,
            @Value("${slowpoint.limits.most-waiting}") int mostWaiting,
            @Value("${slowpoint.limits.longest-backlog}") Duration longestBacklog,
            PlanMetrics metrics) {
        this.capacity = capacity;
        this.backlog = new Backlog(mostWaiting, longestBacklog);
        this.metrics = metrics;
    }

    @Override
    protected boolean shouldNotFilter(HttpServletRequest request) {
        return !Contracted.is(request);
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        if (backlog.lasts(capacity.waiting(), System.nanoTime())) {
            metrics.refused(Refusing.OVERLOADED.name());
            response.setHeader(HttpHeaders.RETRY_AFTER, "1");
            Refusing.OVERLOADED.send(request, response);
            return;
        }
        chain.doFilter(request, response);
    }
}
