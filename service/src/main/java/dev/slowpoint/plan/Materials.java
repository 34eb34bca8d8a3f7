package dev.slowpoint.plan;

import dev.slowpoint.food.ConductivityBias;
import dev.slowpoint.food.Food;
import dev.slowpoint.food.ThermalModel;
import dev.slowpoint.food.ThermalProperties;
import dev.slowpoint.heat.Material;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * The thermal tables of the foods asked for lately; making one takes longer than a plan, and most questions are about few
 * foods. Bounded, because callers may describe foods of their own.
 */
final class Materials {

    private static final int KEPT = 160;

    private final ThermalModel thermal;
    private final Map<Key, Tables> tables = new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Key, Tables> eldest) {
            return size() > KEPT;
        }
    };

    private record Key(Object composition, double freezingPointC) {}

    private record Tables(Material nominal, Material pessimistic, Material optimistic) {}

    Materials(ThermalModel thermal) {
        this.thermal = thermal;
    }

    /** The material of a food with the conductivity factor of a corner. */
    Material of(Food food, Corner corner) {
        Tables found = tables(food);
        return switch (corner) {
            case NOMINAL -> found.nominal();
            case EARLY -> found.optimistic();
            case LATE -> found.pessimistic();
        };
    }

    private Tables tables(Food food) {
        Key key = new Key(food.composition(), food.freezingPointC());
        synchronized (tables) {
            Tables known = tables.get(key);
            if (known != null) {
                return known;
            }
        }
        Tables made = make(food);
        synchronized (tables) {
            tables.put(key, made);
        }
        return made;
    }

    private Tables make(Food food) {
        ConductivityBias bias = thermal.bias();
        ThermalProperties properties = thermal.properties(food, 1.0);
        Material uncorrected = Material.tabulated(
                properties.lowestC(),
                properties.highestC(),
                properties::conductivity,
                properties::volumetricEnthalpy,
                properties.kinksC());
        return new Tables(
                uncorrected.withConductivityFactor(bias.nominal()),
                uncorrected.withConductivityFactor(bias.pessimistic()),
                uncorrected.withConductivityFactor(bias.optimistic()));
    }
}
