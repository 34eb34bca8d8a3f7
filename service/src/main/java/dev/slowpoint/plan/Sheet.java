package dev.slowpoint.plan;

import dev.slowpoint.plan.Step.ChillMedium;
import java.util.EnumSet;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * What all portions of a sheet have in common, beside what stands in the question of each.
 *
 * @param cards which cards are wanted; if empty, the one that fits the start of each portion
 * @param units that people set and read
 * @param chillIn what is cooled in
 * @param storeC temperature at which it is kept, and warmed up from [C]; that of a fridge if empty
 * @param fridgeC start of a cook from the fridge where the portion is frozen [C]; that of a fridge if empty
 * @param freezerC start of a cook from frozen where the portion is not [C]; that of a freezer if empty
 */
public record Sheet(
        Set<Card> cards,
        DisplayUnits units,
        ChillMedium chillIn,
        OptionalDouble storeC,
        OptionalDouble fridgeC,
        OptionalDouble freezerC) {

    /** Copies the set. */
    public Sheet {
        cards = cards.isEmpty() ? EnumSet.noneOf(Card.class) : EnumSet.copyOf(cards);
    }
}
