package dev.slowpoint.plan;

/** Rounds numbers for sentences. */
final class Figures {

    private Figures() {}

    /** Decimal reductions to a tenth. */
    static double log10(double value) {
        return Math.rint(value * 10.0) / 10.0;
    }

    /** Decimal reductions to a tenth, down. */
    static double log10Down(double value) {
        return Math.floor(value * 10.0) / 10.0;
    }

    /** Hours to a tenth, from seconds. */
    static double hours(double seconds) {
        return Math.rint(seconds / 360.0) / 10.0;
    }

    /** A temperature to a tenth [C]. */
    static double temperature(double celsius) {
        return Math.rint(celsius * 10.0) / 10.0;
    }
}
