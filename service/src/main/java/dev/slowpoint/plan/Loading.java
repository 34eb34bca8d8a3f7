package dev.slowpoint.plan;

import dev.slowpoint.heat.CommonWater;
import dev.slowpoint.heat.PointHistory;
import dev.slowpoint.heat.TemperatureHistory;
import dev.slowpoint.heat.WaterBath;
import dev.slowpoint.heat.WaterLine;
import dev.slowpoint.plan.CookPlan.BathCourse;
import dev.slowpoint.plan.CookPlan.TakeOut;
import dev.slowpoint.plan.LoadPlan.Conflict;
import dev.slowpoint.plan.LoadPlan.Lowering;
import dev.slowpoint.plan.LoadPlan.Obstacle;
import dev.slowpoint.plan.LoadPlan.Phase;
import dev.slowpoint.plan.LoadPlan.Reason;
import dev.slowpoint.plan.LoadPlan.Schedule;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * Answers a question for a load plan: looks for the simplest way in which all foods keep their rule, their temperature and
 * their texture, and says so where there is none.
 *
 * <p>Looked for are, in this order: one setpoint and one time for all; one setpoint, with the quicker foods going in later; two
 * setpoints, the hotter one first. Where water and heater are told, each way that is found is computed again with all foods in
 * one water, in each corner, and stands only if every food keeps its window there. Foods are looked at in the order of their
 * ids, so that the order of the question changes nothing.
 */
final class Loading {

    /** Setpoints are tried this close together, and where a range begins and ends (common practice, no source). */
    private static final double STEP_K = 0.5;

    /**
     * A window longer than so many spreads of the time to be hot through is long enough: among such the coolest bath is taken
     * (our own choice).
     */
    private static final double ENOUGH_SPREADS = 2.0;

    /** The least spread counted with [s]. */
    private static final double LEAST_SPREAD = 60.0;

    /** How many of the best setpoints are tried in common water, and how often times are moved there. */
    private static final int MOST_OPTIONS = 4;

    private static final int MOST_MOVES = 8;

    private static final double SAME_K = 1e-9;

    private final LoadTask load;
    private final CookPlanner planner;
    private final Knowledge knowledge;
    private final Set<Detail> details;
    private final SolverRuns solver = new SolverRuns();
    private final List<Dish> dishes = new ArrayList<>();
    private final OptionalDouble fixedC;
    private final Optional<CookTask.Vessel> vessel;
    private final boolean coupled;
    private Optional<Conflict> lastFailure = Optional.empty();

    Loading(LoadTask load, CookPlanner planner, Set<Detail> details) {
        this.load = load;
        this.planner = planner;
        this.knowledge = planner.knowledge();
        this.details = details;
        CookTask.Bath bath = load.items().get(0).task().bath();
        this.fixedC = bath.setpointC();
        this.vessel = bath.vessel();
        this.coupled = vessel.isPresent() && load.items().size() > 1;
        List<Refusal.Fault> faults = new ArrayList<>();
        List<Refusal.Alternative> alternatives = new ArrayList<>();
        for (int i = 0; i < load.items().size(); i++) {
            try {
                dishes.add(new Dish(load.items().get(i)));
            } catch (Refusal refusal) {
                alternatives.addAll(refusal.alternatives());
                for (Refusal.Fault fault : refusal.faults()) {
                    // What stands in the way of one item is told at that item, unless the setpoint itself was sent.
                    faults.add(fixedC.isPresent() ? LoadTask.placed(fault, i) : fault.at("#/items/" + i));
                }
            }
        }
        if (!faults.isEmpty()) {
            throw new Refusal(faults, alternatives);
        }
        dishes.sort(Comparator.comparing(d -> d.id));
    }

    /** The answer. */
    LoadPlan plan() {
        Optional<Layout> layout = found(load.serveAfter());
        boolean late = layout.isEmpty() && load.serveAfter().isPresent();
        if (late) {
            layout = found(OptionalDouble.empty());
        }
        return layout.isPresent() ? plan(layout.get(), late) : apart();
    }

