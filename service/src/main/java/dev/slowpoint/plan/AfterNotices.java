package dev.slowpoint.plan;

import dev.slowpoint.plan.Outcome.Cooling;
import dev.slowpoint.plan.Outcome.Keeping;
import dev.slowpoint.plan.Outcome.Resumption;
import dev.slowpoint.safety.WarmUpLimits;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Decides which warnings follow from how a piece lies and from what happens to it after the bath. */
final class AfterNotices {

    private static final double MM_PER_M = 1000.0;
    private static final double DAY = 86400.0;

    /** Food out of temperature control is thrown away after 4 h (FDA Food Code 2022, 3-501.19(B)). */
    private static final double LONGEST_REST = 4 * 3600.0;

    /** Longer than this in the cold asks for a kill of spores (UK FSA factsheet 0708). */
    private static final double LONG_STORE_DAYS = 10.0;

    /** The warmest store that the fish guide gives days for (FDA fish guide 2020, Table A-2). */
    private static final double WARM_STORE_C = 10.0;

    private final List<Notice> found = new ArrayList<>();

    private AfterNotices() {}

    /** The notices of an arrangement. */
    static List<Notice> of(Arrangement arrangement) {
        AfterNotices notices = new AfterNotices();
        if (arrangement.faceInAirC().isPresent()) {
            notices.add(NoticeCode.FACE_IN_AIR);
        }
        if (arrangement.pileOf() > 1 || arrangement.oneFaceBlocked()) {
            notices.add(NoticeCode.PACKS_TOUCH);
        }
        if (arrangement.trappedAir() > 0.0) {
            notices.add(NoticeCode.TRAPPED_AIR, Figures.log10(MM_PER_M * arrangement.trappedAir()));
        }
        return notices.found;
    }

    /** The notices of steps, each given once. */
    static List<Notice> of(List<Outcome> outcomes, double withinK, WarmUpLimits warmUp) {
        AfterNotices notices = new AfterNotices();
        notices.rests(outcomes);
        notices.reheatedToHold(outcomes);
        for (Outcome outcome : outcomes) {
            outcome.cooling().ifPresent(notices::cooling);
            outcome.keeping().ifPresent(notices::keeping);
            outcome.interruption()
                    .filter(i -> i.verdict() == Resumption.DISCARD_OR_DECIDE)
                    .ifPresent(i -> notices.add(
                            NoticeCode.INTERRUPTED_COOK,
                            Figures.hours(i.off().late()),
                            Figures.hours(i.coldestBelow().late())));
            if (outcome.holding().filter(h -> !h.growth().isEmpty()).isPresent()
                    || outcome.reheating().filter(r -> !r.growth().isEmpty()).isPresent()) {
                notices.add(NoticeCode.BATH_IN_GROWTH_RANGE);
            }
            outcome.reheating()
                    .filter(r -> r.warmUp().late() > warmUp.longestS())
                    .ifPresent(r -> notices.add(
                            NoticeCode.WARM_UP_OVER_6H, Figures.hours(r.warmUp().late())));
            outcome.reheating()
                    .filter(r -> !r.killStep())
                    .ifPresent(r -> notices.add(NoticeCode.REHEAT_IS_NO_KILL_STEP));
            outcome.sear()
                    .filter(s -> s.peakC().nominal() > s.wantedC() + withinK)
                    .ifPresent(s -> notices.add(
                            NoticeCode.SEAR_OVERSHOOTS,
                            Figures.temperature(s.peakC().nominal()),
                            Figures.temperature(s.wantedC())));
        }
        return notices.found;
    }

    /** The stores that are cold and not frozen. */
    static List<Step.Store> unfrozen(List<Step.Store> stores, Knowledge knowledge) {
        double frozenC = knowledge.safety().coldStorage().frozen().toC();
        return stores.stream().filter(store -> store.temperatureC() > frozenC).toList();
    }

    /**
     * The notices of cold stores, one after the other.
     *
     * @param stores those that are not frozen
     * @param sporesKilled whether the cook gave six decimal reductions of cold-growing spores
     */
    static List<Notice> of(List<Step.Store> stores, boolean sporesKilled) {
        AfterNotices notices = new AfterNotices();
        double days = stores.stream().mapToDouble(Step.Store::duration).sum() / DAY;
        if (days > LONG_STORE_DAYS && !sporesKilled) {
            notices.add(NoticeCode.STORE_OVER_10_DAYS, Figures.log10(days));
        }
        stores.stream()
                .mapToDouble(Step.Store::temperatureC)
                .filter(storeC -> storeC > WARM_STORE_C)
                .max()
                .ifPresent(storeC -> notices.add(NoticeCode.SEALED_AND_WARM, Figures.temperature(storeC)));
        return notices.found;
    }

    /**
     * What is wrong with food that was reheated to be held hot, if something is.
     *
     * @param rule for hot holding
     * @param setpointC of the bath it was reheated in [C]
     * @param inTime whether all parts were as warm as the rule asks in time
     */
    static Optional<Notice> heldHot(ReheatRule rule, double setpointC, boolean inTime) {
        if (inTime) {
            return Optional.empty();
        }
        return Optional.of(Notice.of(
                setpointC < rule.coreC().orElseThrow() ? NoticeCode.REHEAT_TO_74 : NoticeCode.REHEAT_TOO_SLOW));
    }

    /** The notices of a cooling and a store. */
    static List<Notice> of(Cooling cooling, Optional<Keeping> keeping) {
        AfterNotices notices = new AfterNotices();
        notices.cooling(cooling);
        keeping.ifPresent(notices::keeping);
        return notices.found;
    }

    /** All rests since the food was last hot, or went in, count together. */
    private void rests(List<Outcome> outcomes) {
        double rested = 0.0;
        for (Outcome outcome : outcomes) {
            if (outcome.step() instanceof Step.Rest rest) {
                rested += rest.duration();
            } else if (outcome.step() instanceof Step.Bath || outcome.step() instanceof Step.Sear) {
                rested = 0.0;
            }
            if (rested > LONGEST_REST) {
                add(NoticeCode.REST_TOO_LONG, Figures.hours(rested));
            }
        }
    }

    /** A reheating that a bath follows is one for hot holding. */
    private void reheatedToHold(List<Outcome> outcomes) {
        for (int i = 0; i + 1 < outcomes.size(); i++) {
            Outcome outcome = outcomes.get(i);
            if (outcome.step() instanceof Step.Reheat reheat
                    && outcomes.get(i + 1).step() instanceof Step.Bath) {
                outcome.reheating().stream()
                        .flatMap(r -> r.checks().stream())
                        .filter(check -> check.rule().use() == ReheatRule.Use.HOT_HOLDING)
                        .flatMap(check -> heldHot(check.rule(), reheat.setpointC(), check.met()).stream())
                        .forEach(notice -> add(notice.code()));
            }
        }
    }

    private void cooling(Cooling cooling) {
        if (!cooling.kept()) {
            add(NoticeCode.COOLING_NOT_KEPT, cooling.rule());
        }
    }

    private void keeping(Keeping keeping) {
        if (!keeping.kept()) {
            add(
                    NoticeCode.STORE_TOO_LONG,
                    Figures.log10(keeping.asked() / DAY),
                    Figures.log10(keeping.longest() / DAY));
        }
    }

    private void add(NoticeCode code, Object... values) {
        if (found.stream().noneMatch(n -> n.code() == code)) {
            found.add(Notice.of(code, values));
        }
    }
}
