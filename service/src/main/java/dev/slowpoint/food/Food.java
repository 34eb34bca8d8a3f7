package dev.slowpoint.food;

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
        List<Provenance> origins) {

    /** Copies the collections. */
    public Food {
        forms = Set.copyOf(forms);
        hazards = List.copyOf(hazards);
        origins = List.copyOf(origins);
    }
}