    /** The simplest way, if there is one. */
    private Optional<Layout> found(OptionalDouble serveAfter) {
        for (List<Option> options : List.of(oneTime(serveAfter), staggered(serveAfter), twoSetpoints())) {
            List<Option> best = options.stream()
                    .sorted(Comparator.comparingDouble((Option o) -> -o.score())
                            .thenComparingDouble(o -> o.groups().get(0).setpointC()))
                    .limit(MOST_OPTIONS)
                    .toList();
            for (Option option : best) {
                Optional<Layout> layout = lay(option, serveAfter);
                if (layout.isPresent()) {
                    return layout;
                }
            }
        }
        return Optional.empty();
    }

    private List<Option> oneTime(OptionalDouble serveAfter) {
        List<Option> options = new ArrayList<>();
        for (double setpointC : setpoints(dishes)) {
            double margin = commonMargin(dishes, setpointC, serveAfter);
            if (margin >= 0.0) {
                options.add(new Option(
                        Schedule.TOGETHER, List.of(new Group(setpointC, dishes, true)), score(margin, dishes)));
            }
        }
        return options;
    }

    /** The longer its window, the better, up to what is enough; where a core is asked for, the nearest bath to it is best. */
    private static double score(double margin, List<Dish> some) {
        return some.stream().anyMatch(d -> d.task.target().coreC().isPresent())
                ? 0.0
                : Math.min(margin, ENOUGH_SPREADS);
    }

    private List<Option> staggered(OptionalDouble serveAfter) {
        List<Option> options = new ArrayList<>();
        for (double setpointC : setpoints(dishes)) {
            double margin = ownMargin(dishes, setpointC);
            boolean inTime = dishes.stream()
                    .allMatch(d -> d.window(setpointC).earliest() <= serveAfter.orElse(Double.POSITIVE_INFINITY));
            if (margin >= 0.0 && inTime) {
                options.add(new Option(
                        Schedule.STAGGERED, List.of(new Group(setpointC, dishes, false)), score(margin, dishes)));
            }
        }
        return options;
    }

    /** The hotter foods first. The reverse would leave the cooler ones in water that is too hot for them. */
    private List<Option> twoSetpoints() {
        List<Option> options = new ArrayList<>();
        List<Dish> hottestFirst = new ArrayList<>(dishes);
        hottestFirst.sort(Comparator.comparingDouble((Dish d) -> -d.lowC)
                .thenComparingDouble(d -> -d.highC)
                .thenComparing(d -> d.id));
        for (int n = 1; n < hottestFirst.size() && fixedC.isEmpty(); n++) {
            Optional<Group> hot = best(hottestFirst.subList(0, n));
            Optional<Group> cool = best(hottestFirst.subList(n, hottestFirst.size()));
            if (hot.isPresent()
                    && cool.isPresent()
                    && hot.get().setpointC() > cool.get().setpointC() + SAME_K) {
                options.add(new Option(
                        Schedule.TWO_SETPOINTS,
                        List.of(hot.get(), cool.get()),
                        Math.min(margin(hot.get()), margin(cool.get()))));
            }
        }
        return options;
    }

    private double margin(Group group) {
        double common = commonMargin(group.dishes(), group.setpointC(), OptionalDouble.empty());
        return score(group.common() ? common : ownMargin(group.dishes(), group.setpointC()), group.dishes());
    }

    /** The setpoint at which foods go best together, preferably with one time for all. */
    private Optional<Group> best(List<Dish> some) {
        List<Group> groups = new ArrayList<>();
        for (double setpointC : setpoints(some)) {
            if (ownMargin(some, setpointC) >= 0.0) {
                boolean common = commonMargin(some, setpointC, OptionalDouble.empty()) >= 0.0;
                groups.add(new Group(setpointC, List.copyOf(some), common));
            }
        }
        return groups.stream()
                .min(Comparator.comparing((Group g) -> !g.common())
                        .thenComparingDouble(g -> -margin(g))
                        .thenComparingDouble(Group::setpointC));
    }

    /** Setpoints that all of some foods may have, rising. */
    private static TreeSet<Double> setpoints(List<Dish> some) {
        double lowC = some.stream().mapToDouble(d -> d.lowC).max().orElseThrow();
        double highC = some.stream().mapToDouble(d -> d.highC).min().orElseThrow();
        TreeSet<Double> setpoints = new TreeSet<>();
        if (lowC > highC + SAME_K) {
            return setpoints;
        }
        setpoints.add(lowC);
        for (double c = Math.ceil(lowC / STEP_K) * STEP_K; c <= highC + SAME_K; c += STEP_K) {
            setpoints.add(c);
        }
        return setpoints;
    }

