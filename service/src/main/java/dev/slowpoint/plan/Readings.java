package dev.slowpoint.plan;

import dev.slowpoint.heat.TemperatureHistory;
import dev.slowpoint.texture.TextureReading;
import dev.slowpoint.texture.TextureWindow;
import java.util.Optional;
import java.util.function.ToDoubleFunction;

/**
 * The texture of a piece in the three corners. The early and the late one are read as in a bath that is warmer or colder
 * by its tolerance: in a long cook a fifth of a kelvin moves the texture more than all that delays the warm-up.
 *
 * @param nominal as stated
 * @param early on the fast side
 * @param late on the slow side
 */
record Readings(TextureReading nominal, TextureReading early, TextureReading late) {

    /** Reads the three histories, in a bath known to {@code bathK}, if the food has a texture class. */
    static Optional<Readings> of(
            Optional<Softening> softening,
            TemperatureHistory nominal,
            TemperatureHistory early,
            TemperatureHistory late,
            double setpointC,
            double targetC,
            double bathK) {
        double hotThroughC = TextureWindow.hotThroughC(setpointC, targetC);
        return softening.map(s -> new Readings(
                TextureReading.of(s.textureClass(), nominal, hotThroughC, s.earlier()),
                TextureReading.of(s.textureClass(), early.warmerBy(bathK), hotThroughC, s.earlier()),
                TextureReading.of(s.textureClass(), late.warmerBy(-bathK), hotThroughC, s.earlier())));
    }

    /** Whether anything is known that closes the window. */
    boolean closeModelled() {
        return nominal.window().closeModelled();
    }

    /** A time of the window that comes and goes, sooner where the piece warms slowly as well: the least and the most. */
    Span range(ToDoubleFunction<TextureReading> time) {
        return Span.between(time.applyAsDouble(nominal), time.applyAsDouble(early), time.applyAsDouble(late));
    }

    /** A time of the window with its range. */
    Span span(ToDoubleFunction<TextureReading> time) {
        return new Span(time.applyAsDouble(nominal), time.applyAsDouble(early), time.applyAsDouble(late));
    }
}
