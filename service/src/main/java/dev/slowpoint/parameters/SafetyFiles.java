package dev.slowpoint.parameters;

import dev.slowpoint.food.FoodGroup;
import dev.slowpoint.food.Provenance;
import dev.slowpoint.heat.Exp;
import dev.slowpoint.safety.CardinalGrowth;
import dev.slowpoint.safety.CentralKinetics;
import dev.slowpoint.safety.Clause;
import dev.slowpoint.safety.GrowthLaw;
import dev.slowpoint.safety.GrowthScope;
import dev.slowpoint.safety.GrowthSubject;
import dev.slowpoint.safety.Hazard;
import dev.slowpoint.safety.InactivationLine;
import dev.slowpoint.safety.Provision;
import dev.slowpoint.safety.Purpose;
import dev.slowpoint.safety.Rat2Growth;
import dev.slowpoint.safety.Requirement;
import dev.slowpoint.safety.Rule;
import dev.slowpoint.safety.RuleBook;
import dev.slowpoint.safety.RuleLimits;
import dev.slowpoint.safety.SafetyKnowledge;
import dev.slowpoint.safety.SquareRootGrowth;
import dev.slowpoint.safety.TimeTable;
import dev.slowpoint.safety.Topic;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.regex.Pattern;

/** The files of a parameter set that speak of safety. */
final class SafetyFiles {

    /** Names of all files read here, in the order of reading. */
    static final List<String> NAMES = List.of(
            "inactivation.csv",
            "central-kinetics.csv",
            "tables.csv",
            "fsis-tables.csv",
            "treatment-tables.csv",
            "rules.csv",
            "requirements.csv",
            "clauses.csv",
            "growth.csv",
            "limits.csv");

    private static final Pattern BLANKS = Pattern.compile(" +");
    private static final double HOUR = 3600.0;
    private static final double DAY = 86400.0;

    private final Function<String, CsvTable> tables;

    private SafetyFiles(Function<String, CsvTable> tables) {
        this.tables = tables;
    }

    /**
     * Reads and checks all files.
     *
     * @param source of a table by the name of its file
     */
    static SafetyKnowledge read(Function<String, CsvTable> source) {
        SafetyFiles files = new SafetyFiles(source);
        Map<String, InactivationLine> lines = files.lines();
        Map<String, TimeTable> tables = files.tables();
        RuleBook rules = files.rules(files.provisions(lines, tables), files.clauses());
        Map<String, GrowthLaw> growth = new LinkedHashMap<>();
        Map<Hazard, GrowthLaw> whileWarming = new LinkedHashMap<>();
        files.readGrowth(growth, whileWarming);
        SafetyLimits limits = new SafetyLimits(files.table("limits.csv"));
        Map<String, RuleLimits> byRule = files.ruleLimits(limits, rules);
        RuleLimits usual = Objects.requireNonNull(byRule.get(rules.defaultRule()));
        return new SafetyKnowledge(
                rules,
                lines,
                files.central(),
                tables,
                growth,
                limits.warmUpGrowth(whileWarming),
                limits.heatAdaptation(),
                usual.warmUp(),
                limits.cooling(),
                limits.freezing(),
                limits.exposure(),
                usual.coldStorage(),
                limits.hotHolding(),
                byRule);
    }

    private CsvTable table(String name) {
        return tables.apply(name);
    }

    private Map<String, InactivationLine> lines() {
        Map<String, InactivationLine> lines = new LinkedHashMap<>();
        for (CsvTable.Row row : table("inactivation.csv").rowsUniqueBy("id")) {
            String id = row.text("id");
            lines.put(
                    id,
                    new InactivationLine(
                            id,
                            row.word(Hazard.class, "hazard"),
                            row.text("matrix"),
                            row.number("reference_c"),
                            row.number("d_s"),
                            row.number("z_k"),
                            row.optionalNumber("z_above_reference_k"),
                            row.number("lowest_tested_c"),
                            row.number("highest_tested_c"),
                            row.text("use"),
                            row.provenance()));
        }
        return lines;
    }

