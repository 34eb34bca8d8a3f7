package dev.slowpoint.api;

import dev.slowpoint.api.CookPlanAnswer.Milestone;
import dev.slowpoint.api.CookPlanAnswer.Reason;
import dev.slowpoint.plan.CookPlan;
import dev.slowpoint.plan.NoticeCode;
import dev.slowpoint.plan.NoticeRule;
import dev.slowpoint.plan.Span;
import dev.slowpoint.safety.CentralKinetics;
import dev.slowpoint.safety.TableView;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Turns a plan into an answer: metres made millimetres, what never happens left out, seconds rounded to whole ones. A time
 * to wait for is rounded up and a time to be done by is rounded down.
 */
final class PlanTranslation {

    private static final double MM_PER_M = 1000.0;
    private static final double PERCENT = 100.0;
    private static final int DIGEST_SHOWN = 16;

    private final CookPlan plan;
    private final Sentences sentences;
    private final NoticeTranslation notices;

    PlanTranslation(CookPlan plan, Map<NoticeCode, NoticeRule> rules, Sentences sentences) {
        this.plan = plan;
        this.sentences = sentences;
        this.notices = new NoticeTranslation(plan.notices(), rules, sentences);
    }

    /** The answer, with the parts asked for. */
    CookPlanAnswer answer(Set<Include> include) {
        CookPlan.TakeOut takeOut = plan.takeOut();
        return new CookPlanAnswer(
                plan.parameterSet(),
                shown(plan.digest()),
                plan.setpointC(),
                plan.advice().map(sentences::of).orElse(null),
                times(),
                takeOut.obstacle().isPresent() ? null : takeOut(takeOut),
                takeOut.obstacle()
                        .map(o -> new Reason(o.name(), sentences.of(o)))
                        .orElse(null),
                plan.atServe()
                        .map(s -> new CookPlanAnswer.AtServe(
                                up(s.at()), s.coreC(), s.coreEarlyC(), s.coreLateC(), s.surfaceC()))
                        .orElse(null),
                safety(),
                texture(plan.texture()),
                plan.bath().map(PlanTranslation::bath).orElse(null),
                plan.outcomes().isEmpty()
                        ? null
                        : plan.outcomes().stream().map(StepTranslation::outcome).toList(),
                plan.textureAtEnd().map(PlanTranslation::texture).orElse(null),
                notices.warnings(),
                notices.cautions(),
                plan.curve().map(PlanTranslation::curve).orElse(null),
                include.contains(Include.ORGANISMS) ? organisms() : null,
                plan.uncertainty().map(UncertaintyTranslation::answer).orElse(null),
                include.contains(Include.MARGINS) ? margins() : null,
                boxed(plan.shapeError(), PERCENT),
                include.contains(Include.SOURCES) ? sources(plan.sources()) : null,
                include.contains(Include.RULES) ? otherRules() : null);
    }

    /** As much of a digest as tells one parameter set from another. */
    static String shown(String digest) {
        return digest.substring(0, DIGEST_SHOWN);
    }

    /** Rounded so that the moments keep their order: the earliest, which safety decides, is never made sooner. */
    static CookPlanAnswer.TakeOut takeOut(CookPlan.TakeOut takeOut) {
        int earliest = up(takeOut.earliest());
        Integer closes = whole(Math.floor(takeOut.latest()));
        if (closes == null) {
            return new CookPlanAnswer.TakeOut(earliest, up(takeOut.best()), null);
        }
        int latest = Math.max(earliest, closes);
        return new CookPlanAnswer.TakeOut(earliest, Math.min(up(takeOut.best()), latest), latest);
    }

    private CookPlanAnswer.Times times() {
        CookPlan.Times times = plan.times();
        return new CookPlanAnswer.Times(
                awaited(Optional.of(times.hotThrough())),
                awaited(times.safe()),
                awaited(times.tender()),
                until(times.goodUntil()),
                until(times.softFrom()));
    }

    static @Nullable Milestone awaited(Optional<Span> span) {
        return span.map(s -> milestone(
                        whole(Math.rint(s.nominal())), whole(Math.floor(s.early())), whole(Math.ceil(s.late()))))
                .orElse(null);
    }

    static @Nullable Milestone until(Optional<Span> span) {
        return span.map(s -> milestone(
                        whole(Math.rint(s.nominal())), whole(Math.floor(s.early())), whole(Math.floor(s.late()))))
                .orElse(null);
    }

    static @Nullable Milestone milestone(@Nullable Integer nominal, @Nullable Integer early, @Nullable Integer late) {
        return nominal == null && early == null && late == null ? null : new Milestone(nominal, early, late);
    }

    private SafetyVerdict safety() {
        CookPlan.Safety safety = plan.safety();
        Optional<CookPlan.Organism> governing = safety.governing();
        return new SafetyVerdict(
                Words.of(safety.verdict()),
                safety.rule().id(),
                governing.map(o -> Words.of(o.hazard())).orElse(null),
                governing.map(CookPlan.Organism::requiredLog10).orElse(null),
                governing.map(CookPlan.Organism::achievedLog10).orElse(null),
                governing.map(CookPlan.Organism::nominalLog10).orElse(null),
                governing.map(CookPlan.Organism::marginLog10).orElse(null),
                safety.band().map(Words::of).orElse(null),
                governing
                        .filter(o -> o.growthLog10() > 0.0)
                        .map(CookPlan.Organism::growthLog10)
                        .orElse(null),
                boxed(governing.map(CookPlan.Organism::adaptedMarginLog10).orElse(OptionalDouble.empty()), 1.0),
                governing
                        .flatMap(CookPlan.Organism::table)
                        .map(view -> (int) Math.floor(view.marginS()))
                        .orElse(null),
                safety.margins().seconds().isPresent()
                        ? whole(Math.floor(safety.margins().seconds().getAsDouble()))
                        : null,
                boxed(safety.margins().kelvin(), 1.0),
                boxed(safety.margins().metres(), MM_PER_M),
                up(safety.growthRange()),
                up(safety.warmUp()),
                whole(Math.floor(safety.warmUpLeft())),
                up(safety.judgedAt()));
    }

