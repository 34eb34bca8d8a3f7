package dev.slowpoint.heat;

/** Vapour over warm water. */
public final class Vapour {

    /** Relative humidity of a kitchen (our own choice; it hardly matters). */
    static final double ROOM_HUMIDITY = 0.5;

    /**
     * Heat that leaves a still water surface per area and pressure difference [W/(m2 Pa)]: Carrier's equation for pools in
     * the form of the ASHRAE handbook at no air movement, 89 W/m2 per kPa, from memory.
     */
    static final double HEAT_PER_PA = 0.089;

    /** Antoine equation of water, 1 to 100 C, in mmHg and C; constants from memory. */
    private static final double A = 8.07131;

    private static final double B = 1730.63;
    private static final double C = 233.426;
    private static final double PA_PER_MMHG = 133.322;

    private Vapour() {}

    /** Saturation pressure [Pa] at a temperature from 0 to 100 C. */
    public static double pressure(double temperatureC) {
        return PA_PER_MMHG * Exp.pow10(A - B / (C + temperatureC));
    }

    /** Temperature [C] at which water boils under a pressure [Pa]. */
    public static double boilingC(double pressure) {
        return B / (A - StrictMath.log10(pressure / PA_PER_MMHG)) - C;
    }

    /** Rise of the saturation pressure per kelvin [Pa/K], from the pressure at that temperature. */
    static double pressureSlope(double temperatureC, double pressure) {
        double d = C + temperatureC;
        return pressure * Exp.LN_10 * B / (d * d);
    }

    /** Heat that leaves an open water surface as vapour [W/m2], in a room of the given temperature and half its humidity. */
    public static double heatFlux(double waterC, double roomC) {
        return HEAT_PER_PA * Math.max(pressure(waterC) - ROOM_HUMIDITY * pressure(roomC), 0.0);
    }
}
