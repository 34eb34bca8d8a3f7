package dev.slowpoint.api;

import dev.slowpoint.plan.Phrase;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Guesses at what a refused number was meant to be. A guess is only ever said, never used. */
final class Suspicion {

    /** What a common digital probe reports when it is unplugged, and at power-on. */
    private static final double UNPLUGGED_C = -127.0;

    private static final double POWER_ON_C = 85.0;

    private static final double ZERO_C_IN_KELVIN = 273.15;

    /** Warmest food or bath that anyone is likely to mean [C]. */
    private static final double LIKELY_MAXIMUM_C = 95.0;

    private Suspicion() {}

    /** A hint about a number outside the bounds of its field. */
    static Optional<Phrase> of(double value, double minimum, double maximum, @Nullable String unit) {
        if (unit == null) {
            return Optional.empty();
        }
        return switch (unit) {
            case "Cel" -> ofTemperature(value, minimum, maximum);
            case "mm" -> ofSize(value, minimum, maximum);
            default -> Optional.empty();
        };
    }

    private static Optional<Phrase> ofTemperature(double value, double minimum, double maximum) {
        if (value == UNPLUGGED_C || value == POWER_ON_C) {
            return Optional.of(Phrase.of("HINT_SENSOR_FAULT", shown(value)));
        }
        double fromFahrenheit = (value - 32.0) / 1.8;
        if (value > maximum
                && value <= 212.0
                && fromFahrenheit >= minimum
                && fromFahrenheit <= Math.min(maximum, LIKELY_MAXIMUM_C)) {
            return Optional.of(Phrase.of("HINT_FAHRENHEIT", shown(value), tenth(fromFahrenheit)));
        }
        double fromKelvin = value - ZERO_C_IN_KELVIN;
        if (value > 212.0 && fromKelvin >= minimum && fromKelvin <= maximum) {
            return Optional.of(Phrase.of("HINT_KELVIN", shown(value), tenth(fromKelvin)));
        }
        return Optional.empty();
    }

    private static Optional<Phrase> ofSize(double value, double minimum, double maximum) {
        if (value > 0.0 && value < minimum && value * 10.0 >= minimum) {
            return Optional.of(Phrase.of("HINT_CENTIMETRES"));
        }
        return value > maximum ? Optional.of(Phrase.of("HINT_LENGTH_FOR_THICKNESS")) : Optional.empty();
    }

    /** As a request would spell it, whatever language the hint is in. */
    private static String tenth(double value) {
        return String.format(Locale.ROOT, "%.1f", value);
    }

    /** A number without a superfluous decimal. */
    static String shown(double value) {
        return value == Math.rint(value) && Math.abs(value) < 1e9
                ? Long.toString((long) value)
                : Double.toString(value);
    }

    /** A UCUM code as people write it. */
    static String readable(String unit) {
        return unit.equals("Cel") ? "C" : unit;
    }
}
