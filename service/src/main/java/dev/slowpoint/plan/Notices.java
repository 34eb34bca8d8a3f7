package dev.slowpoint.plan;

import dev.slowpoint.food.Food;
import dev.slowpoint.food.FoodGroup;
import dev.slowpoint.food.Form;
import dev.slowpoint.heat.Dose;
import dev.slowpoint.heat.PointHistory;
import dev.slowpoint.plan.CookPlan.Obstacle;
import dev.slowpoint.plan.Outcome.Cooling;
import dev.slowpoint.plan.Outcome.Keeping;
import dev.slowpoint.plan.Step.ChillMedium;
import dev.slowpoint.safety.Eater;
import dev.slowpoint.safety.Finding;
import dev.slowpoint.safety.Hazard;
import dev.slowpoint.safety.InactivationLine;
import dev.slowpoint.safety.Purpose;
import dev.slowpoint.safety.Verdict;
import dev.slowpoint.safety.WarmUpClock;
import dev.slowpoint.texture.CloseLimit;
import dev.slowpoint.texture.TextureReading;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;

/**
 * Decides which warnings a plan carries. The triggers are those of the notices file; limits that stand in no rule are
 * marked there as ours.
 */
final class Notices {

    /** Lowest row of the meat table, 130 F (FSIS-GD-2021-14 table 2). */
    private static final double MEAT_FLOOR_C = 54.444;

    /** Lowest row of the poultry tables, 136 F (FSIS-GD-2021-14 tables 3 and 4). */
    private static final double POULTRY_FLOOR_C = 57.778;

    /** Cold holding at or below 5 C (FDA Food Code 2022, 3-501.16(A)(2)). */
    private static final double COLD_C = 5.0;

    /** Hot holding at or above 57 C (FDA Food Code 2022, 3-501.16(A)(1)). */
    private static final double HOT_HOLDING_C = 57.0;

    /** From here up a pocket of air grows to more than two and a half times its volume; our own limit. */
    private static final double FLOATING_C = 80.0;

    /** Near the boiling point the growth of a pocket has no bound: it is told for this temperature at most. */
    private static final double LARGEST_POCKET_C = 98.0;

    /** Warm-up of a rolled joint that is warned of; our own limit. */
    private static final double TWO_HOURS = 2 * 3600.0;

    /** Limit of the Victorian rule for baths below 60 C; taken as well for holding below 57 C, our own choice. */
    private static final double SIX_HOURS = 6 * 3600.0;

    /** Reduction asked of spores for keeping longer than 10 days (UK FSA, 90 C 10 min). */
    private static final double SPORE_TARGET_LOG10 = 6.0;

    /** Growth of S. aureus that is a concern for public health (FSIS-GD-2021-14 p. 14). */
    private static final double TOXIN_LOG10 = 3.0;

    private static final String S_AUREUS_GROWTH = "G-SAU-MILK";

    /** What tells already that the eater must be told. */
    private static final Set<NoticeCode> TELL_THE_EATER = Collections.unmodifiableSet(EnumSet.of(
            NoticeCode.FISH_NOT_PASTEURISED,
            NoticeCode.SHELLFISH_VIRUSES,
            NoticeCode.SOFT_EGG,
            NoticeCode.NO_TABLE_SO_COOL));

    /** Margins below it are thin, above the other one wide; our own bands. */
    private static final double THIN_LOG10 = 1.0;

    private static final double WIDE_LOG10 = 3.0;

    private final CookTask task;
    private final Trial trial;
    private final Terms terms;
    private final Sequel.Found sequel;
    private final Food food;
    private final FoodGroup group;
    private final PointHistory lateCore;
    private final double withinK;
    private final List<Step.Store> stores;
    private final boolean kept;
    private final boolean sporesKilled;
    private final List<Notice> found = new ArrayList<>();

