package dev.slowpoint.plan;

import dev.slowpoint.food.DonenessRange;
import dev.slowpoint.plan.ProcessWindow.AtSetpoint;
import dev.slowpoint.plan.ProcessWindow.Bar;
import dev.slowpoint.plan.ProcessWindow.Change;
import dev.slowpoint.plan.ProcessWindow.Closed;
import dev.slowpoint.plan.ProcessWindow.Interval;
import dev.slowpoint.plan.ProcessWindow.Lines;
import dev.slowpoint.plan.ProcessWindow.Opening;
import dev.slowpoint.plan.ProcessWindow.ProcessPoint;
import dev.slowpoint.plan.ProcessWindow.Refused;
import dev.slowpoint.plan.ProcessWindow.Tolerances;
import dev.slowpoint.plan.Robustness.Moments;
import dev.slowpoint.safety.Purpose;
import dev.slowpoint.safety.Requirement;
import dev.slowpoint.safety.Verdict;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Predicate;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/**
 * Looks a range of setpoints over. Each is tried as a cook plan is, but for its margins; where two neighbours differ in
 * whether there is a moment to take the piece out, the edge between them is closed in.
 *
 * <p>The point it recommends differs from the setpoint that a cook plan chooses. A cook plan takes the coolest of the usual
 * setpoints that is safe and not on the edge of the rule. Here it is the coolest at which all may go wrong once more, and
 * its soonest moment that is not before the best one of the cook plan; where no setpoint has so much in hand, the one that
 * has most.
 */
final class ProcessWindowing {

    /** Setpoints are told in hundredths of a kelvin, and so are they tried. */
    private static final double PER_KELVIN = 100.0;

    /** How closely the edge of the region is found [K]. */
    private static final double FINEST_K = ProcessWindow.EDGE_WITHIN_K;

    /** How far beyond the range, and in which steps, a bath that opens a region is looked for [K] (our own limits). */
    private static final double BEYOND_K = 15.0;

    private static final double BEYOND_STEP_K = 1.0;

    /** How much smaller a piece may be offered, how closely that is found, and at how many setpoints (our own limits). */
    private static final double LEAST_SHARE = 0.1;

    private static final double FINEST_SHARE = 0.02;
    private static final int COARSE = 7;

    private final ProcessWindowTask task;
    private final CookTask cook;
    private final Terms terms;
    private final SolverRuns solver = new SolverRuns();
    private final Tries tries;
    private final double available;
    private final double lowestC;
    private final double highestC;
    private final double stepK;
    private final Tolerances tolerances;
    private final Robustness robustness;

    ProcessWindowing(ProcessWindowTask task, Terms terms) {
        this.task = task;
        this.cook = task.cook();
        this.terms = terms;
        this.tries = new Tries(cook, terms, solver);
        this.available = task.available().orElse(Double.POSITIVE_INFINITY);
        Defaults defaults = terms.knowledge().defaults();
        WindowDefaults window = terms.knowledge().window();
        this.lowestC = hundredths(task.lowestC().orElseGet(this::usualLowestC));
        this.highestC = hundredths(task.highestC().orElseGet(this::usualHighestC));
        if (lowestC > highestC) {
            throw new Refusal(Refusal.Fault.of(
                            task.lowestC().isPresent() ? "#/lowestSetpointC" : "#/highestSetpointC",
                            "SETPOINTS_REVERSED",
                            "FAULT_SETPOINTS_REVERSED",
                            lowestC,
                            highestC)
                    .withHint("HINT_BOTH_SETPOINTS"));
        }
        this.stepK = task.stepK().orElseGet(() -> usualStepK(window.stepK()));
        if (steps() >= ProcessWindowTask.MOST) {
            throw new Refusal(Refusal.Fault.of(
                            "#/stepK",
                            "TOO_MANY_SETPOINTS",
                            "FAULT_TOO_MANY_SETPOINTS",
                            lowestC,
                            highestC,
                            stepK,
                            steps() + 1,
                            ProcessWindowTask.MOST)
                    .withValue(Double.toString(stepK))
                    .withHint("HINT_WIDER_STEPS"));
        }
        this.tolerances = new Tolerances(
                cook.tolerances().bathK().orElse(defaults.bathK()),
                task.momentTolerance().orElse(window.momentTolerance()),
                Setting.acrossBy(cook, defaults),
                Setting.startBy(cook, defaults));
        this.robustness = new Robustness(tries, tolerances, available);
    }

