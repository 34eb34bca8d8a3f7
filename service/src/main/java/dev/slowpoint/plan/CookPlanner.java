package dev.slowpoint.plan;

import dev.slowpoint.food.Form;
import dev.slowpoint.food.Provenance;
import dev.slowpoint.heat.PointHistory;
import dev.slowpoint.heat.Programme;
import dev.slowpoint.heat.TemperatureHistory;
import dev.slowpoint.plan.CookPlan.AtServe;
import dev.slowpoint.plan.CookPlan.BathCourse;
import dev.slowpoint.plan.CookPlan.Curve;
import dev.slowpoint.plan.CookPlan.Margins;
import dev.slowpoint.plan.CookPlan.Organism;
import dev.slowpoint.plan.CookPlan.Safety;
import dev.slowpoint.plan.CookPlan.Source;
import dev.slowpoint.plan.CookPlan.Texture;
import dev.slowpoint.safety.ColdStorage;
import dev.slowpoint.safety.Finding;
import dev.slowpoint.safety.GrowthScope.Occasion;
import dev.slowpoint.safety.MarginBand;
import dev.slowpoint.safety.ReadingError;
import dev.slowpoint.safety.Requirement;
import dev.slowpoint.safety.Rule;
import dev.slowpoint.safety.RuleLimits;
import dev.slowpoint.safety.Verdict;
import dev.slowpoint.texture.CloseLimit;
import dev.slowpoint.texture.EarlierDoses;
import dev.slowpoint.texture.TextureClass;
import dev.slowpoint.texture.TextureLevel;
import dev.slowpoint.texture.TextureProcess;
import dev.slowpoint.texture.TextureReading;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.ToIntFunction;

/** Answers cook tasks from one parameter set. Holds no state but tables; may be used by any number of threads. */
public final class CookPlanner {

    /** Class of the texture model for food that was cooked elsewhere and is warmed up. */
    private static final String REHEATED = "reheat_cooked";

    /** Class of the texture model for meat that was minced or formed, whatever cut it was. */
    private static final String GROUND = "ground_meat";

    /** The lowest row of the meat table as printed in Celsius, 54.4 C, less half its last digit. */
    private static final double LOWEST_NON_INTACT_C = 54.35;

    /** Baths offered instead of one that is too cool for meat that is not intact [C]. */
    private static final double[] OFFERED_C = {57.0, 60.0, 63.0};

    /** How far a curve goes on after the moment judged, as a share of it. */
    private static final double SHOWN_BEYOND = 1.25;

    private final Knowledge knowledge;
    private final Materials materials;
    private final PhaseWatch watch;

    /** A planner that answers from the given knowledge. */
    public CookPlanner(Knowledge knowledge) {
        this(knowledge, new Materials(knowledge.thermal()), PhaseWatch.NONE);
    }

    private CookPlanner(Knowledge knowledge, Materials materials, PhaseWatch watch) {
        this.knowledge = knowledge;
        this.materials = materials;
        this.watch = watch;
    }

    /** The same planner for one question, whose phases are told to a watch. */
    public CookPlanner watchedBy(PhaseWatch told) {
        return new CookPlanner(knowledge, materials, told);
    }

    /** What is told of the phases. */
    PhaseWatch watch() {
        return watch;
    }

    /** What it answers from. */
    public Knowledge knowledge() {
        return knowledge;
    }

    /**
     * Plans a cook.
     *
     * @param task the question
     * @param details parts of the answer that are given only when asked for
     * @throws Refusal when the question is outside what the model or the rule can answer
     */
    public CookPlan plan(CookTask task, Set<Detail> details) {
        Admission.check(task, knowledge);
        Terms terms = terms(task);
        SolverRuns solver = new SolverRuns();
        refuseCoolNonIntact(task, terms, solver);
        Optional<SetpointChooser.Choice> choice = task.bath().setpointC().isPresent()
                ? Optional.empty()
                : Optional.of(new SetpointChooser(task, terms, solver).choose());
        Trial trial = choice.map(SetpointChooser.Choice::trial)
                .orElseGet(() -> Trial.of(task, task.bath().setpointC().orElseThrow(), terms, solver));
        return plan(
                task,
                choice.map(SetpointChooser.Choice::advice),
                trial,
                terms,
                solver,
                MarginSearch.of(task, trial, terms, solver),
                details);
    }

