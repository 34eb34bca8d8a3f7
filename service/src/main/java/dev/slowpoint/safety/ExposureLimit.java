package dev.slowpoint.safety;

import dev.slowpoint.food.Provenance;
import java.util.OptionalDouble;

/**
 * The longest total time food may spend in a range of temperatures before a hazard grows or forms toxin.
 *
 * @param id as in the limits file
 * @param hazard what grows
 * @param fromC lower end of the range [C]
 * @param toC upper end [C]; empty for the open range above {@code fromC}
 * @param longestS [s]
 * @param provenance where it was read
 */
public record ExposureLimit(
        String id, Hazard hazard, double fromC, OptionalDouble toC, double longestS, Provenance provenance) {

    /** Refuses a limit that was only recalled: it would let a plan pass. */
    public ExposureLimit {
        provenance.refuseIfRecalled("limit " + id);
    }

    /** Whether a total time keeps the limit. */
    public boolean keptBy(double seconds) {
        return seconds <= longestS;
    }
}
