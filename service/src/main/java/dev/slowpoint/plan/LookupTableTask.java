package dev.slowpoint.plan;

import dev.slowpoint.heat.StartField;
import java.util.Set;

/**
 * A question for a lookup table: one food over ranges of size, setpoint and start. A body of another size keeps its other
 * sizes; an egg keeps its proportions.
 *
 * @param cook the question of one piece: the largest size, the coldest bath, the coldest start, no step after the bath
 * @param across range of the size across the slowest-heating point [m]
 * @param setpointC range of the setpoint [C]
 * @param startC range of the start temperature [C], on one side of the freezing point
 * @param quantities what to tabulate; whatever is modelled, but for what closes a soft texture, if empty
 * @param within how near the table is to be to the plans, as a share of the time
 * @param longest bytes that the table may take as it is written
 */
public record LookupTableTask(
        CookTask cook,
        Ends across,
        Ends setpointC,
        Ends startC,
        Set<LookupTable.Quantity> quantities,
        double within,
        int longest) {

    /** Copies the set. */
    public LookupTableTask {
        quantities = Set.copyOf(quantities);
    }

    /**
     * The ends of a range.
     *
     * @param from the least
     * @param to the greatest, not below the least
     */
    public record Ends(double from, double to) {

        /** Refuses a range that is turned around. */
        public Ends {
            if (!(from <= to)) {
                throw new IllegalArgumentException("a range from " + from + " to " + to + " holds nothing");
            }
        }
    }

    /** The question of one piece. */
    CookTask at(double across, double setpointC, double startC) {
        return cook.with(cook.body().withAcross(across)).from(startC).at(setpointC);
    }

    /** The range of an axis, counted from zero in the order size, setpoint, start. */
    Ends axis(int axis) {
        return switch (axis) {
            case 0 -> across;
            case 1 -> setpointC;
            default -> startC;
        };
    }

    /** Whether it goes in frozen. */
    boolean frozen() {
        return StartField.uniform(startC.to()).lowestC() < cook.food().freezingPointC();
    }
}
