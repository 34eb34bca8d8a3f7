package dev.slowpoint.ops;

import java.time.Duration;
import java.util.List;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.ApplicationArguments;
import org.springframework.boot.ApplicationRunner;
import org.springframework.stereotype.Component;

/**
 * Rehearses until the compiler of the JVM has seen the hot paths. It runs as a runner, and the application counts as ready
 * only once all runners are done: until then readiness is refused while liveness is up.
 */
@Component
class WarmUp implements ApplicationRunner {

    private static final Logger LOG = LoggerFactory.getLogger(WarmUp.class);

    /** Enough for compiled code in most of the hot path, for a fraction of the time of a start. */
    private static final int ROUNDS = 50;

    /** Looked at between rounds; a slow machine must become ready too. */
    private static final Duration LONGEST = Duration.ofMillis(800);

    private final List<Rehearsal> rehearsals;

    WarmUp(List<Rehearsal> rehearsals) {
        this.rehearsals = List.copyOf(rehearsals);
    }

    @Override
    public void run(ApplicationArguments arguments) {
        long started = System.nanoTime();
        int rounds = 0;
        do {
            rehearsals.forEach(Rehearsal::rehearse);
            rounds++;
        } while (rounds < ROUNDS && System.nanoTime() - started < LONGEST.toNanos());
        LOG.info("rehearsed {} rounds in {} ms", rounds, (System.nanoTime() - started) / 1_000_000L);
    }
}