    /** The plan of a task that was tried. */
    CookPlan plan(
            CookTask task,
            Optional<SetpointAdvice> advice,
            Trial trial,
            Terms terms,
            SolverRuns solver,
            MarginSearch margins,
            Set<Detail> details) {
        Sequel.Found sequel = Sequel.of(task, trial, terms, solver);
        Safety safety =
                safety(task, trial, sequel.spoiled() ? Verdict.NOT_MET : trial.verdict(), details, terms, margins);
        return new CookPlan(
                knowledge.version(),
                knowledge.digest(),
                trial.setpointC(),
                advice,
                trial.times(),
                trial.takeOut(),
                task.target().serveAfter().isPresent() ? Optional.of(atServe(trial)) : Optional.empty(),
                safety,
                texture(trial.reading(), trial.judgedAt()),
                sequel.outcomes(),
                sequel.outcomes().isEmpty() ? Optional.empty() : Optional.of(texture(sequel.texture(), sequel.ends())),
                trial.nominal().bath().map(water -> BathCourse.of(water, trial.setpointC(), withinK(task))),
                Notices.of(task, trial, terms, sequel),
                details.contains(Detail.CURVE) ? Optional.of(curve(trial, sequel)) : Optional.empty(),
                details.contains(Detail.SOURCES)
                        ? sources(task, trial, terms, details.contains(Detail.UNCERTAINTY))
                        : List.of(),
                details.contains(Detail.SOURCES) ? shapeError(trial) : OptionalDouble.empty(),
                details.contains(Detail.RULES) ? OtherRules.of(task, trial, terms, sequel.spoiled()) : List.of(),
                details.contains(Detail.UNCERTAINTY)
                        ? Optional.of(new UncertaintySample(task, trial, terms, solver).read())
                        : Optional.empty(),
                solver.effort());
    }

    /**
     * Plans anew a cook that is under way.
     *
     * @param task the question
     * @param details parts of the answer that are given only when asked for
     * @throws Refusal when the question is outside what the model or the rule can answer, or contradicts itself
     */
    public Replan replan(ReplanTask task, Set<Detail> details) {
        ReplanAdmission.check(task, knowledge);
        Terms terms = terms(task.cook());
        SolverRuns solver = new SolverRuns();
        Replanning replanning = new Replanning(task, terms, solver);
        CookTask cook = replanning.cook();
        refuseCoolNonIntact(cook, terms, solver);
        Trial trial = replanning.trial();
        Replanning.Verdict verdict = replanning.verdict();
        boolean spoiled = replanning.spoiled(verdict);
        Safety safety = safety(
                cook,
                trial,
                spoiled && trial.verdict() != Verdict.NOT_APPLICABLE ? Verdict.NOT_MET : trial.verdict(),
                details,
                terms,
                MarginSearch.of(cook, trial, terms, replanning));
        Sequel.Found sequel = new Sequel.Found(List.of(), Optional.empty(), 0.0, spoiled, Optional.empty());
        CookPlan plan = new CookPlan(
                knowledge.version(),
                knowledge.digest(),
                trial.setpointC(),
                Optional.empty(),
                trial.times(),
                trial.takeOut(),
                Optional.empty(),
                safety,
                texture(trial.reading(), trial.judgedAt()),
                List.of(),
                Optional.empty(),
                Optional.empty(),
                Notices.of(task, cook, trial, terms, sequel, replanning, verdict),
                details.contains(Detail.CURVE) ? Optional.of(curve(trial, replanning)) : Optional.empty(),
                details.contains(Detail.SOURCES) ? sources(cook, trial, terms, false) : List.of(),
                OptionalDouble.empty(),
                details.contains(Detail.RULES) ? OtherRules.of(cook, trial, terms, spoiled) : List.of(),
                Optional.empty(),
                solver.effort());
        return new Replan(
                plan, verdict.decision(), verdict.reason(), replanning.now(), replanning.fit(), replanning.off());
    }

    /**
     * Looks over a range of setpoints for those that can be cooked at, and for the most robust of them.
     *
     * @param task the question
     * @throws Refusal when the question is outside what the model or the rule can answer, at whatever setpoint
     */
    public ProcessWindow window(ProcessWindowTask task) {
        Admission.check(task.cook(), knowledge);
        return new ProcessWindowing(task, terms(task.cook())).window();
    }

    /**
     * Plans several foods in one bath.
     *
     * @param load the question
     * @param details parts of the answer that are given only when asked for
     * @throws Refusal when the question is outside what the model or the rule can answer
     */
    public LoadPlan load(LoadTask load, Set<Detail> details) {
        LoadAdmission.check(load, knowledge);
        return new Loading(load, this, details).plan();
    }

