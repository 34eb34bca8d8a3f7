package dev.slowpoint.plan;

import dev.slowpoint.plan.CookPlan.Obstacle;
import dev.slowpoint.plan.CookPlan.Times;
import dev.slowpoint.plan.LookupTable.Quantity;
import dev.slowpoint.plan.TableGrid.Spot;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * The plans behind a lookup table, each computed once. Those of one call are shared among the cores: each is computed on
 * its own and kept in the order asked, so that the threads decide nothing.
 */
final class TablePlans {

    private final LookupTableTask task;
    private final Terms terms;
    private final Map<Spot, Planned> known = new LinkedHashMap<>();

    TablePlans(LookupTableTask task, Terms terms) {
        this.task = task;
        this.terms = terms;
    }

    /** Computes what is not known yet. */
    void solve(List<Spot> spots) {
        List<Spot> missing =
                spots.stream().distinct().filter(s -> !known.containsKey(s)).toList();
        Planned[] planned = new Planned[missing.size()];
        Arrays.parallelSetAll(planned, i -> plan(missing.get(i)));
        for (int i = 0; i < planned.length; i++) {
            known.put(missing.get(i), planned[i]);
        }
    }

    /** The time of a quantity [s] at a point that was solved; infinity for never. */
    double time(Spot spot, Quantity quantity) {
        return Objects.requireNonNull(known.get(spot)).time(quantity);
    }

    /** All points that were solved, in that order. */
    List<Spot> spots() {
        return List.copyOf(known.keySet());
    }

    int count() {
        return known.size();
    }

    CookPlan.Effort effort() {
        return new CookPlan.Effort(
                known.values().stream().mapToInt(p -> p.effort().runs()).sum(),
                known.values().stream().mapToLong(p -> p.effort().steps()).sum());
    }

    /** What a plan at a point warns of. */
    List<Notice> notices(Spot spot) {
        CookTask cook = cook(spot);
        return Notices.of(cook, Trial.of(cook, spot.setpointC(), terms, new SolverRuns()), terms, Sequel.Found.NOTHING);
    }

    private CookTask cook(Spot spot) {
        return task.at(spot.size(), spot.setpointC(), spot.startC());
    }

    private Planned plan(Spot spot) {
        SolverRuns solver = new SolverRuns();
        Trial trial = Trial.of(cook(spot), spot.setpointC(), terms, solver);
        Map<Quantity, Double> times = new EnumMap<>(Quantity.class);
        for (Quantity quantity : Quantity.values()) {
            times.put(quantity, time(trial, quantity));
        }
        return new Planned(times, solver.effort());
    }

    private double time(Trial trial, Quantity quantity) {
        Times times = trial.times();
        double horizon = terms.knowledge().defaults().horizon();
        boolean tooSlow = trial.takeOut()
                .obstacle()
                .filter(o -> o == Obstacle.WARM_UP_TOO_SLOW)
                .isPresent();
        return switch (quantity) {
            case HOT_THROUGH -> times.hotThrough().late();
            case SAFE -> tooSlow ? Double.POSITIVE_INFINITY : late(times.safe());
            case TENDER -> late(times.tender());
            case GOOD_UNTIL -> Math.min(trial.exposed(), early(times.goodUntil(), horizon));
            case SOFT_FROM -> early(times.softFrom(), horizon);
        };
    }

    private static double late(Optional<Span> span) {
        return span.map(Span::late).orElse(0.0);
    }

    /** What never closes counts as closing at the end of all plans, so that nothing is interpolated with never. */
    private static double early(Optional<Span> span, double horizon) {
        return Math.min(horizon, span.map(Span::early).orElse(horizon));
    }

    private record Planned(Map<Quantity, Double> times, CookPlan.Effort effort) {

        double time(Quantity quantity) {
            return Objects.requireNonNull(times.get(quantity));
        }
    }
}
