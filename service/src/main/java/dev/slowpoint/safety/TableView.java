package dev.slowpoint.safety;

import java.util.OptionalDouble;

/**
 * What a published table says of a history: no credit for the way up, any row of the table will do.
 *
 * @param table id of the table
 * @param rowC temperature [C] of the row that is best met, or nearest to being met
 * @param requiredS time that row asks for [s]; zero for an instant row
 * @param dwellS time spent at or above it [s]
 * @param metAt first time [s] at which any row was met; infinity when none is
 */
public record TableView(String table, double rowC, double requiredS, double dwellS, double metAt) {

    /** Dwell beyond what the row asks for [s]; below zero when it is not met. */
    public double marginS() {
        return dwellS - requiredS;
    }

    /** Dwell over what the row asks for; empty for an instant row. */
    public OptionalDouble marginRatio() {
        return requiredS > 0.0 ? OptionalDouble.of(dwellS / requiredS) : OptionalDouble.empty();
    }
}
