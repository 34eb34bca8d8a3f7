package dev.slowpoint.safety;

import dev.slowpoint.food.FoodGroup;
import dev.slowpoint.food.Form;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * One line of a rule: for which foods, pieces and purposes it asks for what.
 *
 * @param rule id of the rule
 * @param basis whether the rule itself asks it
 * @param groups foods
 * @param pieces whole pieces, the others, or both
 * @param purposes of the cook
 * @param table the table with all its fat columns, if it has one
 * @param requirement what it asks for, with the strictest fat column
 */
public record Provision(
        String rule,
        Basis basis,
        Set<FoodGroup> groups,
        Pieces pieces,
        Set<Purpose> purposes,
        Optional<TimeTable> table,
        Requirement requirement) {

    /** Whose demand a provision is. */
    public enum Basis {
        /** The rule's own. */
        OWN,
        /** Not the rule's, which names none that was read: the strictest benchmark that was read stands in. */
        FALLBACK
    }

    /** Which pieces a provision speaks of. */
    public enum Pieces {
        /** All. */
        ANY,
        /** Whole pieces, nothing through their surface. */
        INTACT,
        /** Pieces whose inside must be treated like their outside. */
        NON_INTACT,
        /** Pieces filled with something else. */
        STUFFED
    }

    /** Copies the sets. */
    public Provision {
        groups = Set.copyOf(groups);
        purposes = Set.copyOf(purposes);
    }

    /** Whether it speaks of such a food and purpose. */
    boolean speaksOf(String ruleId, FoodGroup group, Form form, Purpose purpose) {
        boolean piece = switch (pieces) {
            case ANY -> true;
            case INTACT -> form.intact();
            case NON_INTACT -> !form.intact();
            case STUFFED -> form == Form.STUFFED;
        };
        return piece && rule.equals(ruleId) && groups.contains(group) && purposes.contains(purpose);
    }

    /**
     * What it asks for a food.
     *
     * @param fatPercent [%] of the mass
     * @param surfaceOnlyAllowed whether eater and purpose allow an answer by the surface alone
     * @param heatAdapts whether the food lets bacteria grow tougher when heated slowly
     */
    Requirement forFood(OptionalDouble fatPercent, boolean surfaceOnlyAllowed, boolean heatAdapts) {
        Requirement r = requirement;
        return new Requirement(
                r.id(),
                r.hazard(),
                r.target(),
                r.wholeTreatment(),
                r.line(),
                table.map(t -> t.column(fatPercent)),
                r.floorC(),
                r.advisory(),
                r.surfaceOnlyAllowed() && surfaceOnlyAllowed,
                r.heatAdapts() && heatAdapts,
                r.provenance(),
                r.note());
    }
}