    /** How long the window that all share is, or how far a fixed time lies within it, in spreads; below zero if it is none. */
    private static double commonMargin(List<Dish> some, double setpointC, OptionalDouble serveAfter) {
        if (some.stream().anyMatch(d -> !d.fits(setpointC))) {
            return Double.NEGATIVE_INFINITY;
        }
        double earliest = 0.0;
        double latest = Double.POSITIVE_INFINITY;
        double spread = LEAST_SPREAD;
        for (Dish dish : some) {
            Window window = dish.window(setpointC);
            earliest = Math.max(earliest, window.earliest());
            latest = Math.min(latest, window.latest());
            spread = Math.max(spread, window.spread());
        }
        double length = serveAfter.isPresent()
                ? Math.min(serveAfter.getAsDouble() - earliest, latest - serveAfter.getAsDouble())
                : latest - earliest;
        return length / spread;
    }

    /** How long the shortest window of foods is, in spreads; below zero if one has none. */
    private static double ownMargin(List<Dish> some, double setpointC) {
        double least = Double.POSITIVE_INFINITY;
        for (Dish dish : some) {
            if (!dish.fits(setpointC)) {
                return Double.NEGATIVE_INFINITY;
            }
            Window window = dish.window(setpointC);
            least = Math.min(least, (window.latest() - window.earliest()) / window.spread());
        }
        return least;
    }

    /**
     * Finds the times of an option: from each food's own window at first, then moved until every food keeps the window that it
     * has in the water they share.
     */
    private Optional<Layout> lay(Option option, OptionalDouble serveAfter) {
        Map<Dish, Double> stays = new HashMap<>();
        for (Group group : option.groups()) {
            Map<Dish, Window> windows = new LinkedHashMap<>();
            group.dishes().forEach(d -> windows.put(d, d.window(group.setpointC())));
            if (!choose(group, windows, stays, common(option, serveAfter))) {
                return Optional.empty();
            }
        }
        Set<Dish> outBefore = new HashSet<>();
        for (int i = 0; i < MOST_MOVES; i++) {
            Times times = times(option, stays, serveAfter);
            if (times.entries().values().stream().anyMatch(at -> at < 0.0)) {
                return Optional.empty();
            }
            Layout layout = cooked(option, times, outBefore);
            boolean settled = true;
            for (Group group : option.groups()) {
                Map<Dish, Window> windows = new LinkedHashMap<>();
                for (Dish dish : group.dishes()) {
                    Tried tried = layout.of(dish);
                    if (!dish.passes(tried.trial())) {
                        return failed(dish, tried.trial());
                    }
                    windows.put(dish, Window.of(tried.trial()));
                }
                boolean within = group.dishes().stream().allMatch(d -> {
                    Window window = Objects.requireNonNull(windows.get(d));
                    double stay = Objects.requireNonNull(stays.get(d));
                    return stay >= window.earliest() && stay <= window.latest();
                });
                if (!within) {
                    settled = false;
                    if (!choose(group, windows, stays, common(option, serveAfter))) {
                        return failed(
                                group.dishes().get(0),
                                layout.of(group.dishes().get(0)).trial());
                    }
                }
            }
            for (Dish dish : option.groups().get(0).dishes()) {
                Tried tried = layout.of(dish);
                boolean stayed = option.groups().size() > 1 && !outBefore.contains(dish);
                double stay = tried.leavesAt() - tried.entersAt();
                boolean keeps = dish.passes(tried.served())
                        && stay <= Window.of(tried.trial()).latest();
                if (stayed && !keeps) {
                    outBefore.add(dish);
                    settled = false;
                }
            }
            if (settled) {
                return Optional.of(layout);
            }
        }
        return Optional.empty();
    }

    private Optional<Layout> failed(Dish dish, Trial trial) {
        lastFailure = Optional.of(Conflict.of(
                Obstacle.FAILS_IN_THIS_LOAD, dish.id, trial.takeOut().obstacle()));
        return Optional.empty();
    }

