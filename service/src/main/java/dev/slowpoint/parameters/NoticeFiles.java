package dev.slowpoint.parameters;

import dev.slowpoint.plan.NoticeCode;
import dev.slowpoint.plan.NoticeRule;
import java.util.EnumMap;
import java.util.Map;

/** Reads what a parameter set says of warnings and cautions. */
final class NoticeFiles {

    static final String NOTICES = "notices.csv";

    private NoticeFiles() {}

    static Map<NoticeCode, NoticeRule> read(ParameterFiles files) {
        Map<NoticeCode, NoticeRule> notices = new EnumMap<>(NoticeCode.class);
        for (CsvTable.Row row : files.table(NOTICES).rowsUniqueBy("code")) {
            NoticeCode code = row.word(NoticeCode.class, "code");
            notices.put(
                    code,
                    new NoticeRule(
                            code,
                            row.word(NoticeRule.Severity.class, "severity"),
                            row.word(NoticeRule.Kind.class, "kind"),
                            row.text("trigger"),
                            row.provenance()));
        }
        return notices;
    }
}
