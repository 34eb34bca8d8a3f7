package dev.slowpoint.api;

import dev.slowpoint.api.CookPlanAnswer.Reason;
import dev.slowpoint.api.CookPlanAnswer.Warning;
import dev.slowpoint.plan.Notice;
import dev.slowpoint.plan.NoticeCode;
import dev.slowpoint.plan.NoticeRule;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * Turns the notices of a plan into sentences.
 *
 * @param notices of the plan, in order
 * @param rules of the parameter set
 * @param sentences in plain words
 */
record NoticeTranslation(List<Notice> notices, Map<NoticeCode, NoticeRule> rules, Sentences sentences) {

    /** More warnings than there are codes. */
    static final int MOST_WARNINGS = 200;

    /** More cautions than there are codes. */
    static final int MOST_CAUTIONS = 20;

    /** What to know about this plan. */
    List<Warning> warnings() {
        return notices.stream()
                .filter(notice -> rule(notice).kind() == NoticeRule.Kind.WARNING)
                .map(notice ->
                        new Warning(notice.code().name(), Words.of(rule(notice).severity()), sentences.of(notice)))
                .toList();
    }

    /** What always holds. */
    List<Reason> cautions() {
        return notices.stream()
                .filter(notice -> rule(notice).kind() == NoticeRule.Kind.CAUTION)
                .map(notice -> new Reason(notice.code().name(), sentences.of(notice)))
                .toList();
    }

    private NoticeRule rule(Notice notice) {
        return Objects.requireNonNull(rules.get(notice.code()));
    }
}
