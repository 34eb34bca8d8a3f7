package dev.slowpoint.api;

import dev.slowpoint.api.PortionSheetAnswer.PortionPlace;
import dev.slowpoint.api.PortionSheetAnswer.SheetBand;
import dev.slowpoint.api.PortionSheetAnswer.SheetCard;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/**
 * Portions as a table (RFC 4180, one record a line): a header with the names of members, nested ones joined by points, and a
 * line for each portion. An empty cell is a member that is not sent.
 */
final class SheetTable {

    static final String MEDIA_TYPE = "text/csv";

    /** For the contract. */
    static final String FORMAT = "A header with names of the members of a portion, those of its parts joined by points"
            + " (`id,food.id,geometry.shape,geometry.thicknessMm,start.temperatureC`), then a line for each portion. An"
            + " empty cell is a member that is not sent; the values of a list are separated by spaces. Cells may stand in"
            + " double quotes, but hold no line breaks. UTF-8. What all portions have in common stands in the query.";

    /** An example for the contract. */
    static final String EXAMPLE =
            "id,food.id,geometry.shape,geometry.thicknessMm,thicknessSpreadMm,start.temperatureC\nK1,pork-loin,slab,42,3,4\n";

    /** Columns of the answer. */
    static final String ANSWER_HEADER =
            "id,line,band,food,overMm,upToMm,setpointC,card,startC,timeS,verdict,marginLog10,thinnestTexture,pastBestS,"
                    + "keepDays,title,text,warnings,problem,detail";

    static final String ANSWER_FORMAT = "A header `" + ANSWER_HEADER
            + "`, then a line for each card of each portion, or one with the problem of a portion that cannot be planned. A"
            + " last line with the id `#broken-off` and a problem says that the stream was not read to its end.";

    private final FlatMembers members = FlatMembers.of(SheetPortion.class);
    private final List<String> columns;

    private SheetTable(List<String> columns) {
        this.columns = columns;
    }

    /**
     * Reads a header.
     *
     * @throws RequestRefused with every column that is no member of a portion
     */
    static SheetTable of(byte @Nullable [] header) {
        if (header == null) {
            throw RequestReader.empty();
        }
        List<String> names = cells(withoutMark(header));
        if (names == null) {
            throw new RequestRefused(Fault.of("#row=1", ProblemCode.MALFORMED_BODY, "FAULT_HEADER_NO_RECORD"));
        }
        Faults faults = new Faults();
        List<String> known = FlatMembers.of(SheetPortion.class).names();
        Set<String> seen = new HashSet<>();
        for (int i = 0; i < names.size(); i++) {
            String name = names.get(i);
            String place = "#cell=1," + (i + 1);
            if (!known.contains(name)) {
                Fault fault = Fault.of(place, ProblemCode.UNKNOWN_FIELD, "FAULT_NO_COLUMN", Fault.shortened(name))
                        .allowed(known);
                faults.add(Words.nearest(name, known)
                        .map(word -> fault.hint("HINT_MAYBE", word))
                        .orElse(name.contains(";") ? fault.hint("HINT_SEPARATED_BY_COMMAS") : fault));
            } else if (!seen.add(name)) {
                faults.add(Fault.of(place, ProblemCode.DUPLICATE_FIELD, "FAULT_COLUMN_TWICE", name));
            }
        }
        faults.throwIfAny();
        return new SheetTable(names);
    }

    private static byte[] withoutMark(byte[] line) {
        boolean mark =
                line.length >= 3 && (line[0] & 0xff) == 0xef && (line[1] & 0xff) == 0xbb && (line[2] & 0xff) == 0xbf;
        return mark ? Arrays.copyOfRange(line, 3, line.length) : line;
    }

    /**
     * The portion of a line, as it would stand in JSON.
     *
     * @throws RequestRefused when the line is no record of this table
     */
    byte[] json(byte[] line) {
        List<String> cells = cells(line);
        if (cells == null) {
            throw new RequestRefused(Fault.of(Pointer.BODY, ProblemCode.MALFORMED_BODY, "FAULT_NO_RECORD")
                    .hint("HINT_QUOTES_DOUBLED"));
        }
        if (cells.size() != columns.size()) {
            throw new RequestRefused(Fault.of(
                            Pointer.BODY,
                            ProblemCode.MALFORMED_BODY,
                            "FAULT_CELLS_DIFFER",
                            cells.size(),
                            columns.size())
                    .hint("HINT_CELL_WITH_COMMA"));
        }
        ObjectNode portion = FlatMembers.tree();
        for (int i = 0; i < cells.size(); i++) {
            if (!cells.get(i).isEmpty()) {
                members.put(portion, columns.get(i), cells.get(i));
            }
        }
        return JsonMapper.shared().writeValueAsBytes(portion);
    }

