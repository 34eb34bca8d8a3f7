package dev.slowpoint.plan;

import static org.assertj.core.api.Assertions.assertThat;

import dev.slowpoint.plan.NoticeRule.Severity;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * A list of cautions drawn from FSIS-GD-2021-14, the FDA Food Code 2022, the FDA fish guide, FSA and EU rules and some
 * papers, each with how serious it was called there, and the notices that answer it here; or why something else does.
 */
class CautionsTest {

    /** How serious a caution is in the list, and the least severity that a notice answering it has here. */
    private static final Map<String, Severity> MAPPING = Map.of(
            "stop-claim", Severity.DANGER,
            "block", Severity.DANGER,
            "block-claim", Severity.DANGER,
            "block-rare", Severity.DANGER,
            "recompute", Severity.DANGER,
            "warn", Severity.CAUTION,
            "raise-target", Severity.INFO,
            "action", Severity.INFO,
            "info", Severity.INFO);

    /**
     * One caution.
     *
     * @param code in the list
     * @param severity in the list
     * @param notices that answer it; the strongest counts
     * @param otherwise why it is milder here, or what answers it instead; empty where there is nothing to explain
     */
    record Row(String code, String severity, List<NoticeCode> notices, String otherwise) {

        static Row of(String code, String severity, NoticeCode... notices) {
            return new Row(code, severity, List.of(notices), "");
        }

        Row because(String reason) {
            return new Row(code, severity, notices, reason);
        }

        @Override
        public String toString() {
            return code;
        }
    }

