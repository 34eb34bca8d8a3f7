package dev.slowpoint.heat;

/**
 * A temperature at which a stage ends.
 *
 * @param levelC [C], finite
 * @param falling whether the warmest point has to fall to it, or else the coldest has to rise to it
 */
public record CoreLevel(double levelC, boolean falling) {

    /** Refuses a level that is not finite. */
    public CoreLevel {
        if (!Double.isFinite(levelC)) {
            throw new IllegalArgumentException("levelC = " + levelC + " must be finite");
        }
    }

    /** Ends when all of the body is at or below a temperature [C]. */
    public static CoreLevel fallsTo(double levelC) {
        return new CoreLevel(levelC, true);
    }

    /** Ends when all of the body is at or above a temperature [C]. */
    public static CoreLevel risesTo(double levelC) {
        return new CoreLevel(levelC, false);
    }
}
