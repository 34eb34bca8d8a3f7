package dev.slowpoint.plan;

import dev.slowpoint.heat.PointHistory;
import dev.slowpoint.plan.CookPlan.Governing;
import dev.slowpoint.plan.CookPlan.OtherRule;
import dev.slowpoint.safety.Finding;
import dev.slowpoint.safety.Judgement;
import dev.slowpoint.safety.ReadingError;
import dev.slowpoint.safety.Requirement;
import dev.slowpoint.safety.Rule;
import dev.slowpoint.safety.RuleBook;
import dev.slowpoint.safety.SafetyKnowledge;
import dev.slowpoint.safety.Verdict;
import dev.slowpoint.safety.WarmUpClock;
import dev.slowpoint.safety.WarmUpLimits;
import java.util.List;
import java.util.OptionalDouble;

/** Judges the slow corner of a trial by every rule but the one it was planned for; nothing is run again. */
final class OtherRules {

    private final CookTask task;
    private final Trial trial;
    private final Terms terms;
    private final boolean spoiled;
    private final SafetyKnowledge safety;
    private final RuleBook book;

    private OtherRules(CookTask task, Trial trial, Terms terms, boolean spoiled) {
        this.task = task;
        this.trial = trial;
        this.terms = terms;
        this.spoiled = spoiled;
        this.safety = terms.knowledge().safety();
        this.book = safety.rules();
    }

    /**
     * How the others would judge, in the order of the rules.
     *
     * @param spoiled whether spore formers may have grown in warmth in a later step: then no rule is met
     */
    static List<OtherRule> of(CookTask task, Trial trial, Terms terms, boolean spoiled) {
        OtherRules others = new OtherRules(task, trial, terms, spoiled);
        return others.book.rules().stream()
                .filter(rule -> !rule.id().equals(terms.rule().id()))
                .map(others::by)
                .toList();
    }

    private OtherRule by(Rule rule) {
        PointHistory core = trial.late().slowest();
        List<Requirement> requirements = task.requirements(book, rule.id());
        Judgement judgement = safety.judge()
                .judge(
                        requirements,
                        core,
                        trial.judgedAt(),
                        Trial.worstCase(task, terms, terms.error(requirements, trial.setpointC())));
        WarmUpLimits warmUp = safety.warmUp(rule.id());
        WarmUpClock clock = WarmUpClock.of(core, trial.judgedAt(), ReadingError.NONE, warmUp);
        return new OtherRule(
                rule,
                spoiled ? Verdict.NOT_MET : Trial.verdict(judgement, clock),
                judgement.governing().map(this::governing),
                judgement.verdict() == Verdict.NOT_APPLICABLE
                        ? OptionalDouble.empty()
                        : OptionalDouble.of(safeLate(judgement.safeAt(), core, warmUp)));
    }

    private Governing governing(Finding finding) {
        Requirement requirement = finding.requirement();
        return new Governing(
                requirement.hazard(),
                book.basis(requirement),
                requirement.target(),
                finding.deliveredLog10(),
                finding.marginLog10());
    }

    private double safeLate(double killedAt, PointHistory core, WarmUpLimits warmUp) {
        boolean never = spoiled
                || Double.isInfinite(killedAt)
                || WarmUpClock.of(core, killedAt, ReadingError.NONE, warmUp).pace() == WarmUpClock.Pace.TOO_SLOW;
        return never ? Double.POSITIVE_INFINITY : killedAt;
    }
}
