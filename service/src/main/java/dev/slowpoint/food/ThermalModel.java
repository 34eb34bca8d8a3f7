package dev.slowpoint.food;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * From what a food is made of to how it takes up heat: the properties of the components (Choi and Okos 1986), their
 * mixing rules, and freezing.
 *
 * <p>Not in the model: the melting of fat, which takes two to three times the specific heat of the polynomial between
 * about 0 and 45 C (Morley 1972), and air in fruit. Fat belly, short ribs and the skin of duck lag more than computed.
 */
public final class ThermalModel {

    private final List<ComponentProperties> components;
    private final ComponentProperties water;
    private final ComponentProperties ice;
    private final FreezingModel freezing;
    private final ConductivityBias bias;
    private final double referenceTemperatureC;
    private final double lowestC;
    private final double highestC;

    /**
     * A model of all components.
     *
     * @param components each component once, in any order
     * @param freezing how water freezes
     * @param bias what to multiply conductivities with
     * @param referenceTemperatureC at which the thawed density is taken that turns heat per mass into heat per volume
     */
    public ThermalModel(
            List<ComponentProperties> components,
            FreezingModel freezing,
            ConductivityBias bias,
            double referenceTemperatureC) {
        Map<Component, ComponentProperties> byComponent = new EnumMap<>(Component.class);
        for (ComponentProperties properties : components) {
            if (byComponent.put(properties.component(), properties) != null) {
                throw new IllegalArgumentException("properties of " + properties.component() + " were given twice");
            }
        }
        double lowest = Double.NEGATIVE_INFINITY;
        double highest = Double.POSITIVE_INFINITY;
        for (Component component : Component.values()) {
            ComponentProperties properties = required(byComponent, component);
            lowest = Math.max(lowest, properties.lowestC());
            if (component != Component.ICE) {
                highest = Math.min(highest, properties.highestC());
            }
        }
        this.components = List.copyOf(byComponent.values());
        this.water = required(byComponent, Component.WATER);
        this.ice = required(byComponent, Component.ICE);
        this.freezing = freezing;
        this.bias = bias;
        this.referenceTemperatureC = referenceTemperatureC;
        this.lowestC = lowest;
        this.highestC = highest;
        if (!(referenceTemperatureC >= 0.0 && referenceTemperatureC <= highest)) {
            throw new IllegalArgumentException("reference temperature " + referenceTemperatureC
                    + " C of the density must lie between 0 and " + highest + " C");
        }
    }

    private static ComponentProperties required(Map<Component, ComponentProperties> byComponent, Component component) {
        ComponentProperties properties = byComponent.get(component);
        if (properties == null) {
            throw new IllegalArgumentException("properties of " + component + " are missing");
        }
        return properties;
    }

    /**
     * The properties of one food.
     *
     * @param composition mass fractions
     * @param freezingPointC initial freezing point [C], below zero
     * @param conductivityFactor what to multiply the conductivity with [-], see {@link #bias}
     */
    public ThermalProperties properties(Composition composition, double freezingPointC, double conductivityFactor) {
        return new ThermalProperties(this, composition, freezingPointC, conductivityFactor);
    }

    /** The properties of a food at its own freezing point. */
    public ThermalProperties properties(Food food, double conductivityFactor) {
        return properties(food.composition(), food.freezingPointC(), conductivityFactor);
    }

    /** All components, in the order of {@link Component}. */
    public List<ComponentProperties> components() {
        return components;
    }

    /** How water freezes. */
    public FreezingModel freezing() {
        return freezing;
    }

    /** What to multiply conductivities with. */
    public ConductivityBias bias() {
        return bias;
    }

    /** At which the density is taken that turns heat per mass into heat per volume [C]. */
    public double referenceTemperatureC() {
        return referenceTemperatureC;
    }

    /** Lowest temperature at which the properties hold [C]; heat contents count from here. */
    public double lowestC() {
        return lowestC;
    }

    /** Highest temperature at which the properties hold [C]. */
    public double highestC() {
        return highestC;
    }

    ComponentProperties water() {
        return water;
    }

    ComponentProperties ice() {
        return ice;
    }
}
