package dev.slowpoint.texture;

import dev.slowpoint.food.Provenance;

/**
 * A dose at which a texture has changed enough to have a name.
 *
 * @param name of the state reached, such as {@code mushy}
 * @param edge what it means for the window
 * @param threshold dose [-], greater than zero
 * @param testedToC temperature [C] above which the law is an extrapolation
 * @param provenance where rate and threshold come from
 * @param confidence how far to trust them
 * @param note remark for readers, may be empty
 */
public record TextureLevel(
        String name,
        Edge edge,
        double threshold,
        double testedToC,
        Provenance provenance,
        Confidence confidence,
        String note) {

    /** Refuses a threshold that is not finite and greater than zero. */
    public TextureLevel {
        if (!(threshold > 0.0) || Double.isInfinite(threshold)) {
            throw new IllegalArgumentException(
                    "threshold = " + threshold + " of " + name + " must be finite and greater than zero");
        }
    }
}
