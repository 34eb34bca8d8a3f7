package dev.slowpoint.api;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.Schema;
import io.restassured.response.Response;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * Requests damaged at random, always in the same way. {@code -Dsweep.requests=100000} makes a long run of it; the default
 * takes seconds.
 */
class BadRequestSweepTest extends HttpTest {

    private static final long SEED = 20_261_125L;
    private static final int REQUESTS = Integer.getInteger("sweep.requests", 3000);

    private static final String FULL = """
            {"parameterSet":"2026.1",
             "food":{"composition":{"waterPercent":72,"proteinPercent":21,"fatPercent":6,"ashPercent":1},
                     "group":"pork","textureClass":"pork_loin","form":"intact","condition":"raw","previouslyFrozen":false},
             "geometry":{"shape":"brick","thicknessMm":45,"widthMm":90,"massG":800,
                         "arrangement":{"pileOf":2,"pouchesTouching":false,"trappedAirMm":1,
                                        "submerged":"oneFaceInAir","airC":21}},
             "start":{"surfaceC":2,"coreC":4,"earlierCook":{"setpointC":55,"heldS":3600}},
             "surroundings":{"bath":{"setpointC":60,"stirring":"pumped","volumeL":20,"heaterW":1200,"startC":20,
                                     "covered":true,"openAreaCm2":700,"lossWPerK":4,"roomC":21,"otherLoadG":3000},
                             "altitudeM":300},
             "target":{"purpose":"serve","coreC":59,"withinK":0.5,"serveAfterS":7200},
             "eater":"general","rule":"us-fsis-2021",
             "tolerances":{"thicknessMm":2,"startK":1,"bathK":0.2,"readingK":0.2},
             "pack":{"rawGarlicOrHerbs":true,"salted":false,"saltPercent":1.5,"waterActivity":0.99,"soldOrSupplied":false,"sealedWhileChilled":false},
             "then":[{"step":"bath","setpointC":56,"durationS":3600},
                     {"step":"unheated","durationS":900,"foundC":55},
                     {"step":"sear","method":"pan","secondsPerSide":45,"bothSidesAtOnce":false,"heatC":220},
                     {"step":"rest","durationS":300},
                     {"step":"chill","medium":"iceWater","mediumC":1,"durationS":3600},
                     {"step":"store","temperatureC":3,"days":5},
                     {"step":"reheat","setpointC":58,"durationS":3600}]}""";

    private static final String CHILL = """
            {"parameterSet":"2026.1","food":{"id":"pork-loin","form":"intact","condition":"cooked"},
             "geometry":{"shape":"egg","diameterMm":45,"lengthMm":60,"arrangement":{}},
             "start":{"surfaceC":60,"coreC":59},
             "chill":{"medium":"blastAir","mediumC":-10,"durationS":3600},
             "store":{"temperatureC":3,"days":5},"rule":"FC-COOL","fitToKeep":true,"eater":"vulnerable",
             "tolerances":{"thicknessMm":2,"startK":1}}""";

    private static final String LOG = """
            {"parameterSet":"2026.1","food":{"id":"pork-loin","form":"intact","condition":"raw","fatPercent":8},
             "rule":"us-fsis-2021","coolingRule":"FC-COOL","purpose":"keep","eater":"vulnerable",
             "aspects":["cooking","cooling"],"sensor":{"place":"bath","errorK":0.5,"intervalS":60},
             "timesS":[0,60,120,180],"temperaturesC":[58.5,60,60.1,-127],"longestGapS":120,
             "geometry":{"shape":"slab","thicknessMm":45,"arrangement":{}},"start":{"surfaceC":6,"coreC":4},
             "stirring":"pumped","label":"Cook log 17","batch":"Batch 4"}""";

