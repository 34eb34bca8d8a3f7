package dev.slowpoint.food;

/** Other people's formulas for frozen food, independent of the model they check. */
final class PublishedFormulas {

    private static final double BOUND_WATER_PER_PROTEIN = 0.4;
    private static final double LATENT_HEAT_KJ = 333.6;
    private static final double DATUM_C = -40.0;

    private PublishedFormulas() {}

    /** Tchigeov 1979, as printed in the ASHRAE Refrigeration Handbook 2010 (READ): mass fraction of ice. */
    static double tchigeovIce(double water, double freezingPointC, double temperatureC) {
        return 1.105 * water / (1.0 + 0.7138 / Math.log(freezingPointC - temperatureC + 1.0));
    }

    /** Chen 1985 (READ): specific heat of thawed food [J/(kg K)]. */
    static double chenThawedHeat(Composition x) {
        double solids = 1.0 - x.water();
        return 1000.0 * (4.19 - 2.30 * solids - 0.628 * solids * solids * solids);
    }

    /** Chen 1985 (READ): apparent specific heat of frozen food, its sensible part included [J/(kg K)]. */
    static double chenFrozenHeat(Composition x, double freezingPointC, double temperatureC) {
        return 1000.0
                * (1.55
                        + 1.26 * (1.0 - x.water())
                        - freezable(x) * LATENT_HEAT_KJ * freezingPointC / (temperatureC * temperatureC));
    }

    /** Chen 1985 (READ): heat content above -40 C [J/kg]. */
    static double chenEnthalpy(Composition x, double freezingPointC, double temperatureC) {
        double frozenC = Math.min(temperatureC, freezingPointC);
        double frozen = 1000.0
                * (frozenC - DATUM_C)
                * (1.55
                        + 1.26 * (1.0 - x.water())
                        - freezable(x) * LATENT_HEAT_KJ * freezingPointC / (DATUM_C * frozenC));
        return frozen + (temperatureC - frozenC) * chenThawedHeat(x);
    }

    /** Chang and Tao 1981 (READ_CODE): heat content of meat at its freezing point above 227.6 K [J/kg]. */
    static double changAndTaoEnthalpyAtFreezing(double water) {
        return 1000.0 * (9.79246 + 405.096 * water);
    }

    private static double freezable(Composition x) {
        return x.water() - BOUND_WATER_PER_PROTEIN * x.protein();
    }
}
