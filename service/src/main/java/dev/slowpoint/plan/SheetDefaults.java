package dev.slowpoint.plan;

import java.util.Map;
import java.util.NavigableMap;
import java.util.Objects;
import java.util.TreeMap;

/**
 * What holds for sheets of portions.
 *
 * @param band width of a band of sizes in metric units [m]
 * @param bandUs the same in US units [m]
 * @param halvings how often a band is halved at most
 * @param otherSize step of the sizes that are not banded [m]
 * @param timeStep step of times on a card [s]
 * @param setpointStepK step of setpoints in Celsius [K]
 * @param setpointStepF step of setpoints in Fahrenheit [degF]
 * @param reference size across for which one setpoint for each food is chosen [m]
 * @param freezerC temperature of a freezer [C]
 * @param factors one-sided tolerance factors by number of measured pieces
 */
public record SheetDefaults(
        double band,
        double bandUs,
        int halvings,
        double otherSize,
        double timeStep,
        double setpointStepK,
        double setpointStepF,
        double reference,
        double freezerC,
        NavigableMap<Integer, Double> factors) {

    /** Copies the map. */
    public SheetDefaults {
        factors = new TreeMap<>(factors);
    }

    /** Fewest measured pieces that say something of those not measured. */
    public int fewestPieces() {
        return factors.firstKey();
    }

    /** The factor of a sample; of the next smaller one in the table, which is the safe side. */
    double factor(int pieces) {
        Map.Entry<Integer, Double> row = factors.floorEntry(pieces);
        return Objects.requireNonNull(row, "a sample of so few pieces says nothing of others")
                .getValue();
    }
}
