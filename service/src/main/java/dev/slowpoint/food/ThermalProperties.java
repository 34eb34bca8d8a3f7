package dev.slowpoint.food;

/**
 * How one food conducts and stores heat, between {@link #lowestC} and {@link #highestC}.
 *
 * <p>Thawed, conductivity is the volume-weighted mean of the components. Frozen, ice lies dispersed in the rest (Levy
 * 1981, a form of Maxwell and Eucken), which Pham and Willix 1989 and Fricke and Becker 2001 found best. The ice
 * fraction is that of Miles, {@code (w - b)(1 - Tf / T)}: an ideal solution, of which the water bound to protein takes
 * no part. Heat content is the exact integral of sensible and latent heat.
 *
 * <p>A body in the solver does not shrink or swell, so one density must serve all temperatures, or energy would be lost
 * as ice forms: that of the thawed food at the reference temperature of the model.
 */
public final class ThermalProperties {

    private final ThermalModel model;
    private final Composition composition;
    private final double freezingPointC;
    private final double conductivityFactor;
    private final double freezableWater;
    private final double referenceDensity;
    private final Polynomial thawedHeat;
    private final Polynomial thawedHeatBelowZero;
    private final Polynomial iceLessWaterHeat;
    private final double enthalpyAtFreezing;

    ThermalProperties(ThermalModel model, Composition composition, double freezingPointC, double conductivityFactor) {
        if (!(freezingPointC > model.lowestC() && freezingPointC < 0.0)) {
            throw new IllegalArgumentException("freezing point " + freezingPointC + " C must lie between "
                    + model.lowestC() + " and 0 C. Maybe its sign was lost?");
        }
        if (!(conductivityFactor > 0.0 && conductivityFactor <= 2.0)) {
            throw new IllegalArgumentException("conductivity factor " + conductivityFactor
                    + " must lie above 0 and not above 2. Maybe it was given in percent?");
        }
        this.model = model;
        this.composition = composition;
        this.freezingPointC = freezingPointC;
        this.conductivityFactor = conductivityFactor;
        this.freezableWater = model.freezing().freezableWater(composition);
        Polynomial above = Polynomial.ZERO;
        Polynomial below = Polynomial.ZERO;
        for (ComponentProperties each : model.components()) {
            double fraction = each.component().fractionIn(composition);
            above = above.plus(fraction, each.specificHeat());
            below = below.plus(fraction, each.specificHeatBelowZero());
        }
        this.thawedHeat = above;
        this.thawedHeatBelowZero = below;
        this.iceLessWaterHeat =
                model.ice().specificHeatBelowZero().plus(-1.0, model.water().specificHeatBelowZero());
        this.enthalpyAtFreezing = frozenHeat(freezingPointC) - frozenHeat(model.lowestC());
        this.referenceDensity = density(model.referenceTemperatureC());
    }

    /** Initial freezing point [C]: ice is there below it. */
    public double freezingPointC() {
        return freezingPointC;
    }

    /** Where heat content or conductivity has a kink, rising [C]: the freezing point, and 0 C for water. */
    public double[] kinksC() {
        return new double[] {freezingPointC, 0.0};
    }

    /** Lowest temperature at which this holds [C]. */
    public double lowestC() {
        return model.lowestC();
    }

    /** Highest temperature at which this holds [C]. */
    public double highestC() {
        return model.highestC();
    }

    /** Density of the thawed food at the reference temperature [kg/m3], used for heat per volume at all temperatures. */
    public double referenceDensity() {
        return referenceDensity;
    }

    /** Mass fraction of ice [kg/kg of food]. */
    public double iceFraction(double temperatureC) {
        return temperatureC < freezingPointC ? freezableWater * (1.0 - freezingPointC / temperatureC) : 0.0;
    }

    /** Density with what ice there is [kg/m3]. */
    public double density(double temperatureC) {
        requireInRange(temperatureC);
        return 1.0 / specificVolume(temperatureC);
    }

    /** Conductivity for the solver, with the conductivity factor in it [W/(m K)]. */
    public double conductivity(double temperatureC) {
        return conductivityFactor * dispersedConductivity(temperatureC);
    }

    /** Conductivity if the components lay side by side in the flow of heat: the upper bound [W/(m K)]. */
    public double parallelConductivity(double temperatureC) {
        requireInRange(temperatureC);
        double sum = 0.0;
        for (ComponentProperties each : model.components()) {
            sum += volume(each, temperatureC) * each.conductivity().at(temperatureC);
        }
        return sum / specificVolume(temperatureC);
    }

    /** Conductivity if the components lay one behind the other: the lower bound [W/(m K)]. */
    public double seriesConductivity(double temperatureC) {
        requireInRange(temperatureC);
        double sum = 0.0;
        for (ComponentProperties each : model.components()) {
            sum += volume(each, temperatureC) / each.conductivity().at(temperatureC);
        }
        return specificVolume(temperatureC) / sum;
    }

