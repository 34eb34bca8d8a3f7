package dev.slowpoint.parameters;

import dev.slowpoint.food.Condition;
import dev.slowpoint.food.FoodGroup;
import dev.slowpoint.food.Form;
import dev.slowpoint.safety.Eater;
import dev.slowpoint.safety.Purpose;
import dev.slowpoint.safety.RuleBook;
import java.util.OptionalDouble;

/**
 * Checks the rules of an overlay. A rule that asks nothing of a food would let every cook of it pass, so each must decide
 * wherever the default rule does.
 */
final class OwnRules {

    private OwnRules() {}

    static void check(Overlay overlay, RuleBook book) {
        for (CsvTable.Row row : overlay.rules()) {
            String rule = row.text("id");
            for (FoodGroup group : FoodGroup.values()) {
                for (Form form : Form.values()) {
                    for (Condition condition : Condition.values()) {
                        for (Purpose purpose : Purpose.values()) {
                            for (Eater eater : Eater.values()) {
                                if (decides(book, book.defaultRule(), group, form, condition, purpose, eater)
                                        && !decides(book, rule, group, form, condition, purpose, eater)) {
                                    throw row.fault(
                                            "id",
                                            "names a rule for which requirements.csv asks nothing that decides of "
                                                    + group + ", " + form + ", " + condition + ", for " + purpose
                                                    + ", where the default rule does");
                                }
                            }
                        }
                    }
                }
            }
        }
    }

    private static boolean decides(
            RuleBook book, String rule, FoodGroup group, Form form, Condition condition, Purpose purpose, Eater eater) {
        return book.requirements(rule, group, form, condition, purpose, eater, OptionalDouble.empty()).stream()
                .anyMatch(requirement -> !requirement.advisory());
    }
}
