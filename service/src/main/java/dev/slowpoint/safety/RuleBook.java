package dev.slowpoint.safety;

import dev.slowpoint.food.Condition;
import dev.slowpoint.food.FoodGroup;
import dev.slowpoint.food.Form;
import java.util.List;
import java.util.OptionalDouble;

/**
 * The rules that can be chosen, and what each asks of a food.
 *
 * @param rules in the order of the file
 * @param defaultRule id of the rule that counts when none is chosen
 * @param provisions of all rules
 * @param clauses of all rules, for people
 */
public record RuleBook(List<Rule> rules, String defaultRule, List<Provision> provisions, List<Clause> clauses) {

    /** Copies the lists and refuses a default, a provision or a clause that names no rule. */
    public RuleBook {
        rules = List.copyOf(rules);
        provisions = List.copyOf(provisions);
        clauses = List.copyOf(clauses);
        find(rules, defaultRule);
        for (Provision provision : provisions) {
            find(rules, provision.rule());
        }
        for (Clause clause : clauses) {
            for (String rule : clause.rules()) {
                find(rules, rule);
            }
        }
    }

    /** The rule of an id. */
    public Rule rule(String id) {
        return find(rules, id);
    }

    /** What a rule says of a topic, in the order of the file; empty where nothing was read. */
    public List<Clause> clauses(String ruleId, Topic topic) {
        return clauses.stream()
                .filter(c -> c.topic() == topic && c.rules().contains(ruleId))
                .toList();
    }

    /** Whose demand a requirement is. */
    public Provision.Basis basis(Requirement requirement) {
        return provisions.stream()
                .filter(p -> p.requirement().id().equals(requirement.id()))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no requirement '" + requirement.id() + "'"))
                .basis();
    }

    /**
     * What a rule asks of the slowest-heating point of a food. Empty when it asks for no kill: food cooked before and
     * warmed for an eater in good health to be eaten at once (Food Code 2022, 3-403.10).
     *
     * <p>A vulnerable eater always needs the full treatment, cooked before or not, and no surface stands for the inside
     * (Food Code 2022, 3-801.11(C)).
     *
     * @param fatPercent [%] of the mass; empty when unknown, then the fattest column of a table counts
     */
    public List<Requirement> requirements(
            String ruleId,
            FoodGroup group,
            Form form,
            Condition condition,
            Purpose purpose,
            Eater eater,
            OptionalDouble fatPercent) {
        find(rules, ruleId);
        boolean eatenAtOnce = purpose == Purpose.SERVE || purpose == Purpose.TENDERISE || purpose == Purpose.REHEAT;
        if (condition == Condition.COOKED && eatenAtOnce && eater == Eater.GENERAL) {
            return List.of();
        }
        boolean surfaceOnlyAllowed = eatenAtOnce && eater == Eater.GENERAL;
        // Hansen and Knoechel 1996 found no adaptation in beef of normal pH (5.6).
        boolean heatAdapts = group != FoodGroup.BEEF;
        return provisions.stream()
                .filter(p -> p.speaksOf(ruleId, group, form, purpose))
                .map(p -> p.forFood(fatPercent, surfaceOnlyAllowed, heatAdapts))
                .toList();
    }

    private static Rule find(List<Rule> rules, String id) {
        return rules.stream()
                .filter(r -> r.id().equals(id))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no rule '" + id + "'. Maybe one of "
                        + rules.stream().map(Rule::id).toList() + "?"));
    }
}