    private static double hundredths(double celsius) {
        return Math.rint(PER_KELVIN * celsius) / PER_KELVIN;
    }

    private int steps() {
        return (int) Math.ceil((highestC - lowestC) / stepK - 1e-9);
    }

    private double usualStepK(double step) {
        double fitting = step;
        while ((highestC - lowestC) / fitting > ProcessWindowTask.MOST - 1) {
            fitting *= 2.0;
        }
        return fitting;
    }

    private double usualLowestC() {
        double from = cook.target().coreC().isPresent()
                ? cook.target().coreC().getAsDouble()
                : usual().lowC() - terms.knowledge().window().belowK();
        return Math.max(from, Admission.COOLEST_BATH_C);
    }

    private double usualHighestC() {
        double usualC =
                cook.target().coreC().isPresent() ? cook.target().coreC().getAsDouble() : usual().highC();
        double floorC = floors().max().orElse(usualC) + terms.errorK();
        double to = Math.max(usualC, floorC) + terms.knowledge().window().aboveK();
        return Math.min(to, Math.floor(BoilingPoint.atC(cook.altitude()) - 1.0));
    }

    /** Usual temperatures of a food; without any, those from the lowest to the highest floor of its rule [C]. */
    private Usual usual() {
        Optional<DonenessRange> range = cook.food().doneness();
        if (range.isPresent()) {
            return new Usual(range.get().lowC(), range.get().highC());
        }
        if (floors().findAny().isEmpty()) {
            throw new Refusal(Refusal.Fault.of("#/lowestSetpointC", "SETPOINT_NEEDED", "FAULT_NO_RANGE")
                    .withHint("HINT_GIVE_RANGE"));
        }
        return new Usual(floors().min().orElseThrow(), floors().max().orElseThrow());
    }

    private record Usual(double lowC, double highC) {}

    private DoubleStream floors() {
        return terms.requirements().stream().filter(r -> !r.advisory()).mapToDouble(Requirement::floorC);
    }

    /** The answer. */
    ProcessWindow window() {
        List<AtSetpoint> setpoints = new ArrayList<>();
        for (int i = 0; i <= steps(); i++) {
            setpoints.add(at(Math.min(hundredths(lowestC + i * stepK), highestC)));
        }
        AtSetpoint hottest = setpoints.get(setpoints.size() - 1);
        if (setpoints.stream().allMatch(s -> s.lines().isEmpty())) {
            throw refusal(hottest);
        }
        List<Interval> region = region(setpoints);
        Optional<ProcessPoint> recommended = recommended(setpoints);
        Optional<ProcessPoint> own = own();
        Trial told = recommended
                .map(point -> robustness.served(point.setpointC(), point.at()))
                .orElseGet(() -> tries.at(lastTried(setpoints).setpointC()));
        CookTask toldOf = recommended
                .map(point -> cook.served(OptionalDouble.of(point.at())))
                .orElse(cook);
        return new ProcessWindow(
                terms.knowledge().version(),
                terms.knowledge().digest(),
                terms.rule(),
                stepK,
                tolerances,
                setpoints,
                region,
                region.isEmpty() ? Optional.of(closed(setpoints)) : Optional.empty(),
                recommended,
                own,
                Notices.of(toldOf.at(told.setpointC()), told, terms, Sequel.Found.NOTHING),
                solver.effort());
    }