    private List<CentralKinetics> central() {
        List<CentralKinetics> central = new ArrayList<>();
        for (CsvTable.Row row : table("central-kinetics.csv").rowsUniqueBy("id")) {
            central.add(new CentralKinetics(
                    new InactivationLine(
                            row.text("id"),
                            row.word(Hazard.class, "hazard"),
                            row.text("matrix"),
                            row.number("reference_c"),
                            row.number("d_s"),
                            row.number("z_k"),
                            row.optionalNumber("z_above_reference_k"),
                            row.number("lowest_tested_c"),
                            row.number("highest_tested_c"),
                            "probability of missing a target",
                            row.provenance()),
                    words(row, "foods", FoodGroup.class),
                    row.number("spread_log10_d"),
                    row.provenance("spread_mark", "spread_source")));
        }
        return central;
    }

    private Map<String, TimeTable> tables() {
        Map<String, List<CsvTable.Row>> rowsByTable = new LinkedHashMap<>();
        for (String file : List.of("fsis-tables.csv", "treatment-tables.csv")) {
            for (CsvTable.Row row : table(file).rows()) {
                rowsByTable
                        .computeIfAbsent(row.text("table"), id -> new ArrayList<>())
                        .add(row);
            }
        }
        Map<String, TimeTable> tables = new LinkedHashMap<>();
        for (CsvTable.Row head : table("tables.csv").rowsUniqueBy("id")) {
            String id = head.text("id");
            List<CsvTable.Row> rows = rowsByTable.remove(id);
            if (rows == null) {
                throw head.fault("id", "has no rows in any file of tables");
            }
            tables.put(id, timeTable(head, rows));
        }
        if (!rowsByTable.isEmpty()) {
            throw rowsByTable
                    .values()
                    .iterator()
                    .next()
                    .get(0)
                    .fault("table", "names a table that is not in tables.csv");
        }
        return tables;
    }

    private static TimeTable timeTable(CsvTable.Row head, List<CsvTable.Row> rows) {
        TreeMap<Double, TreeMap<Double, Double>> secondsByFat = new TreeMap<>();
        for (CsvTable.Row row : rows) {
            double fat = row.optionalNumber("fat_percent").orElse(Double.POSITIVE_INFINITY);
            Double twice = secondsByFat
                    .computeIfAbsent(fat, f -> new TreeMap<>())
                    .put(row.number("temperature_c"), row.number("time_s"));
            if (twice != null) {
                throw row.fault("temperature_c", "stands twice for this table and fat");
            }
        }
        Set<Double> temperatures = secondsByFat.firstEntry().getValue().keySet();
        double[][] seconds = secondsByFat.values().stream()
                .map(column -> {
                    if (!column.keySet().equals(temperatures)) {
                        throw head.fault("id", "has columns with different temperatures");
                    }
                    return column.values().stream()
                            .mapToDouble(Double::doubleValue)
                            .toArray();
                })
                .toArray(double[][]::new);
        boolean anyFat = secondsByFat.size() == 1 && secondsByFat.firstKey().isInfinite();
        if (!anyFat && secondsByFat.lastKey().isInfinite()) {
            throw head.fault("id", "has rows with and without fat");
        }
        return new TimeTable(
                head.text("id"),
                head.text("product"),
                head.word(Hazard.class, "hazard"),
                target(head, head.word(Unit.class, "unit")),
                temperatures.stream().mapToDouble(Double::doubleValue).toArray(),
                anyFat
                        ? new double[0]
                        : secondsByFat.keySet().stream()
                                .mapToDouble(Double::doubleValue)
                                .toArray(),
                seconds,
                head.provenance());
    }

    private RuleBook rules(List<Provision> provisions, List<Clause> clauses) {
        List<Rule> rules = new ArrayList<>();
        Optional<String> chosen = Optional.empty();
        for (CsvTable.Row row : table("rules.csv").rowsUniqueBy("id")) {
            rules.add(new Rule(
                    row.text("id"),
                    row.text("name"),
                    row.text("jurisdiction"),
                    row.text("edition"),
                    row.provenance(),
                    row.optionalText("note").orElse("")));
            if (row.word(YesNo.class, "default") == YesNo.YES) {
                if (chosen.isPresent()) {
                    throw row.fault("default", "is a second default beside " + chosen.get());
                }
                chosen = Optional.of(row.text("id"));
            }
        }
        return new RuleBook(
                rules,
                chosen.orElseThrow(() -> new IllegalArgumentException("rules.csv: no rule is the default")),
                provisions,
                clauses);
    }