    private Notices(CookTask task, Trial trial, Terms terms, Sequel.Found sequel) {
        this.sequel = sequel;
        this.task = task;
        this.trial = trial;
        this.terms = terms;
        this.food = task.food();
        this.group = food.group();
        this.lateCore = trial.late().slowest();
        this.stores = task.then().stream()
                .filter(Step.Store.class::isInstance)
                .map(Step.Store.class::cast)
                .toList();
        this.kept = task.target().purpose() == Purpose.KEEP || !stores.isEmpty();
        this.sporesKilled = kept && sporesLog10(trial, terms) >= SPORE_TARGET_LOG10;
        this.withinK =
                task.target().withinK().orElse(terms.knowledge().defaults().withinK());
    }

    /** The notices of a trial, the most severe first. */
    static List<Notice> of(CookTask task, Trial trial, Terms terms, Sequel.Found sequel) {
        return mostSevereFirst(all(task, trial, terms, sequel), terms.knowledge());
    }

    /** The notices of a cook under way, the most severe first. */
    static List<Notice> of(
            ReplanTask task,
            CookTask cook,
            Trial trial,
            Terms terms,
            Sequel.Found sequel,
            Replanning replanning,
            Replanning.Verdict verdict) {
        List<Notice> found = all(cook, trial, terms, sequel);
        found.addAll(ReplanNotices.of(task, replanning, verdict));
        return mostSevereFirst(found, terms.knowledge());
    }

    /**
     * The notices of a table, the most severe first: each once, with the values of the first end of its ranges that has it.
     *
     * @param ends notices of plans at the ends
     * @param checks points at which the table was held against plans
     * @param missedPercent share of the range that they may have missed
     */
    static List<Notice> of(List<List<Notice>> ends, int checks, double missedPercent, Knowledge knowledge) {
        Map<NoticeCode, Notice> found = new EnumMap<>(NoticeCode.class);
        ends.forEach(end -> end.forEach(notice -> found.putIfAbsent(notice.code(), notice)));
        List<Notice> notices = new ArrayList<>(found.values());
        notices.add(Notice.of(NoticeCode.TABLE_CHECKED_NOT_PROVEN, checks, missedPercent));
        return mostSevereFirst(notices, knowledge);
    }

    private static List<Notice> all(CookTask task, Trial trial, Terms terms, Sequel.Found sequel) {
        Notices notices = new Notices(task, trial, terms, sequel);
        notices.safety();
        notices.warmUp();
        notices.keeping();
        notices.reheating();
        notices.start();
        notices.found.addAll(FoodNotices.of(task, trial, terms, notices.kept, notices.sporesKilled));
        notices.eaters();
        notices.water();
        notices.texture();
        notices.found.addAll(AfterNotices.of(task.arrangement()));
        notices.bath();
        AfterNotices.of(sequel.outcomes(), notices.withinK, terms.limits().warmUp()).stream()
                .filter(n -> notices.found.stream().noneMatch(f -> f.code() == n.code()))
                .forEach(notices.found::add);
        notices.add(NoticeCode.KEEP_UNDER_WATER);
        notices.add(NoticeCode.ESTIMATE_NOT_GUARANTEE);
        return notices.found;
    }

    /** The notices of a chill plan, the most severe first. */
    static List<Notice> of(ChillTask task, Cooling cooling, Optional<Keeping> keeping, Knowledge knowledge) {
        List<Notice> found = new ArrayList<>(AfterNotices.of(task.arrangement()));
        found.addAll(AfterNotices.of(cooling, keeping));
        List<Step.Store> cold = AfterNotices.unfrozen(task.store().map(List::of).orElse(List.of()), knowledge);
        if (!cold.isEmpty()) {
            found.add(Notice.of(NoticeCode.KEEP_COLD_7_DAYS));
        }
        if (task.store().isPresent()) {
            found.add(Notice.of(NoticeCode.SPORES_SURVIVE));
        }
        // What the cook did to spores is not known here, so that nothing counts as killed.
        found.addAll(AfterNotices.of(cold, false));
        if (FoodNotices.starchy(task.food())) {
            found.add(Notice.of(NoticeCode.COOL_STARCH_FAST));
        }
        if (task.chill().medium() == ChillMedium.ICE_WATER || task.chill().medium() == ChillMedium.COLD_WATER) {
            found.add(Notice.of(NoticeCode.KEEP_UNDER_WATER));
        }
        found.add(Notice.of(NoticeCode.ESTIMATE_NOT_GUARANTEE));
        return mostSevereFirst(found, knowledge);
    }