    private AtSetpoint at(double setpointC) {
        if (tries.refused(setpointC).isPresent()) {
            return new AtSetpoint(setpointC, Optional.empty(), tries.refused(setpointC));
        }
        Trial trial = tries.at(setpointC);
        return new AtSetpoint(
                setpointC,
                Optional.of(new Lines(trial.times(), trial.warmUpUsedUp(), trial.takeOut(), trial.verdict())),
                tries.bar(setpointC, available));
    }

    private static AtSetpoint lastTried(List<AtSetpoint> setpoints) {
        return setpoints.stream()
                .filter(s -> s.lines().isPresent())
                .reduce((cooler, hotter) -> hotter)
                .orElseThrow();
    }

    /** Every setpoint is refused: as the hottest is. */
    private static Refusal refusal(AtSetpoint hottest) {
        if (hottest.bar().orElseThrow() instanceof Refused refused) {
            Refusal.Fault fault = refused.fault();
            boolean ofBath = fault.pointer().endsWith("setpointC");
            return new Refusal(ofBath ? fault.at("#/highestSetpointC") : fault);
        }
        throw new IllegalStateException("a setpoint without lines was not refused");
    }

    /**
     * Neighbours with the same verdict, joined. Where the verdict changes within the region, one interval ends and another
     * begins: what is safe by a sear alone is not the same as what is safe to the core.
     */
    private List<Interval> region(List<AtSetpoint> setpoints) {
        List<Interval> region = new ArrayList<>();
        Crossing begins = new Crossing(setpoints.get(0), setpoints.get(0));
        for (int i = 0; i < setpoints.size(); i++) {
            AtSetpoint here = setpoints.get(i);
            boolean last = i == setpoints.size() - 1;
            if (!last && alike(here, setpoints.get(i + 1))) {
                continue;
            }
            Crossing ends = last ? new Crossing(here, here) : crossing(here, setpoints.get(i + 1));
            if (here.bar().isEmpty()) {
                Verdict verdict = here.lines().orElseThrow().verdict();
                region.add(new Interval(
                        begins.hotter(),
                        ends.cooler(),
                        verdict,
                        begins.cooler().bar(),
                        ends.hotter().bar()));
            }
            begins = ends;
        }
        return region;
    }

    private static boolean alike(AtSetpoint one, AtSetpoint other) {
        if (one.bar().isPresent() || other.bar().isPresent()) {
            return one.bar().isPresent() && other.bar().isPresent();
        }
        return one.lines().orElseThrow().verdict()
                == other.lines().orElseThrow().verdict();
    }

    /** Two setpoints close by each other on either side of an edge; the same one where the range ends. */
    private record Crossing(AtSetpoint cooler, AtSetpoint hotter) {}

    private Crossing crossing(AtSetpoint cooler, AtSetpoint hotter) {
        AtSetpoint below = cooler;
        AtSetpoint above = hotter;
        while (above.setpointC() - below.setpointC() > FINEST_K + 1e-9) {
            AtSetpoint middle = at(hundredths(0.5 * (below.setpointC() + above.setpointC())));
            if (alike(cooler, middle)) {
                below = middle;
            } else {
                above = middle;
            }
        }
        return new Crossing(below, above);
    }

    /**
     * Where a point may be recommended: of the setpoints in the region those that are safe to the core, and of these those
     * at which the food is usually eaten. What none of them satisfies is not asked for.
     */
    private List<AtSetpoint> eligible(List<AtSetpoint> setpoints) {
        List<AtSetpoint> open =
                setpoints.stream().filter(s -> s.bar().isEmpty()).toList();
        List<AtSetpoint> safe =
                unlessNone(open, s -> safeToTheCore(s.lines().orElseThrow().verdict()));
        return cook.food()
                .doneness()
                .filter(range -> cook.target().coreC().isEmpty())
                .map(range -> unlessNone(safe, s -> s.setpointC() >= range.lowC() && s.setpointC() <= range.highC()))
                .orElse(safe);
    }

