package dev.slowpoint.safety;

import java.util.Map;

/** The reduction that a second cook must give after bacteria grew (FSIS-GD-2021-14 pp. 70-71). */
public final class ReductionTarget {

    private ReductionTarget() {}

    /**
     * The base reduction, plus the growth of the hazard that grew most where that is more than was acceptable. It removes
     * no toxin.
     *
     * @param baseLog10 required without growth
     * @param grownLog10 predicted growth by hazard
     * @param acceptedLog10 growth that needs no answer
     */
    public static double afterGrowth(double baseLog10, Map<Hazard, Double> grownLog10, double acceptedLog10) {
        double most = grownLog10.values().stream()
                .mapToDouble(Double::doubleValue)
                .max()
                .orElse(0.0);
        return most > acceptedLog10 ? baseLog10 + most : baseLog10;
    }
}