    /** What counts with each rule; what is the rule's own must be among its clauses, and nothing else is. */
    private Map<String, RuleLimits> ruleLimits(SafetyLimits limits, RuleBook book) {
        Map<String, RuleLimits> byRule = new LinkedHashMap<>();
        for (CsvTable.Row row : table("rules.csv").rows()) {
            String id = row.text("id");
            Set<Topic> own = row.optionalText("own").isEmpty() ? Set.of() : words(row, "own", Topic.class);
            for (Topic topic : own) {
                if (book.clauses(id, topic).isEmpty()) {
                    throw row.fault("own", "names " + topic + ", of which clauses.csv has nothing for this rule");
                }
            }
            byRule.put(
                    id,
                    new RuleLimits(
                            limits.warmUp(row, "warm_up"),
                            known(row, "hot_holding", limits.hotHolding(), row.text("hot_holding")),
                            known(row, "cooling", limits.cooling(), row.text("cooling")),
                            limits.coldStorage(row, "storage"),
                            own));
        }
        return byRule;
    }

    private List<Clause> clauses() {
        List<Clause> clauses = new ArrayList<>();
        for (CsvTable.Row row : table("clauses.csv").rowsUniqueBy("id")) {
            clauses.add(new Clause(
                    row.text("id"),
                    BLANKS.splitAsStream(row.text("rules")).toList(),
                    row.word(Topic.class, "topic"),
                    row.text("text"),
                    row.optionalNumber("from_c"),
                    row.optionalNumber("to_c"),
                    row.optionalNumber("limit"),
                    row.optionalText("unit"),
                    row.provenance(),
                    row.optionalText("note")));
        }
        return clauses;
    }

    private List<Provision> provisions(Map<String, InactivationLine> lines, Map<String, TimeTable> tables) {
        List<Provision> provisions = new ArrayList<>();
        for (CsvTable.Row row : table("requirements.csv").rowsUniqueBy("id")) {
            Hazard hazard = row.word(Hazard.class, "hazard");
            Optional<InactivationLine> line = row.optionalText("line").map(id -> known(row, "line", lines, id));
            Optional<TimeTable> table = row.optionalText("tables").map(ids -> longest(row, tables, ids));
            if (line.filter(l -> l.hazard() != hazard).isPresent()
                    || table.filter(t -> t.hazard() != hazard).isPresent()) {
                throw row.fault("hazard", "is not that of the line or table");
            }
            Unit unit = row.word(Unit.class, "unit");
            double target = target(row, unit);
            if (table.filter(t -> t.target() != target).isPresent()) {
                throw row.fault("target", "is not that of the table");
            }
            OptionalDouble floor = row.optionalNumber("floor_c");
            if (floor.isEmpty() && table.isEmpty()) {
                throw row.fault("floor_c", "must not be empty without a table");
            }
            // Listeria: Quintavalla and Campanini 1991, DMRI 2014; Salmonella: Stasiewicz et al. 2008. Other cells
            // alike.
            boolean adapts = hazard.kind() == Hazard.Kind.CELLS;
            Requirement requirement = new Requirement(
                    row.text("id"),
                    hazard,
                    target,
                    unit == Unit.TREATMENT,
                    line,
                    table.map(t -> t.column(OptionalDouble.empty())),
                    floor.orElseGet(() ->
                            table.orElseThrow().column(OptionalDouble.empty()).lowestC()),
                    row.word(Role.class, "role") == Role.ADVISES,
                    row.word(YesNo.class, "surface_only") == YesNo.YES,
                    adapts,
                    row.provenance(),
                    row.optionalText("note").orElse(""));
            provisions.add(new Provision(
                    row.text("rule"),
                    row.word(Provision.Basis.class, "basis"),
                    words(row, "groups", FoodGroup.class),
                    row.word(Provision.Pieces.class, "pieces"),
                    words(row, "purposes", Purpose.class),
                    table,
                    requirement));
        }
        return provisions;
    }

