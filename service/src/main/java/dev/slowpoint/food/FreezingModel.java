package dev.slowpoint.food;

/**
 * How much of the water freezes, at what temperature it begins, and what heat that takes.
 *
 * @param boundWaterPerProtein water that never freezes, per mass of protein [kg/kg]
 * @param latentHeat of the freezing of water [J/kg], taken as constant
 * @param fleshFreezingPointK initial freezing point [K] of meat, fish and egg over the mass fraction of water
 * @param plantFreezingPointK initial freezing point [K] of fruit and vegetables over the mass fraction of water
 * @param highestPlantFreezingPointC upper bound for plants [C]: their polynomial passes 0 C for wet vegetables
 */
public record FreezingModel(
        double boundWaterPerProtein,
        double latentHeat,
        Polynomial fleshFreezingPointK,
        Polynomial plantFreezingPointK,
        double highestPlantFreezingPointC) {

    private static final double ZERO_CELSIUS_K = 273.15;

    /** Refuses constants outside nature. */
    public FreezingModel {
        if (!(boundWaterPerProtein >= 0.0 && boundWaterPerProtein < 2.0)) {
            throw new IllegalArgumentException(
                    "bound water " + boundWaterPerProtein + " kg per kg of protein must lie between 0 and 2");
        }
        if (!(latentHeat > 3.0e5 && latentHeat < 3.7e5)) {
            throw new IllegalArgumentException(
                    "latent heat of water " + latentHeat + " J/kg must be near 334000. Maybe it was given in kJ/kg?");
        }
        if (!(highestPlantFreezingPointC < 0.0)) {
            throw new IllegalArgumentException(
                    "upper bound " + highestPlantFreezingPointC + " C of a freezing point must lie below zero");
        }
    }

    /** Water that can freeze [kg/kg of food]; zero in a food so dry that protein binds all of it. */
    public double freezableWater(Composition composition) {
        return Math.max(0.0, composition.water() - boundWaterPerProtein * composition.protein());
    }

    /**
     * Initial freezing point of a food of which only the composition is known [C], always below zero.
     *
     * <p>Good to a few tenths of a kelvin for meat and fish; for plants, whose sugar it does not see, to about half a
     * kelvin. Prefer a measured value where there is one.
     */
    public double freezingPointC(FoodGroup group, Composition composition) {
        return group.plant()
                ? Math.min(plantFreezingPointK.at(composition.water()) - ZERO_CELSIUS_K, highestPlantFreezingPointC)
                : fleshFreezingPointK.at(composition.water()) - ZERO_CELSIUS_K;
    }
}
