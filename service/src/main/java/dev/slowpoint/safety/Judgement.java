package dev.slowpoint.safety;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Whether a history was safe at a time, and by how much.
 *
 * @param verdict by the requirements that decide
 * @param at the time judged [s]
 * @param findings one a requirement, in their order
 * @param safeAt first time [s] at which every deciding requirement is met; infinity when never, the start of the history
 *     when none is asked for
 * @param slowHeatingS time [s] the slowest point spent where cells can adapt to heat
 * @param heatAdaptationPossible whether that was long enough to take the margins of {@link
 *     Finding#marginIfHeatAdaptedLog10} to heart
 */
public record Judgement(
        Verdict verdict,
        double at,
        List<Finding> findings,
        double safeAt,
        double slowHeatingS,
        boolean heatAdaptationPossible) {

    /** Copies the list. */
    public Judgement {
        findings = List.copyOf(findings);
    }

    /** The deciding requirement with the least margin; empty when no kill is asked for. */
    public Optional<Finding> governing() {
        return findings.stream()
                .filter(f -> !f.requirement().advisory())
                .min(Comparator.comparingDouble(Finding::marginLog10));
    }

    /** Time in hand [s] between the earliest safe time and the time judged; below zero when it is missing. */
    public double marginS() {
        return at - safeAt;
    }
}
