package dev.slowpoint.api;

import dev.slowpoint.heat.Halt;
import dev.slowpoint.ops.Deadlines;
import dev.slowpoint.ops.Refusing;
import dev.slowpoint.ops.SlowClients;
import io.swagger.v3.oas.annotations.Hidden;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.net.SocketTimeoutException;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.http.CacheControl;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.http.server.ServletServerHttpRequest;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RestController;

/** Answers sheets of portions: as a whole, or as a stream that is read while it is answered. */
@RestController
@Tag(name = "plans")
class PortionSheetController {

    private static final Logger LOG = LoggerFactory.getLogger(PortionSheetController.class);

    private static final String PATH = "/v1/portion-sheets";

    private final PortionSheets sheets;
    private final Deadlines deadlines;

    PortionSheetController(PortionSheets sheets, Deadlines deadlines) {
        this.sheets = sheets;
        this.deadlines = deadlines;
    }

    @PostMapping(
            path = PATH,
            consumes = {MediaType.APPLICATION_JSON_VALUE, MediaType.APPLICATION_CBOR_VALUE},
            produces = {MediaType.APPLICATION_JSON_VALUE, MediaType.APPLICATION_CBOR_VALUE, CookPicture.SVG_VALUE})
    @Operation(
            operationId = "planPortions",
            summary = "Plan cards for many portions",
            description =
                    "Time bands by thickness, so that one card serves many portions, each planned for its worst piece and"
                            + " held against its thinnest; with the text of the cards. Up to 10 000 portions come as JSON or"
                            + " CBOR. As lines of JSON or as a table there may be any number: they are read while they are"
                            + " answered, and a client that leaves ends the work. Stateless and free of side effects: the same"
                            + " request gives the same bytes. All times are seconds from food in.")
    @Answers(value = PortionSheetAnswer.class, pictured = true)
    @Reads(PortionSheetRequest.class)
    @Nullable
    ResponseEntity<byte[]> planPortions(
            HttpServletRequest request,
            HttpServletResponse response,
            @RequestHeader(name = HttpHeaders.ACCEPT, required = false) @Nullable String accept,
            Sentences sentences)
            throws IOException {
        ServletServerHttpRequest message = new ServletServerHttpRequest(request);
        Wire sent =
                Wire.CBOR.mediaType().isCompatibleWith(message.getHeaders().getContentType()) ? Wire.CBOR : Wire.JSON;
        byte[] body = WireConverter.body(message, PortionSheetRequest.class);
        ItemFaults faults = new ItemFaults(Pointer.child(Pointer.BODY, "portions"));
        PortionSheetRequest read = RequestReader.read(body, sent, PortionSheetRequest.class, faults);
        if (!entered(request, response)) {
            return null;
        }
        try {
            PortionSheetAnswer sheet = sheets.plan(read, faults, sentences);
            MediaType type = Accepted.of(accept).best(Wire.JSON.mediaType(), Wire.CBOR.mediaType(), CookPicture.SVG);
            byte[] answer = type.equals(CookPicture.SVG)
                    ? SheetPicture.of(
                            sheet, new PictureWords(sentences.in(read.sheet().displayUnits())))
                    : (type.equals(Wire.CBOR.mediaType()) ? Wire.CBOR : Wire.JSON).write(sheet);
            return ResponseEntity.ok()
                    .cacheControl(CacheControl.noStore())
                    .contentType(type)
                    .body(answer);
        } finally {
            sheets.leave();
        }
    }

    /** The same operation as lines of JSON; the contract tells of all in one place. */
    @PostMapping(
            path = PATH,
            consumes = SheetStream.NDJSON_VALUE,
            produces = {SheetStream.NDJSON_VALUE, SheetTable.MEDIA_TYPE})
    @Hidden
    void planLines(
            HttpServletRequest request,
            HttpServletResponse response,
            @RequestHeader(name = HttpHeaders.ACCEPT, required = false) @Nullable String accept,
            Sentences sentences)
            throws IOException {
        WireConverter.refuseCoding(new ServletServerHttpRequest(request).getHeaders());
        if (!entered(request, response)) {
            return;
        }
        try {
            SlowClients.setApart(request);
            SheetLines lines = new SheetLines(request.getInputStream());
            byte[] first = lines.next();
            if (first == null) {
                throw RequestReader.empty();
            }
            SheetTerms terms = RequestReader.read(whole(lines, first), Wire.JSON, SheetTerms.class);
            MediaType type = Accepted.of(accept).best(SheetStream.NDJSON, SheetStream.CSV);
            stream(response, lines, line -> line, terms, type, sentences);
        } finally {
            sheets.leave();
        }
    }

