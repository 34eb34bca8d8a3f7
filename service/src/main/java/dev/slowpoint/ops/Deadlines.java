package dev.slowpoint.ops;

import dev.slowpoint.heat.Halt;
import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.time.Duration;
import java.util.Set;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.stereotype.Component;
import org.springframework.web.filter.OncePerRequestFilter;

/** Gives every request a time after which the solver stops working for it. */
@Component
public class Deadlines extends OncePerRequestFilter {

    private final Duration longestRequest;
    private final Duration longestLargeRequest;
    private final Set<String> large;

    Deadlines(
            @Value("${slowpoint.limits.longest-request}") Duration longestRequest,
            @Value("${slowpoint.limits.longest-large-request}") Duration longestLargeRequest,
            @Value("${slowpoint.limits.large}") Set<String> large) {
        this.longestRequest = longestRequest;
        this.longestLargeRequest = longestLargeRequest;
        this.large = Set.copyOf(large);
    }

    /** One for a single plan. */
    public Deadline ofPlan() {
        return new Deadline(longestRequest);
    }

    @Override
    protected boolean shouldNotFilter(HttpServletRequest request) {
        return !Contracted.is(request);
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        Deadline deadline =
                new Deadline(large.contains(request.getServletPath()) ? longestLargeRequest : longestRequest);
        try (Halt halt = Halt.on(deadline)) {
            chain.doFilter(request, response);
        }
    }
}
