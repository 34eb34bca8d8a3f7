package dev.slowpoint.safety;

import dev.slowpoint.food.Mark;
import dev.slowpoint.food.Provenance;
import java.util.EnumSet;
import java.util.Set;

/**
 * The limits that count for a plan judged by a rule: the rule's own, and where it names none that was read, the strictest
 * that was. What was only recalled cannot be among them, and what stands in for a limit must have been seen in the text
 * itself.
 *
 * @param warmUp how long food may take to get hot
 * @param hotHolding how hot it waits
 * @param cooling how fast it is cooled
 * @param coldStorage how long it keeps
 * @param own for which of the four topics the limit is the rule's own
 */
public record RuleLimits(
        WarmUpLimits warmUp, HotHoldingLimit hotHolding, CoolingRule cooling, ColdStorage coldStorage, Set<Topic> own) {

    /** The topics that have a limit. */
    public static final Set<Topic> TOPICS =
            Set.copyOf(EnumSet.of(Topic.WARM_UP, Topic.HOLDING, Topic.COOLING, Topic.STORAGE));

    /** Copies the set; refuses a limit that was recalled, and one that stands in without having been read. */
    public RuleLimits {
        own = Set.copyOf(own);
        if (!TOPICS.containsAll(own)) {
            throw new IllegalArgumentException("only " + TOPICS + " have limits, not all of " + own);
        }
        check(Topic.WARM_UP, warmUp.id(), warmUp.provenance(), own);
        check(Topic.HOLDING, hotHolding.id(), hotHolding.provenance(), own);
        for (CoolingRule.Stage stage : cooling.stages()) {
            check(Topic.COOLING, stage.id(), stage.provenance(), own);
        }
        check(Topic.STORAGE, coldStorage.cap().id(), coldStorage.cap().provenance(), own);
    }

    private static void check(Topic topic, String id, Provenance origin, Set<Topic> own) {
        origin.refuseIfRecalled("limit " + id);
        if (!own.contains(topic) && origin.mark() != Mark.READ) {
            throw new IllegalArgumentException("limit " + id + " is marked " + origin.mark()
                    + ", so it must not stand in for a rule that names none. Maybe take one that was read?");
        }
    }
}
