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
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * Decides which warnings a plan carries. The triggers are those of the notices file; limits that stand in no rule are
 * marked there as ours.
 */
final class Notices {

    /** Lowest row of the meat table, 130 F (FSIS-GD-2021-14 table 2). */
    private static final double MEAT_FLOOR_C = 54.444;

    /** Lowest row of the poultry tables, 136 F (FSIS-GD-2021-14 tables 3 and 4). */
    private static final double POULTRY_FLOOR_C = 57.778;

    /** Heat kill of parasites in fish: 60 C for 1 min in the core (Regulation (EU) 1276/2011, point 3(a)). */
    private static final double PARASITE_C = 60.0;

    private static final double PARASITE_S = 60.0;

    /** Viruses in bivalves: flesh at 90 C for 90 s (EFSA 2015, abstract read). */
    private static final double VIRUS_C = 90.0;

    /** Cold holding at or below 5 C (FDA Food Code 2022, 3-501.16(A)(2)). */
    private static final double COLD_C = 5.0;

    /** Hot holding at or above 57 C (FDA Food Code 2022, 3-501.16(A)(1)). */
    private static final double HOT_HOLDING_C = 57.0;

    /** Vegetables hardly soften below it; the notices file has the source. */
    private static final double SOFTENING_C = 83.0;

    /** Beans need boiling against lectins; from memory. A bath below it is told so. */
    private static final double BOILING_PULSES_C = 95.0;

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
    private final List<Notice> found = new ArrayList<>();

    private Notices(CookTask task, Trial trial, Terms terms, Sequel.Found sequel) {
        this.sequel = sequel;
        this.task = task;
        this.trial = trial;
        this.terms = terms;
        this.food = task.food();
        this.group = food.group();
        this.lateCore = trial.late().slowest();
        this.withinK =
                task.target().withinK().orElse(terms.knowledge().defaults().withinK());
    }

    /** The notices of a trial, the most severe first. */
    static List<Notice> of(CookTask task, Trial trial, Terms terms, Sequel.Found sequel) {
        Notices notices = new Notices(task, trial, terms, sequel);
        notices.safety();
        notices.warmUp();
        notices.eaters();
        notices.keeping();
        notices.start();
        notices.waterAndPlants();
        notices.texture();
        notices.found.addAll(AfterNotices.of(task.arrangement()));
        notices.bath();
        AfterNotices.of(
                        sequel.outcomes(),
                        notices.withinK,
                        terms.knowledge().safety().warmUp())
                .stream()
                .filter(n -> notices.found.stream().noneMatch(f -> f.code() == n.code()))
                .forEach(notices.found::add);
        notices.add(NoticeCode.KEEP_UNDER_WATER);
        notices.add(NoticeCode.ESTIMATE_NOT_GUARANTEE);
        return mostSevereFirst(notices.found, terms.knowledge());
    }

    /** The notices of a chill plan, the most severe first. */
    static List<Notice> of(ChillTask task, Cooling cooling, Optional<Keeping> keeping, Knowledge knowledge) {
        List<Notice> found = new ArrayList<>(AfterNotices.of(task.arrangement()));
        found.addAll(AfterNotices.of(cooling, keeping));
        if (task.store().isPresent()) {
            found.add(Notice.of(NoticeCode.SPORES_SURVIVE));
        }
        if (task.chill().medium() == ChillMedium.ICE_WATER || task.chill().medium() == ChillMedium.COLD_WATER) {
            found.add(Notice.of(NoticeCode.KEEP_UNDER_WATER));
        }
        found.add(Notice.of(NoticeCode.ESTIMATE_NOT_GUARANTEE));
        return mostSevereFirst(found, knowledge);
    }

