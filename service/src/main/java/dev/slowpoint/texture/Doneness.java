package dev.slowpoint.texture;

import dev.slowpoint.food.Provenance;

/**
 * What a word for doneness means in core temperature. A matter of taste, never of safety, and the scales differ: the
 * trade calls a steak medium some ten kelvin below the scale of meat research.
 *
 * @param scale the scale the word belongs to, kebab-case
 * @param term the word, kebab-case
 * @param lowC lowest core temperature [C] the word covers
 * @param highC highest core temperature [C] the word covers
 * @param description how it looks or feels, may be empty
 * @param provenance where the range comes from
 */
public record Doneness(
        String scale, String term, double lowC, double highC, String description, Provenance provenance) {

    /** Refuses a range that runs backwards. */
    public Doneness {
        if (!(lowC <= highC)) {
            throw new IllegalArgumentException(
                    "doneness " + term + " of " + scale + " runs from " + lowC + " to " + highC + " C");
        }
    }
}