    /** Sorted by severity, in the given order among equals. */
    static List<Notice> mostSevereFirst(List<Notice> notices, Knowledge knowledge) {
        Map<NoticeCode, NoticeRule> rules = knowledge.notices();
        notices.sort(Comparator.comparing(
                n -> Objects.requireNonNull(rules.get(n.code())).severity(), Comparator.reverseOrder()));
        return notices;
    }

    private void add(NoticeCode code, Object... values) {
        found.add(Notice.of(code, values));
    }

    private void safety() {
        boolean met = trial.verdict() == Verdict.MET;
        double hottestC = lateCore.highestC() - terms.errorK();
        if (trial.verdict() == Verdict.NOT_MET) {
            governing()
                    .filter(f -> !f.met())
                    .ifPresent(f -> add(
                            NoticeCode.NOT_MET,
                            Figures.log10(f.deliveredLog10()),
                            Figures.log10(f.requirement().target()),
                            f.requirement().hazard().name()));
        }
        if (group.redMeat() && task.raw() && hottestC < MEAT_FLOOR_C) {
            add(NoticeCode.CORE_BELOW_54);
        }
        if (group.poultry() && task.raw() && hottestC < POULTRY_FLOOR_C) {
            add(NoticeCode.POULTRY_BELOW_58);
        }
        coolerThanTables(hottestC);
        if (trial.verdict() == Verdict.SURFACE_ONLY && !sequel.spoiled()) {
            add(NoticeCode.SURFACE_ONLY);
            add(NoticeCode.SEAR_BOTH_FACES);
        }
        if (task.form() == Form.MINCED || task.form() == Form.FORMED) {
            finding(Hazard.E_COLI_O157)
                    .filter(f -> f.requirement().advisory())
                    .filter(f -> f.marginLog10() < 0.0)
                    .ifPresent(f -> add(NoticeCode.MINCED_BELOW_STEC_LINE, Figures.log10(f.deliveredLog10())));
        }
        if (met
                && trial.setpointC() >= MEAT_FLOOR_C
                && trial.setpointC() < 60.0
                && governing().filter(f -> f.marginLog10() < THIN_LOG10).isPresent()) {
            add(NoticeCode.THIN_MARGIN_54_60);
        }
        if (met
                && trial.worst().heatAdaptationPossible()
                && governing().filter(f -> f.marginLog10() < WIDE_LOG10).isPresent()) {
            add(NoticeCode.SLOW_WARM_UP_ADAPTS);
        }
    }

    /** Below the floor of what decides, where no other notice says so. */
    private void coolerThanTables(double hottestC) {
        boolean toldElsewhere =
                group.redMeat() || group.poultry() || group == FoodGroup.FISH || group == FoodGroup.BIVALVE;
        if (toldElsewhere || trial.verdict() != Verdict.NOT_MET) {
            return;
        }
        trial.worst().findings().stream()
                .filter(f -> !f.requirement().advisory() && !f.met())
                .mapToDouble(f -> f.requirement().floorC())
                .filter(floorC -> hottestC < floorC)
                .max()
                .ifPresent(floorC -> add(NoticeCode.NO_TABLE_SO_COOL, Figures.temperature(floorC)));
    }

    private void warmUp() {
        WarmUpClock clock = trial.clock();
        double hours = Figures.hours(clock.warmUpS() + clock.fallenBackS());
        if (clock.pace() == WarmUpClock.Pace.TOO_SLOW) {
            add(NoticeCode.WARM_UP_OVER_6H, hours);
        } else if (clock.pace() == WarmUpClock.Pace.SLOW) {
            add(NoticeCode.WARM_UP_OVER_4H, hours);
        }
        toxin(clock);
        if (group.redMeat()
                && task.raw()
                && task.form() == Form.ROLLED
                && clock.warmUpS() + clock.fallenBackS() > TWO_HOURS) {
            add(NoticeCode.ROLLED_WARMS_SLOWLY, hours);
        }
        if (trial.setpointC() >= 55.0 && trial.setpointC() < 60.0 && trial.judgedAt() > SIX_HOURS) {
            add(NoticeCode.HOLD_55_60_OVER_6H);
        }
    }