    /** Conductivity with ice dispersed in the rest; without ice the parallel one [W/(m K)]. */
    public double dispersedConductivity(double temperatureC) {
        requireInRange(temperatureC);
        double restVolume = 0.0;
        double restSum = 0.0;
        double iceVolume = 0.0;
        for (ComponentProperties each : model.components()) {
            double volume = volume(each, temperatureC);
            if (each.component() == Component.ICE) {
                iceVolume = volume;
            } else {
                restVolume += volume;
                restSum += volume * each.conductivity().at(temperatureC);
            }
        }
        double rest = restSum / restVolume;
        return iceVolume > 0.0
                ? levy(model.ice().conductivity().at(temperatureC), rest, iceVolume / (iceVolume + restVolume))
                : rest;
    }

    /** Specific heat without that of freezing [J/(kg K)]. */
    public double sensibleHeat(double temperatureC) {
        requireInRange(temperatureC);
        double sum = 0.0;
        for (ComponentProperties each : model.components()) {
            sum += fraction(each, temperatureC) * each.specificHeatAt(temperatureC);
        }
        return sum;
    }

    /** Heat of freezing per kelvin [J/(kg K)]; zero at and above the freezing point. */
    public double latentHeatPerKelvin(double temperatureC) {
        return temperatureC < freezingPointC
                ? -freezableWater * model.freezing().latentHeat() * freezingPointC / (temperatureC * temperatureC)
                : 0.0;
    }

    /** Apparent specific heat: sensible and latent together, the slope of {@link #enthalpy} [J/(kg K)]. */
    public double apparentHeat(double temperatureC) {
        return sensibleHeat(temperatureC) + latentHeatPerKelvin(temperatureC);
    }

    /** Heat content above {@link #lowestC} [J/kg]; strictly rising. */
    public double enthalpy(double temperatureC) {
        requireInRange(temperatureC);
        if (temperatureC < freezingPointC) {
            return frozenHeat(temperatureC) - frozenHeat(model.lowestC());
        }
        double warming =
                temperatureC < 0.0 ? thawedHeatBelowZero.integral(temperatureC) : thawedHeat.integral(temperatureC);
        return enthalpyAtFreezing - thawedHeatBelowZero.integral(freezingPointC) + warming;
    }

    /** Heat content above {@link #lowestC} per volume at the reference density [J/m3]; strictly rising. */
    public double volumetricEnthalpy(double temperatureC) {
        return referenceDensity * enthalpy(temperatureC);
    }

    /**
     * An integral of the apparent heat below the freezing point, up to a constant. With the ice fraction
     * {@code a (1 - Tf / T)} the product of ice and a quadratic is a cubic less {@code a Tf} times a quadratic and a
     * logarithm, and the latent part is {@code a L Tf / T}.
     */
    private double frozenHeat(double temperatureC) {
        Polynomial d = iceLessWaterHeat;
        double overTemperature =
                d.c0() * StrictMath.log(-temperatureC) + (d.c1() + d.c2() / 2.0 * temperatureC) * temperatureC;
        return thawedHeatBelowZero.integral(temperatureC)
                + freezableWater
                        * (d.integral(temperatureC)
                                - freezingPointC * overTemperature
                                + model.freezing().latentHeat() * freezingPointC / temperatureC);
    }

    private double fraction(ComponentProperties each, double temperatureC) {
        return switch (each.component()) {
            case ICE -> iceFraction(temperatureC);
            case WATER -> composition.water() - iceFraction(temperatureC);
            default -> each.component().fractionIn(composition);
        };
    }

    private double volume(ComponentProperties each, double temperatureC) {
        return fraction(each, temperatureC) / each.density().at(temperatureC);
    }

    private double specificVolume(double temperatureC) {
        double sum = 0.0;
        for (ComponentProperties each : model.components()) {
            sum += volume(each, temperatureC);
        }
        return sum;
    }

    /**
     * Levy 1981, from memory: conductivity of a phase dispersed in another. Gives the values of Sweat, Haugh and
     * Stadelman 1973 for frozen chicken within 5 %.
     */
    private static double levy(double dispersed, double continuous, double dispersedVolume) {
        double ratio = dispersed / continuous;
        double less = ratio - 1.0;
        double sigma = less * less / ((ratio + 1.0) * (ratio + 1.0) + ratio / 2.0);
        double a = 2.0 / sigma - 1.0 + 2.0 * dispersedVolume;
        double f = 0.5 * (a - Math.sqrt(a * a - 8.0 * dispersedVolume / sigma));
        return continuous * (2.0 + ratio + 2.0 * less * f) / (2.0 + ratio - less * f);
    }

    private void requireInRange(double temperatureC) {
        if (!(temperatureC >= model.lowestC() && temperatureC <= model.highestC())) {
            throw new IllegalArgumentException("temperature " + temperatureC + " C is outside " + model.lowestC()
                    + " to " + model.highestC() + " C, where the properties hold. Maybe it was given in Fahrenheit?");
        }
    }
}