    static Stream<Row> rows() {
        return Stream.of(
                Row.of("CORE-BELOW-54", "stop-claim", NoticeCode.CORE_BELOW_54),
                Row.of("BELOW-54-OVER-6H", "block", NoticeCode.WARM_UP_OVER_6H),
                Row.of("BELOW-54-OVER-4H", "warn", NoticeCode.WARM_UP_OVER_4H),
                Row.of("LONG-55-60-HOLD", "info", NoticeCode.HOLD_55_60_OVER_6H),
                Row.of("NONINTACT-MEAT", "raise-target", NoticeCode.NONINTACT_MEAT),
                Row.of("GROUND-BEEF-STEC", "warn", NoticeCode.MINCED_BELOW_STEC_LINE),
                Row.of("POULTRY-BELOW-58", "block-claim", NoticeCode.POULTRY_BELOW_58),
                Row.of("POULTRY-SHORT", "stop-claim", NoticeCode.NOT_MET),
                Row.of("FAT-UNKNOWN", "info", NoticeCode.FAT_UNKNOWN),
                Row.of("THIN-MARGIN-54-60", "warn", NoticeCode.THIN_MARGIN_54_60),
                Row.of("SLOW-HEAT-ADAPTED", "warn", NoticeCode.SLOW_WARM_UP_ADAPTS),
                Row.of("VULNERABLE-EATERS", "block-rare", NoticeCode.VULNERABLE_EATERS),
                Row.of(
                        "UNDERCOOKED-ADVICE",
                        "warn",
                        NoticeCode.EATEN_UNDERCOOKED,
                        NoticeCode.FISH_NOT_PASTEURISED,
                        NoticeCode.SHELLFISH_VIRUSES,
                        NoticeCode.SOFT_EGG),
                Row.of("STEAK-SEAR", "action", NoticeCode.SEAR_BOTH_FACES),
                Row.of("RAW-GARLIC-HERBS", "warn", NoticeCode.RAW_GARLIC_OR_HERBS, NoticeCode.RAW_GARLIC_KEPT),
                Row.of(
                        "LOWACID-WARM-DAYS",
                        "block",
                        NoticeCode.SEALED_AND_WARM,
                        NoticeCode.COOLING_NOT_KEPT,
                        NoticeCode.REST_TOO_LONG,
                        NoticeCode.BATH_IN_GROWTH_RANGE),
                Row.of("STORE-OVER-7D", "block", NoticeCode.STORE_TOO_LONG),
                Row.of("STORE-OVER-10D", "block", NoticeCode.STORE_OVER_10_DAYS),
                Row.of("STORE-LISTERIA", "warn", NoticeCode.KEEP_NEEDS_LISTERIA_TARGET),
                Row.of("STORE-BOTULINUM", "warn", NoticeCode.SPORES_SURVIVE, NoticeCode.KEEP_COLD_7_DAYS),
                Row.of("BAG-SOLD", "info", NoticeCode.BAG_SOLD),
                Row.of("COOL-TOO-SLOW", "block", NoticeCode.COOLING_NOT_KEPT),
                Row.of("COOL-ICE", "action", NoticeCode.CHILL_IN_ICE_WATER),
                Row.of("REHEAT-74", "action", NoticeCode.REHEAT_TO_74),
                Row.of("REHEAT-SLOW", "block", NoticeCode.REHEAT_TOO_SLOW),
                Row.of("HOT-HOLD-57", "warn", NoticeCode.HOLD_BELOW_57)
                        .because(
                                "a matter for food businesses, with nothing to do for others; milder so as not to alarm"),
                Row.of("FROM-FROZEN", "warn", NoticeCode.FROM_FROZEN)
                        .because("the plan computes the thawing, and its late corner counts the longer warm-up"),
                Row.of("THAW-LIMIT", "action", NoticeCode.HALF_THAWED),
                Row.of("START-WARM", "warn", NoticeCode.START_WARM),
                Row.of("STACKED-BAGS", "block-claim", NoticeCode.PACKS_TOUCH)
                        .because("the plan computes the pile as one piece, and judges that"),
                Row.of("FLOATING-BAG", "block-claim", NoticeCode.FACE_IN_AIR),
                Row.of("OVERLOAD", "warn", NoticeCode.BATH_SAGS, NoticeCode.HEATER_TOO_WEAK),
                Row.of("ADDED-LATE", "warn").because("an event of a running cook: POST /v1/replans"),
                Row.of("POWER-CUT", "recompute", NoticeCode.INTERRUPTED_COOK),
                Row.of("NO-LOG", "block-claim").because("an event of a running cook: POST /v1/replans"),
                Row.of("TOXIN-NOT-FIXED", "block", NoticeCode.TOXIN_STAYS),
                Row.of("FISH-PARASITE", "warn", NoticeCode.FISH_PARASITES),
                Row.of("FISH-UNDERCOOKED", "stop-claim", NoticeCode.FISH_NOT_PASTEURISED, NoticeCode.NOT_MET),
                Row.of("FISH-ROP-FROZEN", "block", NoticeCode.FISH_SEALED_RAW),
                Row.of("SHELLFISH-VIRUS", "warn", NoticeCode.SHELLFISH_VIRUSES),
                Row.of("EGG-SOFT", "warn", NoticeCode.SOFT_EGG),
                Row.of("LYSOZYME", "info", NoticeCode.LYSOZYME_HELPS_SPORES),
                Row.of("SENSOR-ERROR", "info", NoticeCode.ESTIMATE_NOT_GUARANTEE),
                Row.of(
                        "EXTRAPOLATED",
                        "block-claim",
                        NoticeCode.CORE_BELOW_54,
                        NoticeCode.POULTRY_BELOW_58,
                        NoticeCode.NO_TABLE_SO_COOL,
                        NoticeCode.NOT_MET),
                Row.of("DRY-CURED", "warn", NoticeCode.CURED_OR_DRIED, NoticeCode.SALTED_ROLLED_MEAT),
                Row.of("BAG-SWOLLEN", "info", NoticeCode.KEEP_COLD_7_DAYS));
    }

    @ParameterizedTest
    @MethodSource("rows")
    void every_caution_has_an_answer_that_is_no_milder_without_a_reason(Row row) {
        Severity least = Objects.requireNonNull(MAPPING.get(row.severity()), row.severity());
        Map<NoticeCode, NoticeRule> rules = Kitchen.PLANNER.knowledge().notices();
        boolean strongEnough = row.notices().stream()
                .map(code -> Objects.requireNonNull(rules.get(code)).severity())
                .anyMatch(severity -> severity.compareTo(least) >= 0);
        assertThat(strongEnough || !row.otherwise().isBlank())
                .as("%s (%s) is answered by %s", row.code(), row.severity(), row.notices())
                .isTrue();
        assertThat(strongEnough && !row.otherwise().isBlank())
                .as("%s needs no excuse", row.code())
                .isFalse();
    }

    @Test
    void the_list_is_whole() {
        assertThat(rows().map(Row::code)).hasSize(46).doesNotHaveDuplicates();
    }
}
