package dev.slowpoint.plan;

import dev.slowpoint.food.Film;
import dev.slowpoint.heat.Body;
import dev.slowpoint.heat.Brick;
import dev.slowpoint.heat.Slab;
import dev.slowpoint.heat.Stage;
import dev.slowpoint.heat.Surroundings;
import dev.slowpoint.heat.WaterBath;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What an arrangement makes of a piece and of the water around it.
 *
 * <p>A blocked face is a mirror, so that the pack is half of one twice as thick; a pile is one piece as thick as all
 * together. A face in air, or behind a layer of air, is a far face of its own. The ends of a brick only help, so that where
 * its faces differ it is taken for a slab.
 *
 * @param arrangement of the pack
 * @param airFilm film of a bag in the air above the water, in this corner [W/m2K]
 * @param airConductivity of air in the bag [W/mK]
 * @param water the bath, where it has a temperature of its own
 */
record Immersion(Arrangement arrangement, double airFilm, double airConductivity, Optional<WaterBath> water) {

    /** Density of water [kg/m3], rounded; from memory. */
    private static final double WATER_DENSITY = 990.0;

    /** A vessel as wide and deep as high has this many faces that lose heat through a wall, the bottom among them. */
    private static final double FACES = 5.0;

    /** How a task lies in a bath of {@code setpointC}, in one corner. */
    static Immersion of(CookTask task, double setpointC, Corner corner, Knowledge knowledge) {
        boolean warmerAir = task.arrangement().faceInAirC().orElse(setpointC) > setpointC;
        Film air = knowledge.vessels().faceInAir();
        return new Immersion(
                task.arrangement(),
                // Air that is warmer than the bath gives heat: little of it is late.
                warmerAir ? Setting.film(air, corner) : airFilm(corner, air),
                knowledge.vessels().airConductivity(),
                task.bath().vessel().map(vessel -> water(vessel, task, setpointC, knowledge)));
    }

    /** How a pack lies in a medium that stays as it is. */
    static Immersion of(Arrangement arrangement, Corner corner, Knowledge knowledge) {
        return new Immersion(
                arrangement,
                airFilm(corner, knowledge.vessels().faceInAir()),
                knowledge.vessels().airConductivity(),
                Optional.empty());
    }

    /** Air that takes more heat away makes the face in it colder: that is late. */
    private static double airFilm(Corner corner, Film film) {
        return switch (corner) {
            case NOMINAL -> film.typical();
            case EARLY -> film.low();
            case LATE -> film.high();
        };
    }

    private static WaterBath water(CookTask.Vessel vessel, CookTask task, double setpointC, Knowledge knowledge) {
        VesselDefaults usual = knowledge.vessels();
        double face = StrictMath.pow(vessel.volume(), 2.0 / 3.0);
        double open = vessel.openSurface().orElse(face);
        double density = knowledge.thermal().properties(task.food(), 1.0).density(usual.roomC());
        return new WaterBath(
                OptionalDouble.of(vessel.startC().orElse(setpointC)),
                setpointC,
                vessel.volume() * WATER_DENSITY * WaterBath.WATER_J_PER_KG_K,
                vessel.heaterPower(),
                vessel.lossCoefficient().orElse(usual.wallLoss() * FACES * face),
                vessel.covered() ? open * usual.coveredShare() : open,
                vessel.roomC().orElse(usual.roomC()),
                vessel.loadMass() / density);
    }

    /** The piece as heat sees it. */
    Body body(Body piece) {
        int times = arrangement.pileOf() * (arrangement.oneFaceBlocked() ? 2 : 1);
        Body together = times == 1 ? piece : piece.withAcross(piece.across() * times);
        return faced() && together instanceof Brick brick ? new Slab(brick.thickness()) : together;
    }

    /** A stage in water whose temperature is told, for a time [s]. */
    Stage inWater(Surroundings bath, double duration) {
        Surroundings behindAir = arrangement.trappedAir() > 0.0
                ? bath.withFilm(1.0 / (1.0 / bath.filmCoefficient() + arrangement.trappedAir() / airConductivity))
                : bath;
        Stage stage = new Stage(faced() ? bath : behindAir, duration);
        if (arrangement.faceInAirC().isPresent()) {
            stage = stage.farFace(new Surroundings(arrangement.faceInAirC().getAsDouble(), airFilm));
        } else if (faced()) {
            stage = stage.farFace(behindAir);
        }
        return stage;
    }

    /** A stage in a bath for a time [s]. */
    Stage stage(Surroundings bath, double duration) {
        Stage stage = inWater(bath, duration);
        return water.map(stage::inBath).orElse(stage);
    }

    /** The same with another film of a face in air [W/m2K]. */
    Immersion inAirOf(double film) {
        return new Immersion(arrangement, film, airConductivity, water);
    }

    /** The same around a bath at another setpoint [C]. */
    Immersion at(double setpointC) {
        return new Immersion(
                arrangement,
                airFilm,
                airConductivity,
                water.map(w -> new WaterBath(
                        w.startC(),
                        setpointC,
                        w.heatCapacity(),
                        w.heaterPower(),
                        w.lossCoefficient(),
                        w.openSurface(),
                        w.roomC(),
                        w.loadVolume())));
    }

    /** The same around a bath whose water stands at a temperature when the piece comes into it [C]. */
    Immersion from(double waterC) {
        return new Immersion(
                arrangement,
                airFilm,
                airConductivity,
                water.map(w -> new WaterBath(
                        OptionalDouble.of(waterC),
                        w.setpointC(),
                        w.heatCapacity(),
                        w.heaterPower(),
                        w.lossCoefficient(),
                        w.openSurface(),
                        w.roomC(),
                        w.loadVolume())));
    }

    /** The same around water that goes on where the stage before left it. */
    Immersion goingOn() {
        return new Immersion(
                arrangement,
                airFilm,
                airConductivity,
                water.map(w -> new WaterBath(
                        OptionalDouble.empty(),
                        w.setpointC(),
                        w.heatCapacity(),
                        w.heaterPower(),
                        w.lossCoefficient(),
                        w.openSurface(),
                        w.roomC(),
                        w.loadVolume())));
    }

    /** The same with one face in air of a temperature [C]. */
    Immersion floating(double airC, Corner corner, Knowledge knowledge) {
        return new Immersion(
                new Arrangement(
                        arrangement.pileOf(),
                        arrangement.oneFaceBlocked(),
                        arrangement.trappedAir(),
                        OptionalDouble.of(airC)),
                airFilm(corner, knowledge.vessels().faceInAir()),
                airConductivity,
                Optional.empty());
    }

    /**
     * Whether the faces see different things. Air over one face is such a thing, unless the other face is blocked; in water
     * with a temperature of its own both faces are taken to lie behind the air, which is late.
     */
    boolean faced() {
        boolean airOnOne = arrangement.trappedAir() > 0.0 && !arrangement.oneFaceBlocked() && water.isEmpty();
        return arrangement.faceInAirC().isPresent() || airOnOne;
    }
}