    private static TimeTable longest(CsvTable.Row row, Map<String, TimeTable> tables, String ids) {
        return BLANKS.splitAsStream(ids)
                .map(id -> known(row, "tables", tables, id))
                .reduce(TimeTable::longerOf)
                .orElseThrow();
    }

    private static double target(CsvTable.Row row, Unit unit) {
        double target = row.number("target");
        if (unit == Unit.TREATMENT && target != 1.0) {
            throw row.fault("target", "must be 1 for a whole treatment");
        }
        return target;
    }

    private void readGrowth(Map<String, GrowthLaw> growth, Map<Hazard, GrowthLaw> whileWarming) {
        for (CsvTable.Row row : table("growth.csv").rowsUniqueBy("id")) {
            GrowthLaw law = growthLaw(row);
            growth.put(row.text("id"), law);
            if (row.optionalText("warm_up").isEmpty()) {
                continue;
            }
            for (Hazard hazard : words(row, "warm_up", Hazard.class)) {
                if (whileWarming.put(hazard, law) != null) {
                    throw row.fault("warm_up", "names " + hazard + ", which another row has already");
                }
            }
        }
    }

    private static GrowthLaw growthLaw(CsvTable.Row row) {
        Form form = row.word(Form.class, "form");
        Provenance provenance = row.provenance();
        GrowthSubject subject = new GrowthSubject(
                row.text("id"),
                row.word(Hazard.class, "hazard"),
                row.text("matrix"),
                row.optionalNumber("h0").orElse(0.0),
                row.text("use"),
                new GrowthScope(
                        row.number("tested_from_c"),
                        row.number("tested_to_c"),
                        row.number("grows_from_c"),
                        row.number("grows_to_c"),
                        row.optionalText("told").isEmpty() ? Set.of() : words(row, "told", GrowthScope.Occasion.class),
                        words(row, "foods", FoodGroup.class)),
                provenance);
        double unit = (row.word(Base.class, "base") == Base.LN ? 1.0 / Exp.LN_10 : 1.0)
                / (form == Form.SQRT_DAY ? DAY : HOUR);
        double lowest = row.number("t_min_c");
        double highest = row.number("t_max_c");
        return switch (form) {
            case RAT2 -> new Rat2Growth(subject, row.number("a"), row.number("c"), lowest, highest, unit);
            case SQRT, SQRT_DAY ->
                new SquareRootGrowth(subject, row.number("a"), lowest, row.number("hold_from_c"), highest, unit);
            case GAMMA ->
                SquareRootGrowth.fromReference(
                        subject,
                        row.number("rate_per_h"),
                        row.number("rate_at_c"),
                        lowest,
                        row.number("hold_from_c"),
                        highest,
                        unit);
            case CTMI ->
                new CardinalGrowth(subject, row.number("rate_per_h"), lowest, row.number("t_opt_c"), highest, unit);
        };
    }

    /** The constants that a cell names, separated by blanks; all of them for {@code any}. */
    private static <E extends Enum<E>> Set<E> words(CsvTable.Row row, String column, Class<E> type) {
        String cell = row.text(column);
        if (cell.equals("any")) {
            return EnumSet.allOf(type);
        }
        Set<E> found = EnumSet.noneOf(type);
        for (String word : BLANKS.splitAsStream(cell).toList()) {
            try {
                found.add(Enum.valueOf(type, word.replace('-', '_').toUpperCase(Locale.ROOT)));
            } catch (IllegalArgumentException e) {
                throw row.fault(column, "holds '" + word + "', which is none of " + EnumSet.allOf(type));
            }
        }
        return found;
    }

    private static <T> T known(CsvTable.Row row, String column, Map<String, T> all, String id) {
        T found = all.get(id);
        if (found == null) {
            throw row.fault(column, "names '" + id + "', which is none of " + all.keySet());
        }
        return found;
    }

    private enum Unit {
        LOG10,
        TREATMENT
    }

    private enum Role {
        DECIDES,
        ADVISES
    }

    private enum YesNo {
        YES,
        NO
    }

    private enum Base {
        LN,
        LOG10
    }

    private enum Form {
        RAT2,
        SQRT,
        SQRT_DAY,
        GAMMA,
        CTMI
    }
}
