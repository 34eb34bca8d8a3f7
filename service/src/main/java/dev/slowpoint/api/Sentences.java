package dev.slowpoint.api;

import dev.slowpoint.plan.CookPlan;
import dev.slowpoint.plan.LogReview;
import dev.slowpoint.plan.Notice;
import dev.slowpoint.plan.NoticeCode;
import dev.slowpoint.plan.Replan;
import dev.slowpoint.plan.SetpointAdvice;
import dev.slowpoint.safety.CoolingRule;
import java.text.MessageFormat;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.ResourceBundle;
import java.util.concurrent.ConcurrentHashMap;

/** Says in plain words what a plan means. The words stand in the message bundle. */
final class Sentences {

    private final ResourceBundle bundle = ResourceBundle.getBundle("messages", Locale.ROOT);

    /** Sentences without values by their keys: reading a pattern takes longer than the rest of saying it. */
    private final Map<String, String> fixed = new ConcurrentHashMap<>();

    /** The sentence of a notice with its values. */
    String of(Notice notice) {
        return say(notice.code().name(), notice.values());
    }

    /** The sentence of a notice with its places for values left open. */
    String pattern(NoticeCode code) {
        return bundle.getString(code.name()).replace("''", "'");
    }

    /** Why there is no time to take the food out. */
    String of(CookPlan.Obstacle obstacle) {
        return say("OBSTACLE_" + obstacle.name(), List.of());
    }

    /** Why there is no probability of missing a target. */
    String of(CookPlan.Unknown unknown) {
        return say("UNKNOWN_" + unknown.name(), List.of());
    }

    /** Why a cook under way does not just go on. */
    String of(Replan.Reason reason) {
        return say("REPLAN_" + reason.name(), List.of());
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
        return say("COOLING_RULE_" + rule.id(), List.of());
    }

    /** The sentence of a key with its values. */
    String say(String key, List<Object> values) {
        return values.isEmpty() ? fixed.computeIfAbsent(key, k -> formatted(k, values)) : formatted(key, values);
    }

    private String formatted(String key, List<Object> values) {
        Object[] words = values.stream()
                .map(v -> v instanceof String word && bundle.containsKey(word) ? bundle.getString(word) : v)
                .toArray();
        return new MessageFormat(bundle.getString(key), Locale.ENGLISH).format(Arrays.copyOf(words, words.length));
    }
}
