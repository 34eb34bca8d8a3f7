package dev.slowpoint.api;

/** Units that people read. What programs read is metric whatever people read. */
enum Units {
    /** Degrees Celsius, millimetres, grams. */
    METRIC,
    /** Degrees Fahrenheit, inches, ounces. */
    US;

    /** Query parameter that asks for them. */
    static final String PARAMETER = "units";
}
