package dev.slowpoint.plan;

import dev.slowpoint.food.Provenance;
import java.util.OptionalDouble;

/**
 * What reheating has to do, by what is done with the food afterwards.
 *
 * @param id as in the reheating file
 * @param use what the food is reheated for
 * @param coreC every part has to be at least as warm [C]; empty for any temperature
 * @param held for so long [s]
 * @param within counted from the begin of reheating [s]; empty for no limit
 * @param provenance where it was read
 * @param note conditions
 */
public record ReheatRule(
        String id,
        Use use,
        OptionalDouble coreC,
        double held,
        OptionalDouble within,
        Provenance provenance,
        String note) {

    /** What food is reheated for. */
    public enum Use {
        /** To be eaten at once. */
        SERVE_AT_ONCE,
        /** To wait hot, cooked in the same kitchen. */
        HOT_HOLDING,
        /** To wait hot, ready to eat from an inspected plant. */
        HOT_HOLDING_READY_TO_EAT,
        /** Leftovers at home. */
        LEFTOVERS
    }
}
