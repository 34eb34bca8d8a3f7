package dev.slowpoint.heat;

/** What warms and cools the water of a bath, besides the food. */
final class Heater {

    /**
     * In what time the thermostat makes good a missing kelvin, as far as the heater can [s]: slower than a good one, so that
     * a sag is rather over- than underestimated. Fitted: a faster one, tried first, sagged by less than the independently
     * simulated baths of {@code WaterBathTest} wherever the heater was not at its limit.
     */
    private static final double RESPONSE = 60.0;

    private final WaterBath bath;
    private final double holding;
    private final double gain;
    private final double roomPressure;

    Heater(WaterBath bath) {
        this.bath = bath;
        this.roomPressure = Vapour.ROOM_HUMIDITY * Vapour.pressure(bath.roomC());
        this.holding = losses(bath.setpointC());
        this.gain = bath.heatCapacity() / RESPONSE;
    }

    /** Power of the heater [W] with the water at a temperature. */
    double power(double waterC) {
        return Math.min(Math.max(holding + gain * (bath.setpointC() - waterC), 0.0), bath.heaterPower());
    }

    /** Rise of that power per kelvin of the water [W/K], zero or less. */
    double powerSlope(double waterC) {
        double free = holding + gain * (bath.setpointC() - waterC);
        return free > 0.0 && free < bath.heaterPower() ? -gain : 0.0;
    }

    /** Heat lost through walls and as vapour [W]. */
    double losses(double waterC) {
        return bath.lossCoefficient() * (waterC - bath.roomC())
                + bath.openSurface() * Vapour.heatFlux(waterC, bath.roomC());
    }

    /** Rise of the losses per kelvin of the water [W/K]. */
    double lossesSlope(double waterC) {
        double pressure = Vapour.pressure(waterC);
        double evaporation = pressure > roomPressure ? Vapour.pressureSlope(waterC, pressure) : 0.0;
        return bath.lossCoefficient() + bath.openSurface() * Vapour.HEAT_PER_PA * evaporation;
    }

    /** Heat capacity of water and vessel [J/K]. */
    double capacity() {
        return bath.heatCapacity();
    }
}