    /**
     * Plans a chill.
     *
     * @param task the question
     * @param details parts of the answer that are given only when asked for
     * @throws Refusal when the question is outside what the model can answer
     */
    public ChillPlan chill(ChillTask task, Set<Detail> details) {
        Admission.check(task, knowledge);
        SolverRuns solver = new SolverRuns();
        Chilling chilling = new Chilling(task, knowledge, materials, solver);
        Outcome.Cooling cooling = chilling.cooling();
        Optional<Outcome.Keeping> keeping = chilling.keeping(cooling);
        return new ChillPlan(
                knowledge.version(),
                knowledge.digest(),
                chilling.mediumC(),
                chilling.coreC(),
                chilling.ends(),
                cooling,
                keeping,
                Notices.of(task, cooling, keeping, knowledge),
                details.contains(Detail.CURVE) ? Optional.of(chilling.curve()) : Optional.empty(),
                details.contains(Detail.SOURCES) ? chilling.sources() : List.of(),
                solver.effort());
    }

    /**
     * Tabulates cooks for a device that works without a connection.
     *
     * @param task the question
     * @param length of a table as it will be written [bytes]
     * @throws Refusal when the question is outside what the model or the rule can answer, or no table is short enough and on
     *     the safe side of fresh plans
     */
    public LookupTable lookupTable(LookupTableTask task, ToIntFunction<LookupTable> length) {
        TableAdmission.check(task, knowledge);
        CookTask coolest = task.at(
                task.across().to(), task.setpointC().from(), task.startC().from());
        Terms terms = terms(coolest);
        try {
            refuseCoolNonIntact(coolest, terms, new SolverRuns());
        } catch (Refusal refusal) {
            throw new Refusal(
                    refusal.faults().stream()
                            .map(fault -> TableAdmission.placed(fault, false, false))
                            .toList(),
                    refusal.alternatives());
        }
        return new TableBuilder(task, TableAdmission.quantities(task, terms), terms, length).build();
    }

    /**
     * Reviews a log.
     *
     * @param task the question
     * @throws Refusal when the question is outside what the model or the rule can answer, or too few readings are believed
     */
    public LogReview review(LogTask task) {
        Admission.check(task, knowledge);
        return new LogBook(task, knowledge, materials).review();
    }

    /**
     * Plans the bands of a sheet of portions.
     *
     * @param sheet what all its portions have in common
     */
    public SheetPlanner sheet(Sheet sheet) {
        return new SheetPlanner(this, sheet);
    }

    double withinK(CookTask task) {
        return task.target().withinK().orElse(knowledge.defaults().withinK());
    }

    /** Of the slow corner, on which safety is judged. */
    private static OptionalDouble shapeError(Trial trial) {
        Setting late = trial.lateSetting();
        double early =
                late.standIn(Programme.of(late.cooking(trial.judgedAt()))).earlyBy();
        return early > 0.0 ? OptionalDouble.of(early) : OptionalDouble.empty();
    }

    Terms terms(CookTask task) {
        Rule rule = knowledge
                .safety()
                .rules()
                .rule(task.rule().orElse(knowledge.safety().rules().defaultRule()));
        List<Requirement> requirements = task.requirements(knowledge.safety().rules(), rule.id());
        double errorK = task.tolerances().bathK().orElse(knowledge.defaults().bathK())
                + task.tolerances().readingK().orElse(knowledge.defaults().readingK());
        return new Terms(knowledge, materials, rule, requirements, errorK, softening(task), watch);
    }

    /**
     * The texture class of the food. A piece whose earlier cook is known goes on with its own clocks where that cook left
     * them; one that was cooked elsewhere is only warmed up.
     */
    private Optional<Softening> softening(CookTask task) {
        return textureClass(task)
                .flatMap(id -> knowledge.texture().find(id))
                .map(c -> new Softening(c, earlier(task, c)));
    }

    private static Optional<String> textureClass(CookTask task) {
        Optional<String> own = task.food().textureClass();
        boolean meat = task.food().group().redMeat() || task.food().group().poultry();
        boolean ground = task.form() == Form.MINCED || task.form() == Form.FORMED;
        if (own.isPresent() && !task.raw() && task.earlierCook().isEmpty()) {
            return Optional.of(REHEATED);
        }
        return own.isPresent() && meat && ground ? Optional.of(GROUND) : own;
    }

