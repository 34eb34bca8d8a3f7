package dev.slowpoint.safety;

import dev.slowpoint.food.Provenance;
import dev.slowpoint.heat.RateLaw;
import java.util.Optional;

/**
 * What a rule asks of the slowest-heating point for one hazard.
 *
 * <p>Judged by a line, by a table, or by both: then the line gives the margin in decimal reductions and the table must be
 * met besides. What was only recalled may advise and never decide: such a requirement cannot be built.
 *
 * @param id as in the requirement file
 * @param hazard what must be dealt with
 * @param target decimal reductions; one when {@code wholeTreatment}
 * @param wholeTreatment the rule names a treatment and no number of reductions: the target stands for one such treatment
 * @param line kill against temperature, if the rule is judged by one
 * @param table published times, if the rule is a table
 * @param floorC [C] below it nothing counts
 * @param advisory told, but does not decide the verdict
 * @param surfaceOnlyAllowed whether an unmet core may be answered with {@link Verdict#SURFACE_ONLY}
 * @param heatAdapts whether slow heating may have made this organism tougher in this food
 * @param provenance where target and rule come from
 * @param note what else to know
 */
public record Requirement(
        String id,
        Hazard hazard,
        double target,
        boolean wholeTreatment,
        Optional<InactivationLine> line,
        Optional<RequiredTime> table,
        double floorC,
        boolean advisory,
        boolean surfaceOnlyAllowed,
        boolean heatAdapts,
        Provenance provenance,
        String note) {

    /** Refuses a requirement without a way to judge it, and one that would decide by what was only recalled. */
    public Requirement {
        if (line.isEmpty() && table.isEmpty()) {
            throw new IllegalArgumentException("requirement " + id + " needs a line or a table to be judged by");
        }
        if (!(target > 0.0 && Double.isFinite(floorC))) {
            throw new IllegalArgumentException("requirement " + id + ": target " + target
                    + " must be above zero and floor " + floorC + " C finite");
        }
        if (!advisory) {
            String what = "requirement " + id;
            provenance.refuseIfRecalled(what);
            line.ifPresent(l -> l.provenance().refuseIfRecalled(what));
            table.ifPresent(t -> t.provenance().refuseIfRecalled(what));
        }
    }

    /** The kill per second that counts, a nominal estimate starting {@code allowanceK} below the floor. */
    RateLaw kill(double allowanceK, double factorOnD) {
        if (line.isPresent()) {
            return line.get().slowerBy(factorOnD).killFrom(floorC - allowanceK);
        }
        RateLaw rate = table.orElseThrow().extendedBy(allowanceK).rate();
        return factorOnD == 1.0 ? rate : new Slower(rate, factorOnD);
    }

    private record Slower(RateLaw law, double byFactor) implements RateLaw {

        @Override
        public double perSecond(double temperatureC) {
            return law.perSecond(temperatureC) / byFactor;
        }

        @Override
        public double[] breaksC() {
            return law.breaksC();
        }
    }
}
