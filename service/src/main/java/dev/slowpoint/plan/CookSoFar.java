package dev.slowpoint.plan;

import dev.slowpoint.food.Film;
import dev.slowpoint.heat.Programme;
import dev.slowpoint.heat.Stage;
import dev.slowpoint.heat.Surroundings;
import dev.slowpoint.plan.SoFar.Event;
import dev.slowpoint.plan.SoFar.Floated;
import dev.slowpoint.plan.SoFar.OutOfBath;
import dev.slowpoint.plan.SoFar.Place;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/**
 * The way of one corner through a cook under way: the water as it was and will be, and the pack in it, half out of it or out
 * of it.
 *
 * @param track the water
 * @param events of the pack are looked for among these
 * @param corner which way tolerances are turned
 * @param knowledge of the parameter set
 * @param now time since food in [s]
 */
record CookSoFar(WaterTrack track, List<Event> events, Corner corner, Knowledge knowledge, double now) {

    /**
     * Where the faces of a pack see different things, water that moves is taken in steps no wider than this [K], so that it
     * is never farther than half of it from where it was (our own choice).
     */
    private static final double STEP_K = 0.5;

    /** No more steps than this for one piece of water. */
    private static final int MOST_STEPS = 100;

    /** Whether the pack ever floated, so that its faces saw different things. */
    static boolean floated(List<Event> events) {
        return events.stream().anyMatch(Floated.class::isInstance);
    }

    /**
     * What a piece goes through until a time [s from food in], from now on in water colder by some kelvin than the setpoint.
     *
     * @param setting the piece
     * @param until [s]
     */
    Programme programme(Setting setting, double until) {
        double colderK = track.setpointC() - setting.bath().temperatureC();
        TreeSet<Double> cuts = new TreeSet<>();
        cuts.add(until);
        if (colderK != 0.0) {
            cuts.add(now);
        }
        for (Event event : events) {
            if (event instanceof Floated || event instanceof OutOfBath) {
                cuts.add(event.at());
                cuts.add(event.over());
            }
        }
        List<Stage> stages = new ArrayList<>();
        for (Water piece : track.pieces()) {
            double from = piece.from();
            while (from < Math.min(piece.until(), until)) {
                Double next = cuts.higher(from);
                double to = Math.min(piece.until(), next == null ? until : next);
                stage(piece.part(from, to), setting, from >= now ? colderK : 0.0, stages);
                from = to;
            }
        }
        return new Programme(stages);
    }

    private void stage(Water water, Setting setting, double colderK, List<Stage> stages) {
        double duration = water.until() - water.from();
        for (Event event : events) {
            if (event.at() <= water.from() && event.over() >= water.until() && event.over() > event.at()) {
                if (event instanceof OutOfBath out) {
                    stages.add(new Stage(place(out), duration));
                    return;
                }
                if (event instanceof Floated afloat) {
                    Setting floating = setting.floating(
                            afloat.airC().orElse(knowledge.after().roomC()), knowledge);
                    steps(water, floating, stages);
                    return;
                }
            }
        }
        if (floated(events) || (setting.facesDiffer() && !(water instanceof Water.Held))) {
            steps(water, setting, stages);
        } else if (water instanceof Water.Held held) {
            double setpointC = held.setpointC() - colderK;
            boolean bathed = stages.stream().anyMatch(s -> s.bath().isPresent());
            Setting there = setting.inBathAt(setpointC);
            if (held.goesOn() && bathed) {
                there = there.goingOn();
            } else if (held.from() > 0.0) {
                there = there.inLaterBathAt(setpointC, held.entersAtC());
            }
            add(there.cooking(duration), stages);
        } else if (water instanceof Water.Cooling cooling) {
            add(setting.inWater(cooling.startC(), duration).inBath(cooling.bath()), stages);
        } else {
            add(setting.inWater(water.atC(water.from()), duration).rampingTo(water.atC(water.until())), stages);
        }
    }

    /** A stage, or more of the last one where that is the same: what is told in parts is run as one. */
    private static void add(Stage stage, List<Stage> stages) {
        Stage last = stages.isEmpty() ? null : stages.get(stages.size() - 1);
        if (last != null
                && last.bath().isEmpty()
                && stage.bath().isEmpty()
                && stage.rampsToC().isEmpty()
                && last.equals(stage.lasting(last.duration()))) {
            stages.set(stages.size() - 1, stage.lasting(last.duration() + stage.duration()));
        } else {
            stages.add(stage);
        }
    }

    /** Water that moves, as steps of water that stands; late at the colder end of each. */
    private void steps(Water water, Setting setting, List<Stage> stages) {
        double startC = water.atC(water.from());
        double endC = water.atC(water.until());
        int steps = (int) Math.min(MOST_STEPS, Math.max(1.0, Math.ceil(Math.abs(endC - startC) / STEP_K)));
        double length = (water.until() - water.from()) / steps;
        for (int i = 0; i < steps; i++) {
            double begin = water.from() + i * length;
            double standsC = corner == Corner.LATE
                    ? Math.min(water.atC(begin), water.atC(begin + length))
                    : water.atC(begin + 0.5 * length);
            add(setting.inWater(standsC, length), stages);
        }
    }

    /** The more heat a place takes, the colder the pack gets: that is late. */
    private Surroundings place(OutOfBath out) {
        boolean room = out.place() == Place.ROOM;
        Film film = room ? knowledge.after().room() : knowledge.after().store();
        double coefficient = switch (corner) {
            case NOMINAL -> film.typical();
            case EARLY -> film.low();
            case LATE -> film.high();
        };
        double usualC = room ? knowledge.after().roomC() : knowledge.defaults().fridgeC();
        return new Surroundings(out.temperatureC().orElse(usualC), coefficient);
    }
}