    private EarlierDoses earlier(CookTask task, TextureClass textureClass) {
        return task.earlierCook()
                .map(cook -> {
                    CookTask before = task.from(knowledge.defaults().fridgeC());
                    TemperatureHistory history = Setting.of(
                                    before, cook.setpointC(), Corner.NOMINAL, knowledge, materials)
                            .until(cook.held());
                    return EarlierDoses.none(textureClass).then(textureClass, history, cook.held());
                })
                .orElseGet(() -> EarlierDoses.none(textureClass));
    }

    /** Meat that is not intact, in a bath below the lowest row of the table: refused, with baths and times that would do. */
    void refuseCoolNonIntact(CookTask task, Terms terms, SolverRuns solver) {
        OptionalDouble setpoint = task.bath().setpointC();
        Optional<Refusal.Fault> fault =
                setpoint.isPresent() ? coolNonIntact(task, setpoint.getAsDouble()) : Optional.empty();
        if (fault.isEmpty()) {
            return;
        }
        List<Refusal.Alternative> alternatives = new ArrayList<>();
        for (double offeredC : OFFERED_C) {
            Trial trial = Trial.of(task.free(), offeredC, terms, solver);
            trial.times()
                    .safe()
                    .filter(safe -> Double.isFinite(safe.late()))
                    .ifPresent(
                            safe -> alternatives.add(new Refusal.Alternative(offeredC, safe.nominal(), safe.late())));
        }
        throw new Refusal(List.of(fault.get().withHint("HINT_ALTERNATIVES")), alternatives);
    }

    /** What stands in the way of a bath of a setpoint for meat that is not intact. */
    static Optional<Refusal.Fault> coolNonIntact(CookTask task, double setpointC) {
        boolean cool = setpointC < LOWEST_NON_INTACT_C;
        if (!cool || !task.food().group().redMeat() || task.form().intact() || !task.raw()) {
            return Optional.empty();
        }
        return Optional.of(
                Refusal.Fault.of("#/surroundings/bath/setpointC", "NON_INTACT_TOO_COOL", "FAULT_NON_INTACT_TOO_COOL")
                        .withValue(Double.toString(setpointC))
                        .withMinimum(54.4, "Cel"));
    }

    private static AtServe atServe(Trial trial) {
        double at = trial.judgedAt();
        return new AtServe(
                at,
                trial.nominal().slowest().atC(at),
                trial.early().slowest().atC(at),
                trial.late().slowest().atC(at),
                trial.nominal().surface().atC(at));
    }

    private Safety safety(
            CookTask task, Trial trial, Verdict verdict, Set<Detail> details, Terms terms, MarginSearch margins) {
        List<Organism> organisms = new ArrayList<>();
        for (int i = 0; i < trial.worst().findings().size(); i++) {
            organisms.add(Organism.of(
                    trial.worst().findings().get(i), trial.central().findings().get(i)));
        }
        Optional<Finding> governing = trial.worst().governing();
        boolean spoiled = verdict != trial.verdict();
        boolean told = details.contains(Detail.MARGINS);
        PointHistory nominalCore = trial.nominal().slowest();
        return new Safety(
                verdict,
                terms.rule(),
                governing.map(f -> organisms.get(trial.worst().findings().indexOf(f))),
                governing.map(f -> verdict == Verdict.NOT_MET ? MarginBand.NOT_MET : f.band()),
                // Where spore formers may have grown, no change of the cook before it mends that.
                spoiled ? Margins.NONE : margins.margins(),
                nominalCore.secondsBetween(
                        terms.limits().warmUp().growthFromC(),
                        terms.limits().warmUp().growthToC(),
                        trial.judgedAt()),
                trial.clock().warmUpS() + trial.clock().fallenBackS(),
                trial.clock().leftS(),
                trial.judgedAt(),
                organisms,
                told
                        ? Optional.of(Missings.of(
                                task.food().group(), trial, new ReadingError(terms.errorK()), knowledge.safety()))
                        : Optional.empty(),
                told ? Growths.warmingUp(trial, task.food().group(), knowledge.safety()) : List.of());
    }

    private static Texture texture(Optional<TextureReading> read, double at) {
        return read.map(reading -> new Texture(
                        true,
                        reading.verdict(at),
                        reading.window().opens(),
                        reading.window().closes(),
                        reading.lossPercentAt(at),
                        reading.window().limit(),
                        Optional.of(reading.confidence())))
                .orElseGet(() -> new Texture(
                        false,
                        dev.slowpoint.texture.Verdict.NONE,
                        Double.POSITIVE_INFINITY,
                        Double.POSITIVE_INFINITY,
                        OptionalDouble.empty(),
                        CloseLimit.NOT_MODELLED,
                        Optional.empty()));
    }

