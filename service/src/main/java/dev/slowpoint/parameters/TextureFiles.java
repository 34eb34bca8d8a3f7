package dev.slowpoint.parameters;

import dev.slowpoint.texture.ArrheniusLaw;
import dev.slowpoint.texture.Confidence;
import dev.slowpoint.texture.Doneness;
import dev.slowpoint.texture.Edge;
import dev.slowpoint.texture.MoistureModel;
import dev.slowpoint.texture.Opening;
import dev.slowpoint.texture.Place;
import dev.slowpoint.texture.ProcessKind;
import dev.slowpoint.texture.TextureClass;
import dev.slowpoint.texture.TextureLevel;
import dev.slowpoint.texture.TextureModel;
import dev.slowpoint.texture.TextureProcess;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/**
 * Reads the texture tables of a parameter set. The files print rates per minute and energies in kJ/mol, as their sources
 * do; here they become 1/s and J/mol.
 */
public final class TextureFiles {

    /** Names of the files this class reads. */
    public static final List<String> NAMES =
            List.of("texture-classes.csv", "texture.csv", "moisture.csv", "doneness.csv");

    private static final double SECONDS_PER_MINUTE = 60.0;
    private static final double JOULES_PER_KILOJOULE = 1000.0;
    /** Juice is lost at any temperature, if slowly: the floor of the loss lies below the coldest freezer [C]. */
    private static final double NO_FLOOR_C = -100.0;

    private TextureFiles() {}

    /**
     * Reads the model.
     *
     * @param files gives the bytes of a file of the set by its name, see {@link #NAMES}
     * @throws IllegalArgumentException naming file, line and column of what is wrong
     */
    public static TextureModel read(Function<String, byte[]> files) {
        Map<String, MoistureModel> curves = curves(table("moisture.csv", files));
        Map<String, List<TextureProcess>> processes = processes(table("texture.csv", files));
        List<TextureClass> classes = new ArrayList<>();
        for (CsvTable.Row row : table("texture-classes.csv", files).rowsUniqueBy("class")) {
            classes.add(textureClass(row, curves, processes));
        }
        if (!processes.isEmpty()) {
            throw new IllegalArgumentException("texture.csv: the food classes " + processes.keySet()
                    + " are parts of no class in texture-classes.csv. Maybe a row is missing there?");
        }
        return new TextureModel(classes, doneness(table("doneness.csv", files)));
    }

    private static CsvTable table(String name, Function<String, byte[]> files) {
        return CsvTable.read(name, files.apply(name));
    }

    private static TextureClass textureClass(
            CsvTable.Row row, Map<String, MoistureModel> curves, Map<String, List<TextureProcess>> processes) {
        List<TextureProcess> own = new ArrayList<>();
        for (String part : row.text("parts").split(" ", -1)) {
            List<TextureProcess> found = processes.remove(part);
            if (found == null) {
                throw row.fault("parts", "names '" + part + "', which has no row left in texture.csv");
            }
            own.addAll(found);
        }
        Optional<String> curve = row.optionalText("moisture");
        if (curve.isPresent() && !curves.containsKey(curve.get())) {
            throw row.fault("moisture", "names '" + curve.get() + "', which is no curve of moisture.csv");
        }
        return new TextureClass(
                row.text("class"),
                row.word(Opening.class, "opens"),
                own,
                curve.map(curves::get),
                curve.isPresent() && dryCloses(row),
                row.optionalText("doneness"),
                row.provenance());
    }

    private static boolean dryCloses(CsvTable.Row row) {
        return switch (row.text("dryness")) {
            case "closes" -> true;
            case "told" -> false;
            default -> throw row.fault("dryness", "must be closes or told");
        };
    }

    /** Processes by food class. Rows that share a clock become the levels of one process, so that it runs once. */
    private static Map<String, List<TextureProcess>> processes(CsvTable table) {
        Map<Clock, List<TextureLevel>> clocks = new LinkedHashMap<>();
        for (CsvTable.Row row : table.rows()) {
            Clock clock = new Clock(
                    row.text("food_class"),
                    row.word(ProcessKind.class, "process"),
                    row.word(Place.class, "evaluated_at"),
                    law(row, row.number("T_min_C"), stopsAboveC(row)));
            clocks.computeIfAbsent(clock, c -> new ArrayList<>())
                    .add(new TextureLevel(
                            row.text("level"),
                            row.word(Edge.class, "edge"),
                            row.number("threshold"),
                            row.number("T_max_C"),
                            row.provenance(),
                            row.word(Confidence.class, "confidence"),
                            row.optionalText("note").orElse("")));
        }
        Map<String, List<TextureProcess>> byClass = new LinkedHashMap<>();
        clocks.forEach((clock, levels) -> byClass.computeIfAbsent(clock.part(), p -> new ArrayList<>())
                .add(new TextureProcess(clock.part(), clock.kind(), clock.place(), clock.law(), levels)));
        return byClass;
    }

    private static double stopsAboveC(CsvTable.Row row) {
        return switch (row.text("above_T_max")) {
            case "law" -> Double.POSITIVE_INFINITY;
            case "zero" -> row.number("T_max_C");
            default -> throw row.fault("above_T_max", "must be law or zero");
        };
    }

    private static ArrheniusLaw law(CsvTable.Row row, double floorC, double stopsAboveC) {
        return new ArrheniusLaw(
                row.number("k_ref_per_min") / SECONDS_PER_MINUTE,
                row.number("T_ref_C"),
                row.number("Ea_kJ_mol") * JOULES_PER_KILOJOULE,
                floorC,
                stopsAboveC);
    }

    private static Map<String, MoistureModel> curves(CsvTable table) {
        Map<String, MoistureModel> curves = new LinkedHashMap<>();
        for (CsvTable.Row row : table.rowsUniqueBy("curve")) {
            curves.put(
                    row.text("curve"),
                    new MoistureModel(
                            row.text("curve"),
                            row.number("L_max_pct"),
                            row.number("T_mid_C"),
                            row.number("s_K"),
                            law(row, NO_FLOOR_C, Double.POSITIVE_INFINITY),
                            row.number("dry_limit_pct"),
                            row.provenance(),
                            row.word(Confidence.class, "confidence"),
                            row.optionalText("note").orElse("")));
        }
        return curves;
    }

    private static List<Doneness> doneness(CsvTable table) {
        return table.rows().stream()
                .map(row -> new Doneness(
                        row.text("scale"),
                        row.text("term"),
                        row.number("core_low_C"),
                        row.number("core_high_C"),
                        row.optionalText("description").orElse(""),
                        row.provenance()))
                .toList();
    }

    /** Rows with the same clock. */
    private record Clock(String part, ProcessKind kind, Place place, ArrheniusLaw law) {}
}