    private static List<AtSetpoint> unlessNone(List<AtSetpoint> setpoints, Predicate<AtSetpoint> fitting) {
        List<AtSetpoint> found = setpoints.stream().filter(fitting).toList();
        return found.isEmpty() ? setpoints : found;
    }

    private Optional<ProcessPoint> recommended(List<AtSetpoint> setpoints) {
        List<AtSetpoint> eligible = eligible(setpoints);
        if (eligible.isEmpty()) {
            return Optional.empty();
        }
        double wanted = terms.knowledge().window().spare();
        for (AtSetpoint setpoint : eligible) {
            Optional<Moments> moments = robustness.moments(setpoint.setpointC(), wanted);
            if (moments.isPresent()) {
                double best = setpoint.lines().orElseThrow().takeOut().best();
                double at = Math.ceil(Math.max(
                        moments.get().from(), Math.min(best, moments.get().to())));
                return Optional.of(robustness.point(
                        setpoint.setpointC(),
                        Math.min(at, Math.floor(moments.get().to()))));
            }
        }
        AtSetpoint safest = eligible.get(0);
        double most = 0.0;
        for (AtSetpoint setpoint : eligible) {
            if (robustness
                    .moments(setpoint.setpointC(), most + Robustness.FINEST)
                    .isPresent()) {
                most = robustness.most(setpoint.setpointC(), most + Robustness.FINEST, wanted);
                safest = setpoint;
            }
        }
        Moments moments = robustness.moments(safest.setpointC(), most).orElseThrow();
        return Optional.of(robustness.point(safest.setpointC(), Math.rint(0.5 * (moments.from() + moments.to()))));
    }

    /** The point that the caller had in mind. */
    private Optional<ProcessPoint> own() {
        if (task.ownC().isEmpty()) {
            return Optional.empty();
        }
        double setpointC = task.ownC().getAsDouble();
        if (tries.refused(setpointC).isPresent()) {
            Refused refused = (Refused) tries.refused(setpointC).get();
            throw new Refusal(refused.fault());
        }
        Trial trial = tries.at(setpointC);
        double at = task.ownAt().orElseGet(() -> Math.ceil(trial.judgedAt()));
        return Optional.of(robustness.point(setpointC, at));
    }

    private Closed closed(List<AtSetpoint> setpoints) {
        Bar most = setpoints.get(setpoints.size() - 1).bar().orElseThrow();
        long times = 0;
        for (int i = setpoints.size() - 1; i >= 0; i--) {
            Bar bar = setpoints.get(i).bar().orElseThrow();
            long same = setpoints.stream()
                    .filter(s -> s.bar().orElseThrow().code().equals(bar.code()))
                    .count();
            if (same > times) {
                most = bar;
                times = same;
            }
        }
        List<Opening> openings = new ArrayList<>();
        elsewhere(Change.HOTTER, highestC, BEYOND_STEP_K).ifPresent(openings::add);
        elsewhere(Change.COOLER, lowestC, -BEYOND_STEP_K).ifPresent(openings::add);
        thinner().ifPresent(openings::add);
        longer(setpoints).ifPresent(openings::add);
        openings.addAll(otherPurposes());
        return new Closed(most, openings);
    }

    private Optional<Opening> elsewhere(Change change, double fromC, double stepK) {
        double[] setpointsC = DoubleStream.iterate(stepK, byK -> Math.abs(byK) <= BEYOND_K, byK -> byK + stepK)
                .map(byK -> hundredths(fromC + byK))
                .toArray();
        return firstOpen(tries, setpointsC)
                .map(open -> new Opening(
                        change,
                        open.setpointC(),
                        open.verdict(),
                        OptionalDouble.empty(),
                        Optional.empty(),
                        OptionalDouble.empty()));
    }