    private static List<Notice> mostSevereFirst(List<Notice> notices, Knowledge knowledge) {
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
        if (trial.verdict() == Verdict.SURFACE_ONLY) {
            add(NoticeCode.SURFACE_ONLY);
            add(NoticeCode.SEAR_BOTH_FACES);
        }
        if (group.redMeat() && !task.form().intact() && task.raw()) {
            add(NoticeCode.NONINTACT_MEAT);
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

    private void warmUp() {
        WarmUpClock clock = trial.clock();
        double hours = Figures.hours(clock.warmUpS() + clock.fallenBackS());
        if (clock.pace() == WarmUpClock.Pace.TOO_SLOW) {
            add(NoticeCode.WARM_UP_OVER_6H, hours);
        } else if (clock.pace() == WarmUpClock.Pace.SLOW) {
            add(NoticeCode.WARM_UP_OVER_4H, hours);
        }
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

    private void eaters() {
        boolean unmet = trial.verdict() == Verdict.NOT_MET || trial.verdict() == Verdict.SURFACE_ONLY;
        if (unmet && task.eater() == Eater.VULNERABLE) {
            add(NoticeCode.VULNERABLE_EATERS);
        } else if (trial.verdict() == Verdict.NOT_MET && task.target().purpose() != Purpose.KEEP && !group.plant()) {
            add(NoticeCode.EATEN_UNDERCOOKED);
        }
    }

    private void keeping() {
        if (task.pack().rawGarlicOrHerbs()) {
            add(NoticeCode.RAW_GARLIC_OR_HERBS);
        }
        if (task.pack().salted()) {
            add(NoticeCode.SALTED_KEEPS_TOUGHER);
        }
        if (task.target().purpose() == Purpose.KEEP) {
            add(NoticeCode.CHILL_IN_ICE_WATER);
            add(NoticeCode.KEEP_COLD_7_DAYS);
            finding(Hazard.LISTERIA_MONOCYTOGENES)
                    .filter(f -> !f.met())
                    .ifPresent(f -> add(NoticeCode.KEEP_NEEDS_LISTERIA_TARGET, Figures.log10(f.deliveredLog10())));
        }
        boolean stored = task.then().stream().anyMatch(step -> step instanceof Step.Store);
        if ((stored || task.target().purpose() == Purpose.KEEP) && sporesLog10() < SPORE_TARGET_LOG10) {
            add(NoticeCode.SPORES_SURVIVE);
        }
    }

    /** Kill of the spores that grow in the cold in the slow corner, at the time judged; it only warns. */
    private double sporesLog10() {
        InactivationLine line =
                Objects.requireNonNull(terms.knowledge().safety().lines().get("K-CB-UK"));
        return Dose.of(line.killFrom(line.lowestTestedC()), lateCore).at(trial.judgedAt());
    }

    private void start() {
        if (task.frozen()) {
            add(NoticeCode.FROM_FROZEN);
        }
        double warmest = Math.max(task.start().coreC(), task.start().surfaceC());
        if (task.raw() && warmest > COLD_C && !group.plant() && group != FoodGroup.EGG_IN_SHELL) {
            add(NoticeCode.START_WARM, Figures.temperature(warmest));
        }
    }

    private void waterAndPlants() {
        if (group == FoodGroup.FISH && task.raw()) {
            double killed = lateCore.secondsAtOrAbove(PARASITE_C + terms.errorK(), trial.judgedAt());
            if (mayCarryParasites() && !task.previouslyFrozen() && killed < PARASITE_S) {
                add(NoticeCode.FISH_PARASITES);
            }
            if (trial.verdict() == Verdict.NOT_MET) {
                add(NoticeCode.FISH_NOT_PASTEURISED);
            }
        }
        if (group == FoodGroup.BIVALVE && lateCore.highestC() < VIRUS_C) {
            add(NoticeCode.SHELLFISH_VIRUSES);
        }
        if ((group == FoodGroup.EGG_IN_SHELL || group == FoodGroup.EGG_MIX) && trial.verdict() == Verdict.NOT_MET) {
            add(NoticeCode.SOFT_EGG);
        }
        if (group == FoodGroup.PULSE && task.raw() && trial.setpointC() < BOILING_PULSES_C) {
            add(NoticeCode.PULSES_MUST_BOIL);
        }
        if (group == FoodGroup.VEGETABLE && task.raw() && trial.setpointC() < SOFTENING_C) {
            add(NoticeCode.STAYS_FIRM);
        }
        if (trial.setpointC() >= FLOATING_C) {
            add(
                    NoticeCode.BAG_MAY_FLOAT,
                    Figures.temperature(trial.setpointC()),
                    Figures.log10(BoilingPoint.pocketGrowth(Math.min(trial.setpointC(), LARGEST_POCKET_C))));
        }
        if (holdsBelow57()) {
            add(NoticeCode.HOLD_BELOW_57);
        }
    }

    /** A long first bath, or any later one, between the floor of the meat table and the hot-holding limit. */
    private boolean holdsBelow57() {
        boolean first = belowHotHolding(trial.setpointC()) && trial.judgedAt() > SIX_HOURS;
        return first
                || task.then().stream()
                        .anyMatch(step -> step instanceof Step.Bath bath && belowHotHolding(bath.setpointC()));
    }

    private static boolean belowHotHolding(double setpointC) {
        return setpointC < HOT_HOLDING_C && setpointC >= MEAT_FLOOR_C;
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

    /** Wild fish, but for those whose muscle is known to carry none. */
    private boolean mayCarryParasites() {
        return food.wild() && (food.hazards().contains("anisakis") || food.id().equals(Food.DESCRIBED));
    }

    private void texture() {
        trial.reading().ifPresent(reading -> {
            switch (reading.verdict(trial.judgedAt())) {
                case BEFORE -> add(NoticeCode.TEXTURE_NOT_YET);
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
