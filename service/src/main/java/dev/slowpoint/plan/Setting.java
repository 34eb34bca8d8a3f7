package dev.slowpoint.plan;

import dev.slowpoint.food.Film;
import dev.slowpoint.food.Food;
import dev.slowpoint.heat.Body;
import dev.slowpoint.heat.Conduction;
import dev.slowpoint.heat.Material;
import dev.slowpoint.heat.Programme;
import dev.slowpoint.heat.Resolution;
import dev.slowpoint.heat.Stage;
import dev.slowpoint.heat.StandIn;
import dev.slowpoint.heat.StartField;
import dev.slowpoint.heat.Surroundings;
import dev.slowpoint.heat.TemperatureHistory;
import dev.slowpoint.heat.WaterLine;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * One way the real cook may be, within the tolerances: what the solver is asked.
 *
 * @param body one piece
 * @param material with its conductivity
 * @param start temperatures
 * @param bath temperature and film
 * @param immersion how it lies in the bath
 * @param corner which way it is turned
 */
record Setting(Body body, Material material, StartField start, Surroundings bath, Immersion immersion, Corner corner) {

    /** The setting of a task in a bath of {@code setpointC}, with all tolerances turned one way. */
    static Setting of(CookTask task, double setpointC, Corner corner, Knowledge knowledge, Materials materials) {
        Defaults defaults = knowledge.defaults();
        double across = task.body().across();
        double acrossBy = acrossBy(task, defaults);
        double startBy = startBy(task, defaults);
        Film film = film(task.bath().stirring(), knowledge.films(), defaults);
        Material material = materials.of(task.food(), corner);
        Immersion immersion = Immersion.of(task, setpointC, corner, knowledge);
        Surroundings bath = new Surroundings(setpointC, film(film, corner));
        return switch (corner) {
            case NOMINAL -> new Setting(task.body(), material, task.start(), bath, immersion, corner);
            case EARLY ->
                new Setting(
                        // A tolerance stated larger than the piece must leave a piece.
                        task.body().withAcross(Math.max(across - acrossBy, 0.2 * across)),
                        material,
                        notAbove(task.start().warmerBy(startBy), setpointC),
                        bath,
                        immersion,
                        corner);
            case LATE ->
                new Setting(
                        task.body().withAcross(across + acrossBy),
                        material,
                        task.start().warmerBy(-startBy),
                        bath,
                        immersion,
                        corner);
        };
    }

    /** The setting of a task in a bath of {@code setpointC}, as a draw says. */
    static Setting of(CookTask task, double setpointC, Draw draw, Knowledge knowledge, Materials materials) {
        double across = task.body().across();
        double bathC = setpointC + draw.bathBy();
        return new Setting(
                task.body().withAcross(Math.max(across + draw.acrossBy(), 0.2 * across)),
                materials.of(task.food(), Corner.NOMINAL).withConductivityFactor(draw.conductivity()),
                notAbove(task.start().warmerBy(draw.startBy()), bathC),
                new Surroundings(bathC, draw.film()),
                Immersion.of(task, setpointC, Corner.NOMINAL, knowledge)
                        .inAirOf(draw.airFilm())
                        .at(bathC),
                Corner.NOMINAL);
    }

    /** The setting of a piece that goes hot into a cold medium, with all tolerances turned one way; late cools late. */
    static Setting of(ChillTask task, Corner corner, Knowledge knowledge, Materials materials) {
        Defaults defaults = knowledge.defaults();
        double across = task.body().across();
        double acrossBy =
                task.tolerances().across().orElse(Math.max(defaults.acrossAtLeast(), defaults.acrossShare() * across));
        double startBy = task.tolerances().startK().orElse(defaults.startK());
        double way = corner == Corner.LATE ? 1.0 : corner == Corner.EARLY ? -1.0 : 0.0;
        AfterBath.Cold cold = Objects.requireNonNull(
                knowledge.after().media().get(task.chill().medium()));
        return new Setting(
                task.body().withAcross(Math.max(across + way * acrossBy, 0.2 * across)),
                materials.of(task.food(), corner),
                task.start().warmerBy(way * startBy),
                new Surroundings(task.chill().mediumC().orElse(cold.temperatureC()), film(cold.film(), corner)),
                Immersion.of(task.arrangement(), corner, knowledge),
                corner);
    }

    /** The setting of a piece in a bath that was recorded, with all tolerances turned one way. */
    static Setting of(
            LogTask.Piece piece, Food food, double bathC, Corner corner, Knowledge knowledge, Materials materials) {
        Defaults defaults = knowledge.defaults();
        double across = piece.body().across();
        double acrossBy =
                piece.tolerances().across().orElse(Math.max(defaults.acrossAtLeast(), defaults.acrossShare() * across));
        double startBy = piece.tolerances().startK().orElse(defaults.startK());
        double way = corner == Corner.LATE ? 1.0 : corner == Corner.EARLY ? -1.0 : 0.0;
        return new Setting(
                piece.body().withAcross(Math.max(across + way * acrossBy, 0.2 * across)),
                materials.of(food, corner),
                piece.start().warmerBy(-way * startBy),
                new Surroundings(bathC, film(film(piece.stirring(), knowledge.films(), defaults), corner)),
                Immersion.of(piece.arrangement(), corner, knowledge),
                corner);
    }

    /** The coefficient of a film in a corner: early gives and takes heat fast. */
    static double film(Film film, Corner corner) {
        return switch (corner) {
            case NOMINAL -> film.typical();
            case EARLY -> film.high();
            case LATE -> film.low();
        };
    }

