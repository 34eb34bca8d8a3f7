package dev.slowpoint.parameters;

import dev.slowpoint.safety.ColdStorage;
import dev.slowpoint.safety.CoolingRule;
import dev.slowpoint.safety.ExposureLimit;
import dev.slowpoint.safety.ExposureLimits;
import dev.slowpoint.safety.FreezingRule;
import dev.slowpoint.safety.GrowthLaw;
import dev.slowpoint.safety.Hazard;
import dev.slowpoint.safety.HeatAdaptation;
import dev.slowpoint.safety.HotHoldingLimit;
import dev.slowpoint.safety.WarmUpGrowth;
import dev.slowpoint.safety.WarmUpLimits;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The limits file: each row a limit of some kind on temperature and time. */
final class SafetyLimits {

    private final Map<Kind, List<CsvTable.Row>> byKind = new LinkedHashMap<>();

    SafetyLimits(CsvTable table) {
        for (CsvTable.Row row : table.rowsUniqueBy("id")) {
            byKind.computeIfAbsent(row.word(Kind.class, "kind"), kind -> new ArrayList<>())
                    .add(row);
        }
    }

    /** The warm-up limits with the limit that a cell of another file names. */
    WarmUpLimits warmUp(CsvTable.Row naming, String column) {
        CsvTable.Row limit = named(Kind.WARM_UP, naming, column);
        List<CsvTable.Row> ranges = all(Kind.GROWTH_RANGE);
        CsvTable.Row perfringens = ranges.stream()
                .filter(r -> r.optionalText("hazard").isPresent())
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("limits.csv: no growth range of C. perfringens"));
        CsvTable.Row general = ranges.stream()
                .filter(r -> r.optionalText("hazard").isEmpty())
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("limits.csv: no growth range without a hazard"));
        if (perfringens.word(Hazard.class, "hazard") != Hazard.C_PERFRINGENS) {
            throw perfringens.fault("hazard", "must be c-perfringens in a growth range");
        }
        perfringens.provenance().refuseIfRecalled("limit " + perfringens.text("id"));
        return new WarmUpLimits(
                limit.text("id"),
                limit.optionalNumber("from_c").orElse(WarmUpLimits.ABSOLUTE_ZERO_C),
                limit.number("to_c"),
                seconds(limit),
                seconds(only(Kind.WARM_UP_WARNING)),
                general.number("from_c"),
                general.number("to_c"),
                perfringens.number("to_c"),
                limit.provenance());
    }

    WarmUpGrowth warmUpGrowth(Map<Hazard, GrowthLaw> laws) {
        CsvTable.Row row = only(Kind.GROWTH_ACCEPTED);
        row.provenance().refuseIfRecalled("limit " + row.text("id"));
        return new WarmUpGrowth(laws, row.number("to_c"), row.number("limit"), row.provenance());
    }

    HeatAdaptation heatAdaptation() {
        CsvTable.Row range = only(Kind.HEAT_ADAPTATION);
        CsvTable.Row factor = only(Kind.HEAT_ADAPTATION_FACTOR);
        return new HeatAdaptation(
                range.number("from_c"),
                range.number("to_c"),
                seconds(range),
                factor.number("limit"),
                factor.provenance());
    }

    Map<String, CoolingRule> cooling() {
        Map<String, List<CoolingRule.Stage>> stages = new LinkedHashMap<>();
        for (CsvTable.Row row : all(Kind.COOLING_STAGE)) {
            stages.computeIfAbsent(row.text("rule"), rule -> new ArrayList<>())
                    .add(new CoolingRule.Stage(
                            row.text("id"), row.number("from_c"), row.number("to_c"), seconds(row), row.provenance()));
        }
        Map<String, CoolingRule> rules = new LinkedHashMap<>();
        stages.forEach((id, of) -> rules.put(id, new CoolingRule(id, of)));
        return rules;
    }

    Map<String, FreezingRule> freezing() {
        Map<String, FreezingRule> rules = new LinkedHashMap<>();
        for (CsvTable.Row row : all(Kind.FREEZING)) {
            rules.put(
                    row.text("id"),
                    new FreezingRule(
                            row.text("id"),
                            row.word(Hazard.class, "hazard"),
                            row.number("to_c"),
                            seconds(row),
                            row.provenance(),
                            row.optionalText("note").orElse("")));
        }
        return rules;
    }

    ExposureLimits exposure() {
        return new ExposureLimits(all(Kind.EXPOSURE).stream()
                .map(row -> new ExposureLimit(
                        row.text("id"),
                        row.word(Hazard.class, "hazard"),
                        row.number("from_c"),
                        row.optionalNumber("to_c"),
                        seconds(row),
                        row.provenance()))
                .toList());
    }

    /** Cold storage with the cap that a cell of another file names. */
    ColdStorage coldStorage(CsvTable.Row naming, String column) {
        CsvTable.Row frozen = only(Kind.STORAGE_FROZEN);
        return new ColdStorage(
                exposure(),
                cap(named(Kind.STORAGE_CAP, naming, column)),
                cap(only(Kind.STORAGE_UNPROVEN)),
                new ColdStorage.Cap(
                        frozen.text("id"), frozen.number("to_c"), Double.POSITIVE_INFINITY, frozen.provenance()));
    }

    private static ColdStorage.Cap cap(CsvTable.Row row) {
        return new ColdStorage.Cap(row.text("id"), row.number("to_c"), seconds(row), row.provenance());
    }

    Map<String, HotHoldingLimit> hotHolding() {
        Map<String, HotHoldingLimit> limits = new LinkedHashMap<>();
        for (CsvTable.Row row : all(Kind.HOT_HOLDING)) {
            limits.put(
                    row.text("id"),
                    new HotHoldingLimit(
                            row.text("id"),
                            row.number("from_c"),
                            row.provenance(),
                            row.optionalText("note").orElse("")));
        }
        return limits;
    }

    private List<CsvTable.Row> all(Kind kind) {
        List<CsvTable.Row> rows = byKind.get(kind);
        if (rows == null) {
            throw new IllegalArgumentException("limits.csv: no row of kind " + kind);
        }
        return rows;
    }

    private CsvTable.Row named(Kind kind, CsvTable.Row naming, String column) {
        String id = naming.text(column);
        return all(kind).stream()
                .filter(row -> row.text("id").equals(id))
                .findFirst()
                .orElseThrow(() -> naming.fault(
                        column,
                        "names '" + id + "', which is none of "
                                + all(kind).stream().map(row -> row.text("id")).toList()));
    }

    private CsvTable.Row only(Kind kind) {
        List<CsvTable.Row> rows = all(kind);
        if (rows.size() > 1) {
            throw rows.get(1).fault("kind", "may stand only once");
        }
        return rows.get(0);
    }

    private static double seconds(CsvTable.Row row) {
        return row.number("limit")
                * switch (row.word(Unit.class, "unit")) {
                    case S -> 1.0;
                    case MIN -> 60.0;
                    case H -> 3600.0;
                    case D -> 86400.0;
                };
    }

    private enum Kind {
        WARM_UP,
        WARM_UP_WARNING,
        GROWTH_RANGE,
        GROWTH_ACCEPTED,
        HEAT_ADAPTATION,
        HEAT_ADAPTATION_FACTOR,
        COOLING_STAGE,
        FREEZING,
        EXPOSURE,
        STORAGE_CAP,
        STORAGE_UNPROVEN,
        STORAGE_FROZEN,
        HOT_HOLDING
    }

    private enum Unit {
        S,
        MIN,
        H,
        D
    }
}
