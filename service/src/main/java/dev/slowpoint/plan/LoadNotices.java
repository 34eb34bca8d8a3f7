package dev.slowpoint.plan;

import dev.slowpoint.heat.CommonWater;
import dev.slowpoint.plan.LoadPlan.Lowering;
import dev.slowpoint.plan.LoadPlan.Phase;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * Decides which warnings a load carries as a whole.
 *
 * @param items of the load
 * @param phases of the bath
 * @param lowering of the water between two setpoints
 * @param water where it is computed, nominal
 * @param readyAt when all is ready [s]
 * @param withinK how near to its setpoint the water counts as there [K]
 */
record LoadNotices(
        List<LoadPlan.Item> items,
        List<Phase> phases,
        Optional<Lowering> lowering,
        Optional<CommonWater.Found> water,
        double readyAt,
        double withinK) {

    /** A heater at its limit for less is not worth a word [s] (our own choice). */
    private static final double MINUTE = 60.0;

    /** What the water does is told once for all. */
    private static final Set<NoticeCode> OF_THE_WATER = Collections.unmodifiableSet(
            EnumSet.of(NoticeCode.BATH_SAGS, NoticeCode.HEATER_TOO_WEAK, NoticeCode.STARTS_COLD));

    /** The warnings of one item, without those that hold for all, or are told of the water they share. */
    static List<Notice> own(CookPlan plan, boolean sharedWater, Knowledge knowledge) {
        return plan.notices().stream()
                .filter(n -> rule(n, knowledge).kind() == NoticeRule.Kind.WARNING)
                .filter(n -> !sharedWater || !OF_THE_WATER.contains(n.code()))
                .toList();
    }

    /** What always holds, each once. */
    static List<Notice> standing(List<LoadPlan.Item> items, Knowledge knowledge) {
        Map<NoticeCode, Notice> standing = new LinkedHashMap<>();
        for (LoadPlan.Item item : items) {
            for (Notice notice : item.plan().notices()) {
                if (rule(notice, knowledge).kind() == NoticeRule.Kind.CAUTION) {
                    standing.putIfAbsent(notice.code(), notice);
                }
            }
        }
        return List.copyOf(standing.values());
    }

    private static NoticeRule rule(Notice notice, Knowledge knowledge) {
        return Objects.requireNonNull(knowledge.notices().get(notice.code()));
    }

    /**
     * All of them, the most severe first.
     *
     * @param missed the time at which all was wanted [s], if it cannot be kept
     */
    List<Notice> of(OptionalDouble missed, Knowledge knowledge) {
        List<Notice> found = new ArrayList<>();
        missed.ifPresent(
                at -> found.add(Notice.of(NoticeCode.LOAD_READY_LATE, Figures.hours(at), Figures.hours(readyAt))));
        lowering.ifPresent(l -> found.add(Notice.of(
                NoticeCode.LOAD_COOL_THE_WATER, Figures.temperature(l.fromC()), Figures.temperature(l.toC()))));
        if (water.isPresent()) {
            water(water.get(), found);
        } else {
            found.add(Notice.of(NoticeCode.LOAD_WATER_NOT_COMPUTED));
        }
        found.addAll(standing(items, knowledge));
        return Notices.mostSevereFirst(found, knowledge);
    }

    private void water(CommonWater.Found found, List<Notice> notices) {
        double startsC = found.water().temperaturesC()[0];
        boolean cold = startsC < phases.get(0).setpointC() - withinK;
        if (cold) {
            notices.add(Notice.of(NoticeCode.STARTS_COLD, Figures.temperature(startsC)));
        }
        phases.stream()
                .skip(cold ? 1 : 0)
                .filter(p -> p.course().orElseThrow().lowestC() < p.setpointC() - withinK)
                .mapToDouble(p -> p.course().orElseThrow().lowestC())
                .min()
                .ifPresent(lowestC -> notices.add(Notice.of(NoticeCode.BATH_SAGS, Figures.temperature(lowestC))));
        double lastC = found.water().temperaturesC()[found.water().temperaturesC().length - 1];
        if (lastC < phases.get(phases.size() - 1).setpointC() - withinK) {
            notices.add(Notice.of(NoticeCode.HEATER_TOO_WEAK, Figures.temperature(lastC)));
        }
        double limit = found.atLimit(readyAt);
        if (limit >= MINUTE) {
            notices.add(Notice.of(NoticeCode.LOAD_HEATER_AT_LIMIT, Math.ceil(limit / MINUTE)));
        }
    }
}
