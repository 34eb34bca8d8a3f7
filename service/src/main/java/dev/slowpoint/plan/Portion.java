package dev.slowpoint.plan;

import java.util.Arrays;

/**
 * One line of a sheet: pieces of one kind whose size across spreads.
 *
 * @param task the question for a piece of the stated size
 * @param thinnest least size across [m]
 * @param thickest greatest size across [m]; the worst piece
 */
public record Portion(CookTask task, double thinnest, double thickest) {

    /** A piece must be left of the thinnest one; as for tolerances. */
    private static final double LEFT = 0.2;

    /** Pieces that are all of the stated size. */
    public static Portion of(CookTask task) {
        double across = task.body().across();
        return new Portion(task, across, across);
    }

    /**
     * Pieces that differ from the stated size.
     *
     * @param spread by how much at most, to either side [m]
     */
    public static Portion spread(CookTask task, double spread) {
        double across = task.body().across();
        return new Portion(task, Math.max(across - spread, LEFT * across), across + spread);
    }

    /**
     * Pieces of which some were measured. The worst one is the largest of: the stated size, the largest measured, and the
     * mean plus so many standard deviations that with a confidence of 95 % no more than one piece in twenty is larger
     * (one-sided tolerance limit of a normal sample); the thinnest one likewise below.
     *
     * @param measured sizes across of at least {@link SheetDefaults#fewestPieces} pieces [m]
     */
    public static Portion measured(CookTask task, double[] measured, SheetDefaults defaults) {
        double across = task.body().across();
        double mean = Arrays.stream(measured).average().orElseThrow();
        double squares = 0.0;
        double least = across;
        double greatest = across;
        for (double size : measured) {
            squares += (size - mean) * (size - mean);
            least = Math.min(least, size);
            greatest = Math.max(greatest, size);
        }
        double beyond = defaults.factor(measured.length) * Math.sqrt(squares / (measured.length - 1));
        return new Portion(
                task, Math.max(Math.min(least, mean - beyond), LEFT * least), Math.max(greatest, mean + beyond));
    }
}
