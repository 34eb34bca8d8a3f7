package dev.slowpoint.api;

import dev.slowpoint.api.CatalogueAnswers.FoodEntry;
import dev.slowpoint.api.CatalogueAnswers.ParameterSetDifferences;
import dev.slowpoint.api.CatalogueAnswers.ParameterSetEntry;
import dev.slowpoint.api.CatalogueAnswers.RuleEntry;
import dev.slowpoint.api.CatalogueAnswers.WarningEntry;
import java.util.List;
import java.util.Optional;

/** What the service knows, for the catalogues. Asked once for each language and system of units. */
public interface Catalogues {

    /** The foods of the current parameter set, by id. */
    List<FoodEntry> foods(Sentences sentences);

    /** The rules of the current parameter set, by id. */
    List<RuleEntry> rules(Sentences sentences);

    /** The parameter sets that a request may pin, newest first. */
    List<ParameterSetEntry> parameterSets();

    /** What differs in a parameter set from another, if there are both. */
    Optional<ParameterSetDifferences> differences(String version, String from);

    /** The warnings that a plan may carry, by code. */
    List<WarningEntry> warnings(Sentences sentences);
}
