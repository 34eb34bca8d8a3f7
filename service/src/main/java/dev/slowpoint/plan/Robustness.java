package dev.slowpoint.plan;

import dev.slowpoint.plan.CookPlan.TakeOut;
import dev.slowpoint.plan.ProcessWindow.Distance;
import dev.slowpoint.plan.ProcessWindow.Edge;
import dev.slowpoint.plan.ProcessWindow.ProcessPoint;
import dev.slowpoint.plan.ProcessWindow.Tolerances;
import dev.slowpoint.safety.Verdict;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import java.util.function.ToDoubleFunction;

/**
 * How far a process point lies from the edges of its region: from each alone, and when all goes wrong at once.
 *
 * <p>All goes wrong <i>k</i> times means: the setpoint is off by <i>k</i> tolerances of the bath, the size across by
 * <i>k</i> tolerances of the size, the start by <i>k</i> of the start, all three the slow way (colder, thicker, colder) or
 * all three the fast way; and the piece leaves the bath by <i>k</i> tolerances of the moment too soon or too late. The cook
 * is then planned anew with those values, and its lines count its own tolerances as ever. So <i>k</i> comes on top of the
 * one time that the late safe time and the early close of the texture have counted already. The spare of a point is the
 * largest <i>k</i> at which, either way, the moment still lies between the earliest and the latest that are planned; and
 * where the rule is met to the core, still behind the late safe time, even if a sear would serve instead.
 */
final class Robustness {

    /** Nobody needs to know of more (our own choice) [-]. */
    static final double MOST = 10.0;

    /** How closely a spare is found [-]; the solver itself rounds times near the floor of a rule by a second or two. */
    static final double FINEST = 0.01;

    private final Tries tries;
    private final Tolerances tolerances;
    private final double available;
    private final double boilingC;

    /** Of the points of a task, with so much time available [s]. */
    Robustness(Tries tries, Tolerances tolerances, double available) {
        this.tries = tries;
        this.tolerances = tolerances;
        this.available = available;
        this.boilingC = BoilingPoint.atC(tries.task().altitude());
    }

    /**
     * Moments [s] at a setpoint that have a spare.
     *
     * @param from the soonest
     * @param to the latest; infinity where nothing known closes it
     */
    record Moments(double from, double to) {}

    /** Which way things go wrong. */
    private enum Way {
        SLOW,
        FAST
    }

    /** The moments at a setpoint that have a spare of {@code k}, if there are any. */
    Optional<Moments> moments(double setpointC, double k) {
        double from = 0.0;
        double to = available;
        boolean toTheCore = toTheCore(setpointC);
        for (Way way : Way.values()) {
            if (refused(setpointC, k, way)) {
                return Optional.empty();
            }
            Trial trial = off(setpointC, k, way);
            TakeOut takeOut = trial.takeOut();
            if (takeOut.obstacle().isPresent()) {
                return Optional.empty();
            }
            from = Math.max(from, takeOut.earliest());
            if (toTheCore) {
                from = Math.max(from, safe(trial));
            }
            to = Math.min(to, takeOut.latest());
        }
        double slip = k * tolerances.moment();
        return from + slip <= to - slip ? Optional.of(new Moments(from + slip, to - slip)) : Optional.empty();
    }

