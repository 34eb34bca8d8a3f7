package dev.slowpoint.plan;

import java.util.OptionalDouble;

/**
 * How the pack lies in the bath, as far as it keeps heat out. Only a flat piece (slab or brick) may lie otherwise than
 * free on all sides.
 *
 * @param pileOf packs that lie on each other without water between them, one or more
 * @param oneFaceBlocked one face lies on a tray or against another pack, so that no heat comes through it
 * @param trappedAir thickness of a layer of air in the bag over one face [m], zero for none
 * @param faceInAirC one face is out of the water, in air of this temperature [C]; empty when all is under water
 */
public record Arrangement(int pileOf, boolean oneFaceBlocked, double trappedAir, OptionalDouble faceInAirC) {

    /** Free in the water on all sides. */
    public static final Arrangement FREE = new Arrangement(1, false, 0.0, OptionalDouble.empty());

    /** Refuses less than one pack and a negative layer. */
    public Arrangement {
        if (pileOf < 1 || !(trappedAir >= 0.0)) {
            throw new IllegalArgumentException("a pile of " + pileOf + " and " + trappedAir + " m of air mean nothing");
        }
    }

    /** Whether water is on all sides. */
    public boolean free() {
        return equals(FREE);
    }
}
