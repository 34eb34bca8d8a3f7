package dev.slowpoint.safety;

import dev.slowpoint.food.Provenance;
import dev.slowpoint.heat.Exp;
import dev.slowpoint.heat.RateLaw;
import java.util.Arrays;
import java.util.OptionalDouble;

/**
 * Log-linear kill of one organism in one food: the time for one decimal reduction is
 * {@code D(T) = D_ref 10^((T_ref - T)/z)}.
 *
 * @param id unique in a parameter set
 * @param hazard what is killed
 * @param matrix the food it was tested in
 * @param referenceC [C] at which {@code decimalReduction} was stated
 * @param decimalReductionS D at the reference temperature [s]
 * @param zK z-value [K]; where {@code zAboveReferenceK} is present, the one below the reference temperature
 * @param zAboveReferenceK z-value [K] above the reference temperature, when it differs
 * @param lowestTestedC [C] nothing is known below it
 * @param highestTestedC [C] above it the rate is held at its value there
 * @param use what the line is good for: default, conservative, sensitivity
 * @param provenance where D and z come from
 */
public record InactivationLine(
        String id,
        Hazard hazard,
        String matrix,
        double referenceC,
        double decimalReductionS,
        double zK,
        OptionalDouble zAboveReferenceK,
        double lowestTestedC,
        double highestTestedC,
        String use,
        Provenance provenance) {

    /** Refuses values that make no line. */
    public InactivationLine {
        if (!(decimalReductionS > 0.0 && zK > 0.0 && zAboveReferenceK.orElse(1.0) > 0.0)) {
            throw new IllegalArgumentException("inactivation line " + id + ": D " + decimalReductionS + " s and z " + zK
                    + " K must be above zero");
        }
        if (!(lowestTestedC <= highestTestedC)) {
            throw new IllegalArgumentException("inactivation line " + id + ": lowest tested " + lowestTestedC
                    + " C lies above highest tested " + highestTestedC + " C");
        }
    }

    /** D at a temperature [s], by the formula alone: without floor or cap, for comparing with published figures. */
    public double decimalReductionS(double temperatureC) {
        double z = temperatureC > referenceC ? zAboveReferenceK.orElse(zK) : zK;
        return decimalReductionS * Exp.pow10((referenceC - temperatureC) / z);
    }

    /** Seconds at a constant temperature for a number of decimal reductions, by the formula alone. */
    public double requiredS(double log10, double temperatureC) {
        return log10 * decimalReductionS(temperatureC);
    }

    /** The same line for cells that became tougher: D times a factor of one or more. */
    public InactivationLine slowerBy(double factor) {
        if (!(factor >= 1.0)) {
            throw new IllegalArgumentException("factor " + factor + " on D must be one or more");
        }
        return new InactivationLine(
                id,
                hazard,
                matrix,
                referenceC,
                decimalReductionS * factor,
                zK,
                zAboveReferenceK,
                lowestTestedC,
                highestTestedC,
                use,
                provenance);
    }

    /** Decimal reductions per second, none below a floor [C], and above the highest tested temperature no faster. */
    public RateLaw killFrom(double floorC) {
        return new Kill(this, floorC);
    }

    private record Kill(InactivationLine line, double floorC) implements RateLaw {

        @Override
        public double perSecond(double temperatureC) {
            return temperatureC < floorC
                    ? 0.0
                    : 1.0 / line.decimalReductionS(Math.min(temperatureC, line.highestTestedC));
        }

        @Override
        public double[] breaksC() {
            double[] breaks = line.zAboveReferenceK.isPresent()
                    ? new double[] {floorC, line.referenceC, line.highestTestedC}
                    : new double[] {floorC, line.highestTestedC};
            Arrays.sort(breaks);
            return breaks;
        }
    }
}
