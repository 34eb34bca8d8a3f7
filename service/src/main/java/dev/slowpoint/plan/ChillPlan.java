package dev.slowpoint.plan;

import dev.slowpoint.plan.CookPlan.Curve;
import dev.slowpoint.plan.CookPlan.Effort;
import dev.slowpoint.plan.CookPlan.Source;
import java.util.List;
import java.util.Optional;

/**
 * The answer to a {@link ChillTask}. All times in seconds from the moment the food goes into the medium; infinity stands
 * for never.
 *
 * @param parameterSet version of the set used
 * @param digest of that set
 * @param mediumC temperature of the medium counted with [C]
 * @param coreC core temperature when the chill ends [C]
 * @param ends when the chill ends: at the time asked for, or when all of the piece is cold enough to store
 * @param cooling times to the levels of the rule and whether it is kept
 * @param keeping of the store, if one was asked about
 * @param notices warnings and cautions, the most severe first
 * @param curve temperatures over time, if asked for
 * @param sources what the numbers rest on, if asked for
 * @param effort what the solver spent
 */
public record ChillPlan(
        String parameterSet,
        String digest,
        double mediumC,
        Range coreC,
        Span ends,
        Outcome.Cooling cooling,
        Optional<Outcome.Keeping> keeping,
        List<Notice> notices,
        Optional<Curve> curve,
        List<Source> sources,
        Effort effort) {

    /** Copies the lists. */
    public ChillPlan {
        notices = List.copyOf(notices);
        sources = List.copyOf(sources);
    }
}