    /** More than six hours of warm-up, or growth of S. aureus without lag by three orders: heat does not undo toxin. */
    private void toxin(WarmUpClock clock) {
        // Three orders take 2.8 h at the fastest rate of the model, so that a short warm-up need not be looked at.
        if (clock.warmUpS() + clock.fallenBackS() < TWO_HOURS) {
            return;
        }
        double grown = Objects.requireNonNull(
                        terms.knowledge().safety().growth().get(S_AUREUS_GROWTH))
                .grownLog10(lateCore, trial.judgedAt(), 0.0);
        if (clock.pace() == WarmUpClock.Pace.TOO_SLOW || grown >= TOXIN_LOG10) {
            add(NoticeCode.TOXIN_STAYS, Figures.log10(grown));
        }
    }

    private void eaters() {
        boolean unmet = trial.verdict() == Verdict.NOT_MET || trial.verdict() == Verdict.SURFACE_ONLY;
        if (unmet && task.eater() == Eater.VULNERABLE) {
            add(NoticeCode.VULNERABLE_EATERS);
        } else if (trial.verdict() == Verdict.NOT_MET
                && task.target().purpose() != Purpose.KEEP
                && !group.plant()
                && found.stream().noneMatch(n -> TELL_THE_EATER.contains(n.code()))) {
            add(NoticeCode.EATEN_UNDERCOOKED);
        }
    }

    private void keeping() {
        if (kept && !lost() && task.then().stream().noneMatch(step -> step instanceof Step.Chill)) {
            add(NoticeCode.CHILL_IN_ICE_WATER);
        }
        if (task.target().purpose() == Purpose.KEEP) {
            finding(Hazard.LISTERIA_MONOCYTOGENES)
                    .filter(f -> !f.met())
                    .ifPresent(f -> add(NoticeCode.KEEP_NEEDS_LISTERIA_TARGET, Figures.log10(f.deliveredLog10())));
        }
        List<Step.Store> cold = AfterNotices.unfrozen(stores, terms.knowledge());
        if (!lost() && (!cold.isEmpty() || (kept && stores.isEmpty()))) {
            add(NoticeCode.KEEP_COLD_7_DAYS);
        }
        if (kept && !sporesKilled) {
            add(NoticeCode.SPORES_SURVIVE);
        }
        found.addAll(AfterNotices.of(cold, sporesKilled));
    }

    /** Whether the warm-up broke its limit: how to keep such food is no longer the question. */
    private boolean lost() {
        return trial.clock().pace() == WarmUpClock.Pace.TOO_SLOW;
    }

    /** Cooked food warmed in the first bath and then held hot: all parts at 74 C within two hours. */
    private void reheating() {
        boolean heldHot = !task.then().isEmpty() && task.then().get(0) instanceof Step.Bath;
        if (task.raw() || task.target().purpose() != Purpose.REHEAT || !heldHot) {
            return;
        }
        for (ReheatRule rule : terms.knowledge().after().reheating()) {
            if (rule.use() != ReheatRule.Use.HOT_HOLDING) {
                continue;
            }
            double levelC = rule.coreC().orElseThrow() + terms.errorK();
            double at = lateCore.timeOfSecondsAtOrAbove(levelC, rule.held(), lateCore.start(), trial.judgedAt());
            AfterNotices.heldHot(rule, trial.setpointC(), at <= rule.within().orElseThrow())
                    .ifPresent(found::add);
        }
    }

    /** Kill of the spores that grow in the cold in the slow corner, at the time judged; it only warns. */
    private static double sporesLog10(Trial trial, Terms terms) {
        InactivationLine line =
                Objects.requireNonNull(terms.knowledge().safety().lines().get("K-CB-UK"));
        return Dose.of(line.killFrom(line.lowestTestedC()), trial.late().slowest())
                .at(trial.judgedAt());
    }

