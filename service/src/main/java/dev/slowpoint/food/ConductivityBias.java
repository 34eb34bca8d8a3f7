package dev.slowpoint.food;

import java.util.List;

/**
 * By what the computed conductivity must be multiplied, because the composition model is known to heat too fast: its
 * diffusivity lies on average 7 % above the measured one of meat and fish.
 *
 * @param pessimistic for a bound on the late side [-]
 * @param nominal for the plan [-]
 * @param optimistic for a bound on the early side [-]
 * @param origins the evidence for each of the three, in this order
 */
public record ConductivityBias(double pessimistic, double nominal, double optimistic, List<Provenance> origins) {

    /** Refuses factors that are not in order, and copies the list. */
    public ConductivityBias {
        if (!(pessimistic > 0.0 && pessimistic <= nominal && nominal <= optimistic)) {
            throw new IllegalArgumentException("conductivity factors " + pessimistic + ", " + nominal + ", "
                    + optimistic + " must be positive and rise from pessimistic to optimistic");
        }
        origins = List.copyOf(origins);
    }
}