    private static CookPlanAnswer.BathCourse bath(CookPlan.BathCourse bath) {
        return new CookPlanAnswer.BathCourse(bath.lowestC(), up(bath.lowestAt()), whole(Math.ceil(bath.backAt())));
    }

    private static CookPlanAnswer.Texture texture(CookPlan.Texture texture) {
        Integer opens = whole(Math.ceil(texture.opens()));
        Integer closes = whole(Math.floor(texture.closes()));
        return new CookPlanAnswer.Texture(
                Words.of(texture.verdict()),
                opens == null && closes == null ? null : new CookPlanAnswer.Window(opens, closes),
                boxed(texture.lossPercent(), 1.0),
                Words.of(texture.limit()),
                texture.confidence().map(Words::of).orElse(null));
    }

    static CookPlanAnswer.Curve curve(CookPlan.Curve curve) {
        return new CookPlanAnswer.Curve(
                Arrays.stream(curve.times()).mapToObj(t -> (int) t).toList(),
                boxed(curve.coreC()),
                boxed(curve.coreEarlyC()),
                boxed(curve.coreLateC()),
                boxed(curve.surfaceC()),
                boxed(curve.meanC()),
                curve.waterC().map(PlanTranslation::boxed).orElse(null));
    }

    private static List<Double> boxed(double[] values) {
        return Arrays.stream(values).boxed().toList();
    }

    private List<CookPlanAnswer.Organism> organisms() {
        return plan.safety().organisms().stream()
                .map(o -> new CookPlanAnswer.Organism(
                        Words.of(o.hazard()),
                        o.requirement(),
                        o.requiredLog10(),
                        o.achievedLog10(),
                        o.marginLog10(),
                        o.advisory(),
                        o.wholeTreatment() ? true : null,
                        o.growthLog10() > 0.0 ? o.growthLog10() : null,
                        boxed(o.adaptedMarginLog10(), 1.0),
                        o.table().map(PlanTranslation::table).orElse(null)))
                .toList();
    }

    private List<CookPlanAnswer.OtherRule> otherRules() {
        return plan.otherRules().stream()
                .map(other -> new CookPlanAnswer.OtherRule(
                        other.rule().id(),
                        Words.of(other.verdict()),
                        other.governing().map(g -> Words.of(g.basis())).orElse(null),
                        other.governing().map(g -> Words.of(g.hazard())).orElse(null),
                        other.governing().map(CookPlan.Governing::requiredLog10).orElse(null),
                        other.governing().map(CookPlan.Governing::achievedLog10).orElse(null),
                        other.governing().map(CookPlan.Governing::marginLog10).orElse(null),
                        other.safeLate().isPresent()
                                ? whole(Math.ceil(other.safeLate().getAsDouble()))
                                : null))
                .toList();
    }

    private MarginViews margins() {
        CookPlan.Safety safety = plan.safety();
        Optional<CookPlan.Organism> governing = safety.governing();
        Optional<CookPlan.Missing> missing = safety.missing();
        return new MarginViews(
                governing.map(CookPlan.Organism::marginRatio).orElse(null),
                governing.map(CookPlan.Organism::nominalMarginLog10).orElse(null),
                governing
                        .flatMap(CookPlan.Organism::table)
                        .map(PlanTranslation::table)
                        .orElse(null),
                boxed(missing.map(CookPlan.Missing::probability).orElse(OptionalDouble.empty()), 1.0),
                missing.flatMap(CookPlan.Missing::by).map(k -> k.line().id()).orElse(null),
                missing.flatMap(CookPlan.Missing::by)
                        .map(CentralKinetics::spreadLog10D)
                        .orElse(null),
                missing.flatMap(CookPlan.Missing::unknown)
                        .map(u -> new Reason(u.name(), sentences.of(u)))
                        .orElse(null),
                StepTranslation.growth(safety.warmUpGrowth()));
    }

    private static MarginViews.Table table(TableView view) {
        return new MarginViews.Table(
                view.table(),
                view.rowC(),
                up(view.requiredS()),
                (int) view.dwellS(),
                (int) Math.floor(view.marginS()),
                boxed(view.marginRatio(), 1.0));
    }

    static List<CookPlanAnswer.Source> sources(List<CookPlan.Source> sources) {
        return sources.stream()
                .map(s -> new CookPlanAnswer.Source(
                        s.what(), Words.of(s.origin().mark()), s.origin().source()))
                .toList();
    }

    private static @Nullable Double boxed(OptionalDouble value, double factor) {
        return value.isPresent() ? value.getAsDouble() * factor : null;
    }

    static int up(double seconds) {
        return (int) Math.ceil(seconds);
    }

    static @Nullable Integer whole(double seconds) {
        return Double.isFinite(seconds) ? (int) seconds : null;
    }
}
