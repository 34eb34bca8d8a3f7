package dev.slowpoint.plan;

import dev.slowpoint.food.Food;
import dev.slowpoint.food.FoodGroup;
import dev.slowpoint.food.Form;
import dev.slowpoint.heat.Dose;
import dev.slowpoint.heat.PointHistory;
import dev.slowpoint.plan.CookPlan.Obstacle;
import dev.slowpoint.safety.Eater;
import dev.slowpoint.safety.Finding;
import dev.slowpoint.safety.Hazard;
import dev.slowpoint.safety.InactivationLine;
import dev.slowpoint.safety.Purpose;
import dev.slowpoint.safety.Verdict;
import dev.slowpoint.safety.WarmUpClock;
import dev.slowpoint.texture.CloseLimit;
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

    private static final double MEAT_FLOOR_C = 54.444;
    private static final double POULTRY_FLOOR_C = 57.778;
    private static final double PARASITE_C = 60.0;
    private static final double PARASITE_S = 60.0;
    private static final double VIRUS_C = 90.0;
    private static final double SIX_HOURS = 6 * 3600.0;
    private static final double SPORE_TARGET_LOG10 = 6.0;
    private static final double THIN_LOG10 = 1.0;
    private static final double WIDE_LOG10 = 3.0;

    private final CookTask task;
    private final Trial trial;
    private final Terms terms;
    private final Food food;
    private final FoodGroup group;
    private final PointHistory lateCore;
    private final List<Notice> found = new ArrayList<>();

    private Notices(CookTask task, Trial trial, Terms terms) {
        this.task = task;
        this.trial = trial;
        this.terms = terms;
        this.food = task.food();
        this.group = food.group();
        this.lateCore = trial.late().core();
    }

    /** The notices of a trial, the most severe first. */
    static List<Notice> of(CookTask task, Trial trial, Terms terms) {
        Notices notices = new Notices(task, trial, terms);
        notices.safety();
        notices.warmUp();
        notices.eaters();
        notices.keeping();
        notices.start();
        notices.waterAndPlants();
        notices.texture();
        notices.add(NoticeCode.KEEP_UNDER_WATER);
        notices.add(NoticeCode.ESTIMATE_NOT_GUARANTEE);
        Map<NoticeCode, NoticeRule> rules = terms.knowledge().notices();
        notices.found.sort(Comparator.comparing(
                n -> Objects.requireNonNull(rules.get(n.code())).severity(), Comparator.reverseOrder()));
        return notices.found;
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
            if (sporesLog10() < SPORE_TARGET_LOG10) {
                add(NoticeCode.SPORES_SURVIVE);
            }
        }
    }

    /** Worst-case kill of the spores that grow in the cold, at the time judged. */
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
        if (task.raw() && warmest > 5.5 && !group.plant() && group != FoodGroup.EGG_IN_SHELL) {
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
        if (group == FoodGroup.PULSE && task.raw() && trial.setpointC() < 95.0) {
            add(NoticeCode.PULSES_MUST_BOIL);
        }
        if (group == FoodGroup.VEGETABLE && task.raw() && trial.setpointC() < 83.0) {
            add(NoticeCode.STAYS_FIRM);
        }
        if (trial.setpointC() >= 80.0) {
            add(
                    NoticeCode.BAG_MAY_FLOAT,
                    Figures.temperature(trial.setpointC()),
                    Figures.log10(BoilingPoint.pocketGrowth(Math.min(trial.setpointC(), 98.0))));
        }
        if (trial.setpointC() < 57.0 && trial.setpointC() >= MEAT_FLOOR_C && trial.judgedAt() > SIX_HOURS) {
            add(NoticeCode.HOLD_BELOW_57);
        }
    }

    /** Wild fish, but for those whose muscle is known to carry none. */
    private boolean mayCarryParasites() {
        return food.wild() && (food.hazards().contains("anisakis") || food.id().equals(Food.DESCRIBED));
    }

    private void texture() {
        trial.reading().ifPresent(reading -> {
            switch (reading.verdict(trial.judgedAt())) {
                case BEFORE -> add(NoticeCode.TEXTURE_NOT_YET);
                case PAST, NONE ->
                    add(
                            NoticeCode.TEXTURE_PAST,
                            reading.window().limit() == CloseLimit.DRYNESS ? "dryness" : "softening");
                case WITHIN -> {}
            }
        });
        if (trial.takeOut()
                .obstacle()
                .filter(o -> o == Obstacle.SAFE_AFTER_TEXTURE)
                .isPresent()) {
            add(NoticeCode.SAFE_AFTER_TEXTURE);
        }
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
