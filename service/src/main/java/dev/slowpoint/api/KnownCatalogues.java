package dev.slowpoint.api;

import dev.slowpoint.api.CatalogueAnswers.ClauseEntry;
import dev.slowpoint.api.CatalogueAnswers.CompositionEntry;
import dev.slowpoint.api.CatalogueAnswers.CoolingEntry;
import dev.slowpoint.api.CatalogueAnswers.FoodEntry;
import dev.slowpoint.api.CatalogueAnswers.Origin;
import dev.slowpoint.api.CatalogueAnswers.ParameterSetDifferences;
import dev.slowpoint.api.CatalogueAnswers.ParameterSetEntry;
import dev.slowpoint.api.CatalogueAnswers.PlanLimit;
import dev.slowpoint.api.CatalogueAnswers.RequirementEntry;
import dev.slowpoint.api.CatalogueAnswers.RuleEntry;
import dev.slowpoint.api.CatalogueAnswers.SetDifference;
import dev.slowpoint.api.CatalogueAnswers.TableDifference;
import dev.slowpoint.api.CatalogueAnswers.TopicEntry;
import dev.slowpoint.api.CatalogueAnswers.WarningEntry;
import dev.slowpoint.food.Composition;
import dev.slowpoint.food.Food;
import dev.slowpoint.food.Provenance;
import dev.slowpoint.parameters.Deprecation;
import dev.slowpoint.parameters.ParameterSet;
import dev.slowpoint.parameters.ParameterSets;
import dev.slowpoint.parameters.SetDifferences;
import dev.slowpoint.plan.Knowledge;
import dev.slowpoint.safety.Clause;
import dev.slowpoint.safety.ColdStorage;
import dev.slowpoint.safety.CoolingRule;
import dev.slowpoint.safety.HotHoldingLimit;
import dev.slowpoint.safety.Provision;
import dev.slowpoint.safety.Requirement;
import dev.slowpoint.safety.Rule;
import dev.slowpoint.safety.RuleBook;
import dev.slowpoint.safety.RuleLimits;
import dev.slowpoint.safety.Topic;
import dev.slowpoint.safety.WarmUpLimits;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** The catalogues of the current parameter set. */
@Component
final class KnownCatalogues implements Catalogues {

    private static final double PERCENT = 100.0;

    private final ParameterSets sets;
    private final Knowledge knowledge;

    KnownCatalogues(ParameterSets sets) {
        this.sets = sets;
        this.knowledge = sets.current().knowledge();
    }

    @Override
    public List<FoodEntry> foods(Sentences sentences) {
        return knowledge.catalogue().foods().stream()
                .map(food -> food(food, sentences))
                .toList();
    }

    @Override
    public List<RuleEntry> rules(Sentences sentences) {
        return Stream.concat(
                        knowledge.safety().rules().rules().stream().map(this::rule),
                        knowledge.safety().cooling().values().stream().map(rule -> rule(rule, sentences)))
                .sorted(Comparator.comparing(RuleEntry::id))
                .toList();
    }

    @Override
    public List<ParameterSetEntry> parameterSets() {
        return sets.all().stream()
                .map(KnownCatalogues::parameterSet)
                .sorted(Comparator.comparing(ParameterSetEntry::version).reversed())
                .toList();
    }

    private static ParameterSetEntry parameterSet(ParameterSet set) {
        Optional<ParameterSet.Retirement> retirement = set.retirement();
        Optional<Deprecation> deprecation = retirement.map(ParameterSet.Retirement::deprecation);
        return new ParameterSetEntry(
                set.version(),
                set.digest(),
                Words.of(set.status()),
                deprecation.map(Deprecation::since).map(LocalDate::toString).orElse(null),
                deprecation
                        .flatMap(Deprecation::sunset)
                        .map(LocalDate::toString)
                        .orElse(null),
                retirement.map(ParameterSet.Retirement::successor).orElse(null));
    }

    @Override
    public Optional<ParameterSetDifferences> differences(String version, String from) {
        return sets.find(version).flatMap(set -> sets.find(from).map(other -> differences(set, other)));
    }

    private static ParameterSetDifferences differences(ParameterSet set, ParameterSet from) {
        SetDifferences found = SetDifferences.between(from.files(), set.files());
        return new ParameterSetDifferences(
                set.version(),
                set.digest(),
                from.version(),
                from.digest(),
                found.counts().stream()
                        .map(count ->
                                new TableDifference(count.table(), count.added(), count.removed(), count.changed()))
                        .toList(),
                found.all().size(),
                found.all().stream()
                        .limit(CatalogueAnswers.MOST_DIFFERENCES)
                        .map(d -> new SetDifference(
                                d.table(),
                                Words.of(d.change()),
                                d.key(),
                                d.column().orElse(null),
                                d.before().orElse(null),
                                d.after().orElse(null),
                                d.source().orElse(null)))
                        .toList());
    }

    @Override
    public List<WarningEntry> warnings(Sentences sentences) {
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

    private static FoodEntry food(Food food, Sentences sentences) {
        Composition c = food.composition();
        return new FoodEntry(
                food.id(),
                sentences.food(food.id()),
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
                Arrays.stream(Topic.values()).map(topic -> topic(rule, topic)).toList(),
                rule.note(),
                List.of(origin(rule.provenance())));
    }

    private TopicEntry topic(Rule rule, Topic topic) {
        List<Clause> clauses = knowledge.safety().rules().clauses(rule.id(), topic);
        boolean read = clauses.stream().anyMatch(c -> !c.provenance().recalled());
        return new TopicEntry(
                Words.of(topic),
                read ? "read" : clauses.isEmpty() ? "notRead" : "recalled",
                planLimit(knowledge.safety().limits(rule.id()), topic),
                clauses.stream().map(KnownCatalogues::clause).toList());
    }

    private static @Nullable PlanLimit planLimit(RuleLimits limits, Topic topic) {
        boolean own = limits.own().contains(topic);
        WarmUpLimits warmUp = limits.warmUp();
        ColdStorage.Cap cap = limits.coldStorage().cap();
        HotHoldingLimit hot = limits.hotHolding();
        CoolingRule cooling = limits.cooling();
        return switch (topic) {
            case WARM_UP ->
                new PlanLimit(
                        warmUp.id(),
                        own,
                        warmUp.fromC() > WarmUpLimits.ABSOLUTE_ZERO_C ? warmUp.fromC() : null,
                        warmUp.toC(),
                        (int) warmUp.longestS(),
                        origin(warmUp.provenance()));
            case HOLDING -> new PlanLimit(hot.id(), own, hot.lowestC(), null, null, origin(hot.provenance()));
            case COOLING ->
                new PlanLimit(
                        cooling.id(),
                        own,
                        null,
                        null,
                        null,
                        origin(cooling.stages().get(0).provenance()));
            case STORAGE ->
                new PlanLimit(cap.id(), own, null, cap.toC(), (int) cap.longestS(), origin(cap.provenance()));
            case COOKING, REHEATING, PARASITES, EATERS, LABELS -> null;
        };
    }

    private static ClauseEntry clause(Clause clause) {
        return new ClauseEntry(
                clause.id(),
                clause.text(),
                boxed(clause.fromC()),
                boxed(clause.toC()),
                boxed(clause.limit()),
                clause.unit().orElse(null),
                clause.note().orElse(null),
                origin(clause.provenance()));
    }

    private static @Nullable Double boxed(OptionalDouble value) {
        return value.isPresent() ? value.getAsDouble() : null;
    }

    private static RuleEntry rule(CoolingRule rule, Sentences sentences) {
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
                List.of(),
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
                Words.of(provision.basis()),
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
