package dev.slowpoint.ops;

import io.micrometer.core.instrument.Gauge;
import io.micrometer.core.instrument.MeterRegistry;
import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.concurrent.atomic.AtomicInteger;
import org.springframework.boot.availability.ApplicationAvailability;
import org.springframework.boot.availability.ReadinessState;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;
import org.springframework.web.filter.OncePerRequestFilter;

/** Counts the requests that are in the service now. The first filter of all: what is turned away later was here too. */
@Component
@Order(Ordered.HIGHEST_PRECEDENCE)
class Traffic extends OncePerRequestFilter {

    /** Requests worked on or waiting for a thread. */
    static final String IN_FLIGHT = "slowpoint.requests.in.flight";

    /** Requests waiting for a thread. */
    static final String WAITING = "slowpoint.requests.waiting";

    /** Whether requests are to be sent here. */
    static final String READY = "slowpoint.ready";

    private final AtomicInteger inside = new AtomicInteger();

    Traffic(Capacity capacity, ApplicationAvailability availability, MeterRegistry registry) {
        Gauge.builder(IN_FLIGHT, () -> inside.get() + capacity.waiting())
                .description("Requests of the contract being worked on, and requests waiting for a thread")
                .register(registry);
        Gauge.builder(WAITING, capacity::waiting)
                .description("Requests that have arrived and wait for a thread")
                .register(registry);
        Gauge.builder(READY, () -> availability.getReadinessState() == ReadinessState.ACCEPTING_TRAFFIC ? 1 : 0)
                .description("1 while requests may be sent here, else 0")
                .register(registry);
    }

    @Override
    protected boolean shouldNotFilter(HttpServletRequest request) {
        return !Contracted.is(request);
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        inside.incrementAndGet();
        try {
            chain.doFilter(request, response);
        } finally {
            inside.decrementAndGet();
        }
    }
}