    /** The largest smaller piece that has a moment at some setpoint; one that is safe to the core if there is one. */
    private Optional<Opening> thinner() {
        double across = cook.body().across();
        double low = Math.max(LEAST_SHARE * across, MarginSearch.THINNEST);
        if (low >= across) {
            return Optional.empty();
        }
        Optional<Trial> found = ofSize(low);
        boolean toTheCore = found.filter(ProcessWindowing::toTheCore).isPresent();
        double high = across;
        while (found.isPresent() && high - low > FINEST_SHARE * across) {
            double middle = 0.5 * (low + high);
            Optional<Trial> open = ofSize(middle).filter(trial -> !toTheCore || toTheCore(trial));
            if (open.isPresent()) {
                low = middle;
                found = open;
            } else {
                high = middle;
            }
        }
        double size = low;
        return found.map(trial -> new Opening(
                Change.THINNER,
                trial.setpointC(),
                trial.verdict(),
                OptionalDouble.of(size),
                Optional.empty(),
                OptionalDouble.empty()));
    }

    private Optional<Trial> ofSize(double across) {
        return firstOpen(new Tries(cook.with(cook.body().withAcross(across)), terms, solver), coarse());
    }

    private Optional<Opening> longer(List<AtSetpoint> setpoints) {
        if (Double.isInfinite(available)) {
            return Optional.empty();
        }
        Optional<Opening> least = Optional.empty();
        double earliest = Double.POSITIVE_INFINITY;
        for (AtSetpoint setpoint : setpoints) {
            if (setpoint.bar().orElseThrow() instanceof ProcessWindow.TooLong late && late.earliest() < earliest) {
                earliest = late.earliest();
                least = Optional.of(new Opening(
                        Change.LONGER,
                        setpoint.setpointC(),
                        setpoint.lines().orElseThrow().verdict(),
                        OptionalDouble.empty(),
                        Optional.empty(),
                        OptionalDouble.of(earliest)));
            }
        }
        return least;
    }

    private List<Opening> otherPurposes() {
        List<Opening> openings = new ArrayList<>();
        for (Purpose purpose : Purpose.values()) {
            CookTask other = cook.toBe(purpose);
            List<Requirement> asked = other.requirements(
                    terms.knowledge().safety().rules(), terms.rule().id());
            boolean possible = purpose != Purpose.REHEAT || !cook.raw();
            if (possible && !asked.equals(terms.requirements())) {
                firstOpen(new Tries(other, terms.asking(asked), solver), coarse())
                        .ifPresent(open -> openings.add(new Opening(
                                Change.OTHER_PURPOSE,
                                open.setpointC(),
                                open.verdict(),
                                OptionalDouble.empty(),
                                Optional.of(purpose),
                                OptionalDouble.empty())));
            }
        }
        return openings;
    }

    /** A few setpoints over the range [C]. */
    private double[] coarse() {
        return IntStream.range(0, COARSE)
                .mapToDouble(i -> hundredths(lowestC + i * (highestC - lowestC) / (COARSE - 1)))
                .toArray();
    }

    /** The first setpoint with a moment, one that is safe to the core if there is one. */
    private Optional<Trial> firstOpen(Tries others, double[] setpointsC) {
        List<Trial> open = new ArrayList<>();
        for (double setpointC : setpointsC) {
            if (others.bar(setpointC, available).isEmpty()) {
                open.add(others.at(setpointC));
            }
        }
        return open.stream()
                .filter(ProcessWindowing::toTheCore)
                .findFirst()
                .or(() -> open.stream().findFirst());
    }

    private static boolean toTheCore(Trial trial) {
        return safeToTheCore(trial.verdict());
    }

    private static boolean safeToTheCore(Verdict verdict) {
        return verdict == Verdict.MET || verdict == Verdict.NOT_APPLICABLE;
    }
}
