package dev.slowpoint.plan;

import dev.slowpoint.food.Food;
import dev.slowpoint.food.FoodGroup;
import dev.slowpoint.food.Form;
import dev.slowpoint.heat.Dose;
import dev.slowpoint.heat.PointHistory;
import dev.slowpoint.heat.RateLaw;
import dev.slowpoint.safety.InactivationLine;
import dev.slowpoint.safety.ReadingError;
import dev.slowpoint.safety.Verdict;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * Decides which warnings follow from what the food is and from what else is in the bag. The triggers are those of the
 * notices file.
 */
final class FoodNotices {

    /** Heat kill of parasites in fish: 60 C for 1 min in the core (Regulation (EU) 1276/2011, point 3(a)). */
    private static final double PARASITE_C = 60.0;

    private static final double PARASITE_S = 60.0;

    /** Cysts of Toxoplasma in pork were dead after 3.6 min at 61 C (Dubey et al. 1990, abstract read). */
    private static final double TOXOPLASMA_C = 61.0;

    private static final double TOXOPLASMA_S = 3.6 * 60.0;

    /** Wild game: 74 C in all parts (FDA Food Code 2022, 3-401.11(A)(3)); the printed 165 F. */
    private static final double GAME_C = 73.889;

    /** Viruses in bivalves: flesh at 90 C for 90 s (EFSA 2015, abstract read). */
    private static final double VIRUS_C = 90.0;

    /** Sweetened or salted yolk: 62.2 C for 6.2 min or 63.3 C for 3.5 min (9 CFR 590.570, Table I). */
    private static final double[] SWEET_YOLK_C = {62.2, 63.3};

    private static final double[] SWEET_YOLK_S = {6.2 * 60.0, 3.5 * 60.0};

    /** The same table speaks of 2 % of salt or more. */
    private static final double SALTED_YOLK_PERCENT = 2.0;

    /** Yolk holds 3.6 % of carbohydrate, milk 5 %; more is taken for sugar. Our own limit. */
    private static final double SWEETENED = 0.05;

    /** Boiling alone destroys the lectins of beans; a bath below this is told so. Our own limit. */
    private static final double BOILING_PULSES_C = 95.0;

    /** Vegetables hardly soften below it; the notices file has the source. */
    private static final double SOFTENING_C = 83.0;

    /** Spores are killed from about here on (UK FSA, 90 C 10 min); below it raw garlic and herbs carry them alive. */
    private static final double SPORES_C = 90.0;

    /** Limits of a salted or dried food; our own, in none of the rules that name salt and dryness. */
    private static final double SALTY_PERCENT = 2.5;

    private static final double DRY_WATER_ACTIVITY = 0.96;

    /** Fresh meat holds about 1 % of ash, cured meat of the catalogue 3.7 % and more. Our own limit between them. */
    private static final double CURED_ASH = 0.025;

    /** Listeria in salted, fatty, rolled meat took about 22 times as long to kill (DMRI report 2014, abstract read). */
    private static final double SALTED_ROLLED_FACTOR = 22.0;

    /** Reduction of Listeria that pasteurised food had (UK FSA, 70 C 2 min; FDA fish guide 2020 table A-3). */
    private static final double LISTERIA_TARGET_LOG10 = 6.0;

    private final CookTask task;
    private final Trial trial;
    private final Terms terms;
    private final boolean kept;
    private final Food food;
    private final FoodGroup group;
    private final PointHistory core;
    private final List<Notice> found = new ArrayList<>();

    private FoodNotices(CookTask task, Trial trial, Terms terms, boolean kept) {
        this.task = task;
        this.trial = trial;
        this.terms = terms;
        this.kept = kept;
        this.food = task.food();
        this.group = food.group();
        this.core = trial.late().slowest();
    }

    /**
     * The notices of a food and its bag.
     *
     * @param kept whether it is to be kept after the cook
     * @param sporesKilled whether the cook gave the six decimal reductions of cold-growing spores that long keeping asks for
     */
    static List<Notice> of(CookTask task, Trial trial, Terms terms, boolean kept, boolean sporesKilled) {
        FoodNotices notices = new FoodNotices(task, trial, terms, kept);
        notices.meat();
        notices.water();
        notices.eggs();
        notices.plants();
        notices.bag();
        notices.salt();
        if (kept && sporesKilled && notices.hasLysozyme()) {
            notices.add(NoticeCode.LYSOZYME_HELPS_SPORES);
        }
        return notices.found;
    }

    private void meat() {
        if (group.redMeat() && !task.form().intact() && task.form() != Form.STUFFED && task.raw()) {
            add(NoticeCode.NONINTACT_MEAT);
        }
        if (task.form() == Form.STUFFED && task.raw()) {
            add(NoticeCode.STUFFED_PIECE);
        }
        if (task.raw() && task.knownFatPercent().isEmpty()) {
            add(NoticeCode.FAT_UNKNOWN);
        }
        boolean met = trial.verdict() == Verdict.MET;
        if (task.raw() && !met && mayCarryMuscleParasites() && held(TOXOPLASMA_C) < TOXOPLASMA_S) {
            add(NoticeCode.MUSCLE_PARASITES);
        }
        if (task.raw() && food.wild() && group.redMeat() && hottestC() < GAME_C) {
            add(NoticeCode.WILD_GAME);
        }
    }

    /** Pork and lamb, and what a caller describes as such. */
    private boolean mayCarryMuscleParasites() {
        boolean described = food.id().equals(Food.DESCRIBED) && (group == FoodGroup.PORK || group == FoodGroup.LAMB);
        return described
                || food.hazards().contains("toxoplasma")
                || food.hazards().contains("trichinella");
    }