    /** The cells of a line; null if it is none. */
    private static @Nullable List<String> cells(byte[] line) {
        String text;
        try {
            text = StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(line))
                    .toString();
        } catch (CharacterCodingException e) {
            return null;
        }
        List<String> cells = new ArrayList<>();
        int at = 0;
        while (true) {
            StringBuilder cell = new StringBuilder();
            if (at < text.length() && text.charAt(at) == '"') {
                at++;
                while (true) {
                    if (at >= text.length()) {
                        return null;
                    }
                    char letter = text.charAt(at++);
                    if (letter != '"') {
                        cell.append(letter);
                    } else if (at < text.length() && text.charAt(at) == '"') {
                        cell.append('"');
                        at++;
                    } else {
                        break;
                    }
                }
                if (at < text.length() && text.charAt(at) != ',') {
                    return null;
                }
            } else {
                int comma = text.indexOf(',', at);
                int stop = comma < 0 ? text.length() : comma;
                cell.append(text, at, stop);
                if (cell.indexOf("\"") >= 0) {
                    return null;
                }
                at = stop;
            }
            cells.add(cell.toString());
            if (at >= text.length()) {
                return cells;
            }
            at++;
        }
    }

    /** The lines of a portion in the answer: one for each card of its band, or its problem. */
    static String lines(PortionPlace portion, @Nullable SheetBand band) {
        StringBuilder lines = new StringBuilder();
        if (band == null) {
            List<FaultEntry> problems = portion.problems() == null ? List.of() : portion.problems();
            String codes = problems.stream().map(FaultEntry::code).collect(Collectors.joining(" "));
            String details = problems.stream()
                    .map(fault -> fault.pointer() + ": " + fault.detail())
                    .collect(Collectors.joining(" "));
            line(lines, portion.id(), portion.line(), codes, details);
            return lines.toString();
        }
        for (SheetCard card : band.cards()) {
            cells(
                    lines,
                    portion.id(),
                    portion.line(),
                    band.band(),
                    band.food(),
                    band.overMm(),
                    band.upToMm(),
                    band.setpointC(),
                    card.card(),
                    card.startC(),
                    card.timeS(),
                    card.safety() == null ? null : card.safety().verdict(),
                    card.safety() == null ? null : card.safety().marginLog10(),
                    card.thinnest() == null ? null : card.thinnest().texture(),
                    card.pastBestS(),
                    card.keepDays(),
                    card.title(),
                    String.join(" ", card.steps()),
                    card.warnings().stream().map(CookPlanAnswer.Warning::code).collect(Collectors.joining(" ")),
                    null,
                    null);
        }
        return lines.toString();
    }

    /** The last line of a stream that breaks off. */
    static String brokenOff(Problem problem) {
        StringBuilder lines = new StringBuilder();
        line(lines, "#broken-off", null, problem.code(), problem.detail());
        return lines.toString();
    }

    private static void line(
            StringBuilder lines, @Nullable String id, @Nullable Integer line, String problem, String detail) {
        Object[] cells = new Object[ANSWER_HEADER.split(",", -1).length];
        cells[0] = id;
        cells[1] = line;
        cells[cells.length - 2] = problem;
        cells[cells.length - 1] = detail;
        cells(lines, cells);
    }

    private static void cells(StringBuilder lines, @Nullable Object... cells) {
        for (int i = 0; i < cells.length; i++) {
            if (i > 0) {
                lines.append(',');
            }
            Object value = cells[i];
            if (value instanceof Double number) {
                lines.append(Suspicion.shown(number));
            } else if (value != null) {
                String text = value.toString();
                boolean quoted = text.indexOf(',') >= 0 || text.indexOf('"') >= 0 || text.indexOf('\n') >= 0;
                lines.append(quoted ? '"' + text.replace("\"", "\"\"") + '"' : text);
            }
        }
        lines.append("\r\n");
    }

    /** The sheet-wide members of a query, as a JSON request would hold them. */
    static SheetTerms terms(Map<String, String[]> query) {
        return FlatMembers.query(query, SheetTerms.class);
    }
}
