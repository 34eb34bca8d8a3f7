package dev.slowpoint.texture;

import dev.slowpoint.heat.Exp;
import dev.slowpoint.heat.RateLaw;
import java.util.Arrays;

/**
 * A rate that grows with temperature as {@code k = kRef exp(Ea/R (1/Tref - 1/T))}, absolute temperatures, with a floor
 * below which it is zero and, for processes that die in the heat, a temperature above which it stops.
 *
 * <p>The dose under such a law is a pure number; {@code 1 - exp(-dose)} is the extent of a first-order process.
 */
public final class ArrheniusLaw implements RateLaw {

    /** Gas constant [J/(mol K)], as rounded where the constants of the texture table were fitted. */
    public static final double GAS_CONSTANT = 8.314;

    private static final double ZERO_C_IN_K = 273.15;
    /** A quarter of a kelvin keeps even the steepest law of the table, z = 4.2 K, within a millionth. */
    private static final double TABLE_STEP_K = 0.25;

    private static final double TABLE_SPAN_K = 60.0;

    private final double perSecondAtReference;
    private final double referenceC;
    private final double activationEnergy;
    private final double floorC;
    private final double stopsAboveC;
    /** Exponent at an infinite temperature, and the temperature [K] that its fall is proportional to. */
    private final double exponent;

    private final double exponentFallK;
    private final double[] breaksC;
    private final CubicTable table;

    /**
     * A law from its constants.
     *
     * @param perSecondAtReference rate at the reference temperature [1/s], greater than zero
     * @param referenceC reference temperature [C], above absolute zero
     * @param activationEnergy [J/mol], zero or more
     * @param floorC temperature [C] below which the rate is zero
     * @param stopsAboveC temperature [C] above which the rate is zero, not below the floor; infinity for a process that
     *     never stops
     */
    public ArrheniusLaw(
            double perSecondAtReference,
            double referenceC,
            double activationEnergy,
            double floorC,
            double stopsAboveC) {
        if (!(perSecondAtReference > 0.0) || Double.isInfinite(perSecondAtReference)) {
            throw new IllegalArgumentException("perSecondAtReference = " + perSecondAtReference
                    + " 1/s must be finite and greater than zero. Maybe a cell is empty?");
        }
        if (!(referenceC > -ZERO_C_IN_K) || Double.isInfinite(referenceC)) {
            throw new IllegalArgumentException(
                    "referenceC = " + referenceC + " must be finite and above absolute zero. Maybe it is in kelvin?");
        }
        if (!(activationEnergy >= 0.0) || Double.isInfinite(activationEnergy)) {
            throw new IllegalArgumentException("activationEnergy = " + activationEnergy
                    + " J/mol must be finite and not negative. Maybe the sign is wrong?");
        }
        if (!(floorC > -ZERO_C_IN_K && floorC <= stopsAboveC)) {
            throw new IllegalArgumentException("floorC = " + floorC + " must lie above absolute zero and not above "
                    + stopsAboveC + ", where the process stops. Maybe the two are swapped?");
        }
        this.perSecondAtReference = perSecondAtReference;
        this.referenceC = referenceC;
        this.activationEnergy = activationEnergy;
        this.floorC = floorC;
        this.stopsAboveC = stopsAboveC;
        this.exponentFallK = activationEnergy / GAS_CONSTANT;
        this.exponent = exponentFallK / (referenceC + ZERO_C_IN_K);
        this.breaksC = Double.isInfinite(stopsAboveC) ? new double[] {floorC} : new double[] {floorC, stopsAboveC};
        this.table = CubicTable.of(this::exact, floorC, floorC + TABLE_SPAN_K, TABLE_STEP_K);
    }

    @Override
    public double perSecond(double temperatureC) {
        if (temperatureC < floorC || temperatureC > stopsAboveC) {
            return 0.0;
        }
        return table.at(temperatureC);
    }

    private double exact(double temperatureC) {
        return perSecondAtReference * Exp.exp(exponent - exponentFallK / (temperatureC + ZERO_C_IN_K));
    }

    @Override
    public double[] breaksC() {
        return breaksC;
    }

    /** Whether the process stops at some temperature. */
    public boolean stops() {
        return !Double.isInfinite(stopsAboveC);
    }

    /** Activation energy [J/mol]. */
    public double activationEnergy() {
        return activationEnergy;
    }

    /** Reference temperature [C]. */
    public double referenceC() {
        return referenceC;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof ArrheniusLaw that && Arrays.equals(constants(), that.constants());
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(constants());
    }

    @Override
    public String toString() {
        return "ArrheniusLaw" + Arrays.toString(constants());
    }

    private double[] constants() {
        return new double[] {perSecondAtReference, referenceC, activationEnergy, floorC, stopsAboveC};
    }
}
