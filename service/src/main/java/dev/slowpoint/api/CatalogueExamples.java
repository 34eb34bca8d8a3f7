package dev.slowpoint.api;

import dev.slowpoint.api.CatalogueAnswers.FoodEntry;
import dev.slowpoint.api.CatalogueAnswers.FoodList;
import dev.slowpoint.api.CatalogueAnswers.ParameterSetDifferences;
import dev.slowpoint.api.CatalogueAnswers.ParameterSetEntry;
import dev.slowpoint.api.CatalogueAnswers.ParameterSetList;
import dev.slowpoint.api.CatalogueAnswers.ProblemEntry;
import dev.slowpoint.api.CatalogueAnswers.ProblemList;
import dev.slowpoint.api.CatalogueAnswers.RuleEntry;
import dev.slowpoint.api.CatalogueAnswers.RuleList;
import dev.slowpoint.api.CatalogueAnswers.WarningEntry;
import dev.slowpoint.api.CatalogueAnswers.WarningList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.springframework.stereotype.Component;

/** Answers of the catalogues for the contract: what they really say, of lists the one entry that is shown alone as well. */
@Component
final class CatalogueExamples {

    private static final String FOOD = "pork-loin";
    private static final String RULE = "FC-COOL";
    private static final String WARNING = "FROM_FROZEN";
    private static final ProblemCode PROBLEM = ProblemCode.OUT_OF_RANGE;

    private final Map<Class<?>, Record> answers = new LinkedHashMap<>();

    CatalogueExamples(Catalogues catalogues, Languages languages) {
        Sentences english = languages.english();
        show(only(catalogues.foods(english), FoodEntry::id, FOOD), FoodList::new);
        show(only(catalogues.rules(english), RuleEntry::id, RULE), RuleList::new);
        show(only(catalogues.warnings(english), WarningEntry::code, WARNING), WarningList::new);
        show(ProblemEntry.of(PROBLEM, english), ProblemList::new);
        ParameterSetEntry newest = catalogues.parameterSets().get(0);
        show(newest, ParameterSetList::new);
        answers.put(
                ParameterSetDifferences.class,
                catalogues.differences(newest.version(), newest.version()).orElseThrow());
    }

    private static <E extends Record> E only(List<E> entries, Function<E, String> id, String wanted) {
        return entries.stream()
                .filter(entry -> id.apply(entry).equals(wanted))
                .findFirst()
                .orElseThrow(() -> new IllegalStateException(
                        "no catalogue has " + wanted + " to show. Maybe another entry should stand in the contract?"));
    }

    private <E extends Record> void show(E entry, Function<List<E>, ? extends Record> list) {
        answers.put(entry.getClass(), entry);
        Record listed = list.apply(List.of(entry));
        answers.put(listed.getClass(), listed);
    }

    /** What an operation answers with, if it is one of the catalogues. */
    Optional<Record> of(Class<? extends Record> answer) {
        return Optional.ofNullable(answers.get(answer));
    }
}