    /** The time that all of a group stay in the water, where that is fixed. */
    private static OptionalDouble common(Option option, OptionalDouble serveAfter) {
        return option.schedule() == Schedule.TOGETHER ? serveAfter : OptionalDouble.empty();
    }

    /** Chooses how long the foods of a group stay; whether there is such a time. */
    private static boolean choose(
            Group group, Map<Dish, Window> windows, Map<Dish, Double> stays, OptionalDouble fixed) {
        if (!group.common()) {
            windows.forEach((dish, window) -> stays.put(dish, window.best()));
            return windows.values().stream().allMatch(w -> w.earliest() <= w.latest());
        }
        double earliest =
                windows.values().stream().mapToDouble(Window::earliest).max().orElseThrow();
        double latest =
                windows.values().stream().mapToDouble(Window::latest).min().orElseThrow();
        double best = windows.values().stream().mapToDouble(Window::best).max().orElseThrow();
        double stay = fixed.orElse(Math.min(Math.max(best, earliest), latest));
        windows.keySet().forEach(dish -> stays.put(dish, stay));
        return stay >= earliest && stay <= latest;
    }

    /** When what happens. */
    private static Times times(Option option, Map<Dish, Double> stays, OptionalDouble serveAfter) {
        List<Double> lengths = option.groups().stream()
                .map(g -> g.dishes().stream()
                        .mapToDouble(d -> Objects.requireNonNull(stays.get(d)))
                        .max()
                        .orElseThrow())
                .toList();
        double length = lengths.stream().mapToDouble(Double::doubleValue).sum();
        double ready = serveAfter.orElse(length);
        double ends = ready - length;
        Map<Dish, Double> entries = new HashMap<>();
        for (int g = 0; g < lengths.size(); g++) {
            ends += lengths.get(g);
            for (Dish dish : option.groups().get(g).dishes()) {
                entries.put(dish, ends - Objects.requireNonNull(stays.get(dish)));
            }
        }
        return new Times(entries, ready - lengths.get(lengths.size() - 1), ready);
    }

    /** All foods of an option through the water they share. */
    private Layout cooked(Option option, Times times, Set<Dish> outBefore) {
        double latestEntry = times.entries().values().stream()
                .mapToDouble(Double::doubleValue)
                .max()
                .orElseThrow();
        double horizon = latestEntry + knowledge.defaults().horizon();
        Map<Corner, CommonWater.Found> waters = new EnumMap<>(Corner.class);
        if (coupled) {
            for (Corner corner : Corner.values()) {
                waters.put(corner, water(option, times, outBefore, corner, horizon));
            }
        }
        Map<Dish, Tried> tried = new HashMap<>();
        int n = 0;
        for (int g = 0; g < option.groups().size(); g++) {
            Group group = option.groups().get(g);
            for (Dish dish : group.dishes()) {
                boolean early = g + 1 < option.groups().size();
                boolean stays = early && !outBefore.contains(dish);
                double entersAt = Objects.requireNonNull(times.entries().get(dish));
                double leavesAt = early && !stays ? times.changeAt() : times.readyAt();
                tried.put(
                        dish,
                        tried(dish, group.setpointC(), entersAt, leavesAt, stays, option, times, waters, n++, horizon));
            }
        }
        return new Layout(option, times, tried, Optional.ofNullable(waters.get(Corner.NOMINAL)));
    }