    /** The same operation as a table. */
    @PostMapping(
            path = PATH,
            consumes = SheetTable.MEDIA_TYPE,
            produces = {SheetTable.MEDIA_TYPE, SheetStream.NDJSON_VALUE})
    @Hidden
    @Queried(SheetTerms.class)
    void planTable(
            HttpServletRequest request,
            HttpServletResponse response,
            @RequestHeader(name = HttpHeaders.ACCEPT, required = false) @Nullable String accept,
            Sentences sentences)
            throws IOException {
        WireConverter.refuseCoding(new ServletServerHttpRequest(request).getHeaders());
        SheetTerms terms = SheetTable.terms(request.getParameterMap());
        if (!entered(request, response)) {
            return;
        }
        try {
            SlowClients.setApart(request);
            SheetLines lines = new SheetLines(request.getInputStream());
            byte[] header = lines.next();
            SheetTable table = SheetTable.of(header == null ? null : whole(lines, header));
            MediaType type = Accepted.of(accept).best(SheetStream.CSV, SheetStream.NDJSON);
            stream(response, lines, table::json, terms, type, sentences);
        } finally {
            sheets.leave();
        }
    }

    /** How a line becomes a portion in JSON. */
    private interface Translation {
        byte[] json(byte[] line);
    }

    private static byte[] whole(SheetLines lines, byte[] line) {
        if (lines.cut()) {
            throw new RequestRefused(tooLong());
        }
        return line;
    }

    private static Fault tooLong() {
        return Fault.of(
                Pointer.BODY, ProblemCode.LIMIT_EXCEEDED, "FAULT_LINE_TOO_LONG", Integer.toString(SheetLines.LONGEST));
    }

    private boolean entered(HttpServletRequest request, HttpServletResponse response) throws IOException {
        if (sheets.enter()) {
            return true;
        }
        response.setHeader(HttpHeaders.RETRY_AFTER, "5");
        Refusing.OVERLOADED.send(request, response);
        return false;
    }

    private void stream(
            HttpServletResponse response,
            SheetLines lines,
            Translation record,
            SheetTerms terms,
            MediaType type,
            Sentences sentences)
            throws IOException {
        PortionSheets.Running running = sheets.running(terms, sentences);
        response.setContentType(type + ";charset=UTF-8");
        response.setHeader(HttpHeaders.CACHE_CONTROL, CacheControl.noStore().getHeaderValue());
        // A table has no place of its own for them.
        response.setHeader("Slowpoint-Parameter-Set", running.head().parameterSet());
        response.setHeader("Slowpoint-Digest", running.head().digest());
        SheetStream out = SheetStream.to(response.getOutputStream(), type);
        out.head(running.head());
        // A stream may be as long as its client likes; that no plan of it takes too long is all there is to see to.
        try (Halt never = Halt.on(() -> false);
                SheetRun run = running.run(out, Integer.MAX_VALUE, deadlines::ofPlan)) {
            portions(lines, record, run);
            sheets.counted(run.totals());
            out.totals(run.totals());
        } catch (RequestRefused refused) {
            out.problem(Problem.of(
                    refused.faults().get(0).code(),
                    refused.faults().stream()
                            .map(fault -> FaultEntry.of(fault, sentences))
                            .toList(),
                    refused.count(),
                    sentences));
        } catch (SocketTimeoutException late) {
            out.problem(Problem.of(ProblemCode.REQUEST_TIMEOUT, sentences));
        } catch (RuntimeException failure) {
            LOG.error("a sheet of portions failed", failure);
            out.problem(Problem.of(ProblemCode.INTERNAL_ERROR, sentences));
        }
        out.flush();
    }

    private static void portions(SheetLines lines, Translation record, SheetRun run) throws IOException {
        while (true) {
            if (!lines.arrived()) {
                // Nothing more has come yet: what was asked is answered before waiting for it.
                run.drain();
            }
            byte[] line;
            try {
                line = lines.next();
            } catch (RequestRefused | SocketTimeoutException broken) {
                run.drain();
                throw broken;
            }
            if (line == null) {
                run.drain();
                return;
            }
            if (line.length == 0) {
                continue;
            }
            int number = lines.number();
            try {
                SheetPortion portion =
                        RequestReader.read(record.json(whole(lines, line)), Wire.JSON, SheetPortion.class);
                run.plan(portion, number, Pointer.BODY);
            } catch (RequestRefused refused) {
                run.refuse(
                        null,
                        number,
                        refused.faults().stream().limit(ItemFaults.LISTED).toList());
            }
        }
    }
}
