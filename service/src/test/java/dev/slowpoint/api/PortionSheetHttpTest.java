package dev.slowpoint.api;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import io.restassured.response.Response;
import java.io.BufferedInputStream;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.beans.factory.annotation.Autowired;
import tools.jackson.databind.JsonNode;

/** Sheets of portions over HTTP: as a whole and as streams, right and wrong, read to the end and broken off. */
class PortionSheetHttpTest extends HttpTest {

    private static final String NDJSON = "application/x-ndjson";
    private static final String CSV = "text/csv";
    private static final String TERMS =
            "{\"surroundings\":{\"bath\":{\"setpointC\":60}},\"cards\":[\"fridge\",\"frozen\"]}";

    @Autowired
    @SuppressWarnings("NullAway.Init")
    private PortionSheets sheets;

    private static String portion(String id, String food, String thicknessMm) {
        return "{\"id\":\"" + id + "\",\"food\":{\"id\":\"" + food
                + "\"},\"geometry\":{\"shape\":\"slab\",\"thicknessMm\":" + thicknessMm
                + "},\"start\":{\"temperatureC\":4}}";
    }

    private static final List<String> PORTIONS = List.of(
            portion("K1", "pork-loin", "42"),
            portion("K2", "chicken-breast", "23"),
            portion("K3", "pork-lion", "42"),
            portion("K4", "pork-loin", "44.5"),
            portion("K5", "pork-loin", "0.5"),
            portion("K6", "pork-loin", "31"));

