package dev.slowpoint.safety;

import static org.assertj.core.api.Assertions.assertThat;

import dev.slowpoint.food.Condition;
import dev.slowpoint.food.FoodGroup;
import dev.slowpoint.food.Form;
import dev.slowpoint.heat.Dose;
import dev.slowpoint.heat.PointHistory;
import dev.slowpoint.parameters.ShippedSafety;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.MappingIterator;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.dataformat.csv.CsvMapper;
import tools.jackson.dataformat.csv.CsvSchema;

/**
 * Every row of checks.csv: numbers printed in the published rules and papers, and figures worked out from them by hand.
 * Each row names its source. A row of a kind that is not known here fails.
 */
class PublishedChecksTest {

    private static final SafetyKnowledge KNOWN = ShippedSafety.KNOWLEDGE;
    private static final JsonMapper JSON = JsonMapper.builder().build();
    private static final OptionalDouble NO_FAT = OptionalDouble.empty();

    /** Tables that a row of checks means by its product. */
    private static final Map<String, List<String>> TABLES = Map.of(
            "meat 5.0", List.of("fsis-meat-5.0"),
            "meat 6.5", List.of("fsis-meat-6.5"),
            "meat 7.0", List.of("fsis-meat-7.0"),
            "chicken 7.0", List.of("fsis-chicken-7.0"),
            "turkey 7.0", List.of("fsis-turkey-7.0"),
            "duck 7.0", List.of("fsis-chicken-7.0", "fsis-turkey-7.0"),
            "non-intact meat", List.of("food-code-non-intact"));

    /** Rows that say, in their source, that the measured points count and not the line. */
    private static final Map<String, String> MEASURED =
            Map.of("K-STEC-BEEF", "stec-beef-measured", "K-CAMP-CHICK", "campylobacter-chicken-measured");

    private static final List<Row> ROWS = read();

    private record Row(
            String id, String kind, JsonNode input, String rule, String expected, String unit, String tolerance) {

        double number(String field) {
            return input.get(field).asDouble();
        }

        boolean has(String field) {
            return input.has(field) && !input.get(field).isNull();
        }

        OptionalDouble fat() {
            return has("fat_pct") ? OptionalDouble.of(number("fat_pct")) : NO_FAT;
        }

        @Override
        public String toString() {
            return id + " " + kind + " " + rule;
        }
    }

    static List<Row> rows() {
        return ROWS;
    }