    /** Kill of Listeria in the slow corner at the time judged: some rules ask less of fish; it only warns. */
    private double listeriaLog10() {
        InactivationLine line =
                Objects.requireNonNull(terms.knowledge().safety().lines().get(Sequel.LISTERIA_LINE));
        RateLaw kill = new ReadingError(terms.errorK()).judged(line.killFrom(line.lowestTestedC()));
        return Dose.of(kill, core).at(trial.judgedAt());
    }

    private void water() {
        if (group == FoodGroup.FISH && task.raw()) {
            if (mayCarryFishParasites() && !task.previouslyFrozen() && held(PARASITE_C) < PARASITE_S) {
                add(NoticeCode.FISH_PARASITES);
            }
            if (trial.verdict() == Verdict.NOT_MET || listeriaLog10() < LISTERIA_TARGET_LOG10) {
                add(NoticeCode.FISH_NOT_PASTEURISED);
            }
            if (task.pack().sealedWhileChilled()) {
                add(NoticeCode.FISH_SEALED_RAW);
            }
        }
        if (group == FoodGroup.BIVALVE && core.highestC() < VIRUS_C) {
            add(NoticeCode.SHELLFISH_VIRUSES);
        }
    }

    /** Wild fish, but for those whose muscle is known to carry none. */
    private boolean mayCarryFishParasites() {
        return food.wild() && (food.hazards().contains("anisakis") || food.id().equals(Food.DESCRIBED));
    }

    private void eggs() {
        boolean egg = group == FoodGroup.EGG_IN_SHELL || group == FoodGroup.EGG_MIX;
        if (egg && trial.verdict() == Verdict.NOT_MET) {
            add(NoticeCode.SOFT_EGG);
        }
        if (group == FoodGroup.EGG_MIX && task.raw() && sweetOrSalty() && !heatedLikeSweetYolk()) {
            add(NoticeCode.SWEET_OR_SALTED_EGG);
        }
    }

    private boolean sweetOrSalty() {
        return food.composition().carbohydrate() >= SWEETENED
                || task.pack().salted()
                || task.pack().saltPercent().orElse(0.0) >= SALTED_YOLK_PERCENT;
    }

    private boolean heatedLikeSweetYolk() {
        return held(SWEET_YOLK_C[0]) >= SWEET_YOLK_S[0] || held(SWEET_YOLK_C[1]) >= SWEET_YOLK_S[1];
    }

    private boolean hasLysozyme() {
        return group == FoodGroup.EGG_IN_SHELL || group == FoodGroup.EGG_MIX || group == FoodGroup.FISH;
    }

    private void plants() {
        boolean lectins = food.hazards().contains("lectins")
                || (group == FoodGroup.PULSE && food.id().equals(Food.DESCRIBED));
        if (lectins && task.raw() && trial.setpointC() < BOILING_PULSES_C) {
            add(NoticeCode.PULSES_MUST_BOIL);
        }
        if (group == FoodGroup.VEGETABLE && task.raw() && trial.setpointC() < SOFTENING_C) {
            add(NoticeCode.STAYS_FIRM);
        }
        if (starchy(food) && (kept || !task.raw())) {
            add(NoticeCode.COOL_STARCH_FAST);
        }
    }

    /** Whether it is a plant food that carries spores of Bacillus cereus. */
    static boolean starchy(Food food) {
        return food.group().plant() && food.hazards().contains("bacillus-cereus");
    }

    private void bag() {
        if (task.pack().rawGarlicOrHerbs() && (kept || trial.setpointC() < SPORES_C)) {
            add(NoticeCode.RAW_GARLIC_OR_HERBS);
        }
        if (task.pack().rawGarlicOrHerbs() && kept) {
            add(NoticeCode.RAW_GARLIC_KEPT);
        }
        if (task.pack().soldOrSupplied()) {
            add(NoticeCode.BAG_SOLD);
        }
    }

    private void salt() {
        if (task.pack().salted()) {
            add(NoticeCode.SALTED_KEEPS_TOUGHER);
        }
        boolean cured = task.raw() && group.redMeat() && food.composition().ash() >= CURED_ASH;
        boolean salty = cured || task.pack().saltPercent().orElse(0.0) > SALTY_PERCENT;
        if (salty || task.pack().waterActivity().orElse(1.0) < DRY_WATER_ACTIVITY) {
            add(NoticeCode.CURED_OR_DRIED);
        }
        boolean rolled = task.form() == Form.ROLLED && group.redMeat() && task.raw();
        if (rolled && (salty || task.pack().salted()) && toughListeriaLog10() < LISTERIA_TARGET_LOG10) {
            add(NoticeCode.SALTED_ROLLED_MEAT);
        }
    }

    /** Kill of Listeria that is as tough as was found in salted, rolled meat; for information, no verdict rests on it. */
    private double toughListeriaLog10() {
        InactivationLine line =
                Objects.requireNonNull(terms.knowledge().safety().lines().get(Sequel.LISTERIA_LINE));
        return Dose.of(line.killFrom(line.lowestTestedC()), core).at(trial.judgedAt()) / SALTED_ROLLED_FACTOR;
    }

    /** Seconds up to the moment judged that the core is at least so hot, the reading error taken off. */
    private double held(double levelC) {
        return core.secondsAtOrAbove(levelC + terms.errorK(), trial.judgedAt());
    }

    private double hottestC() {
        return core.highestC() - terms.errorK();
    }

    private void add(NoticeCode code) {
        found.add(Notice.of(code));
    }
}