    private Tried tried(
            Dish dish,
            double setpointC,
            double entersAt,
            double leavesAt,
            boolean stays,
            Option option,
            Times times,
            Map<Corner, CommonWater.Found> waters,
            int guest,
            double horizon) {
        CookTask task = dish.task.at(setpointC);
        CookTask served = task.servedAfter(leavesAt - entersAt);
        Setting late = dish.setting(setpointC, Corner.LATE);
        CommonWater.Found lateWater = waters.get(Corner.LATE);
        if (lateWater == null && !stays) {
            Trial trial = dish.trial(setpointC);
            return new Tried(
                    entersAt, leavesAt, false, served, trial, again(served, trial, dish.terms), Optional.empty());
        }
        Map<Corner, TemperatureHistory> histories = new EnumMap<>(Corner.class);
        WaterLine lateLine;
        if (lateWater != null) {
            lateLine = lateWater.water().between(entersAt, horizon);
            waters.forEach(
                    (corner, water) -> histories.put(corner, water.histories().get(guest)));
        } else {
            double change = times.changeAt() - entersAt;
            double laterC = option.groups().get(1).setpointC();
            lateLine = new WaterLine(
                    new double[] {0.0, change, change, knowledge.defaults().horizon()},
                    new double[] {setpointC, setpointC, laterC, laterC});
            dish.terms.watch().begins(PlanPhase.SOLVE);
            for (Corner corner : Corner.values()) {
                Setting setting = dish.setting(setpointC, corner);
                histories.put(corner, solver.through(setting.along(lateLine), setting));
            }
            dish.terms.watch().ends(PlanPhase.SOLVE);
        }
        Trial trial = Trial.of(
                task,
                setpointC,
                dish.terms,
                late,
                history(histories, Corner.NOMINAL),
                history(histories, Corner.EARLY),
                history(histories, Corner.LATE),
                0.0);
        return new Tried(
                entersAt, leavesAt, stays, served, trial, again(served, trial, dish.terms), Optional.of(lateLine));
    }

    /** A trial judged at the time that its piece really leaves the bath. */
    private static Trial again(CookTask served, Trial trial, Terms terms) {
        return Trial.of(
                served,
                trial.setpointC(),
                terms,
                trial.lateSetting(),
                trial.nominal(),
                trial.early(),
                trial.late(),
                0.0);
    }

    private static TemperatureHistory history(Map<Corner, TemperatureHistory> histories, Corner corner) {
        return Objects.requireNonNull(histories.get(corner));
    }

    /** The water in a corner: every piece is turned that way. */
    private CommonWater.Found water(Option option, Times times, Set<Dish> outBefore, Corner corner, double horizon) {
        List<CommonWater.Guest> guests = new ArrayList<>();
        for (Group group : option.groups()) {
            for (Dish dish : group.dishes()) {
                Setting setting = dish.setting(group.setpointC(), corner);
                double volume = setting.immersion().water().orElseThrow().loadVolume();
                guests.add(new CommonWater.Guest(
                        Objects.requireNonNull(times.entries().get(dish)),
                        outBefore.contains(dish) ? times.changeAt() : horizon,
                        volume,
                        Math.min(setting.start().coreC(), setting.start().surfaceC()),
                        volume * setting.heatPerKelvin(),
                        setting.followingRate(),
                        line -> solver.through(setting.along(line), setting)));
            }
        }
        Group first = option.groups().get(0);
        WaterBath bath = first.dishes()
                .get(0)
                .setting(first.setpointC(), corner)
                .immersion()
                .water()
                .orElseThrow();
        List<CommonWater.Change> changes = option.groups().size() == 1
                ? List.of()
                : List.of(new CommonWater.Change(
                        times.changeAt(),
                        option.groups().get(1).setpointC(),
                        option.groups().get(1).setpointC()));
        planner.watch().begins(PlanPhase.SOLVE);
        CommonWater.Found found = CommonWater.of(bath, changes, guests, horizon);
        planner.watch().ends(PlanPhase.SOLVE);
        return found;
    }

    private LoadPlan plan(Layout layout, boolean late) {
        Option option = layout.option();
        List<LoadPlan.Item> items = new ArrayList<>();
        for (LoadTask.Item asked : load.items()) {
            Dish dish = dish(asked.id());
            Tried tried = layout.of(dish);
            CookPlan plan = planner.plan(
                    tried.task(), Optional.empty(), tried.served(), dish.terms, solver, margins(dish, tried), details);
            items.add(new LoadPlan.Item(
                    dish.id,
                    tried.entersAt(),
                    tried.leavesAt(),
                    // What comes out before the water is cooled has to be out by then.
                    tried.leavesAt() < layout.times().readyAt()
                            ? tried.leavesAt()
                            : tried.entersAt() + plan.takeOut().latest(),
                    plan.setpointC(),
                    tried.stays(),
                    plan,
                    LoadNotices.own(plan, coupled, knowledge)));
        }
        List<Phase> phases = phases(layout);
        Optional<Lowering> lowering = lowering(layout);
        LoadNotices notices = new LoadNotices(
                items, phases, lowering, layout.water(), layout.times().readyAt(), withinK());
        return new LoadPlan(
                knowledge.version(),
                knowledge.digest(),
                option.schedule(),
                switch (option.schedule()) {
                    case TOGETHER -> Reason.COMMON_WINDOW;
                    case STAGGERED -> Reason.TIMES_DIFFER;
                    default -> Reason.TEMPERATURES_DIFFER;
                },
                List.of(),
                OptionalDouble.of(layout.times().readyAt()),
                phases,
                lowering,
                layout.water()
                        .map(w -> OptionalDouble.of(w.atLimit(layout.times().readyAt())))
                        .orElse(OptionalDouble.empty()),
                items,
                notices.of(late ? load.serveAfter() : OptionalDouble.empty(), knowledge),
                details.contains(Detail.CURVE) ? Optional.of(water(layout)) : Optional.empty(),
                solver.effort());
    }