    private static final String REPLAN = """
            {"parameterSet":"2026.1","food":{"id":"pork-loin","form":"intact"},
             "geometry":{"shape":"slab","thicknessMm":45,"arrangement":{}},
             "start":{"temperatureC":4},"surroundings":{"bath":{"setpointC":60,"stirring":"still"},"altitudeM":300},
             "target":{"purpose":"serve"},"eater":"general","rule":"us-fsis-2021",
             "tolerances":{"thicknessMm":2},"pack":{"salted":true},
             "soFar":{"elapsedS":9000,"thicknessMm":48,
                      "bathLog":[{"atS":0,"waterC":60},{"atS":600,"waterC":59.5},{"atS":9000,"waterC":-127}],
                      "events":[{"event":"heaterOff","fromS":100,"untilS":900,"foundC":58},
                                {"event":"setpointChanged","fromS":1000,"setpointC":61},
                                {"event":"foodAdded","fromS":1200,"addedG":500,"temperatureC":4},
                                {"event":"floated","fromS":1300,"untilS":1400,"temperatureC":22},
                                {"event":"outOfBath","fromS":1500,"untilS":1600,"place":"fridge","temperatureC":5}],
                      "coreReadings":[{"atS":8000,"coreC":55,"errorK":0.5}]}}""";

    private static final String WINDOW = """
            {"parameterSet":"2026.1","food":{"id":"pork-loin","form":"intact"},
             "geometry":{"shape":"slab","thicknessMm":45,"arrangement":{}},
             "start":{"temperatureC":4},"surroundings":{"bath":{"setpointC":60,"stirring":"still"},"altitudeM":300},
             "target":{"purpose":"serve","serveAfterS":12000},"eater":"general","rule":"us-fsis-2021",
             "tolerances":{"thicknessMm":2},"pack":{"salted":true},
             "lowestSetpointC":58,"highestSetpointC":62,"stepK":2,"availableS":20000,"momentToleranceS":120}""";

    private static final String LOAD = """
            {"parameterSet":"2026.1","items":[
               {"id":"pork","count":2,"food":{"id":"pork-loin","form":"intact"},
                "geometry":{"shape":"slab","thicknessMm":45,"massG":400,"arrangement":{}},
                "start":{"temperatureC":4},"target":{"purpose":"serve","coreC":60},
                "tolerances":{"thicknessMm":2},"pack":{"salted":true}},
               {"id":"beef.2","food":{"id":"beef-chuck"},"geometry":{"shape":"slab","thicknessMm":45,"massG":900},
                "start":{"surfaceC":3,"coreC":4}}],
             "surroundings":{"bath":{"volumeL":20,"heaterW":900,"stirring":"still"},"altitudeM":300},
             "serveAfterS":14400,"eater":"general","rule":"us-fsis-2021"}""";

    private static final String SHEET = """
            {"sheet":{"parameterSet":"2026.1",
                      "surroundings":{"bath":{"setpointC":60,"stirring":"still"},"altitudeM":300},
                      "target":{"purpose":"keep"},"eater":"general","rule":"us-fsis-2021","tolerances":{"thicknessMm":2},
                      "cards":["fridge","reheat"],"chillIn":"iceWater","storeC":4,"fridgeC":4,"freezerC":-18,
                      "displayUnits":"us"},
             "portions":[{"id":"K-1","food":{"id":"pork-loin","form":"intact"},
                          "geometry":{"shape":"slab","thicknessMm":45,"arrangement":{}},
                          "thicknessSpreadMm":3,"start":{"temperatureC":4},"pack":{"salted":true}},
                         {"id":"K-2","food":{"id":"trout"},"geometry":{"shape":"cylinder","diameterMm":25},
                          "measuredMm":[24,25,26,27,28],"start":{"temperatureC":4}}]}""";

    private static final String TABLE = """
            {"parameterSet":"2026.1","food":{"id":"pork-loin","form":"intact"},
             "geometry":{"shape":"brick","widthMm":90,"lengthMm":180,"arrangement":{}},
             "thickness":{"fromMm":20,"toMm":40},"setpoint":{"fromC":58,"toC":62},"start":{"fromC":2,"toC":6},
             "surroundings":{"bath":{"stirring":"still"},"altitudeM":300},
             "target":{"purpose":"serve","coreC":57,"withinK":0.5},"eater":"general","rule":"us-fsis-2021",
             "tolerances":{"thicknessMm":2},"pack":{"salted":true},
             "quantities":["safe","goodUntil"],"withinPercent":5,"longestBytes":2048,"sentences":false}""";

    /** Enough to make any list too long. */
    private static final int MANY = 40;

