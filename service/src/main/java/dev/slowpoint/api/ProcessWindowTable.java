package dev.slowpoint.api;

import dev.slowpoint.api.CookPlanAnswer.Milestone;
import dev.slowpoint.api.CookPlanAnswer.TakeOut;
import dev.slowpoint.api.ProcessWindowAnswer.AtSetpoint;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.springframework.http.MediaType;

/** The lines of a process window as a table for a spreadsheet (RFC 4180). */
final class ProcessWindowTable {

    static final MediaType MEDIA_TYPE = MediaType.parseMediaType(LogTable.MEDIA_TYPE);

    static final String FORMAT =
            "The members of `setpoints` as a table, one line for each setpoint, with a header; empty"
                    + " where a member is absent. Points, region and warnings are in the other representations alone.";

    private static final List<String> LINES = List.of("hotThrough", "safe", "tender", "goodUntil", "softFrom");

    private ProcessWindowTable() {}

    /** Writes the table. */
    static byte[] of(ProcessWindowAnswer window) {
        StringBuilder table = new StringBuilder("setpointC");
        for (String line : LINES) {
            table.append(',').append(line).append("NominalS");
            table.append(',').append(line).append("EarlyS");
            table.append(',').append(line).append("LateS");
        }
        table.append(",slowWarmUpS,takeOutEarliestS,takeOutBestS,takeOutLatestS,barredBy,verdict\r\n");
        window.setpoints().forEach(setpoint -> table.append(row(setpoint)).append("\r\n"));
        return table.toString().getBytes(StandardCharsets.UTF_8);
    }

    private static String row(AtSetpoint at) {
        List<String> cells = new ArrayList<>();
        cells.add(Double.toString(at.setpointC()));
        milestone(at.hotThrough(), cells);
        milestone(at.safe(), cells);
        milestone(at.tender(), cells);
        milestone(at.goodUntil(), cells);
        milestone(at.softFrom(), cells);
        cells.add(cell(at.slowWarmUpS()));
        TakeOut takeOut = at.takeOut();
        cells.add(cell(takeOut == null ? null : takeOut.earliestS()));
        cells.add(cell(takeOut == null ? null : takeOut.bestS()));
        cells.add(cell(takeOut == null ? null : takeOut.latestS()));
        cells.add(cell(at.barredBy()));
        cells.add(cell(at.verdict()));
        return String.join(",", cells);
    }

    private static void milestone(@Nullable Milestone moment, List<String> cells) {
        cells.add(cell(moment == null ? null : moment.nominalS()));
        cells.add(cell(moment == null ? null : moment.earlyS()));
        cells.add(cell(moment == null ? null : moment.lateS()));
    }

    private static String cell(@Nullable Object value) {
        return Objects.toString(value, "");
    }
}