    private MarginSearch margins(Dish dish, Tried tried) {
        if (tried.lateLine().isEmpty()) {
            return MarginSearch.of(tried.task(), tried.served(), dish.terms, solver);
        }
        WaterLine line = tried.lateLine().get();
        double setpointC = tried.served().setpointC();
        return MarginSearch.of(tried.task(), tried.served(), dish.terms, (changedC, across, until) -> {
            CookTask changed =
                    tried.task().with(tried.task().body().withAcross(across)).at(changedC);
            Setting setting = Setting.of(changed, changedC, Corner.LATE, knowledge, dish.terms.materials());
            WaterLine water = line.between(0.0, until).warmerBy(changedC - setpointC);
            return solver.through(setting.along(water), setting).slowest();
        });
    }

    /** Of all foods the closest that any must come to its target [K]. */
    private double withinK() {
        return dishes.stream().mapToDouble(d -> planner.withinK(d.task)).min().orElseThrow();
    }

    private List<Phase> phases(Layout layout) {
        List<Phase> phases = new ArrayList<>();
        List<Group> groups = layout.option().groups();
        for (int g = 0; g < groups.size(); g++) {
            double from = g == 0 ? 0.0 : layout.times().changeAt();
            double until = g + 1 < groups.size()
                    ? layout.times().changeAt()
                    : layout.times().readyAt();
            double setpointC = groups.get(g).setpointC();
            phases.add(new Phase(from, setpointC, layout.water().map(water -> {
                WaterLine line = water.water().between(from, until);
                BathCourse course = BathCourse.of(
                        PointHistory.straightLines(line.times(), line.temperaturesC()), setpointC, withinK());
                return new BathCourse(course.lowestC(), from + course.lowestAt(), from + course.backAt());
            })));
        }
        return phases;
    }

    private Optional<Lowering> lowering(Layout layout) {
        List<Group> groups = layout.option().groups();
        if (groups.size() == 1) {
            return Optional.empty();
        }
        double at = layout.times().changeAt();
        double fromC = layout.water()
                .map(w -> w.water().beforeC(at))
                .orElse(groups.get(0).setpointC());
        double toC = groups.get(1).setpointC();
        return Optional.of(Lowering.of(
                at,
                Math.max(fromC, toC),
                toC,
                knowledge.after().tapC(),
                vessel.map(v -> OptionalDouble.of(v.volume())).orElse(OptionalDouble.empty())));
    }

    /** The water until all is ready. */
    private LoadPlan.Water water(Layout layout) {
        Times times = layout.times();
        List<Group> groups = layout.option().groups();
        WaterLine line = layout.water()
                .map(found -> found.water().between(0.0, times.readyAt()))
                .orElseGet(() -> groups.size() == 1
                        ? WaterLine.still(groups.get(0).setpointC(), 0.0, times.readyAt())
                        : new WaterLine(
                                new double[] {0.0, times.changeAt(), times.changeAt(), times.readyAt()}, new double[] {
                                    groups.get(0).setpointC(),
                                    groups.get(0).setpointC(),
                                    groups.get(1).setpointC(),
                                    groups.get(1).setpointC()
                                }));
        return new LoadPlan.Water(line.times(), line.temperaturesC());
    }