    /** Values that clients send where something else belongs. */
    private static final List<String> ODD = List.of(
            "null",
            "true",
            "0",
            "-0.0",
            "1",
            "2.5",
            "-127",
            "85.0",
            "135",
            "1e9",
            "-1e9",
            "1e-400",
            "9007199254740993",
            "123456789012345678901234567890",
            "\"\"",
            "\"45\"",
            "\"45,5\"",
            "\"NaN\"",
            "\"Infinity\"",
            "\"slab\"",
            "\"SLAB\"",
            "\"raw\"",
            "\"pork-loin\"",
            "\"\\u0000\"",
            "\"\\ud83c\\udf56\"",
            "\"<b>\"",
            "{}",
            "[]",
            "[1]",
            "[[[]]]",
            "{\"shape\":\"slab\"}",
            "{\"a\":{\"b\":null}}");

    /** Faults between fields, which a schema without unions cannot say. */
    private static final Set<String> BEYOND_THE_SCHEMA = Set.of(
            "ONE_OF_REQUIRED",
            "COMPANION_MISSING",
            "RANGE_REVERSED",
            "FIELDS_EXCLUDE_EACH_OTHER",
            "SIZE_MISSING",
            "SIZE_NOT_OF_SHAPE",
            "SIZES_CONTRADICT",
            "MEMBER_MISSING",
            "MEMBER_NOT_OF_STEP",
            "SUM_NOT_WHOLE",
            "LENGTHS_DIFFER",
            "TIMES_NOT_ASCENDING",
            "TIMES_NOT_RISING",
            "IDS_NOT_UNIQUE",
            "DUPLICATE_FIELD");

    private final Random random = new Random(SEED);

    @Test
    void damaged_trees_are_refused_by_name_exactly_when_the_contract_says_so() {
        refusedExactlyByTheContract(FULL, CookPlanRequest.class);
        refusedExactlyByTheContract(CHILL, ChillPlanRequest.class);
        refusedExactlyByTheContract(LOG, LogReviewRequest.class);
        refusedExactlyByTheContract(REPLAN, ReplanRequest.class);
        refusedExactlyByTheContract(WINDOW, ProcessWindowRequest.class);
        refusedExactlyByTheContract(LOAD, LoadPlanRequest.class);
        refusedExactlyByTheContract(SHEET, PortionSheetRequest.class);
        refusedExactlyByTheContract(TABLE, LookupTableRequest.class);
    }

    private void refusedExactlyByTheContract(String full, Class<? extends Record> type) {
        Schema contract = OpenApiTest.schema(type.getSimpleName());
        assertThat(codes(full.getBytes(StandardCharsets.UTF_8), Wire.JSON, type))
                .isEmpty();
        int refused = 0;
        for (int i = 0; i < REQUESTS; i++) {
            JsonNode tree = READER.readTree(full);
            for (int damages = 1 + random.nextInt(3); damages > 0; damages--) {
                damage((ObjectNode) tree);
            }
            boolean valid = contract.validate(tree).isEmpty();
            byte[] text = READER.writeValueAsBytes(tree);
            List<String> codes = codes(text, Wire.JSON, type);
            assertThat(codes(CBOR_READER.writeValueAsBytes(tree), Wire.CBOR, type))
                    .as(tree.toString())
                    .isEqualTo(codes);
            boolean ofTheSchema = codes.stream().anyMatch(code -> !BEYOND_THE_SCHEMA.contains(code));
            assertThat(ofTheSchema).as(codes + " " + tree).isNotEqualTo(valid);
            refused += codes.isEmpty() ? 0 : 1;
        }
        assertThat(refused).isGreaterThan(REQUESTS / 2);
    }

    private static List<String> codes(byte[] body, Wire wire, Class<? extends Record> type) {
        try {
            RequestReader.read(body, wire, type);
            return List.of();
        } catch (RequestRefused e) {
            return e.faults().stream().map(fault -> fault.code().name()).toList();
        }
    }

    @Test
    void damaged_bytes_never_break_the_service() {
        for (int i = 0; i < REQUESTS / 10; i++) {
            String type = random.nextBoolean() ? JSON : CBOR;
            int which = random.nextInt(10);
            List<String> fulls = List.of(CHILL, LOG, REPLAN, WINDOW, LOAD, SHEET, TABLE);
            List<String> paths = List.of(CHILLS, LOGS, REPLANS, WINDOWS, LOADS, SHEETS, TABLES);
            String full = which >= fulls.size() ? FULL : fulls.get(which);
            String operation = which >= paths.size() ? PLANS : paths.get(which);
            byte[] body = damagedBytes(type.equals(CBOR) ? cbor(full) : full.getBytes(StandardCharsets.UTF_8));
            assertNamed(http().contentType(type).accept(type).body(body).post(operation), body);
        }
    }

