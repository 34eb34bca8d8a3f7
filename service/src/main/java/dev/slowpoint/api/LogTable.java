package dev.slowpoint.api;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Map;
import java.util.regex.Pattern;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * Reads a log that comes as a table (RFC 4180) of two columns: strictly, as the members of a JSON request are read, and in
 * one pass, because it may be long. A fault names its cell as in RFC 7111, the header being row 1.
 */
final class LogTable {

    static final String MEDIA_TYPE = "text/csv";

    static final String HEADER = "timeS,temperatureC";

    /** For the contract. */
    static final String FORMAT =
            "A header `" + HEADER + "`, then a line for each reading: the time in seconds, a comma, and"
                    + " the temperature in degrees Celsius with a decimal point, or NaN where the sensor gave none. No quotes, no"
                    + " blank lines, UTF-8. The other members of the request stand in the query; a core is computed from a bath"
                    + " only in JSON.";

    private static final Pattern NUMBER = Pattern.compile("-?(0|[1-9]\\d*)(\\.\\d+)?([eE][-+]?\\d+)?");

    /** Longest cell that is looked at. */
    private static final int LONGEST_CELL = 64;

    /** Up to so many digits a decimal is the quotient of two whole doubles, rounded once. */
    private static final int EXACT_DIGITS = 15;

    private static final double[] POWERS = new double[EXACT_DIGITS + 1];

    static {
        POWERS[0] = 1.0;
        for (int i = 1; i < POWERS.length; i++) {
            POWERS[i] = 10.0 * POWERS[i - 1];
        }
    }

    private final byte[] body;
    private final Faults faults = new Faults();
    private final RecordShape.Part time;
    private final RecordShape.Part temperature;
    private double[] times = new double[256];
    private double[] temperatures = new double[256];
    private int count;

    private LogTable(byte[] body) {
        this.body = body;
        RecordShape shape = RecordShape.of(LogReviewRequest.class);
        this.time = shape.part("timesS").orElseThrow();
        this.temperature = shape.part("temperaturesC").orElseThrow();
    }

    /**
     * Reads a table and the query that goes with it.
     *
     * @throws RequestRefused with all faults of the query, or else with all of the table
     */
    static LogReviewRequest read(byte[] body, Map<String, String[]> query) {
        LogReviewQuery asked = query(query);
        if (body.length == 0) {
            throw RequestReader.empty();
        }
        LogTable table = new LogTable(body);
        table.lines();
        table.faults.throwIfAny();
        return asked.with(Arrays.copyOf(table.times, table.count), Arrays.copyOf(table.temperatures, table.count));
    }

    /** The query, read as a JSON request would be. */
    private static LogReviewQuery query(Map<String, String[]> query) {
        ObjectNode members = JsonMapper.shared().createObjectNode();
        Faults twice = new Faults();
        for (RecordShape.Part part : RecordShape.of(LogReviewQuery.class).parts()) {
            String[] sent = query.get(part.name());
            if (sent == null) {
                continue;
            }
            if (sent.length > 1) {
                twice.add(Fault.of(
                        Pointer.query(part.name()), ProblemCode.DUPLICATE_FIELD, "FAULT_DUPLICATE_FIELD", part.name()));
            }
            String text = sent[0];
            if (part.list()) {
                ArrayNode words = members.putArray(part.name());
                Arrays.stream(text.split(",", -1)).forEach(words::add);
            } else if (part.number()
                    && text.length() <= LONGEST_CELL
                    && NUMBER.matcher(text).matches()) {
                members.put(part.name(), new BigDecimal(text));
            } else {
                members.put(part.name(), text);
            }
        }
        twice.throwIfAny();
        try {
            return RequestReader.read(JsonMapper.shared().writeValueAsBytes(members), Wire.JSON, LogReviewQuery.class);
        } catch (RequestRefused refused) {
            throw new RequestRefused(
                    refused.faults().stream().map(LogTable::ofQuery).toList(), refused.count());
        }
    }

    private static Fault ofQuery(Fault fault) {
        return new Fault(
                fault.pointer().replaceFirst("^#/?", "?"),
                fault.code(),
                fault.detail(),
                fault.hint(),
                fault.value(),
                fault.minimum(),
                fault.maximum(),
                fault.unit(),
                fault.allowed());
    }

    private void lines() {
        int line = 0;
        int at = startsWithMark() ? 3 : 0;
        while (at < body.length) {
            int end = at;
            while (end < body.length && body[end] != '\n') {
                end++;
            }
            int last = end > at && body[end - 1] == '\r' ? end - 1 : end;
            line++;
            if (line == 1) {
                header(at, last);
            } else {
                reading(line, at, last);
            }
            at = end + 1;
        }
        if (count < 2 || count > LogReviewRequest.MOST_READINGS) {
            faults.add(Fault.of(
                            Pointer.BODY,
                            ProblemCode.WRONG_NUMBER_OF_ITEMS,
                            "FAULT_TABLE_ITEMS",
                            Integer.toString(count),
                            Integer.toString(LogReviewRequest.MOST_READINGS))
                    .value(Integer.toString(count))
                    .range(2.0, (double) LogReviewRequest.MOST_READINGS, null));
        }
    }

