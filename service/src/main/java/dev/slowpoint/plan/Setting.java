package dev.slowpoint.plan;

import dev.slowpoint.food.Film;
import dev.slowpoint.heat.Body;
import dev.slowpoint.heat.Conduction;
import dev.slowpoint.heat.Material;
import dev.slowpoint.heat.Programme;
import dev.slowpoint.heat.Resolution;
import dev.slowpoint.heat.Stage;
import dev.slowpoint.heat.StartField;
import dev.slowpoint.heat.Surroundings;
import dev.slowpoint.heat.TemperatureHistory;
import java.util.Map;
import java.util.Objects;

/**
 * One way the real cook may be, within the tolerances: what the solver is asked.
 *
 * @param body size
 * @param material with its conductivity
 * @param start temperatures
 * @param bath temperature and film
 */
record Setting(Body body, Material material, StartField start, Surroundings bath) {

    /** The setting of a task in a bath of {@code setpointC}, with all tolerances turned one way. */
    static Setting of(CookTask task, double setpointC, Corner corner, Knowledge knowledge, Materials materials) {
        Defaults defaults = knowledge.defaults();
        double across = task.body().across();
        double acrossBy =
                task.tolerances().across().orElse(Math.max(defaults.acrossAtLeast(), defaults.acrossShare() * across));
        double startBy = task.tolerances().startK().orElse(defaults.startK());
        Film film = film(task.bath().stirring(), knowledge.films(), defaults);
        Material material = materials.of(task.food(), corner);
        return switch (corner) {
            case NOMINAL ->
                new Setting(task.body(), material, task.start(), new Surroundings(setpointC, film.typical()));
            case EARLY ->
                new Setting(
                        // A tolerance stated larger than the piece must leave a piece.
                        task.body().withAcross(Math.max(across - acrossBy, 0.2 * across)),
                        material,
                        notAbove(task.start().warmerBy(startBy), setpointC),
                        new Surroundings(setpointC, film.high()));
            case LATE ->
                new Setting(
                        task.body().withAcross(across + acrossBy),
                        material,
                        task.start().warmerBy(-startBy),
                        new Surroundings(setpointC, film.low()));
        };
    }

    private static Film film(Stirring stirring, Map<String, Film> films, Defaults defaults) {
        return Objects.requireNonNull(
                films.get(stirring == Stirring.PUMPED ? defaults.pumpedFilm() : defaults.stillFilm()));
    }

    private static StartField notAbove(StartField start, double setpointC) {
        return new StartField(Math.min(start.coreC(), setpointC), Math.min(start.surfaceC(), setpointC));
    }

    /** The same with another bath temperature [C]. */
    Setting inBathAt(double temperatureC) {
        return new Setting(body, material, start, new Surroundings(temperatureC, bath.filmCoefficient()));
    }

    /** The same with another size across [m]. */
    Setting acrossOf(double metres) {
        return new Setting(body.withAcross(metres), material, start, bath);
    }

    /** What happens to the piece until a time [s]. */
    TemperatureHistory until(double end) {
        return Conduction.run(body, material, start, Programme.of(new Stage(bath, end)), Resolution.SERVICE);
    }
}