    /** Each food in a bath of its own, and why. */
    private LoadPlan apart() {
        List<Conflict> conflicts = new ArrayList<>();
        for (Dish dish : dishes) {
            if (!dish.fitsAnywhere()) {
                conflicts.add(dish.why(fixedC));
            }
        }
        boolean fails = !conflicts.isEmpty();
        for (Dish hot : dishes) {
            for (Dish cool : dishes) {
                if (hot.lowC > cool.highC + SAME_K) {
                    conflicts.add(new Conflict(
                            Obstacle.TEMPERATURES_APART,
                            hot.id,
                            Optional.of(cool.id),
                            Optional.empty(),
                            OptionalDouble.of(hot.lowC),
                            OptionalDouble.of(cool.highC)));
                }
            }
        }
        boolean apart = !conflicts.isEmpty() && !fails;
        Reason reason;
        if (fails) {
            reason = Reason.FAILS_ALONE;
        } else if (lastFailure.isPresent()) {
            reason = Reason.LOAD_TOO_HEAVY;
            conflicts.add(lastFailure.get());
        } else if (apart) {
            reason = Reason.TOO_MANY_TEMPERATURES;
        } else {
            reason = Reason.NOT_SAFE_WHERE_THEY_MEET;
            double hottestC = setpoints(dishes).last();
            dishes.stream()
                    .filter(d -> !d.fits(hottestC))
                    .forEach(d -> conflicts.add(Conflict.of(
                            Obstacle.FAILS_WHERE_THEY_MEET,
                            d.id,
                            d.trial(hottestC).takeOut().obstacle())));
        }
        List<LoadPlan.Item> items = new ArrayList<>();
        for (LoadTask.Item asked : load.items()) {
            CookPlan plan = planner.plan(asked.task(), details);
            TakeOut takeOut = plan.takeOut();
            items.add(new LoadPlan.Item(
                    asked.id(),
                    0.0,
                    takeOut.best(),
                    takeOut.latest(),
                    plan.setpointC(),
                    false,
                    plan,
                    LoadNotices.own(plan, false, knowledge)));
        }
        return new LoadPlan(
                knowledge.version(),
                knowledge.digest(),
                Schedule.APART,
                reason,
                conflicts,
                OptionalDouble.empty(),
                List.of(),
                Optional.empty(),
                OptionalDouble.empty(),
                items,
                LoadNotices.standing(items, knowledge),
                Optional.empty(),
                solver.effort());
    }

    private Dish dish(String id) {
        return dishes.stream().filter(d -> d.id.equals(id)).findFirst().orElseThrow();
    }

    /** One item, and what it does in baths of its own. */
    private final class Dish {

        private final String id;
        private final CookTask task;
        private final Terms terms;
        private final double lowC;
        private final double highC;
        private final Map<Double, Trial> trials = new TreeMap<>();

        Dish(LoadTask.Item item) {
            this.id = item.id();
            this.task = item.task();
            this.terms = planner.terms(task);
            double withinK = planner.withinK(task);
            if (fixedC.isPresent()) {
                planner.refuseCoolNonIntact(task, terms, solver);
                lowC = fixedC.getAsDouble();
                highC = lowC;
            } else if (task.target().coreC().isPresent()) {
                lowC = task.target().coreC().getAsDouble();
                highC = lowC + withinK;
            } else {
                // The coolest bath that is recommended for it alone, and what is usual above that.
                SetpointChooser.Choice choice = new SetpointChooser(task, terms, solver).choose();
                lowC = choice.trial().setpointC();
                trials.put(lowC, choice.trial());
                highC = Math.max(task.food().doneness().orElseThrow().highC(), lowC + STEP_K);
            }
        }

        /** It in a bath of its own [C]. */
        Trial trial(double setpointC) {
            Trial known = trials.get(setpointC);
            if (known == null) {
                known = Trial.of(task.at(setpointC), setpointC, terms, solver);
                trials.put(setpointC, known);
            }
            return known;
        }

        Window window(double setpointC) {
            return Window.of(trial(setpointC));
        }

        Setting setting(double setpointC, Corner corner) {
            return Setting.of(task.at(setpointC), setpointC, corner, knowledge, terms.materials());
        }

        /** Whether it may be cooked in a bath [C]. */
        boolean fits(double setpointC) {
            return !tooHot(setpointC) && admitted(setpointC) && passes(trial(setpointC));
        }