    /** How far the size across may lie from the stated one [m]. */
    static double acrossBy(CookTask task, Defaults defaults) {
        return task.tolerances()
                .across()
                .orElse(Math.max(
                        defaults.acrossAtLeast(),
                        defaults.acrossShare() * task.body().across()));
    }

    /** How far the start temperature may lie from the stated one [K]. */
    static double startBy(CookTask task, Defaults defaults) {
        return task.tolerances().startK().orElse(defaults.startK());
    }

    /** The film of a bath. */
    static Film film(Stirring stirring, Map<String, Film> films, Defaults defaults) {
        return Objects.requireNonNull(
                films.get(stirring == Stirring.PUMPED ? defaults.pumpedFilm() : defaults.stillFilm()));
    }

    private static StartField notAbove(StartField start, double setpointC) {
        return new StartField(Math.min(start.coreC(), setpointC), Math.min(start.surfaceC(), setpointC));
    }

    /** The same with another bath temperature [C]. */
    Setting inBathAt(double temperatureC) {
        return new Setting(
                body,
                material,
                start,
                new Surroundings(temperatureC, bath.filmCoefficient()),
                immersion.at(temperatureC),
                corner);
    }

    /** The same in a later bath [C], whose water stands at {@code waterC} when the piece comes into it. */
    Setting inLaterBathAt(double temperatureC, double waterC) {
        Setting there = inBathAt(temperatureC);
        return new Setting(
                body, material, start, there.bath(), there.immersion().from(waterC), corner);
    }

    /** The same in a bath that goes on where the stage before left it. */
    Setting goingOn() {
        return new Setting(body, material, start, bath, immersion.goingOn(), corner);
    }

    /** The same with one face in air of a temperature [C]; its brick then counts as a slab, which is the slow side. */
    Setting floating(double airC, Knowledge knowledge) {
        return new Setting(body, material, start, bath, immersion.floating(airC, corner, knowledge), corner);
    }

    /** Whether its faces see different things in the bath. */
    boolean facesDiffer() {
        return immersion.faced();
    }

    /** A stage in water of a temperature [C] that needs no vessel to keep it, for a time [s]. */
    Stage inWater(double waterC, double duration) {
        return immersion.inWater(new Surroundings(waterC, bath.filmCoefficient()), duration);
    }

    /** The stages in water whose temperature runs along straight lines, from its beginning to its end. */
    Programme along(WaterLine water) {
        List<Stage> stages = new ArrayList<>();
        for (int i = 1; i < water.times().length; i++) {
            double duration = water.times()[i] - water.times()[i - 1];
            double fromC = water.temperaturesC()[i - 1];
            double toC = water.temperaturesC()[i];
            if (duration > 0.0) {
                Stage stage = inWater(fromC, duration);
                stages.add(fromC == toC ? stage : stage.rampingTo(toC));
            }
        }
        return new Programme(stages);
    }

    /** How fast it follows the water, as one lump behind its resistance would [1/s]; a rough number. */
    double followingRate() {
        StandIn piece = standIn(Programme.of(inWater(bath.temperatureC(), 1.0)));
        double conductivity = material.conductivity(Math.max(bath.temperatureC(), material.smoothAboveC()));
        double inside = 1.0 / (piece.shapeExponent() + 3.0);
        return conductivity
                * (piece.shapeExponent() + 1.0)
                / (piece.reach() * piece.reach() * heatPerKelvin() * (1.0 / piece.ownBiot(piece.biot()) + inside));
    }

    /** Heat that it takes up per volume and kelvin on the way from its start to the bath [J/m3K]. */
    double heatPerKelvin() {
        double startC = Math.min(start.coreC(), start.surfaceC());
        double bathC = Math.max(bath.temperatureC(), startC + 1.0);
        return (material.enthalpy(bathC) - material.enthalpy(startC)) / (bathC - startC);
    }

    /** The same with another film coefficient [W/m2K]. */
    Setting withFilm(double film) {
        return new Setting(body, material, start, bath.withFilm(film), immersion, corner);
    }

    /** The same with a body of another kind. */
    Setting withBody(Body other) {
        return new Setting(other, material, start, bath, immersion, corner);
    }

    /** The same with another size across [m]. */
    Setting acrossOf(double metres) {
        return new Setting(body.withAcross(metres), material, start, bath, immersion, corner);
    }

    /** The stage in the bath for a time [s]. */
    Stage cooking(double duration) {
        return immersion.stage(bath, duration);
    }

    /** What happens to the piece until a time [s]. */
    TemperatureHistory until(double end) {
        return through(Programme.of(cooking(end)));
    }

    /** The body without ends that is run in its place in a programme. */
    StandIn standIn(Programme programme) {
        return Conduction.standIn(immersion.body(body), material, start, programme);
    }

    /** The same with the error of a stand-in body turned some way, from -1 (early) to 1 (late). */
    TemperatureHistory until(double end, double shape) {
        Programme programme = Programme.of(cooking(end));
        return through(programme, programme, shape);
    }

    /** What happens to the piece in a programme. */
    TemperatureHistory through(Programme programme) {
        return through(programme, programme);
    }

    /** What happens to the piece in a programme, where a body with ends is stood in for as in another one. */
    TemperatureHistory through(Programme programme, Programme standsInFor) {
        return through(
                programme,
                standsInFor,
                switch (corner) {
                    case NOMINAL -> 0.0;
                    case EARLY -> -1.0;
                    case LATE -> 1.0;
                });
    }

    private TemperatureHistory through(Programme programme, Programme standsInFor, double shape) {
        Body immersed = immersion.body(body);
        StandIn turned = standIn(standsInFor).turned(shape);
        return Conduction.run(immersed, turned, material, start, programme, Resolution.SERVICE);
    }
}
