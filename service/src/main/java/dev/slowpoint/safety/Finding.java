package dev.slowpoint.safety;

import java.util.Optional;

/**
 * What a history did for one requirement, up to the time it was judged at.
 *
 * @param requirement what was asked
 * @param deliveredLog10 kill that counts, at most {@link SafetyJudge#MOST_CREDIT_LOG10}; whole treatments where the
 *     requirement is one
 * @param growthLog10 predicted growth before the floor was reached
 * @param marginLog10 delivered less required less growth; below zero when not met
 * @param marginRatio (delivered without limit, less growth) over required: for sizing, independent of temperature
 * @param marginIfHeatAdaptedLog10 the margin if slow heating made the cells tougher; the same as the margin where that
 *     does not apply
 * @param integratedAt first time [s] at which the margin is not below zero; infinity when never
 * @param table the legal view, where the rule is a table
 * @param metAt first time [s] at which the margin is not below zero and the table, if any, is met; infinity when never
 * @param met whether that was so at the time judged
 */
public record Finding(
        Requirement requirement,
        double deliveredLog10,
        double growthLog10,
        double marginLog10,
        double marginRatio,
        double marginIfHeatAdaptedLog10,
        double integratedAt,
        Optional<TableView> table,
        double metAt,
        boolean met) {

    /** The margin in words. */
    public MarginBand band() {
        return MarginBand.of(this);
    }
}
