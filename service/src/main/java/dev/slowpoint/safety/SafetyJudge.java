package dev.slowpoint.safety;

import dev.slowpoint.heat.Dose;
import dev.slowpoint.heat.PointHistory;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Judges a temperature history of the slowest-heating point against what a rule asks.
 *
 * <p>Kill counts with the reading error taken off, only at or above the floor of each requirement, no faster than at the
 * highest tested temperature, not while cooling, and up to twelve decimal reductions in all. Where the rule is a table,
 * the table must be met besides.
 */
public final class SafetyJudge {

    /** The most decimal reductions that are ever credited: beyond it log-linear kill has no meaning (tails, shoulders). */
    public static final double MOST_CREDIT_LOG10 = 12.0;

    private final GrowthAllowance growth;
    private final HeatAdaptation adaptation;

    /**
     * A judge.
     *
     * @param growth on the way up
     * @param adaptation to slow heating
     */
    public SafetyJudge(GrowthAllowance growth, HeatAdaptation adaptation) {
        this.growth = growth;
        this.adaptation = adaptation;
    }

    /**
     * Judges a history.
     *
     * @param requirements of the rule; see {@link RuleBook#requirements}
     * @param core the slowest-heating point
     * @param at the time judged [s], such as the time the food is taken out; safe times look at the whole history
     * @param how the terms
     */
    public Judgement judge(List<Requirement> requirements, PointHistory core, double at, Judging how) {
        if (Double.isNaN(at)) {
            throw new IllegalArgumentException("the time judged is no number");
        }
        CreditedTime credited = CreditedTime.of(core);
        double slowHeatingS = adaptation.secondsIn(core, at);
        boolean adapted = slowHeatingS > adaptation.longestS();
        List<Finding> findings = new ArrayList<>();
        double safeAt = core.start();
        for (Requirement requirement : requirements) {
            Finding finding = find(requirement, core, credited, at, how, adapted);
            findings.add(finding);
            if (!requirement.advisory()) {
                safeAt = Math.max(safeAt, finding.metAt());
            }
        }
        return new Judgement(verdict(findings), at, findings, safeAt, slowHeatingS, adapted);
    }

    private Finding find(
            Requirement requirement,
            PointHistory core,
            CreditedTime credited,
            double at,
            Judging how,
            boolean adapted) {
        ReadingError error = how.error();
        double allowance = how.floorAllowanceK();
        double factor = adapted && requirement.heatAdapts() ? adaptation.factorOnD() : 1.0;
        double applied = how.slowedByHeatAdaptation() ? factor : 1.0;
        Dose kill = Dose.of(error.judged(requirement.kill(allowance, applied)), core);
        double delivered = credited.dose(kill, at);

        double floorReached = core.firstAtOrAbove(error.readingFor(requirement.floorC() - allowance));
        StartRange start = how.start().orElseGet(() -> StartRange.exactly(core.temperatureC(0)));
        double grown = growth.log10(requirement.hazard(), core, Math.min(at, floorReached), start);
        double needed = requirement.target() + growth.log10(requirement.hazard(), core, floorReached, start);
        double integratedAt = needed > MOST_CREDIT_LOG10 ? Double.POSITIVE_INFINITY : credited.timeOfDose(kill, needed);

        Optional<TableView> table =
                requirement.table().map(t -> t.extendedBy(allowance).view(core, credited, error, at));
        double metAt = Math.max(integratedAt, table.map(TableView::metAt).orElse(integratedAt));
        boolean met = metAt <= at;
        double margin = Math.min(delivered, MOST_CREDIT_LOG10) - requirement.target() - grown;
        return new Finding(
                requirement,
                Math.min(delivered, MOST_CREDIT_LOG10),
                grown,
                // At the very moment of meeting it, a last digit below zero would contradict the verdict.
                met ? Math.max(margin, 0.0) : margin,
                (delivered - grown) / requirement.target(),
                Math.min(delivered * applied / factor, MOST_CREDIT_LOG10) - requirement.target() - grown,
                integratedAt,
                table,
                metAt,
                met);
    }

    private static Verdict verdict(List<Finding> findings) {
        List<Finding> deciding =
                findings.stream().filter(f -> !f.requirement().advisory()).toList();
        if (deciding.isEmpty()) {
            return Verdict.NOT_APPLICABLE;
        }
        List<Finding> unmet = deciding.stream().filter(f -> !f.met()).toList();
        if (unmet.isEmpty()) {
            return Verdict.MET;
        }
        return unmet.stream().allMatch(f -> f.requirement().surfaceOnlyAllowed())
                ? Verdict.SURFACE_ONLY
                : Verdict.NOT_MET;
    }
}