    private void start() {
        if (task.frozen()) {
            boolean thawing = Math.max(task.start().coreC(), task.start().surfaceC()) >= food.freezingPointC();
            add(thawing ? NoticeCode.HALF_THAWED : NoticeCode.FROM_FROZEN);
        }
        double warmest = Math.max(task.start().coreC(), task.start().surfaceC());
        if (task.raw() && warmest > COLD_C && !group.plant() && group != FoodGroup.EGG_IN_SHELL) {
            add(NoticeCode.START_WARM, Figures.temperature(warmest));
        }
    }

    private void water() {
        if (trial.setpointC() >= FLOATING_C) {
            add(
                    NoticeCode.BAG_MAY_FLOAT,
                    Figures.temperature(trial.setpointC()),
                    Figures.log10(BoilingPoint.pocketGrowth(Math.min(trial.setpointC(), LARGEST_POCKET_C))));
        }
        double ruleC = terms.limits().hotHolding().lowestC();
        if (holdsWithin(MEAT_FLOOR_C, HOT_HOLDING_C)) {
            add(NoticeCode.HOLD_BELOW_57);
        } else if (holdsWithin(HOT_HOLDING_C, ruleC)) {
            add(NoticeCode.HOLD_BELOW_RULE, Figures.temperature(ruleC));
        }
    }

    /** A long first bath, or any later one, from a temperature to below another. */
    private boolean holdsWithin(double fromC, double belowC) {
        boolean first = within(trial.setpointC(), fromC, belowC) && trial.judgedAt() > SIX_HOURS;
        return first
                || task.then().stream()
                        .anyMatch(step -> step instanceof Step.Bath bath && within(bath.setpointC(), fromC, belowC));
    }

    private static boolean within(double setpointC, double fromC, double belowC) {
        return setpointC >= fromC && setpointC < belowC;
    }

    /** What a heater of limited power does to the bath; told only where the vessel is known. */
    private void bath() {
        trial.nominal().bath().ifPresent(water -> {
            double lowC = trial.setpointC() - withinK;
            boolean cold = water.temperatureC(0) < lowC;
            double lowestC = water.temperatureC(0);
            for (int i = 1; i < water.samples(); i++) {
                lowestC = Math.min(lowestC, water.temperatureC(i));
            }
            if (cold) {
                add(NoticeCode.STARTS_COLD, Figures.temperature(water.temperatureC(0)));
            } else if (lowestC < lowC) {
                add(NoticeCode.BATH_SAGS, Figures.temperature(lowestC));
            }
            if (water.atC(water.end()) < lowC) {
                add(NoticeCode.HEATER_TOO_WEAK, Figures.temperature(water.atC(water.end())));
            }
        });
    }

    private void texture() {
        trial.reading().ifPresent(reading -> {
            switch (reading.verdict(trial.judgedAt())) {
                case BEFORE -> {
                    // What stays firm for ever is not told to wait.
                    if (found.stream().noneMatch(n -> n.code() == NoticeCode.STAYS_FIRM)) {
                        add(NoticeCode.TEXTURE_NOT_YET);
                    }
                }
                case PAST, NONE -> texturePast(reading);
                case WITHIN ->
                    sequel.texture()
                            .filter(after -> after.verdict(sequel.ends()) == dev.slowpoint.texture.Verdict.PAST)
                            .ifPresent(this::texturePast);
            }
        });
        if (trial.takeOut()
                .obstacle()
                .filter(o -> o == Obstacle.SAFE_AFTER_TEXTURE)
                .isPresent()) {
            add(NoticeCode.SAFE_AFTER_TEXTURE);
        }
    }

    private void texturePast(TextureReading reading) {
        add(NoticeCode.TEXTURE_PAST, reading.window().limit() == CloseLimit.DRYNESS ? "dryness" : "softening");
    }

    private Optional<Finding> governing() {
        return trial.worst().governing();
    }

    private Optional<Finding> finding(Hazard hazard) {
        return trial.worst().findings().stream()
                .filter(f -> f.requirement().hazard() == hazard)
                .findFirst();
    }
}
