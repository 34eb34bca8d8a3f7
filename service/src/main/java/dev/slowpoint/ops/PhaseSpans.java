package dev.slowpoint.ops;

import io.micrometer.tracing.Span;
import io.micrometer.tracing.Tracer;
import java.time.Instant;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.stereotype.Component;

/**
 * Tells the phases of a question as spans under that of its request: one a phase, from the first time it began to the last
 * time it ended. Where a phase was gone through often, its attributes say how often and for how long altogether. They are
 * written once the question is answered, and only where the request is traced.
 */
@Component
class PhaseSpans {

    /** How often the phase was gone through. */
    static final String TIMES = "slowpoint.phase.times";

    /** How long all of them took, in microseconds. */
    static final String BUSY = "slowpoint.phase.busy_us";

    private final @Nullable Tracer tracer;

    PhaseSpans(ObjectProvider<Tracer> tracer) {
        this.tracer = tracer.getIfAvailable();
    }

    void write(PlanClock clock) {
        Span request = tracer == null ? null : tracer.currentSpan();
        if (tracer == null || request == null || request.isNoop()) {
            return;
        }
        Instant now = Instant.now();
        long offset = TimeUnit.SECONDS.toNanos(now.getEpochSecond()) + now.getNano() - System.nanoTime();
        clock.stints()
                .forEach((phase, stint) -> tracer.spanBuilder()
                        .setParent(request.context())
                        .name(phase.name().toLowerCase(Locale.ROOT))
                        .startTimestamp(stint.firstBegan() + offset, TimeUnit.NANOSECONDS)
                        .tag(TIMES, stint.times())
                        .tag(BUSY, TimeUnit.NANOSECONDS.toMicros(stint.busy()))
                        .start()
                        .end(stint.lastEnded() + offset, TimeUnit.NANOSECONDS));
    }
}