    /**
     * The most spare that any moment at a setpoint has.
     *
     * @param above a spare that some moment is known to have
     * @param below a spare that no moment has
     */
    double most(double setpointC, double above, double below) {
        double low = above;
        double high = below;
        while (high - low > FINEST) {
            double middle = 0.5 * (low + high);
            if (moments(setpointC, middle).isPresent()) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    /** A point with all its distances. Its setpoint is one at which a cook can be planned. */
    ProcessPoint point(double setpointC, double at) {
        Trial trial = tries.at(setpointC);
        boolean inside = crossed(setpointC, at, 0.0).isEmpty();
        double spare = 0.0;
        Optional<Edge> nearest = crossed(setpointC, at, MOST);
        if (!inside) {
            nearest = crossed(setpointC, at, 0.0);
        } else if (nearest.isEmpty()) {
            spare = MOST;
        } else {
            double outside = 0.25;
            while (crossed(setpointC, at, outside).isEmpty()) {
                spare = outside;
                outside = Math.min(2.0 * outside, MOST);
            }
            while (outside - spare > FINEST) {
                double middle = 0.5 * (spare + outside);
                if (crossed(setpointC, at, middle).isEmpty()) {
                    spare = middle;
                } else {
                    outside = middle;
                }
            }
            nearest = crossed(setpointC, at, outside);
        }
        return new ProcessPoint(
                setpointC,
                at,
                inside,
                inside ? OptionalDouble.of(spare) : OptionalDouble.empty(),
                nearest,
                served(setpointC, at).verdict(),
                distances(trial, at));
    }

    /** The trial at a setpoint, judged at a moment. */
    Trial served(double setpointC, double at) {
        Trial trial = tries.at(setpointC);
        return Trial.of(
                tries.task().served(OptionalDouble.of(at)),
                setpointC,
                tries.terms(),
                trial.lateSetting(),
                trial.nominal(),
                trial.early(),
                trial.late(),
                0.0);
    }

    /** The edge that a point lies beyond when all goes wrong {@code k} times; empty where it still lies inside. */
    private Optional<Edge> crossed(double setpointC, double at, double k) {
        double slip = k * tolerances.moment();
        for (Way way : Way.values()) {
            if (refused(setpointC, k, way)) {
                return Optional.of(Edge.SAFE);
            }
            Trial trial = off(setpointC, k, way);
            Optional<Edge> edge = toTheCore(setpointC) && at - slip < safe(trial)
                    ? Optional.of(Edge.SAFE)
                    : crossed(trial, at - slip, at + slip);
            if (edge.isPresent()) {
                return edge;
            }
        }
        return at + slip > available ? Optional.of(Edge.AVAILABLE_TIME) : Optional.empty();
    }

    /** Whether a plan at a setpoint waits for the core to be safe. */
    private boolean toTheCore(double setpointC) {
        return tries.at(setpointC).verdict() == Verdict.MET;
    }

    private static Optional<Edge> crossed(Trial trial, double from, double to) {
        TakeOut takeOut = trial.takeOut();
        if (takeOut.obstacle().isPresent()) {
            return Optional.of(
                    switch (takeOut.obstacle().get()) {
                        case RULE_NEVER_MET, SPORES_GROW_FIRST -> Edge.SAFE;
                        case WARM_UP_TOO_SLOW -> Edge.SLOW_WARM_UP;
                        case NEVER_HOT_THROUGH -> Edge.HOT_THROUGH;
                        case NEVER_TENDER -> Edge.TENDER;
                        case SAFE_AFTER_TEXTURE -> to > closes(trial) ? closing(trial) : Edge.SAFE;
                        case TEXTURE_CLOSES_FIRST -> to > closes(trial) ? closing(trial) : ready(trial);
                    });
        }
        if (from < takeOut.earliest()) {
            return Optional.of(takeOut.earliest() > ready(trial, ready(trial)) ? Edge.SAFE : ready(trial));
        }
        return to > takeOut.latest() ? Optional.of(closing(trial)) : Optional.empty();
    }

    private static double ready(Trial trial, Edge edge) {
        return edge == Edge.HOT_THROUGH
                ? trial.times().hotThrough().nominal()
                : trial.times().tender().map(Span::nominal).orElse(0.0);
    }

    private static Edge ready(Trial trial) {
        return ready(trial, Edge.TENDER) > ready(trial, Edge.HOT_THROUGH) ? Edge.TENDER : Edge.HOT_THROUGH;
    }

    private static double goodUntil(Trial trial) {
        return trial.times().goodUntil().map(Span::early).orElse(Double.POSITIVE_INFINITY);
    }

    private static double closes(Trial trial) {
        return Math.min(trial.warmUpUsedUp(), goodUntil(trial));
    }

    private static Edge closing(Trial trial) {
        return trial.warmUpUsedUp() < goodUntil(trial) ? Edge.SLOW_WARM_UP : Edge.GOOD_UNTIL;
    }

    private boolean refused(double setpointC, double k, Way way) {
        return way == Way.SLOW
                && tries.refused(setpointC - k * tolerances.bathK()).isPresent();
    }

    private Trial off(double setpointC, double k, Way way) {
        double across = tries.task().body().across();
        double acrossBy = k * tolerances.across();
        return switch (way) {
            case SLOW -> tries.at(setpointC - k * tolerances.bathK(), across + acrossBy, -k * tolerances.startK());
            case FAST ->
                tries.at(
                        // No bath is hotter than boiling water, and a piece must be left.
                        Math.min(setpointC + k * tolerances.bathK(), boilingC),
                        Math.max(across - acrossBy, 0.2 * across),
                        k * tolerances.startK());
        };
    }

    private List<Distance> distances(Trial trial, double at) {
        List<Distance> distances = new ArrayList<>();
        distances.add(after(Edge.HOT_THROUGH, trial, at, t -> ready(t, Edge.HOT_THROUGH)));
        trial.times()
                .safe()
                // Where a sear serves instead, the inside is not waited for.
                .filter(safe -> trial.verdict() != Verdict.SURFACE_ONLY)
                .ifPresent(safe -> distances.add(after(Edge.SAFE, trial, at, Robustness::safe)));
        if (trial.times().tender().isPresent()) {
            distances.add(after(Edge.TENDER, trial, at, t -> ready(t, Edge.TENDER)));
        }
        if (trial.times().goodUntil().isPresent()) {
            distances.add(before(Edge.GOOD_UNTIL, trial, at, goodUntil(trial), Robustness::goodUntil, 1.0));
        }
        distances.add(before(Edge.SLOW_WARM_UP, trial, at, trial.warmUpUsedUp(), Robustness::warmUpUsedUp, -1.0));
        if (Double.isFinite(available)) {
            distances.add(new Distance(
                    Edge.AVAILABLE_TIME,
                    OptionalDouble.of(available - at),
                    OptionalDouble.empty(),
                    OptionalDouble.empty()));
        }
        return distances;
    }

    private static double safe(Trial trial) {
        return trial.times().safe().map(Span::late).orElse(0.0);
    }

    /** A warm-up that breaks its limit closes the whole setpoint, whatever the moment. */
    private static double warmUpUsedUp(Trial trial) {
        boolean tooSlow = trial.takeOut()
                .obstacle()
                .filter(o -> o == CookPlan.Obstacle.WARM_UP_TOO_SLOW)
                .isPresent();
        return tooSlow ? 0.0 : trial.warmUpUsedUp();
    }

    /** From an edge that a moment has to lie behind; a colder bath and a thicker piece move it later. */
    private Distance after(Edge edge, Trial trial, double at, ToDoubleFunction<Trial> line) {
        double reached = line.applyAsDouble(trial);
        return distance(
                edge,
                Double.isFinite(reached) ? OptionalDouble.of(at - reached) : OptionalDouble.empty(),
                trial,
                t -> at / Math.max(line.applyAsDouble(t), 1.0) - 1.0,
                -1.0,
                1.0);
    }

    /** From an edge that a moment has to lie before; a bath that much hotter or colder moves it sooner. */
    private Distance before(
            Edge edge, Trial trial, double at, double reached, ToDoubleFunction<Trial> line, double hotter) {
        return distance(
                edge,
                Double.isFinite(reached) ? OptionalDouble.of(reached - at) : OptionalDouble.empty(),
                trial,
                t -> 1.0 - at / Math.max(line.applyAsDouble(t), 1.0),
                hotter,
                -hotter);
    }

    private Distance distance(
            Edge edge,
            OptionalDouble seconds,
            Trial trial,
            ToDoubleFunction<Trial> slackOf,
            double hotter,
            double thicker) {
        double slack = slackOf.applyAsDouble(trial);
        double setpointC = trial.setpointC();
        double across = tries.task().body().across();
        boolean inside = slack >= 0.0;
        DoubleUnaryOperator bath = by -> slackOf.applyAsDouble(tries.at(setpointC + hotter * by));
        DoubleUnaryOperator size = by -> slackOf.applyAsDouble(tries.at(setpointC, across + thicker * by, 0.0));
        boolean up = inside == hotter > 0.0;
        boolean grows = inside == thicker > 0.0;
        double coolest = Math.max(
                Admission.COOLEST_BATH_C,
                Math.max(tries.task().start().coreC(), tries.task().start().surfaceC()));
        double farthestK = Math.min(MarginSearch.FARTHEST_K, up ? boilingC - setpointC : setpointC - coolest);
        double farthest = grows ? MarginSearch.FARTHEST : across - MarginSearch.THINNEST;
        return new Distance(
                edge,
                seconds,
                farthestK > 0.0
                        ? MarginSearch.boundary(slack, 0.5, farthestK, MarginSearch.FINEST_K, bath)
                        : OptionalDouble.empty(),
                farthest > 0.0
                        ? MarginSearch.boundary(
                                slack, MarginSearch.thickerGuess(slack, across), farthest, MarginSearch.FINEST, size)
                        : OptionalDouble.empty());
    }
}
