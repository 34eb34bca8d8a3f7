package dev.slowpoint.api;

import dev.slowpoint.api.CatalogueAnswers.FoodEntry;
import dev.slowpoint.api.CatalogueAnswers.ParameterSetEntry;
import dev.slowpoint.api.CatalogueAnswers.RuleEntry;
import dev.slowpoint.api.CatalogueAnswers.WarningEntry;
import java.util.List;

/** What the service knows, for the catalogues. Asked once for each language and system of units. */
public interface Catalogues {

    /** The foods of the current parameter set, by id. */
    List<FoodEntry> foods(Sentences sentences);

    /** The rules of the current parameter set, by id. */
    List<RuleEntry> rules(Sentences sentences);

    /** The parameter sets that a request may pin, newest first. */
    List<ParameterSetEntry> parameterSets();

    /** The warnings that a plan may carry, by code. */
    List<WarningEntry> warnings(Sentences sentences);
}
