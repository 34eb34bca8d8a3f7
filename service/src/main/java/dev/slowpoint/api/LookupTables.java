package dev.slowpoint.api;

import dev.slowpoint.ops.PlanClock;
import dev.slowpoint.ops.PlanMetrics;
import dev.slowpoint.plan.CookPlanner;
import dev.slowpoint.plan.CookTask;
import dev.slowpoint.plan.Knowledge;
import dev.slowpoint.plan.LookupTable;
import dev.slowpoint.plan.LookupTableTask;
import dev.slowpoint.plan.LookupTableTask.Ends;
import dev.slowpoint.plan.Notice;
import dev.slowpoint.plan.NoticeRule;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.function.ToIntFunction;
import org.springframework.stereotype.Component;

/** Answers lookup tables with the planner of the parameter set that a request names. */
@Component
final class LookupTables {

    private static final double MM_PER_M = 1000.0;
    private static final double PERCENT = 100.0;
    private static final int DECIMALS = 2;

    private final Planners planners;
    private final PlanMetrics metrics;

    LookupTables(Planners planners, PlanMetrics metrics) {
        this.planners = planners;
        this.metrics = metrics;
    }

    /**
     * Tabulates cooks.
     *
     * @param request read and found to keep the contract
     * @param sentences in the language asked for
     * @param length of an answer as it will be written [bytes]
     * @throws dev.slowpoint.plan.Refusal if the question cannot be answered in so many bytes
     */
    LookupTableAnswer tabulate(
            LookupTableRequest request, Sentences sentences, ToIntFunction<LookupTableAnswer> length) {
        CookPlanner planner = planners.of(request.parameterSet());
        LookupTableTask task = task(request, planner.knowledge());
        boolean spoken = request.sentences();
        LookupTable table;
        try (PlanClock clock = metrics.clock()) {
            table = planner.watchedBy(clock)
                    .lookupTable(
                            task,
                            candidate -> length.applyAsInt(answer(candidate, planner.knowledge(), spoken, sentences)));
            clock.solved(table.effort());
        }
        metrics.tabulated(task.cook().food().group(), table.parameterSet());
        return answer(table, planner.knowledge(), spoken, sentences);
    }

    private static LookupTableTask task(LookupTableRequest request, Knowledge knowledge) {
        Ends across = ends(request.thickness().fromMm(), request.thickness().toMm());
        Ends setpointC = ends(request.setpoint().fromC(), request.setpoint().toC());
        Ends startC = ends(request.start().fromC(), request.start().toC());
        CookTask cook = TaskTranslation.task(
                new CookPlanRequest(
                        request.parameterSet(),
                        request.food(),
                        request.geometry().of(across.to()),
                        new CookPlanRequest.Start(startC.from(), null, null, null),
                        new CookPlanRequest.Surroundings(
                                new CookPlanRequest.Bath(
                                        setpointC.from(),
                                        request.surroundings().bath().stirring(),
                                        null,
                                        null,
                                        null,
                                        null,
                                        null,
                                        null,
                                        null,
                                        null),
                                request.surroundings().altitudeM()),
                        new CookPlanRequest.Target(
                                request.target().purpose(),
                                request.target().coreC(),
                                request.target().withinK(),
                                null),
                        request.eater(),
                        request.rule(),
                        request.tolerances(),
                        request.pack(),
                        List.of()),
                knowledge);
        return new LookupTableTask(
                cook,
                new Ends(across.from() / MM_PER_M, across.to() / MM_PER_M),
                setpointC,
                startC,
                Set.copyOf(request.quantities()),
                request.withinPercent() / PERCENT,
                request.longestBytes());
    }

    /** A range whose ends can be told as they are counted with; none of what was asked for is lost. */
    private static Ends ends(double from, double to) {
        return new Ends(
                BigDecimal.valueOf(from).setScale(DECIMALS, RoundingMode.FLOOR).doubleValue(),
                BigDecimal.valueOf(to).setScale(DECIMALS, RoundingMode.CEILING).doubleValue());
    }

    private static LookupTableAnswer answer(
            LookupTable table, Knowledge knowledge, boolean spoken, Sentences sentences) {
        return new LookupTableAnswer(
                table.parameterSet(),
                PlanTranslation.shown(table.digest()),
                table.across().stream().map(metres -> metres * MM_PER_M).toList(),
                table.setpointsC(),
                table.startsC(),
                table.columns().stream().map(LookupTables::column).toList(),
                table.checks(),
                table.rounds(),
                notices(table, NoticeRule.Kind.WARNING, knowledge, spoken, sentences),
                notices(table, NoticeRule.Kind.CAUTION, knowledge, spoken, sentences));
    }

    private static List<LookupTableAnswer.CodedNotice> notices(
            LookupTable table, NoticeRule.Kind kind, Knowledge knowledge, boolean spoken, Sentences sentences) {
        List<LookupTableAnswer.CodedNotice> coded = new ArrayList<>();
        for (Notice notice : table.notices()) {
            NoticeRule rule = Objects.requireNonNull(knowledge.notices().get(notice.code()));
            if (rule.kind() == kind) {
                coded.add(new LookupTableAnswer.CodedNotice(
                        notice.code().name(), Words.of(rule.severity()), spoken ? sentences.of(notice) : null));
            }
        }
        return coded;
    }

    private static LookupTableAnswer.Column column(LookupTable.Column column) {
        LookupTable.Error error = column.error();
        return new LookupTableAnswer.Column(
                Words.of(column.quantity()),
                column.seconds(),
                (int) Math.ceil(error.greatest()),
                PERCENT * error.greatestShare(),
                (int) Math.ceil(error.usual()),
                PERCENT * error.usualShare(),
                PERCENT * error.needlesslyNever());
    }
}
