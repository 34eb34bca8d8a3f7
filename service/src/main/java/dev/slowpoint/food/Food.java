package dev.slowpoint.food;

import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * One food of the catalogue, or one that a caller described.
 *
 * @param id plain name in kebab-case, unique in a parameter set
 * @param name readable name
 * @param group decides freezing point formula and hazards
 * @param composition normalised mass fractions
 * @param freezingPointC initial freezing point [C], below zero; of a dry or cooked food the estimate used for it
 * @param textureClass id of the class in the texture model; empty when texture is not modelled
 * @param forms in which it may be asked for
 * @param condition raw, or cooked when the composition is that of the cooked food
 * @param hazards plain ids of what can be in it, for the catalogue
 * @param origins where the composition and the freezing point come from
 * @param doneness core temperatures at which it is usually eaten; empty when none is known
 * @param wild whether it is a fish or game that may carry parasites from what it ate; a fish of unknown origin counts as
 *     wild
 */
public record Food(
        String id,
        String name,
        FoodGroup group,
        Composition composition,
        double freezingPointC,
        Optional<String> textureClass,
        Set<Form> forms,
        Condition condition,
        List<String> hazards,
        List<Provenance> origins,
        Optional<DonenessRange> doneness,
        boolean wild) {

    /** The form of this food when nothing was said: intact if it comes so, else the least handled one. */
    public Form usualForm() {
        return forms.stream().min(Comparator.naturalOrder()).orElse(Form.INTACT);
    }

    /** The id of a food that a caller described. */
    public static final String DESCRIBED = "described";

    /** Copies the collections. */
    public Food {
        forms = Set.copyOf(forms);
        hazards = List.copyOf(hazards);
        origins = List.copyOf(origins);
    }

    /**
     * A food of which only this is known: any form may be asked for, and a fish counts as wild.
     *
     * @param composition normalised mass fractions
     * @param group decides freezing point formula and hazards
     * @param condition raw, or cooked when the composition is that of the cooked food
     * @param textureClass id of the class in the texture model, if one fits
     * @param freezing gives the freezing point
     */
    public static Food described(
            Composition composition,
            FoodGroup group,
            Condition condition,
            Optional<String> textureClass,
            FreezingModel freezing) {
        return new Food(
                DESCRIBED,
                "Described food",
                group,
                composition,
                freezing.freezingPointC(group, composition),
                textureClass,
                EnumSet.allOf(Form.class),
                condition,
                List.of(),
                List.of(new Provenance(
                        Mark.DERIVED, "composition as described; freezing point from its water, Chang and Tao 1981")),
                Optional.empty(),
                group == FoodGroup.FISH);
    }
}
