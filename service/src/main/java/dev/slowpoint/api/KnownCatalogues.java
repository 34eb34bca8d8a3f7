package dev.slowpoint.api;

import dev.slowpoint.api.CatalogueAnswers.CompositionEntry;
import dev.slowpoint.api.CatalogueAnswers.CoolingEntry;
import dev.slowpoint.api.CatalogueAnswers.FoodEntry;
import dev.slowpoint.api.CatalogueAnswers.Origin;
import dev.slowpoint.api.CatalogueAnswers.ParameterSetEntry;
import dev.slowpoint.api.CatalogueAnswers.RequirementEntry;
import dev.slowpoint.api.CatalogueAnswers.RuleEntry;
import dev.slowpoint.api.CatalogueAnswers.WarningEntry;
import dev.slowpoint.food.Composition;
import dev.slowpoint.food.Food;
import dev.slowpoint.food.Provenance;
import dev.slowpoint.parameters.ParameterSets;
import dev.slowpoint.plan.Knowledge;
import dev.slowpoint.safety.CoolingRule;
import dev.slowpoint.safety.Provision;
import dev.slowpoint.safety.Requirement;
import dev.slowpoint.safety.Rule;
import dev.slowpoint.safety.RuleBook;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.springframework.stereotype.Component;

/** The catalogues of the current parameter set. */
@Component
final class KnownCatalogues implements Catalogues {

    private static final double PERCENT = 100.0;

    private final ParameterSets sets;
    private final Knowledge knowledge;
    private final Sentences sentences;

    KnownCatalogues(ParameterSets sets, Sentences sentences) {
        this.sets = sets;
        this.knowledge = sets.current().knowledge();
        this.sentences = sentences;
    }

    @Override
    public List<FoodEntry> foods() {
        return knowledge.catalogue().foods().stream().map(KnownCatalogues::food).toList();
    }

    @Override
    public List<RuleEntry> rules() {
        return Stream.concat(
                        knowledge.safety().rules().rules().stream().map(this::rule),
                        knowledge.safety().cooling().values().stream().map(this::rule))
                .sorted(Comparator.comparing(RuleEntry::id))
                .toList();
    }

    @Override
    public List<ParameterSetEntry> parameterSets() {
        return sets.all().stream()
                .map(set -> new ParameterSetEntry(set.version(), set.digest(), Words.of(set.status())))
                .sorted(Comparator.comparing(ParameterSetEntry::version).reversed())
                .toList();
    }

    @Override
    public List<WarningEntry> warnings() {
        return knowledge.notices().values().stream()
                .map(rule -> new WarningEntry(
                        rule.code().name(),
                        Words.of(rule.severity()),
                        Words.of(rule.kind()),
                        rule.trigger(),
                        sentences.pattern(rule.code()),
                        origin(rule.origin())))
                .sorted(Comparator.comparing(WarningEntry::code))
                .toList();
    }

    private static FoodEntry food(Food food) {
        Composition c = food.composition();
        return new FoodEntry(
                food.id(),
                food.name(),
                Words.of(food.group()),
                food.forms().stream().sorted().map(Words::of).toList(),
                Words.of(food.condition()),
                food.textureClass().orElse(null),
                new CompositionEntry(
                        PERCENT * c.water(),
                        PERCENT * c.protein(),
                        PERCENT * c.fat(),
                        PERCENT * c.carbohydrate(),
                        PERCENT * c.fibre(),
                        PERCENT * c.ash()),
                food.freezingPointC(),
                food.hazards(),
                food.origins().stream().map(KnownCatalogues::origin).toList());
    }

    private RuleEntry rule(Rule rule) {
        RuleBook book = knowledge.safety().rules();
        return new RuleEntry(
                rule.id(),
                "cooking",
                rule.name(),
                rule.jurisdiction(),
                rule.edition(),
                book.provisions().stream()
                        .filter(p -> p.rule().equals(rule.id()))
                        .map(KnownCatalogues::requirement)
                        .toList(),
                List.of(),
                rule.note(),
                List.of(origin(rule.provenance())));
    }

    private RuleEntry rule(CoolingRule rule) {
        return new RuleEntry(
                rule.id(),
                "cooling",
                sentences.of(rule),
                null,
                null,
                List.of(),
                rule.stages().stream()
                        .map(stage -> new CoolingEntry(
                                stage.id(),
                                stage.fromC(),
                                stage.toC(),
                                (int) stage.longestS(),
                                origin(stage.provenance())))
                        .toList(),
                null,
                rule.stages().stream()
                        .map(stage -> origin(stage.provenance()))
                        .distinct()
                        .toList());
    }

    private static RequirementEntry requirement(Provision provision) {
        Requirement requirement = provision.requirement();
        return new RequirementEntry(
                requirement.id(),
                provision.groups().stream().sorted().map(Words::of).toList(),
                Words.of(provision.pieces()),
                provision.purposes().stream().sorted().map(Words::of).toList(),
                Words.of(requirement.hazard()),
                requirement.target(),
                requirement.floorC(),
                requirement.table().map(t -> t.table()).orElse(null),
                requirement.advisory(),
                origin(requirement.provenance()));
    }

    private static Origin origin(Provenance provenance) {
        return new Origin(Words.of(provenance.mark()), provenance.source());
    }
}
