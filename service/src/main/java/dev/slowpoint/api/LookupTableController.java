package dev.slowpoint.api;

import dev.slowpoint.ops.PlanMetrics;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.http.CacheControl;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RestController;

/** Answers lookup tables for devices that work without a connection. */
@RestController
@Tag(name = "plans")
class LookupTableController {

    /** What stands beside a table that is sent as rows, which have no place for it. */
    static final String SOURCE = "Slowpoint-Table";

    static final String ERRORS = "Slowpoint-Table-Errors";
    static final String NOTICES = "Slowpoint-Table-Notices";

    private static final String DEVICE = """


            A device needs no more than this (C; `D`, `T`, `S` are the axes, `nD`, `nT`, `nS` their lengths, `t` the times \
            of one column; -1 is never; refuse what lies outside the axes):

            ```c
            static int plane(const float *a, int n, float x, int square, float *w) {
              int i = 0;
              while (i + 2 < n && x >= a[i + 1]) i++;
              *w = n < 2 ? 0 : square ? (x*x - a[i]*a[i]) / (a[i+1]*a[i+1] - a[i]*a[i]) : (x - a[i]) / (a[i+1] - a[i]);
              return i;
            }
            float lookup(const int32_t *t, float d, float c, float s) {
              float w[3], sum = 0;
              int i = plane(D, nD, d, 1, w), j = plane(T, nT, c, 0, w + 1), k = plane(S, nS, s, 0, w + 2);
              for (int m = 0; m < 8; m++) {
                float v = (m & 1 ? w[0] : 1 - w[0]) * (m & 2 ? w[1] : 1 - w[1]) * (m & 4 ? w[2] : 1 - w[2]);
                if (v <= 0) continue;
                int32_t x = t[((i + (m & 1)) * nT + j + (m >> 1 & 1)) * nS + k + (m >> 2)];
                if (x < 0) return -1;
                sum += v * x;
              }
              return sum;
            }
            ```
            The food is ready at the latest of what is waited for, rounded up, and must be out by `goodUntil`, rounded \
            down; where that comes first, no moment satisfies all.""";

    private final LookupTables tables;
    private final PlanMetrics metrics;

    LookupTableController(LookupTables tables, PlanMetrics metrics) {
        this.tables = tables;
        this.metrics = metrics;
    }

    @PostMapping(
            path = "/v1/lookup-tables",
            consumes = {MediaType.APPLICATION_JSON_VALUE, MediaType.APPLICATION_CBOR_VALUE},
            produces = {MediaType.APPLICATION_JSON_VALUE, MediaType.APPLICATION_CBOR_VALUE, LogTable.MEDIA_TYPE})
    @Answers(value = LookupTableAnswer.class, rows = NodeRows.FORMAT)
    @Operation(
            operationId = "planTable",
            summary = "Tabulate cooks for a device",
            description =
                    "Times of one food over thickness, setpoint and start, for a controller that must work without a"
                            + " connection: no longer than the bytes it may take, denser where times bend, and held against fresh"
                            + " cook plans at random points. Interpolated times were on the safe side at all of them, with the"
                            + " tolerances counted: a check and no proof. Takes seconds. Stateless and free of side effects:"
                            + " the same request gives the same bytes." + DEVICE)
    ResponseEntity<byte[]> tabulate(
            @RequestBody LookupTableRequest request,
            @RequestHeader(name = HttpHeaders.ACCEPT, required = false) @Nullable String accept,
            Sentences sentences) {
        MediaType type = Accepted.of(accept).best(Wire.JSON.mediaType(), Wire.CBOR.mediaType(), NodeRows.MEDIA_TYPE);
        LookupTableAnswer table = tables.tabulate(request, sentences, candidate -> written(candidate, type).length);
        table.warnings().forEach(warning -> metrics.warned(warning.code()));
        ResponseEntity.BodyBuilder answer =
                ResponseEntity.ok().cacheControl(CacheControl.noStore()).contentType(type);
        if (type.equals(NodeRows.MEDIA_TYPE)) {
            answer.header(
                            SOURCE,
                            "parameterSet=" + table.parameterSet() + ", digest=" + table.digest() + ", checkedPoints="
                                    + table.checkedPoints() + ", rounds=" + table.rounds())
                    .header(
                            ERRORS,
                            table.columns().stream()
                                    .map(LookupTableController::errors)
                                    .collect(Collectors.joining(", ")))
                    .header(
                            NOTICES,
                            Stream.concat(table.warnings().stream(), table.cautions().stream())
                                    .map(LookupTableAnswer.CodedNotice::code)
                                    .collect(Collectors.joining(", ")));
        }
        return answer.body(written(table, type));
    }

    private static String errors(LookupTableAnswer.Column column) {
        return column.quantity() + ";greatestS=" + column.greatestErrorS() + ";greatestPercent="
                + column.greatestErrorPercent() + ";usualS=" + column.usualErrorS() + ";usualPercent="
                + column.usualErrorPercent() + ";needlesslyNeverPercent=" + column.needlesslyNeverPercent();
    }

    private static byte[] written(LookupTableAnswer table, MediaType type) {
        if (type.equals(NodeRows.MEDIA_TYPE)) {
            return NodeRows.of(table);
        }
        return (type.equals(Wire.CBOR.mediaType()) ? Wire.CBOR : Wire.JSON).write(table);
    }
}