        boolean fitsAnywhere() {
            return setpoints(List.of(this)).stream().anyMatch(this::fits);
        }

        private boolean admitted(double setpointC) {
            try {
                Admission.check(task.at(setpointC), knowledge);
                return true;
            } catch (Refusal refusal) {
                return false;
            }
        }

        private boolean tooHot(double setpointC) {
            return task.target().coreC().isPresent()
                    && setpointC > task.target().coreC().getAsDouble() + planner.withinK(task) + SAME_K;
        }

        /** Whether there is a time to take it out, and its rule is kept then; on its outside alone only as asked for. */
        boolean passes(Trial trial) {
            boolean asked = fixedC.isPresent() || task.target().coreC().isPresent();
            boolean kept = switch (trial.verdict()) {
                case MET, NOT_APPLICABLE -> true;
                case SURFACE_ONLY -> asked;
                case NOT_MET -> false;
            };
            return kept
                    && trial.takeOut().obstacle().isEmpty()
                    && Window.of(trial).some();
        }

        Conflict why(OptionalDouble setpointC) {
            if (setpointC.isPresent() && tooHot(setpointC.getAsDouble())) {
                return Conflict.of(Obstacle.HOTTER_THAN_WANTED, id, Optional.empty());
            }
            return Conflict.of(Obstacle.ITEM_FAILS, id, trial(lowC).takeOut().obstacle());
        }
    }

    /**
     * When a piece may leave the bath, in whole seconds from its food in.
     *
     * @param earliest [s]
     * @param best [s]
     * @param latest [s]; infinity where nothing closes it
     * @param spread of the time to be hot through over the tolerances [s]
     */
    private record Window(double earliest, double best, double latest, double spread) {

        static Window of(Trial trial) {
            TakeOut takeOut = trial.takeOut();
            Span hot = trial.times().hotThrough();
            double spread = (Double.isFinite(hot.late()) ? hot.late() : hot.nominal()) - hot.early();
            double latest = Math.floor(takeOut.latest());
            return new Window(
                    Math.ceil(takeOut.earliest()),
                    Math.min(Math.ceil(takeOut.best()), latest),
                    latest,
                    Double.isFinite(spread) ? Math.max(spread, LEAST_SPREAD) : LEAST_SPREAD);
        }

        /** Whether it holds a whole second. */
        boolean some() {
            return earliest <= latest && Double.isFinite(earliest);
        }
    }

    /**
     * Foods that are cooked at one setpoint.
     *
     * @param setpointC of the bath [C]
     * @param dishes in order
     * @param common whether they go in and come out at one time
     */
    private record Group(double setpointC, List<Dish> dishes, boolean common) {}

    /**
     * A way to try.
     *
     * @param schedule which kind
     * @param groups one after the other
     * @param score the higher the better
     */
    private record Option(Schedule schedule, List<Group> groups, double score) {}

    /**
     * When what happens [s from the start of the load].
     *
     * @param entries of the foods
     * @param changeAt when the bath is set to its last setpoint, if it has two
     * @param readyAt when all is ready
     */
    private record Times(Map<Dish, Double> entries, double changeAt, double readyAt) {}

    /**
     * One food in the bath of all.
     *
     * @param entersAt [s from the start of the load]
     * @param leavesAt [s from the start of the load]
     * @param stays whether it stays while the bath is cooled
     * @param task out of the bath when it leaves
     * @param trial of it, free to leave when it is best
     * @param served the same judged when it leaves
     * @param lateLine water of the late corner from when it goes in; empty where it stands at one setpoint, whatever goes in
     */
    private record Tried(
            double entersAt,
            double leavesAt,
            boolean stays,
            CookTask task,
            Trial trial,
            Trial served,
            Optional<WaterLine> lateLine) {}

    /**
     * A way that was cooked through.
     *
     * @param option what was tried
     * @param times when what happens
     * @param tried each food
     * @param water nominal, where it is computed
     */
    private record Layout(Option option, Times times, Map<Dish, Tried> tried, Optional<CommonWater.Found> water) {

        Tried of(Dish dish) {
            return Objects.requireNonNull(tried.get(dish));
        }
    }
}
