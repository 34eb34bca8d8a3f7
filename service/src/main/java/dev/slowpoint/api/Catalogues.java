package dev.slowpoint.api;

import dev.slowpoint.api.CatalogueAnswers.FoodEntry;
import dev.slowpoint.api.CatalogueAnswers.ParameterSetEntry;
import dev.slowpoint.api.CatalogueAnswers.RuleEntry;
import dev.slowpoint.api.CatalogueAnswers.WarningEntry;
import java.util.List;

/** What the service knows, for the catalogues. Asked once, when the service starts. */
public interface Catalogues {

    /** The foods of the current parameter set, by id. */
    List<FoodEntry> foods();

    /** The rules of the current parameter set, by id. */
    List<RuleEntry> rules();

    /** The parameter sets that a request may pin, newest first. */
    List<ParameterSetEntry> parameterSets();

    /** The warnings that a plan may carry, by code. */
    List<WarningEntry> warnings();
}
