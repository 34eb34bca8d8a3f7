package dev.slowpoint.api;

import dev.slowpoint.plan.CookPlan;
import dev.slowpoint.plan.DisplayUnits;
import dev.slowpoint.plan.LoadPlan;
import dev.slowpoint.plan.LogReview;
import dev.slowpoint.plan.Notice;
import dev.slowpoint.plan.NoticeCode;
import dev.slowpoint.plan.Phrase;
import dev.slowpoint.plan.Replan;
import dev.slowpoint.plan.SetpointAdvice;
import dev.slowpoint.safety.CoolingRule;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.MissingResourceException;
import java.util.concurrent.ConcurrentHashMap;

/** Says in plain words what an answer means, in one language and one system of units. The words stand in its bundle. */
final class Sentences {

    /** How the keys of the names of foods begin. */
    static final String FOOD = "FOOD_";

    private static final int SECONDS = 60;
    private static final int MINUTES = 60;

    private final Locale locale;
    private final Notation notation;
    private final Map<String, String> bundle;

    /** Sentences as they are read from the bundle, by their keys. */
    private final Map<String, Wording> wordings = new ConcurrentHashMap<>();

    /** Sentences without values, by their keys. */
    private final Map<String, String> fixed = new ConcurrentHashMap<>();

    /**
     * Takes a bundle.
     *
     * @param locale its language
     * @param units to tell quantities in
     * @param bundle all its sentences by their keys
     */
    Sentences(Locale locale, DisplayUnits units, Map<String, String> bundle) {
        this.locale = locale;
        this.notation = Notation.of(locale, units);
        this.bundle = bundle;
    }

    /** The language (BCP 47). */
    String language() {
        return locale.toLanguageTag();
    }

    /** The same in other units. */
    Sentences in(DisplayUnits units) {
        return notation.units() == units ? this : new Sentences(locale, units, bundle);
    }

    /** How numbers and quantities are written. */
    Notation notation() {
        return notation;
    }

    /** The sentence of a notice with its values. */
    String of(Notice notice) {
        return say(notice.code().name(), notice.values());
    }

    /** The sentence of a notice with its places for values left open. */
    String pattern(NoticeCode code) {
        return wording(code.name()).open(notation);
    }

    /** Why there is no time to take the food out. */
    String of(CookPlan.Obstacle obstacle) {
        return say("OBSTACLE_" + obstacle.name());
    }

    /** Why there is no probability of missing a target. */
    String of(CookPlan.Unknown unknown) {
        return say("UNKNOWN_" + unknown.name());
    }

    /** Why a cook under way does not just go on. */
    String of(Replan.Reason reason) {
        return say("REPLAN_" + reason.name());
    }

    /** Why foods share a bath as they do. */
    String of(LoadPlan.Reason reason) {
        return say("LOAD_REASON_" + reason.name());
    }

    /** What stands in the way of foods in one bath. Their ids come from outside and are said as they stand. */
    String of(LoadPlan.Conflict conflict) {
        List<Object> values = conflict.other().isEmpty()
                ? List.of(conflict.item())
                : List.of(
                        conflict.item(),
                        conflict.other().get(),
                        Figures.temperatureC(conflict.needsC().orElseThrow()),
                        Figures.temperatureC(conflict.otherAllowsC().orElseThrow()));
        return of(new Phrase("LOAD_CONFLICT_" + conflict.obstacle().name(), values));
    }

    /** Why the service chose a setpoint. */
    String of(SetpointAdvice advice) {
        return say("ADVICE_" + advice.reason().name(), List.of(advice.lowC(), advice.highC()));
    }

    /** What was not as it should be in a log. */
    String of(LogReview.Deviation deviation) {
        return say("DEVIATION_" + deviation.code().name(), deviation.values());
    }

    /** What a cooling rule is called. */
    String of(CoolingRule rule) {
        return say("COOLING_RULE_" + rule.id());
    }

    /** A length of time [s], rounded up to whole minutes. */
    String time(int seconds) {
        int minutes = (seconds + SECONDS - 1) / SECONDS;
        int hours = minutes / MINUTES;
        int left = minutes % MINUTES;
        if (hours == 0) {
            return say("WORD_MINUTES", List.of(left));
        }
        return left == 0 ? say("WORD_HOURS", List.of(hours)) : say("WORD_HOURS_MINUTES", List.of(hours, left));
    }

    /** What a food of the catalogue is called. */
    String food(String id) {
        return say(FOOD + id);
    }

    /** What a problem is called. */
    String title(ProblemCode code) {
        return say("PROBLEM_" + code.name() + "_TITLE");
    }

    /** Why a problem happens. */
    String cause(ProblemCode code) {
        return say("PROBLEM_" + code.name() + "_CAUSE");
    }

    /** What to do about a problem. */
    String remedy(ProblemCode code) {
        return say("PROBLEM_" + code.name() + "_REMEDY");
    }

    /** A phrase. Its texts may come from outside and are said as they stand. */
    String of(Phrase phrase) {
        return phrase.values().isEmpty()
                ? say(phrase.key())
                : wording(phrase.key())
                        .said(
                                phrase.values().stream()
                                        .map(value -> value instanceof Phrase part ? of(part) : value)
                                        .toList(),
                                notation);
    }

    /** The sentence of a key without values. */
    String say(String key) {
        String said = fixed.get(key);
        return said != null ? said : fixed.computeIfAbsent(key, k -> wording(k).said(List.of(), notation));
    }

    /** The sentence of a key with its values; a text that is itself a key is said in this language. */
    String say(String key, List<Object> values) {
        return values.isEmpty()
                ? say(key)
                : wording(key)
                        .said(
                                values.stream()
                                        .map(value -> value instanceof String word && bundle.containsKey(word)
                                                ? say(word)
                                                : value)
                                        .toList(),
                                notation);
    }

    private Wording wording(String key) {
        Wording wording = wordings.get(key);
        return wording != null ? wording : wordings.computeIfAbsent(key, this::read);
    }

    private Wording read(String key) {
        String written = bundle.get(key);
        if (written == null) {
            throw new MissingResourceException("no sentence " + key + " in " + locale, "messages", key);
        }
        return Wording.of(written);
    }
}