    @Test
    void noise_never_breaks_the_service() {
        for (int i = 0; i < REQUESTS; i++) {
            byte[] body = new byte[1 + random.nextInt(200)];
            random.nextBytes(body);
            for (Wire wire : Wire.values()) {
                assertThat(codes(body, wire, CookPlanRequest.class))
                        .as(HexFormat.of().formatHex(body))
                        .isNotEmpty();
            }
        }
    }

    private static void assertNamed(Response response, byte[] body) {
        String shown = HexFormat.of().formatHex(body);
        assertThat(response.statusCode()).as(shown).isIn(200, 400, 422);
        if (response.statusCode() != 200) {
            JsonNode problem = READER.readTree(response.asByteArray());
            assertThat(ProblemCode.find(problem.at("/code").asString()))
                    .as(shown)
                    .isPresent();
            assertThat(problem.at("/errors")).as(shown).isNotEmpty();
            for (JsonNode fault : problem.at("/errors")) {
                assertThat(fault.at("/pointer").asString()).as(shown).startsWith("#");
                assertThat(fault.at("/value").asString("")).as(shown).hasSizeLessThanOrEqualTo(64);
            }
        }
    }

    private void damage(ObjectNode tree) {
        List<ObjectNode> objects = new ArrayList<>();
        List<ArrayNode> lists = new ArrayList<>();
        List<JsonNode> nodes = new ArrayList<>(List.of(tree));
        for (int i = 0; i < nodes.size(); i++) {
            if (nodes.get(i) instanceof ObjectNode object) {
                objects.add(object);
            } else if (nodes.get(i) instanceof ArrayNode list) {
                lists.add(list);
            }
            nodes.get(i).forEach(nodes::add);
        }
        if (!lists.isEmpty() && random.nextInt(6) == 0) {
            damage(lists.get(random.nextInt(lists.size())));
            return;
        }
        ObjectNode object = objects.get(random.nextInt(objects.size()));
        List<String> names = new ArrayList<>(object.propertyNames());
        JsonNode odd = READER.readTree(ODD.get(random.nextInt(ODD.size())));
        if (names.isEmpty()) {
            object.set("odd", odd);
            return;
        }
        String name = names.get(random.nextInt(names.size()));
        switch (random.nextInt(5)) {
            case 0 -> object.remove(name);
            case 1 -> object.set(name.isEmpty() ? "odd" : name.substring(1), odd);
            case 2 -> {
                ArrayNode list = READER.createArrayNode();
                list.add(object.get(name));
                object.set(name, list);
            }
            default -> object.set(name, odd);
        }
    }

    private void damage(ArrayNode list) {
        JsonNode odd = READER.readTree(ODD.get(random.nextInt(ODD.size())));
        switch (list.isEmpty() ? 0 : random.nextInt(4)) {
            case 0 -> list.add(odd);
            case 1 -> list.set(random.nextInt(list.size()), odd);
            case 2 -> list.remove(random.nextInt(list.size()));
            default -> {
                JsonNode item = list.get(random.nextInt(list.size()));
                for (int more = random.nextInt(MANY); more > 0; more--) {
                    list.add(item.deepCopy());
                }
            }
        }
    }

    private byte[] damagedBytes(byte[] whole) {
        byte[] body = whole.clone();
        for (int damages = 1 + random.nextInt(3); damages > 0; damages--) {
            int place = random.nextInt(body.length);
            switch (random.nextInt(3)) {
                case 0 -> body[place] = (byte) random.nextInt(256);
                case 1 -> body = Arrays.copyOf(body, Math.max(1, place));
                default -> {
                    byte[] longer = Arrays.copyOf(body, body.length + 1);
                    System.arraycopy(body, place, longer, place + 1, body.length - place);
                    longer[place] = (byte) random.nextInt(256);
                    body = longer;
                }
            }
        }
        return body;
    }
}