    private static Curve curve(Trial trial, Sequel.Found sequel) {
        if (sequel.passages().isPresent()) {
            return sequel.passages().get().curve(trial.judgedAt());
        }
        Curve curve = Curve.of(trial.nominal(), trial.early(), trial.late(), shownUntil(trial));
        return trial.nominal().bath().map(water -> curve.in(water::atC)).orElse(curve);
    }

    /** What has been and what will be, each close enough together to be seen. */
    private static Curve curve(Trial trial, Replanning replanning) {
        double now = replanning.now().at();
        double end = shownUntil(trial);
        double[] ends = now > 0.0 ? new double[] {now, end} : new double[] {end};
        return Curve.of(trial.nominal(), trial.early(), trial.late(), ends).in(replanning::waterC);
    }

    private static double shownUntil(Trial trial) {
        return SHOWN_BEYOND
                * Math.max(trial.judgedAt(), Math.min(trial.times().hotThrough().nominal(), 1e6));
    }

    private List<Source> sources(CookTask task, Trial trial, Terms terms, boolean sampled) {
        List<Source> sources = new ArrayList<>();
        for (Provenance origin : task.food().origins()) {
            sources.add(new Source("composition and freezing point", origin));
        }
        sources.add(new Source(
                "conductivity factor, nominal",
                knowledge.thermal().bias().origins().get(1)));
        sources.add(new Source(
                "film coefficient",
                Objects.requireNonNull(knowledge
                                .films()
                                .get(
                                        task.bath().stirring() == Stirring.PUMPED
                                                ? knowledge.defaults().pumpedFilm()
                                                : knowledge.defaults().stillFilm()))
                        .origin()));
        sources.add(new Source("rule " + terms.rule().id(), terms.rule().provenance()));
        for (Requirement requirement : trial.requirements()) {
            sources.add(new Source("requirement " + requirement.id(), requirement.provenance()));
        }
        trial.worst()
                .governing()
                .flatMap(f -> knowledge
                        .safety()
                        .central(f.requirement().hazard(), task.food().group()))
                .ifPresent(k -> {
                    sources.add(new Source(
                            "measured kill " + k.line().id(), k.line().provenance()));
                    sources.add(new Source("its spread", k.spreadOrigin()));
                });
        for (Step step : task.then()) {
            stepSources(task, step, terms.limits(), sources);
        }
        if (sampled) {
            sources.addAll(knowledge.spreads().sources(task.food().group().plant()));
        }
        terms.softening().ifPresent(s -> {
            for (TextureProcess process : s.textureClass().processes()) {
                for (TextureLevel level : process.levels()) {
                    sources.add(
                            new Source("texture " + s.textureClass().id() + ", " + level.name(), level.provenance()));
                }
            }
        });
        return sources;
    }

    private void stepSources(CookTask task, Step step, RuleLimits limits, List<Source> sources) {
        AfterBath after = knowledge.after();
        if (step instanceof Step.Sear sear) {
            Objects.requireNonNull(after.sear().get(sear.method()))
                    .origins()
                    .forEach(origin -> sources.add(new Source("heat of the sear", origin)));
            sources.add(new Source("film of a seared surface", after.seared().origin()));
        } else if (step instanceof Step.Chill chill) {
            sources.add(new Source(
                    "film of the chill",
                    Objects.requireNonNull(after.media().get(chill.medium()))
                            .film()
                            .origin()));
            limits.cooling()
                    .stages()
                    .forEach(stage -> sources.add(new Source("cooling limit " + stage.id(), stage.provenance())));
            sources.addAll(Growths.sources(Occasion.COOLING, task.food().group(), knowledge.safety()));
        } else if (step instanceof Step.Unheated) {
            Objects.requireNonNull(knowledge.safety().cooling().get(after.interruptionRule()))
                    .stages()
                    .forEach(stage -> sources.add(new Source("cooling limit " + stage.id(), stage.provenance())));
        } else if (step instanceof Step.Store store) {
            ColdStorage.Limit limit = limits.coldStorage().limit(store.temperatureC());
            sources.add(new Source("store " + limit.id(), limit.provenance()));
            sources.addAll(Growths.sources(Occasion.STORE, task.food().group(), knowledge.safety()));
        } else if (step instanceof Step.Reheat) {
            after.reheating().forEach(rule -> sources.add(new Source("reheating " + rule.id(), rule.provenance())));
        }
    }
}
