package dev.slowpoint.plan;

import java.util.OptionalDouble;

/** One thing that happens to the piece after its first bath, in the order of the task. Times in seconds. */
public sealed interface Step {

    /**
     * On in a bath at another setpoint.
     *
     * @param setpointC [C]
     * @param duration [s]
     */
    record Bath(double setpointC, double duration) implements Step {}

    /**
     * On in a bath whose heater is off, as in a power cut.
     *
     * @param duration how long [s]; inferred from {@code foundC} if empty
     * @param foundC temperature of the water at the end [C]; from the usual cooling of a covered bath if empty
     */
    record Unheated(OptionalDouble duration, OptionalDouble foundC) implements Step {}

    /**
     * A hot finish.
     *
     * @param method how
     * @param perSide time on each side [s]
     * @param bothSidesAtOnce whether the sides are seared together, or one after the other
     * @param heatC temperature of pan or oil [C]; usual for the method if empty, without meaning for coals and torch
     */
    record Sear(SearMethod method, double perSide, boolean bothSidesAtOnce, OptionalDouble heatC) implements Step {}

    /**
     * Wait at room temperature.
     *
     * @param duration [s]
     */
    record Rest(double duration) implements Step {}

    /**
     * Cool down.
     *
     * @param medium in what
     * @param mediumC its temperature [C]; usual for the medium if empty
     * @param duration [s]; until the core is cold enough to store if empty
     */
    record Chill(ChillMedium medium, OptionalDouble mediumC, OptionalDouble duration) implements Step {}

    /**
     * Keep cold.
     *
     * @param temperatureC of the store [C]
     * @param duration [s]
     */
    record Store(double temperatureC, double duration) implements Step {}

    /**
     * Warm up again in a bath.
     *
     * @param setpointC [C]
     * @param duration [s]; until hot through if empty
     */
    record Reheat(double setpointC, OptionalDouble duration) implements Step {}

    /** Ways to sear. */
    enum SearMethod {
        /** In contact with a hot pan or plate. */
        PAN,
        /** Over glowing coals. */
        COALS,
        /** In the flame of a torch. */
        TORCH,
        /** In hot oil. */
        HOT_OIL
    }

    /** Ways to cool. */
    enum ChillMedium {
        /** Ice water with ice left over, stirred now and then. */
        ICE_WATER,
        /** Running or still cold water. */
        COLD_WATER,
        /** Blast chiller. */
        BLAST_AIR,
        /** Refrigerator shelf. */
        FRIDGE
    }
}
