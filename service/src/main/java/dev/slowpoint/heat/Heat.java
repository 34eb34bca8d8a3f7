package dev.slowpoint.heat;

/**
 * Heat that moves in a step.
 *
 * @param intoBody through the faces into the body [J/m3 times the unit volume of the mesh]
 * @param heated from the heater into the water [J]
 * @param lost from the water into the room [J]
 */
record Heat(double intoBody, double heated, double lost) {

    static final Heat NONE = new Heat(0.0, 0.0, 0.0);

    /** This and a multiple of another. */
    Heat plus(double factor, Heat other) {
        return new Heat(intoBody + factor * other.intoBody, heated + factor * other.heated, lost + factor * other.lost);
    }
}
