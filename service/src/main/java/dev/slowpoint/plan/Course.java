package dev.slowpoint.plan;

import dev.slowpoint.food.Film;
import dev.slowpoint.heat.CoreLevel;
import dev.slowpoint.heat.Programme;
import dev.slowpoint.heat.Slab;
import dev.slowpoint.heat.Stage;
import dev.slowpoint.heat.Surroundings;
import dev.slowpoint.heat.TemperatureHistory;
import dev.slowpoint.heat.WaterBath;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;

/**
 * The way of one corner through a bath and all that follows: one programme, so that one temperature field is carried
 * through everything.
 *
 * <p>A sear takes the piece out of its bag. Sides seared in turn are the near and then the far face of a slab, the other
 * one in room air; any other body is seared all round at once. In the early corner everything comes early, but for the
 * rest after a sear: there it loses least to the air, so that early and late enclose the rise of the core.
 */
final class Course {

    /** How closely the solver ends a stage at its level, and a little more [K]. */
    static final double LEVEL_K = 2e-3;

    /** A moment more, so that there is a history even where every step ended at once [s]. */
    private static final double CLOSING = 1.0;

    private final Setting setting;
    private final Corner corner;
    private final AfterBath after;
    private final Aim aim;
    private final List<Stage> stages = new ArrayList<>();
    private final List<Integer> firstStages = new ArrayList<>();
    private final List<Integer> stagesSoFar = new ArrayList<>();
    private final List<PowerCut> cuts = new ArrayList<>();
    private double waterC;
    private boolean packed = true;

    /**
     * What a step without a stated length aims at.
     *
     * @param coreC wanted [C]; the setpoint if empty
     * @param withinK how near counts as hot through [K]
     * @param coldC all of a piece has to fall to it when it is chilled [C]
     * @param horizon the most time it is given to warm up [s]
     */
    record Aim(OptionalDouble coreC, double withinK, double coldC, double horizon) {

        /** When a piece in a bath counts as hot through [C]. */
        double hotThroughC(double setpointC) {
            return Math.min(coreC.orElse(setpointC), setpointC) - withinK;
        }
    }

    Course(Setting setting, Corner corner, AfterBath after, Aim aim) {
        this.setting = setting;
        this.corner = corner;
        this.after = after;
        this.aim = aim;
        this.waterC = setting.bath().temperatureC();
    }

    /** In the first bath for a time [s], which may be zero. */
    Course cook(double duration) {
        if (duration > 0.0) {
            stages.add(setting.cooking(duration));
        }
        return this;
    }

    /** Then a step. */
    Course then(Step step) {
        firstStages.add(stages.size());
        if (step instanceof Step.Bath bath) {
            bath(bath.setpointC(), Math.min(waterC, bath.setpointC()), OptionalDouble.of(bath.duration()));
        } else if (step instanceof Step.Reheat reheat) {
            bath(reheat.setpointC(), reheat.setpointC(), reheat.duration());
        } else if (step instanceof Step.Unheated unheated) {
            unheated(unheated);
        } else if (step instanceof Step.Sear sear) {
            sear(sear);
        } else if (step instanceof Step.Rest rest) {
            stages.add(new Stage(room(), rest.duration()));
        } else if (step instanceof Step.Chill chill) {
            chill(chill);
        } else if (step instanceof Step.Store store) {
            stages.add(new Stage(
                    new Surroundings(store.temperatureC(), Setting.film(after.store(), corner)), store.duration()));
        }
        stagesSoFar.add(stages.size());
        return this;
    }

    /** Then several. */
    Course then(List<Step> steps) {
        steps.forEach(this::then);
        return this;
    }

    /** A rest that belongs to no step, long enough to see the core peak. */
    Course watch() {
        stages.add(new Stage(room(), after.restWatched()));
        return this;
    }

    /** Runs it. */
    Passage run(SolverRuns solver) {
        stages.add(new Stage(stages.get(stages.size() - 1).surroundings(), CLOSING));
        TemperatureHistory history = solver.through(new Programme(stages), setting);
        double[] begins = new double[firstStages.size()];
        double[] ends = new double[firstStages.size()];
        for (int i = 0; i < begins.length; i++) {
            begins[i] = firstStages.get(i) == 0 ? 0.0 : history.stageEnd(firstStages.get(i) - 1);
            ends[i] = history.stageEnd(stagesSoFar.get(i) - 1);
        }
        return new Passage(history, begins, ends, cuts);
    }

    /** In a bath whose water is swapped for cooler at once, or has to warm up to a hotter setpoint. */
    private void bath(double setpointC, double startsAtC, OptionalDouble duration) {
        Stage stage = setting.inLaterBathAt(setpointC, startsAtC).cooking(duration.orElse(aim.horizon()));
        stages.add(duration.isPresent() ? stage : stage.endingAt(CoreLevel.risesTo(aim.hotThroughC(setpointC))));
        waterC = setpointC;
        packed = true;
    }

    private void unheated(Step.Unheated step) {
        PowerCut cut = PowerCut.of(step, waterC, corner, after);
        WaterBath water = WaterBath.cooling(cut.startC(), cut.roomC(), cut.timeConstant());
        stages.add(new Stage(new Surroundings(cut.startC(), setting.bath().filmCoefficient()), cut.duration())
                .inBath(water));
        cuts.add(cut);
        waterC = cut.endC();
    }

    private void sear(Step.Sear step) {
        packed = false;
        SearHeat heat = Objects.requireNonNull(after.sear().get(step.method()));
        double wetC = at(after.wetLimitC());
        Surroundings hot;
        if (heat.mediumC().isPresent()) {
            double mediumC = step.heatC().orElse(at(heat.mediumC().get()));
            hot = new Surroundings(mediumC, Setting.film(heat.film().orElseThrow(), corner)).wetUpTo(wetC);
        } else {
            hot = room().radiating(at(heat.flux())).wetUpTo(wetC);
        }
        if (setting.body() instanceof Slab && !step.bothSidesAtOnce()) {
            stages.add(new Stage(hot, step.perSide()).farFace(room()));
            stages.add(new Stage(room(), step.perSide()).farFace(hot));
        } else {
            stages.add(new Stage(hot, step.perSide()));
        }
    }

    private void chill(Step.Chill step) {
        AfterBath.Cold cold = Objects.requireNonNull(after.media().get(step.medium()));
        Surroundings medium =
                new Surroundings(step.mediumC().orElse(cold.temperatureC()), Setting.film(cold.film(), corner));
        Stage stage = new Stage(medium, step.duration().orElse(after.longestChill()));
        stages.add(step.duration().isPresent() ? stage : stage.endingAt(CoreLevel.fallsTo(aim.coldC())));
    }

    private Surroundings room() {
        Film film = packed ? after.room() : after.seared();
        double coefficient = packed || corner == Corner.NOMINAL
                ? Setting.film(film, corner)
                : corner == Corner.EARLY ? film.low() : film.high();
        return new Surroundings(after.roomC(), coefficient);
    }

    private double at(Range range) {
        return switch (corner) {
            case NOMINAL -> range.nominal();
            case EARLY -> range.high();
            case LATE -> range.low();
        };
    }
}
