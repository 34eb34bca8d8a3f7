package dev.slowpoint.safety;

import dev.slowpoint.heat.RateLaw;

/**
 * How far the true core may lie below the one that was computed or read: bath accuracy and core-model error together.
 *
 * <p>FSIS-GD-2021-14 p. 20 adds the accuracy of the instrument to the limit (165 F read with one degree of accuracy
 * becomes 166 F); taking it off the temperature before judging is the same.
 *
 * @param errorK [K], zero or more
 */
public record ReadingError(double errorK) {

    /** No error: for nominal estimates. */
    public static final ReadingError NONE = new ReadingError(0.0);

    /** Refuses a negative error. */
    public ReadingError {
        if (!(errorK >= 0.0 && errorK < 20.0)) {
            throw new IllegalArgumentException("reading error " + errorK
                    + " K must be zero or more and below 20. Maybe the sign is turned round?");
        }
    }

    /** The reading [C] that proves a required temperature. */
    public double readingFor(double requiredC) {
        return requiredC + errorK;
    }

    /** A law as it acts on readings: at the reading less the error. */
    public RateLaw judged(RateLaw law) {
        return errorK == 0.0 ? law : new Colder(law, errorK);
    }

    private record Colder(RateLaw law, double byK) implements RateLaw {

        @Override
        public double perSecond(double temperatureC) {
            return law.perSecond(temperatureC - byK);
        }

        @Override
        public double[] breaksC() {
            double[] breaks = law.breaksC().clone();
            for (int i = 0; i < breaks.length; i++) {
                breaks[i] += byK;
            }
            return breaks;
        }
    }
}
