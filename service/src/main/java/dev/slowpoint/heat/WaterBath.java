package dev.slowpoint.heat;

import java.util.OptionalDouble;

/**
 * A stirred water bath with a heater of limited power, which the food cools as it takes up heat.
 *
 * @param startC temperature of the water at the start of the stage [C]; empty to go on where the stage before left it
 * @param setpointC temperature the heater holds it at [C]
 * @param heatCapacity of water and vessel [J/K], greater than zero
 * @param heaterPower the most the heater gives [W], zero when it is off
 * @param lossCoefficient heat lost through walls and lid per kelvin above the room [W/K], zero or more
 * @param openSurface water surface from which vapour leaves [m2], zero or more
 * @param roomC temperature of the room [C]
 * @param loadVolume of all food in the bath that goes through what this body goes through, this body included [m3],
 *     zero or more
 */
public record WaterBath(
        OptionalDouble startC,
        double setpointC,
        double heatCapacity,
        double heaterPower,
        double lossCoefficient,
        double openSurface,
        double roomC,
        double loadVolume) {

    /** Heat capacity of water [J/(kg K)] at 40 C (Choi and Okos 1986, component equations). */
    public static final double WATER_J_PER_KG_K = 4181.0;

    /** Any volume of water does for a bath that takes up no heat from food [J/K]. */
    private static final double ANY_HEAT_CAPACITY = 1000.0 * WATER_J_PER_KG_K;

    /**
     * Water without a heater that nears a room exponentially, whatever food lies in it.
     *
     * @param startC of the water [C]
     * @param roomC of the room [C]
     * @param timeConstant [s], greater than zero
     */
    public static WaterBath cooling(double startC, double roomC, double timeConstant) {
        return new WaterBath(
                OptionalDouble.of(startC),
                roomC,
                ANY_HEAT_CAPACITY,
                0.0,
                ANY_HEAT_CAPACITY / timeConstant,
                0.0,
                roomC,
                0.0);
    }

    /** Refuses what is not finite or out of range. */
    public WaterBath {
        if (!(heatCapacity > 0.0) || Double.isInfinite(heatCapacity)) {
            throw new IllegalArgumentException("heatCapacity = " + heatCapacity + " J/K must be finite and above zero");
        }
        if (!Double.isFinite(setpointC) || !Double.isFinite(roomC)) {
            throw new IllegalArgumentException(
                    "setpointC = " + setpointC + " and roomC = " + roomC + " must be finite");
        }
        for (double value : new double[] {heaterPower, lossCoefficient, openSurface, loadVolume}) {
            if (!(value >= 0.0) || Double.isInfinite(value)) {
                throw new IllegalArgumentException("heater " + heaterPower + " W, loss " + lossCoefficient
                        + " W/K, open surface " + openSurface + " m2 and load " + loadVolume
                        + " m3 must be finite, zero or more");
            }
        }
    }
}