    private boolean startsWithMark() {
        return body.length >= 3 && (body[0] & 0xff) == 0xef && (body[1] & 0xff) == 0xbb && (body[2] & 0xff) == 0xbf;
    }

    private void header(int from, int to) {
        String sent = text(from, to);
        if (!sent.equals(HEADER)) {
            Fault fault = Fault.of("#row=1", ProblemCode.MALFORMED_BODY, "FAULT_TABLE_HEADER", HEADER)
                    .value(sent);
            faults.add(sent.contains(";") ? fault.hint("HINT_SEPARATED_BY_COMMAS") : fault);
        }
    }

    private void reading(int line, int from, int to) {
        if (count >= LogReviewRequest.MOST_READINGS) {
            count++;
            return;
        }
        int comma = from;
        while (comma < to && body[comma] != ',') {
            comma++;
        }
        boolean second = false;
        for (int i = comma + 1; i < to; i++) {
            second |= body[i] == ',';
        }
        if (comma == to || second) {
            Fault fault = Fault.of(
                            "#row=" + line, ProblemCode.MALFORMED_BODY, "FAULT_TABLE_LINE", Integer.toString(line))
                    .value(text(from, to));
            faults.add(
                    from == to ? fault.hint("HINT_NO_BLANK_LINES") : second ? fault.hint("HINT_DECIMAL_COMMA") : fault);
            count++;
            return;
        }
        double at = number(time, line, 1, from, comma, false);
        double value = number(temperature, line, 2, comma + 1, to, true);
        if (count == times.length) {
            times = Arrays.copyOf(times, 2 * count);
            temperatures = Arrays.copyOf(temperatures, 2 * count);
        }
        times[count] = at;
        temperatures[count] = value;
        if (count > 0 && at <= times[count - 1]) {
            faults.add(LogReviewRequest.descending("#cell=" + line + ",1", times, count));
        }
        count++;
    }

    /** A cell as a number within its bounds; NaN after a fault, or where a sensor may have had no reading. */
    private double number(RecordShape.Part part, int line, int column, int from, int to, boolean mayBeNone) {
        double value = exact(from, to);
        if (Double.isNaN(value)) {
            String cell = text(from, to);
            if (mayBeNone && cell.equalsIgnoreCase("nan")) {
                return Double.NaN;
            }
            if (!NUMBER.matcher(cell).matches()) {
                Fault fault = Fault.of(
                                "#cell=" + line + "," + column,
                                ProblemCode.WRONG_TYPE,
                                column == 1 ? "FAULT_TABLE_TIME" : "FAULT_TABLE_TEMPERATURE",
                                Integer.toString(line))
                        .value(cell);
                faults.add(mayBeNone && cell.isBlank() ? fault.hint("HINT_WRITE_NAN") : fault);
                return Double.NaN;
            }
            value = Double.parseDouble(cell);
        }
        double minimum = part.minimum().orElseThrow();
        double maximum = part.maximum().orElseThrow();
        if (!(value >= minimum && value <= maximum)) {
            String unit = part.unit().orElseThrow();
            Fault fault = Fault.of(
                            "#cell=" + line + "," + column,
                            ProblemCode.OUT_OF_RANGE,
                            column == 1 ? "FAULT_TABLE_TIME_RANGE" : "FAULT_TABLE_TEMPERATURE_RANGE",
                            Integer.toString(line),
                            Suspicion.shown(value),
                            Suspicion.shown(minimum),
                            Suspicion.shown(maximum) + " " + Suspicion.readable(unit))
                    .value(Suspicion.shown(value))
                    .range(minimum, maximum, unit);
            faults.add(
                    Suspicion.of(value, minimum, maximum, unit).map(fault::hint).orElse(fault));
            return Double.NaN;
        }
        return value + 0.0;
    }

    /** A plain decimal of few digits, exactly as {@link Double#parseDouble} reads it; NaN for anything else. */
    private double exact(int from, int to) {
        int i = from;
        boolean minus = i < to && body[i] == '-';
        if (minus) {
            i++;
        }
        long digits = 0;
        int read = 0;
        int decimals = 0;
        boolean point = false;
        int start = i;
        for (; i < to; i++) {
            byte letter = body[i];
            if (letter == '.' && !point && i > start) {
                point = true;
            } else if (letter >= '0' && letter <= '9') {
                if (i == start + 1 && body[start] == '0' && !point) {
                    return Double.NaN;
                }
                digits = 10 * digits + (letter - '0');
                read++;
                decimals += point ? 1 : 0;
                if (read > EXACT_DIGITS) {
                    return Double.NaN;
                }
            } else {
                return Double.NaN;
            }
        }
        if (read == 0 || (point && decimals == 0)) {
            return Double.NaN;
        }
        double value = (double) digits / POWERS[decimals];
        return minus ? -value : value;
    }

    private String text(int from, int to) {
        int end = Math.min(to, from + 4 * LONGEST_CELL);
        return new String(body, from, end - from, StandardCharsets.UTF_8);
    }
}
