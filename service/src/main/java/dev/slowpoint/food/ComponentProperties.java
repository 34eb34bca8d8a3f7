package dev.slowpoint.food;

import java.util.List;

/**
 * Thermal properties of one component, each a polynomial in the temperature in degrees Celsius.
 *
 * @param component what it is about
 * @param conductivity [W/(m K)]
 * @param density [kg/m3]
 * @param specificHeat at 0 C and above [J/(kg K)]
 * @param specificHeatBelowZero below 0 C [J/(kg K)]; differs from {@code specificHeat} for water alone, which stays
 *     liquid down to the freezing point of the food and in part below it
 * @param lowestC lowest temperature at which all of these hold [C]
 * @param highestC highest temperature at which all of these hold [C]
 * @param origins where the polynomials come from
 */
public record ComponentProperties(
        Component component,
        Polynomial conductivity,
        Polynomial density,
        Polynomial specificHeat,
        Polynomial specificHeatBelowZero,
        double lowestC,
        double highestC,
        List<Provenance> origins) {

    /** Copies the list. */
    public ComponentProperties {
        origins = List.copyOf(origins);
    }

    /** Specific heat at a temperature [J/(kg K)]. */
    public double specificHeatAt(double temperatureC) {
        return (temperatureC < 0.0 ? specificHeatBelowZero : specificHeat).at(temperatureC);
    }
}
