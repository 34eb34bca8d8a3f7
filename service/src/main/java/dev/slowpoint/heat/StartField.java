package dev.slowpoint.heat;

/**
 * Temperatures of a body before a programme starts: a parabola from the slowest-heating point to the surface, the shape
 * that any slow change of the surroundings leaves.
 *
 * @param coreC at the slowest-heating point [C]
 * @param surfaceC at the surface [C]
 */
public record StartField(double coreC, double surfaceC) {

    /** Refuses temperatures that are not finite. */
    public StartField {
        if (!Double.isFinite(coreC) || !Double.isFinite(surfaceC)) {
            throw new IllegalArgumentException("start from " + coreC + " C to " + surfaceC + " C must be finite");
        }
    }

    /** The same temperature everywhere. */
    public static StartField uniform(double temperatureC) {
        return new StartField(temperatureC, temperatureC);
    }

    /** Temperature [C] at a position from 0 (slowest-heating point) to 1 (surface). */
    public double atC(double position) {
        return coreC + (surfaceC - coreC) * position * position;
    }

    /** The lowest temperature of the field [C]. */
    public double lowestC() {
        return Math.min(coreC, surfaceC);
    }

    /** The same field, warmer by a difference. */
    public StartField warmerBy(double differenceK) {
        return new StartField(coreC + differenceK, surfaceC + differenceK);
    }
}
