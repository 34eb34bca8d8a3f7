package dev.slowpoint.texture;

/**
 * When a piece is good to eat, in seconds from the start of its history; infinity stands for what does not happen before
 * the history ends.
 *
 * @param opens set, tender and hot through
 * @param bestLevel end of the comfortable part as far as softening goes; infinity where no such level is known
 * @param softens closes by softening
 * @param dries closes by dryness
 * @param softFrom mushy or rubbery
 * @param ruinedFrom not worth serving
 * @param closeModelled whether anything is known that would close it
 */
public record TextureWindow(
        double opens,
        double bestLevel,
        double softens,
        double dries,
        double softFrom,
        double ruinedFrom,
        boolean closeModelled) {

    /**
     * A bath is never quite reached, so a piece counts as hot through a kelvin below it. Where the bath is set above the
     * wanted core the core passes the target on a slope, and half a kelvin is as near as a probe can tell. Both are our
     * own choice.
     */
    private static final double BELOW_BATH_K = 1.0;

    private static final double BELOW_TARGET_K = 0.5;

    /** Core temperature [C] at which a piece counts as hot through, for a bath [C] and a wanted core [C]. */
    public static double hotThroughC(double bathC, double targetC) {
        return bathC > targetC ? targetC - BELOW_TARGET_K : bathC - BELOW_BATH_K;
    }

    /** The window closes: too soft or too dry, whichever comes first. */
    public double closes() {
        return Math.min(softens, dries);
    }

    /** End of the comfortable part, never later than the close. */
    public double bestUntil() {
        return Math.min(bestLevel, closes());
    }

    /** What closes it. */
    public CloseLimit limit() {
        if (Double.isInfinite(closes())) {
            return closeModelled ? CloseLimit.NOT_REACHED : CloseLimit.NOT_MODELLED;
        }
        return softens <= dries ? CloseLimit.SOFTENING : CloseLimit.DRYNESS;
    }

    /** Where a time [s] lies. */
    public Verdict verdict(double time) {
        if (opens > closes()) {
            return Verdict.NONE;
        }
        if (time < opens) {
            return Verdict.BEFORE;
        }
        return time <= closes() ? Verdict.WITHIN : Verdict.PAST;
    }
}
