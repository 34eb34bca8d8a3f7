package dev.slowpoint.plan;

/** The units that people set their devices to and read their rulers in. What is rounded is rounded to the safe side. */
public enum DisplayUnits {
    /** Degrees Celsius and millimetres. */
    METRIC,
    /** Degrees Fahrenheit and inches. */
    US;

    private static final double F_PER_K = 1.8;
    private static final double F_AT_0_C = 32.0;

    /** A step counts as reached this near to it, as a share of it: what binary fractions leave. */
    private static final double ROUND_OFF = 1e-9;

    /** Degrees Celsius as degrees Fahrenheit. */
    public static double fahrenheit(double celsius) {
        return F_PER_K * celsius + F_AT_0_C;
    }

    /** The next setpoint [C] that a bath can be set to: never a cooler one. */
    double settable(double setpointC, SheetDefaults defaults) {
        return this == METRIC
                ? up(setpointC, defaults.setpointStepK())
                : (up(fahrenheit(setpointC), defaults.setpointStepF()) - F_AT_0_C) / F_PER_K;
    }

    /** Width of a band [m]. */
    double band(SheetDefaults defaults) {
        return this == METRIC ? defaults.band() : defaults.bandUs();
    }

    /** The next multiple of a step that is not below a value. */
    static double up(double value, double step) {
        return step * Math.ceil(value / step - ROUND_OFF);
    }

    /** The last multiple of a step that is not above a value. */
    static double down(double value, double step) {
        return step * Math.floor(value / step + ROUND_OFF);
    }
}
