package dev.slowpoint.food;

import dev.slowpoint.parameters.ParameterSet;
import dev.slowpoint.parameters.ParameterSets;

/** The thermal model and the catalogue of the current parameter set, so that tests check the numbers that are used. */
final class ReleasedModel {

    private static final ParameterSet SET = ParameterSets.released().current();

    static final ThermalModel MODEL = SET.knowledge().thermal();
    static final Catalogue CATALOGUE = SET.knowledge().catalogue();

    private ReleasedModel() {}

    static Food food(String id) {
        return CATALOGUE.find(id).orElseThrow();
    }

    /** Diffusivity from parallel conductivity and apparent heat [m2/s]. */
    static double diffusivity(ThermalProperties properties, double temperatureC) {
        return properties.parallelConductivity(temperatureC)
                / (properties.density(temperatureC) * properties.apparentHeat(temperatureC));
    }
}