    private JsonNode whole(String body) {
        Response answer = http().contentType(JSON).body(body).post(SHEETS);
        assertThat(answer.statusCode()).as(answer.asString()).isEqualTo(200);
        return READER.readTree(answer.asByteArray());
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private static String whole(String terms, List<String> portions) {
        return "{\"sheet\":" + terms + ",\"portions\":[" + String.join(",", portions) + "]}";
    }

    private List<JsonNode> lines(String body) {
        Response answer = http().contentType(NDJSON).body(bytes(body)).post(SHEETS);
        assertThat(answer.statusCode()).as(answer.asString()).isEqualTo(200);
        assertThat(answer.contentType()).startsWith(NDJSON);
        return answer.asString().lines().map(READER::readTree).toList();
    }

    private static List<JsonNode> all(List<JsonNode> lines, String member) {
        return lines.stream().filter(l -> l.has(member)).map(l -> l.get(member)).toList();
    }

    @Test
    void a_sheet_keeps_the_order_and_a_bad_portion_does_not_stop_the_others() {
        JsonNode sheet = whole(whole(TERMS, PORTIONS));
        assertThat(OpenApiTest.schema("PortionSheetAnswer").validate(sheet)).isEmpty();
        assertThat(sheet.at("/portions")
                        .valueStream()
                        .map(p -> p.at("/band").asInt(0))
                        .toList())
                .containsExactly(1, 2, 0, 1, 0, 3);
        assertThat(sheet.at("/portions/2/problems/0/code").asString()).isEqualTo("UNKNOWN_FOOD");
        assertThat(sheet.at("/portions/2/problems/0/pointer").asString()).isEqualTo("#/portions/2/food/id");
        assertThat(sheet.at("/portions/4/problems/0/code").asString()).isEqualTo("OUT_OF_RANGE");
        assertThat(sheet.at("/totals/planned").asInt()).isEqualTo(4);
        assertThat(sheet.at("/totals/refused").asInt()).isEqualTo(2);
        assertThat(sheet.at("/cautions")).hasSize(2);
        assertThat(sheet.at("/bands/0/cards")
                        .valueStream()
                        .map(c -> c.at("/card").asString())
                        .toList())
                .containsExactly("fridge", "frozen");
    }

    @Test
    void json_cbor_lines_and_tables_say_the_same() {
        JsonNode sheet = whole(whole(TERMS, PORTIONS));
        byte[] binary = http().contentType(CBOR)
                .accept(CBOR)
                .body(cbor(whole(TERMS, PORTIONS)))
                .post(SHEETS)
                .asByteArray();
        assertThat(CBOR_READER.readTree(binary)).isEqualTo(sheet);
        List<JsonNode> lines = lines(TERMS + "\n" + String.join("\n", PORTIONS) + "\n");
        lines.forEach(line ->
                assertThat(OpenApiTest.schema("SheetLine").validate(line)).isEmpty());
        assertThat(all(lines, "band"))
                .isEqualTo(sheet.at("/bands").valueStream().toList());
        assertThat(all(lines, "portion").stream()
                        .map(p -> p.at("/band").asInt(0))
                        .toList())
                .isEqualTo(sheet.at("/portions")
                        .valueStream()
                        .map(p -> p.at("/band").asInt(0))
                        .toList());
        assertThat(all(lines, "portion").stream()
                        .map(p -> p.at("/line").asInt())
                        .toList())
                .containsExactly(2, 3, 4, 5, 6, 7);
        assertThat(lines.get(lines.size() - 1).at("/totals")).isEqualTo(sheet.at("/totals"));
        assertThat(lines.get(0).at("/head/cautions")).isEqualTo(sheet.at("/cautions"));
        String table = http().contentType(CSV)
                .body("id,food.id,geometry.shape,geometry.thicknessMm,start.temperatureC\n"
                        + "K1,pork-loin,slab,42,4\nK2,chicken-breast,slab,23,4\nK3,pork-lion,slab,42,4\n"
                        + "\"K4\",pork-loin,slab,44.5,4\r\nK5,pork-loin,slab,0.5,4\nK6,pork-loin,slab,31,4")
                .post(SHEETS + "?surroundings.bath.setpointC=60&cards=fridge,frozen")
                .asString();
        List<String> rows = table.lines().toList();
        assertThat(rows.get(0)).isEqualTo(SheetTable.ANSWER_HEADER);
        // Two cards for each of four portions, one problem for each of two.
        assertThat(rows).hasSize(1 + 4 * 2 + 2);
        assertThat(rows.get(1).split(",", -1)[9])
                .isEqualTo(sheet.at("/bands/0/cards/0/timeS").asString());
        assertThat(rows.get(5)).startsWith("K3,4,,").contains("UNKNOWN_FOOD");
        assertThat(rows.get(8)).contains("OUT_OF_RANGE");
    }

    @Test
    void the_same_sheet_gives_the_same_bytes() {
        byte[] first = http().contentType(JSON)
                .body(whole(TERMS, PORTIONS))
                .post(SHEETS)
                .asByteArray();
        byte[] second = http().contentType(JSON)
                .body(whole(TERMS, PORTIONS))
                .post(SHEETS)
                .asByteArray();
        assertThat(second).isEqualTo(first);
    }

    @Test
    void a_us_card_speaks_in_fahrenheit_and_inches() {
        JsonNode sheet = whole(whole(
                "{\"surroundings\":{\"bath\":{\"setpointC\":60.2}},\"displayUnits\":\"us\"}",
                List.of(PORTIONS.get(0))));
        assertThat(sheet.at("/bands/0/cards/0/steps/0").asString()).isEqualTo("Heat the water to 141 °F.");
        assertThat(sheet.at("/bands/0/cards/0/title").asString()).contains("1 1/2 to 1 3/4 in");
        assertThat(sheet.at("/bands/0/setpointC").asDouble()).isEqualTo(60.56);
    }

    @Test
    void a_picture_is_drawn() throws IOException {
        String picture = http().contentType(JSON)
                .accept("image/svg+xml")
                .body(whole(TERMS, PORTIONS))
                .post(SHEETS)
                .asString();
        assertThat(picture).startsWith("<svg").contains("cook from frozen").endsWith("</svg>\n");
        // To be looked at in a browser.
        Path kept = Files.createDirectories(Path.of("target", "pictures"));
        Files.writeString(kept.resolve("portion-sheet.svg"), picture);
    }

    /** What a run took in and gave out. */
    private static final class Counting implements SheetSink {
        private final List<PortionSheetAnswer.PortionPlace> places = new ArrayList<>();
        private int bands;

        @Override
        public void band(PortionSheetAnswer.SheetBand band) {
            bands++;
        }

        @Override
        public void portion(PortionSheetAnswer.PortionPlace portion) {
            places.add(portion);
        }

        @Override
        public void progress(PortionSheetAnswer.SheetTotals soFar) {
            assertThat(soFar.portions() % SheetRun.REPORTED).isZero();
        }

        @Override
        public void flush() {
            // Nothing is held back here.
        }
    }

    private static SheetPortion read(String portion) {
        return RequestReader.read(bytes(portion), Wire.JSON, SheetPortion.class);
    }

    private SheetRun run(SheetSink sink, int mostBands) {
        SheetTerms terms = RequestReader.read(
                bytes("{\"surroundings\":{\"bath\":{\"setpointC\":60}}}"), Wire.JSON, SheetTerms.class);
        return sheets.running(terms, new Languages().english()).run(sink, mostBands, () -> () -> false);
    }

    @Test
    void what_is_held_of_a_long_sheet_is_bounded() throws IOException {
        Counting out = new Counting();
        try (SheetRun run = run(out, 100)) {
            for (int i = 0; i < 20_000; i++) {
                run.plan(read(portion("K" + i, "pork-loin", Integer.toString(20 + i % 30))), null, "#");
                assertThat(i + 1 - out.places.size()).isLessThanOrEqualTo(256);
            }
            run.drain();
        }
        assertThat(out.places).hasSize(20_000);
        assertThat(out.bands).isLessThan(20);
    }

    @Test
    void portions_beyond_the_bound_of_bands_are_refused_by_name() throws IOException {
        Counting out = new Counting();
        try (SheetRun run = run(out, 2)) {
            for (String mm : List.of("21", "26", "22", "31", "23")) {
                run.plan(read(portion("K" + mm, "pork-loin", mm)), null, "#/portions/0");
            }
            run.drain();
        }
        assertThat(out.places.stream()
                        .map(p -> p.band() == null
                                ? Objects.requireNonNull(p.problems()).get(0).code()
                                : "planned")
                        .toList())
                .containsExactly("planned", "planned", "planned", "TOO_MANY_BANDS", "TOO_MANY_BANDS");
        assertThat(out.bands).isEqualTo(2);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "{\"portions\":[]} | WRONG_NUMBER_OF_ITEMS | #/portions",
                "{\"sheet\":{}} | MISSING_FIELD | #/portions",
                "{\"sheet\":{\"card\":[]},\"portions\":[{}]} | UNKNOWN_FIELD | #/sheet/card",
                "{\"sheet\":{\"target\":{\"serveAfterS\":7200}},\"portions\":[{}]} | FIELDS_EXCLUDE_EACH_OTHER |"
                        + " #/sheet/target/serveAfterS",
                "{\"sheet\":{\"surroundings\":{\"bath\":{\"volumeL\":20,\"heaterW\":900}}},\"portions\":[{}]} |"
                        + " FIELDS_EXCLUDE_EACH_OTHER | #/sheet/surroundings/bath/volumeL",
            })
    void what_all_portions_share_is_refused_as_a_whole(String body, String code, String pointer) {
        Response answer = http().contentType(JSON).body(body).post(SHEETS);
        assertThat(answer.statusCode()).isEqualTo(400);
        JsonNode problem = READER.readTree(answer.asByteArray());
        assertThat(problem.at("/code").asString()).isEqualTo(code);
        assertThat(problem.at("/errors/0/pointer").asString()).isEqualTo(pointer);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "id,food | UNKNOWN_FIELD | #cell=1,2",
                "id,id | DUPLICATE_FIELD | #cell=1,2",
                "'id,\"food.id' | MALFORMED_BODY | #row=1",
            })
    void a_table_with_a_wrong_header_is_refused(String header, String code, String pointer) {
        Response answer = http().contentType(CSV).body(header + "\nx,y\n").post(SHEETS);
        assertThat(answer.statusCode()).isEqualTo(400);
        assertThat(READER.readTree(answer.asByteArray()).at("/code").asString()).isEqualTo(code);
        assertThat(READER.readTree(answer.asByteArray()).at("/errors/0/pointer").asString())
                .isEqualTo(pointer);
    }

    @Test
    void a_wrong_query_is_refused_by_its_name() {
        Response answer =
                http().contentType(CSV).body("id\nx\n").post(SHEETS + "?surroundings.bath.setpointC=600&card=x");
        assertThat(answer.statusCode()).isEqualTo(400);
        assertThat(answer.asString()).contains("?card", "UNKNOWN_PARAMETER");
        answer = http().contentType(CSV).body("id\nx\n").post(SHEETS + "?surroundings.bath.setpointC=600");
        assertThat(answer.asString()).contains("?surroundings.bath.setpointC", "OUT_OF_RANGE");
    }

    @Test
    void bad_lines_are_named_and_passed_over() {
        List<JsonNode> lines = lines("{}\n\n" + PORTIONS.get(0) + "\nno json\n{\"id\":\"x\",\"food\":{}}\n"
                + portion("y".repeat(20_000), "pork-loin", "42") + "\n[1]\n" + PORTIONS.get(3));
        List<JsonNode> portions = all(lines, "portion");
        assertThat(portions).hasSize(6);
        assertThat(portions.stream()
                        .map(p -> p.at("/problems/0/code").asString(""))
                        .toList())
                .containsExactly("", "MALFORMED_BODY", "ONE_OF_REQUIRED", "LIMIT_EXCEEDED", "WRONG_TYPE", "");
        assertThat(portions.stream().map(p -> p.at("/line").asInt()).toList()).containsExactly(3, 4, 5, 6, 7, 8);
        assertThat(lines.get(lines.size() - 1).at("/totals/refused").asInt()).isEqualTo(4);
    }

    @Test
    void a_line_without_end_ends_the_stream_with_a_problem() {
        List<JsonNode> lines = lines("{}\n" + PORTIONS.get(0) + "\n" + "z".repeat(1_200_000));
        assertThat(all(lines, "portion")).hasSize(1);
        assertThat(lines.get(lines.size() - 1).at("/problem/code").asString()).isEqualTo("MALFORMED_BODY");
        assertThat(all(lines, "totals")).isEmpty();
    }

    @Test
    void a_stream_whose_first_line_is_wrong_is_refused() {
        Response answer =
                http().contentType(NDJSON).body(bytes(PORTIONS.get(0) + "\n")).post(SHEETS);
        assertThat(answer.statusCode()).isEqualTo(400);
        assertThat(answer.asString()).contains("UNKNOWN_FIELD");
        assertThat(http().contentType(NDJSON).body(new byte[0]).post(SHEETS).statusCode())
                .isEqualTo(400);
        assertThat(http().contentType(NDJSON)
                        .body(bytes("{\"parameterSet\":\"1999.1\"}\n"))
                        .post(SHEETS)
                        .statusCode())
                .isEqualTo(422);
    }

    @Test
    void more_sheets_than_are_worked_on_at_once_are_sent_away() {
        List<Boolean> entered = new ArrayList<>();
        try {
            while (sheets.enter()) {
                entered.add(true);
            }
            Response answer = http().contentType(NDJSON).body(bytes("{}\n")).post(SHEETS);
            assertThat(answer.statusCode()).isEqualTo(503);
            assertThat(answer.header("Retry-After")).isEqualTo("5");
            assertThat(http().contentType(JSON)
                            .body(whole("{}", PORTIONS))
                            .post(SHEETS)
                            .statusCode())
                    .isEqualTo(503);
        } finally {
            entered.forEach(one -> sheets.leave());
        }
        assertThat(http().contentType(NDJSON).body(bytes("{}\n")).post(SHEETS).statusCode())
                .isEqualTo(200);
    }

    private static void chunk(OutputStream out, String text) throws IOException {
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        out.write((Integer.toHexString(bytes.length) + "\r\n").getBytes(StandardCharsets.US_ASCII));
        out.write(bytes);
        out.write("\r\n".getBytes(StandardCharsets.US_ASCII));
        out.flush();
    }

    private Socket streaming() throws IOException {
        Socket socket = new Socket(InetAddress.getLoopbackAddress(), port);
        socket.setSoTimeout(30_000);
        socket.getOutputStream()
                .write(("POST " + SHEETS + " HTTP/1.1\r\nHost: localhost\r\nContent-Type: " + NDJSON
                                + "\r\nTransfer-Encoding: chunked\r\n\r\n")
                        .getBytes(StandardCharsets.US_ASCII));
        return socket;
    }

    /** The body of a chunked answer. */
    private static BufferedReader answer(Socket socket) throws IOException {
        InputStream in = new BufferedInputStream(socket.getInputStream());
        return new BufferedReader(new InputStreamReader(
                new InputStream() {
                    private boolean headed;
                    private int left;

                    private String line() throws IOException {
                        StringBuilder line = new StringBuilder();
                        for (int letter = in.read(); letter >= 0 && letter != '\n'; letter = in.read()) {
                            line.append((char) letter);
                        }
                        return line.toString().strip();
                    }

                    @Override
                    public int read() throws IOException {
                        byte[] one = new byte[1];
                        return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
                    }

                    @Override
                    public int read(byte[] into, int from, int most) throws IOException {
                        while (!headed) {
                            headed = line().isEmpty();
                        }
                        if (left == 0) {
                            String size = line();
                            left = Integer.parseInt(size.isEmpty() ? line() : size, 16);
                        }
                        if (left == 0) {
                            return -1;
                        }
                        int read = in.read(into, from, Math.min(most, left));
                        left -= Math.max(read, 0);
                        return read;
                    }
                },
                StandardCharsets.UTF_8));
    }

    private static String until(BufferedReader in, String wanted) throws IOException {
        for (String line = in.readLine(); line != null; line = in.readLine()) {
            if (line.contains(wanted)) {
                return line;
            }
        }
        throw new AssertionError("the answer ended before " + wanted);
    }

    /** A client may send one portion, read its card, and send the next. */
    @Test
    void a_portion_is_answered_before_the_next_is_sent() throws IOException {
        try (Socket socket = streaming()) {
            BufferedReader in = answer(socket);
            chunk(socket.getOutputStream(), "{}\n");
            until(in, "\"head\"");
            for (String id : List.of("one", "two", "three")) {
                chunk(socket.getOutputStream(), portion(id, "pork-loin", "42") + "\n");
                assertThat(until(in, "\"portion\"")).contains("\"" + id + "\"");
            }
            socket.getOutputStream().write("0\r\n\r\n".getBytes(StandardCharsets.US_ASCII));
            assertThat(until(in, "\"totals\"")).contains("\"portions\":3");
        }
    }

    @Test
    void a_client_that_leaves_ends_the_work() throws IOException {
        int room = sheets.room();
        try (Socket socket = streaming()) {
            BufferedReader in = answer(socket);
            chunk(socket.getOutputStream(), "{}\n");
            until(in, "\"head\"");
            assertThat(sheets.room()).isEqualTo(room - 1);
            // Each start is another band: minutes of work.
            StringBuilder many = new StringBuilder();
            for (int i = 0; i < 20_000; i++) {
                many.append(portion("K" + i, "pork-loin", "42").replace(":4}", ":" + (1 + i * 1e-4) + "}"))
                        .append('\n');
            }
            Thread sender = new Thread(() -> {
                try {
                    chunk(socket.getOutputStream(), many.toString());
                } catch (IOException closed) {
                    // As it must: nobody reads any more.
                }
            });
            sender.start();
            until(in, "\"portion\"");
            socket.setSoLinger(true, 0);
        }
        await().atMost(Duration.ofSeconds(10)).until(() -> sheets.room() == room);
    }

    /** Many portions through few bands: what comes back is in order, and comes while more is sent. */
    @Test
    void a_long_stream_is_answered_in_order_with_progress() throws IOException, InterruptedException {
        int count = 20_000;
        try (Socket socket = streaming()) {
            Thread sender = new Thread(() -> {
                try {
                    chunk(socket.getOutputStream(), "{}\n");
                    for (int i = 0; i < count; i += 100) {
                        StringBuilder some = new StringBuilder();
                        for (int j = i; j < i + 100; j++) {
                            some.append(portion("K" + j, "pork-loin", Integer.toString(20 + j % 30)))
                                    .append('\n');
                        }
                        chunk(socket.getOutputStream(), some.toString());
                    }
                    socket.getOutputStream().write("0\r\n\r\n".getBytes(StandardCharsets.US_ASCII));
                } catch (IOException e) {
                    throw new UncheckedIOException(e);
                }
            });
            sender.start();
            BufferedReader in = answer(socket);
            int next = 0;
            int reports = 0;
            String line = in.readLine();
            while (!line.contains("\"totals\"")) {
                if (line.contains("\"portion\":{")) {
                    assertThat(line).contains("\"K" + next + "\"");
                    next++;
                } else if (line.contains("\"progress\"")) {
                    reports++;
                }
                line = in.readLine();
            }
            assertThat(next).isEqualTo(count);
            assertThat(reports).isEqualTo(count / SheetRun.REPORTED);
            sender.join();
        }
    }
}