    @Test
    void all_rows_are_there() {
        assertThat(ROWS).hasSize(117);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("rows")
    void published_figure_is_met(Row row) {
        switch (row.kind()) {
            case "table_time" -> close(row, column(row).atRowBelowS(row.number("T_C")));
            case "table_time_lower_row" -> close(row, column(row).atRowBelowS(row.number("T_C")));
            case "table_time_loglinear" -> close(row, column(row).interpolatedS(row.number("T_C")));
            case "unsupported" -> unsupported(row);
            case "iso_log", "iso_log_factor" -> close(row, isoLog(row));
            case "required_time" -> close(row, requiredS(row));
            case "ramp_log" -> close(row, rampLog(row));
            case "exp_log" ->
                close(
                        row,
                        Dose.of(line(row).killFrom(row.number("floor_C")), approach(row))
                                .total());
            case "exp_time_below" -> close(row, approach(row).firstAtOrAbove(row.number("below_C")));
            case "exp_cut" -> close(row, warmUp(approach(row)).warmUpS());
            case "rule" -> rule(row);
            case "rule_other_row" -> otherRow(row);
            case "recook_target" -> close(row, recookTarget(row));
            case "sensor" -> close(row, sensorF(row));
            case "stats" -> close(row, ProbabilityMargin.provenBySixTrials(row.number("mean_log"), row.number("sd")));
            case "probability" -> probability(row);
            case "growth_iso" ->
                close(
                        row,
                        growth(row)
                                .grownLog10(
                                        Histories.constant(row.number("T_C"), 3600.0 * row.number("h")),
                                        3600.0 * row.number("h"),
                                        0.0));
            case "growth_dyn" -> close(row, growthWhileChanging(row));
            case "margin" -> margin(row);
            default -> throw new AssertionError("no check of kind " + row.kind());
        }
    }

    private static RequiredTime column(Row row) {
        String key = row.input().get("product").asString() + (row.has("log10") ? " " + row.number("log10") : "");
        return Objects.requireNonNull(TABLES.get(key), key).stream()
                .map(KNOWN.tables()::get)
                .reduce(TimeTable::longerOf)
                .orElseThrow()
                .column(row.fat());
    }

    private static void unsupported(Row row) {
        boolean poultry = row.input().get("product").asString().equals("chicken");
        List<Requirement> asked = asked(poultry ? FoodGroup.CHICKEN : FoodGroup.BEEF, Form.MINCED, row.fat());
        PointHistory day = Histories.constant(row.number("T_C"), 86400.0);
        Judgement judgement = KNOWN.judge().judge(asked, day, 86400.0, Judging.worstCase(ReadingError.NONE));
        assertThat(judgement.verdict()).isEqualTo(Verdict.NOT_MET);
        assertThat(judgement.governing().orElseThrow().deliveredLog10()).isZero();
        assertThat(judgement.safeAt()).isInfinite();
        RequiredTime column =
                judgement.governing().orElseThrow().requirement().table().orElseThrow();
        assertThat(column.atRowBelowS(row.number("T_C"))).isInfinite();
        assertThat(row.expected()).isEqualTo(column.lowestC() > 57.0 ? "POULTRY-BELOW-58" : "CORE-BELOW-54");
    }

    private static double isoLog(Row row) {
        double seconds = 60.0 * row.number("t_min");
        String measured = MEASURED.get(row.rule());
        if (measured != null) {
            return seconds
                    / Objects.requireNonNull(KNOWN.tables().get(measured))
                            .column(NO_FAT)
                            .interpolatedS(row.number("T_C"));
        }
        double factor = row.has("D_factor") ? row.number("D_factor") : 1.0;
        return seconds / line(row).slowerBy(factor).decimalReductionS(row.number("T_C"));
    }

    private static double requiredS(Row row) {
        return line(row).requiredS(row.number("log10"), row.number("T_C"));
    }

    private static double rampLog(Row row) {
        double ramp = row.number("t_min");
        double hold = row.number("then_hold_min");
        PointHistory core = hold > 0.0
                ? Histories.minutes(
                        0.0, row.number("from_C"), ramp, row.number("to_C"), ramp + hold, row.number("to_C"))
                : Histories.minutes(0.0, row.number("from_C"), ramp, row.number("to_C"));
        double floor = row.has("floor_C") ? row.number("floor_C") : -300.0;
        return Dose.of(line(row).killFrom(floor), core).total();
    }

    private static PointHistory approach(Row row) {
        double minutes = row.has("t_min") ? row.number("t_min") : 6.0 * row.number("tau_min");
        return Histories.approach(
                row.number("start_C"), row.number("bath_C"), 60.0 * row.number("tau_min"), 60.0 * minutes, 600);
    }

    private static WarmUpClock warmUp(PointHistory core) {
        return WarmUpClock.of(core, core.end(), ReadingError.NONE, KNOWN.warmUp());
    }

    private static void rule(Row row) {
        String rule = row.rule();
        boolean passes;
        if (rule.equals("A-CUT-6H")) {
            passes = warmUp(history(row)).pace() != WarmUpClock.Pace.TOO_SLOW;
        } else if (KNOWN.cooling().containsKey(rule)) {
            passes = Objects.requireNonNull(KNOWN.cooling().get(rule)).kept(history(row), 0.0);
        } else if (KNOWN.freezing().containsKey(rule)) {
            double seconds = 3600.0 * row.number("h");
            passes = Objects.requireNonNull(KNOWN.freezing().get(rule)).met(row.number("freeze_C"), seconds);
            // The same row of the checks says that the European rule accepts what the Food Code refuses.
            assertThat(Objects.requireNonNull(KNOWN.freezing().get("EU-PAR-20")).met(row.number("freeze_C"), seconds))
                    .isTrue();
        } else if (rule.startsWith("X-")) {
            ExposureLimit limit = KNOWN.exposure()
                    .at(Hazard.C_BOTULINUM_NON_PROTEOLYTIC, row.number("T_C"))
                    .orElseThrow();
            assertThat(limit.id()).isEqualTo(rule);
            passes = limit.keptBy(86400.0 * row.number("days"));
        } else {
            String table = rule.equals("EU-PAR-HEAT") ? "anisakis-eu" : "trichinella";
            assertThat(rule).matches("EU-PAR-HEAT|K-TRICH-\\d+");
            passes = 60.0 * row.number("t_min")
                    >= Objects.requireNonNull(KNOWN.tables().get(table))
                            .column(NO_FAT)
                            .atRowBelowS(row.number("T_C"));
        }
        assertThat(passes ? "pass" : "fail").isEqualTo(row.expected().substring(0, 4));
    }

    private static PointHistory history(Row row) {
        List<Double> flat = new ArrayList<>();
        row.input().get("history").forEach(pair -> pair.forEach(x -> flat.add(x.asDouble())));
        return Histories.minutes(flat.stream().mapToDouble(Double::doubleValue).toArray());
    }

    private static void otherRow(Row row) {
        Matcher reached = Pattern.compile("(\\d+) F for (\\d+) s")
                .matcher(row.input().get("reached").asString());
        assertThat(reached.matches()).isTrue();
        double temperatureC = (Double.parseDouble(reached.group(1)) - 32.0) / 1.8 + 0.001;
        PointHistory core = Histories.constant(temperatureC, Double.parseDouble(reached.group(2)));
        Requirement meat = asked(FoodGroup.BEEF, Form.MINCED, NO_FAT).get(0);
        Judgement judgement =
                KNOWN.judge().judge(List.of(meat), core, core.end(), Judging.worstCase(ReadingError.NONE));
        assertThat(judgement.findings().get(0).table().orElseThrow().metAt()).isCloseTo(core.end(), within(1e-3));
        assertThat(row.expected()).isEqualTo("met");
        assertThat(judgement.verdict()).isEqualTo(Verdict.MET);
    }

    private static double recookTarget(Row row) {
        Map<Hazard, Double> grown = new HashMap<>();
        JsonNode growth = row.input().get("predicted_growth_log");
        grown.put(Hazard.SALMONELLA, growth.get("Salmonella").asDouble());
        grown.put(Hazard.E_COLI_O157, growth.get("E. coli O157:H7").asDouble());
        return ReductionTarget.afterGrowth(
                row.number("base_log"), grown, KNOWN.warmUpGrowth().acceptedLog10());
    }

    private static double sensorF(Row row) {
        double requiredC = (row.number("required_F") - 32.0) / 1.8;
        return new ReadingError(row.number("accuracy_F") / 1.8).readingFor(requiredC) * 1.8 + 32.0;
    }

    private static void probability(Row row) {
        double delivered = row.number("log10_delivered_at_nominal_D");
        double meeting = ProbabilityMargin.ofMeeting(delivered, row.number("required"), row.number("sd_log10D"));
        close(row, meeting);
        assertThat(ProbabilityMargin.ofMissing(delivered, row.number("required"), row.number("sd_log10D")))
                .isCloseTo(1.0 - meeting, within(1e-12));
    }

    private static GrowthLaw growth(Row row) {
        return Objects.requireNonNull(KNOWN.growth().get(row.rule()), row.rule());
    }

    private static double growthWhileChanging(Row row) {
        String path = row.has("cooling")
                ? row.input().get("cooling").asString()
                : row.input().get("heating").asString();
        if (path.equals("same")) {
            path = ROWS.stream()
                    .filter(r -> r.id().equals("C087"))
                    .map(r -> r.input().get("cooling").asString())
                    .findFirst()
                    .orElseThrow();
        }
        List<Double> flat = new ArrayList<>(List.of(0.0, Double.parseDouble(path.substring(0, path.indexOf("->")))));
        Matcher leg = Pattern.compile("->([0-9.]+) linear ([0-9.]+) ?h").matcher(path);
        while (leg.find()) {
            flat.add(flat.get(flat.size() - 2) + 60.0 * Double.parseDouble(leg.group(2)));
            flat.add(Double.parseDouble(leg.group(1)));
        }
        PointHistory core =
                Histories.minutes(flat.stream().mapToDouble(Double::doubleValue).toArray());
        return growth(row).grownLog10(core, core.end(), row.number("lag_h0"));
    }

    private static void margin(Row row) {
        boolean beef = row.input().get("product").asString().equals("beef intact");
        Requirement requirement = asked(beef ? FoodGroup.BEEF : FoodGroup.CHICKEN, Form.INTACT, row.fat())
                .get(0);
        PointHistory core = Histories.constant(row.number("T_core_C"), 60.0 * row.number("dwell_min"));
        double grown = row.has("growth_log") ? row.number("growth_log") : 0.0;
        SafetyJudge judge = new SafetyJudge((hazard, history, until) -> grown, KNOWN.heatAdaptation());
        Judgement judgement = judge.judge(
                List.of(requirement), core, core.end(), Judging.worstCase(new ReadingError(row.number("sensor_C"))));
        Finding finding = judgement.findings().get(0);
        double tolerance = Double.parseDouble(row.tolerance());
        if (beef) {
            assertThat(finding.marginLog10()).isCloseTo(Double.parseDouble(row.expected()), within(tolerance));
            return;
        }
        Matcher parts = Pattern.compile("([0-9.]+) min; ratio ([0-9.]+); \\+([0-9.]+) log")
                .matcher(row.expected());
        assertThat(parts.matches()).isTrue();
        assertThat((core.end() - finding.integratedAt()) / 60.0)
                .isCloseTo(Double.parseDouble(parts.group(1)), within(tolerance));
        assertThat(finding.marginRatio()).isCloseTo(Double.parseDouble(parts.group(2)), within(tolerance));
        assertThat(finding.band()).isEqualTo(finding.marginLog10() < 1.0 ? MarginBand.THIN : MarginBand.NORMAL);
        if (row.number("sensor_C") == 0.0) {
            // At a row of the table the legal view and the integral are the same.
            TableView table = finding.table().orElseThrow();
            assertThat(table.marginS() / 60.0).isCloseTo(Double.parseDouble(parts.group(1)), within(tolerance));
            assertThat(table.marginRatio().orElseThrow())
                    .isCloseTo(Double.parseDouble(parts.group(2)), within(tolerance));
        }
        assertThat(finding.marginLog10()).isCloseTo(Double.parseDouble(parts.group(3)), within(tolerance));
    }

    private static List<Requirement> asked(FoodGroup group, Form form, OptionalDouble fat) {
        return KNOWN.rules()
                .requirements("us-fsis-2021", group, form, Condition.RAW, Purpose.SERVE, Eater.GENERAL, fat);
    }

    /** The rows of the FDA tables are points of the lines: 70 C 2 min with z 7.5, and 90 C 10 min with z 7. */
    private static InactivationLine line(Row row) {
        String id = row.rule().startsWith("FDA-LM-")
                ? "K-LM-UK"
                : row.rule().startsWith("FDA-CB-") ? "K-CB-FDA" : row.rule();
        return Objects.requireNonNull(KNOWN.lines().get(id), id);
    }

    private static void close(Row row, double actual) {
        double perUnit = row.unit().equals("min") ? 60.0 : 1.0;
        // A tolerance of zero in the file means exact up to the last digits of binary fractions.
        double tolerance = Math.max(Double.parseDouble(row.tolerance()), 1e-9);
        assertThat(actual / perUnit).isCloseTo(Double.parseDouble(row.expected()), within(tolerance));
    }

    private static Offset<Double> within(double tolerance) {
        return Offset.offset(tolerance);
    }

    private static String cell(Map<String, String> cells, String column) {
        return Objects.requireNonNull(cells.get(column), column);
    }

    private static List<Row> read() {
        List<Row> rows = new ArrayList<>();
        try (InputStream in =
                        Objects.requireNonNull(PublishedChecksTest.class.getResourceAsStream("/safety/checks.csv"));
                MappingIterator<Map<String, String>> lines = new CsvMapper()
                        .readerForMapOf(String.class)
                        .with(CsvSchema.emptySchema().withHeader())
                        .readValues(in)) {
            while (lines.hasNext()) {
                Map<String, String> cells = lines.next();
                rows.add(new Row(
                        cell(cells, "id"),
                        cell(cells, "kind"),
                        JSON.readTree(cell(cells, "input_json")),
                        cell(cells, "rule_or_kinetic"),
                        cell(cells, "expected"),
                        cell(cells, "unit"),
                        cell(cells, "tolerance")));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        assertThat(new TreeSet<>(rows.stream().map(Row::id).toList())).hasSize(rows.size());
        assertThat(Arrays.asList(rows.get(0).id(), rows.get(116).id())).containsExactly("C001", "C117");
        return List.copyOf(rows);
    }
}
