package dev.slowpoint.parameters;

import dev.slowpoint.food.Catalogue;
import dev.slowpoint.food.Component;
import dev.slowpoint.food.ComponentProperties;
import dev.slowpoint.food.Composition;
import dev.slowpoint.food.Condition;
import dev.slowpoint.food.ConductivityBias;
import dev.slowpoint.food.DonenessRange;
import dev.slowpoint.food.Film;
import dev.slowpoint.food.Food;
import dev.slowpoint.food.FoodGroup;
import dev.slowpoint.food.Form;
import dev.slowpoint.food.FreezingModel;
import dev.slowpoint.food.Polynomial;
import dev.slowpoint.food.Provenance;
import dev.slowpoint.food.ThermalModel;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/** Reads what a parameter set says of foods, their thermal properties and the films around them. */
final class FoodFiles {

    static final String COMPONENTS = "components.csv";
    static final String THERMAL_MODEL = "thermal-model.csv";
    static final String FOODS = "foods.csv";
    static final String FILMS = "films.csv";

    /** Unit that each property must have in the file; its keys are the properties. */
    private static final Map<String, String> UNITS =
            new TreeMap<>(Map.of("conductivity", "W/(m K)", "density", "kg/m3", "specific-heat", "J/(kg K)"));

    private FoodFiles() {}

    static ThermalModel thermalModel(ParameterFiles files) {
        NamedValues values = NamedValues.read(files, THERMAL_MODEL);
        return new ThermalModel(
                components(files.table(COMPONENTS)),
                new FreezingModel(
                        values.number("bound_water_per_protein", "kg/kg"),
                        values.number("latent_heat", "J/kg"),
                        new Polynomial(
                                values.number("freezing_point_flesh_c0", "K"),
                                values.number("freezing_point_flesh_c1", "K"),
                                0.0),
                        new Polynomial(
                                values.number("freezing_point_plant_c0", "K"),
                                values.number("freezing_point_plant_c1", "K"),
                                values.number("freezing_point_plant_c2", "K")),
                        values.number("freezing_point_plant_highest", "C")),
                new ConductivityBias(
                        values.number("conductivity_factor_pessimistic", "-"),
                        values.number("conductivity_factor_nominal", "-"),
                        values.number("conductivity_factor_optimistic", "-"),
                        List.of(
                                values.origin("conductivity_factor_pessimistic"),
                                values.origin("conductivity_factor_nominal"),
                                values.origin("conductivity_factor_optimistic"))),
                values.number("density_reference_temperature", "C"));
    }

    private static List<ComponentProperties> components(CsvTable table) {
        List<ComponentProperties> components = new ArrayList<>();
        for (Component component : Component.values()) {
            List<CsvTable.Row> rows = new ArrayList<>();
            for (CsvTable.Row row : table.rows()) {
                if (row.word(Component.class, "component") == component) {
                    requireUnit(row, unitOf(row));
                    rows.add(row);
                }
            }
            components.add(component(component, rows));
        }
        return components;
    }

    private static String unitOf(CsvTable.Row row) {
        String unit = UNITS.get(row.text("property"));
        if (unit == null) {
            throw row.fault("property", "holds '" + row.text("property") + "', which is none of " + UNITS.keySet());
        }
        return unit;
    }

    private static void requireUnit(CsvTable.Row row, String unit) {
        if (!row.text("unit").equals(unit)) {
            throw row.fault("unit", "must be '" + unit + "', but is '" + row.text("unit") + "'");
        }
    }

    /** One row for each property, or for the specific heat two: one that ends at 0 C and one that begins there. */
    private static ComponentProperties component(Component component, List<CsvTable.Row> rows) {
        CsvTable.Row conductivity = only(rows, component, "conductivity");
        CsvTable.Row density = only(rows, component, "density");
        List<CsvTable.Row> heats = new ArrayList<>(rows);
        heats.removeIf(row -> !row.text("property").equals("specific-heat"));
        if (heats.isEmpty() || heats.size() > 2) {
            throw new IllegalArgumentException(COMPONENTS + " must hold one or two rows of specific-heat for "
                    + component + ", but holds " + heats.size());
        }
        CsvTable.Row below = heats.get(0);
        CsvTable.Row above = heats.get(heats.size() - 1);
        if (heats.size() == 2 && !(below.number("highest_C") == 0.0 && above.number("lowest_C") == 0.0)) {
            throw above.fault("lowest_C", "must be 0 in the second of two rows, and highest_C 0 in the first");
        }
        double lowest = Math.max(
                below.number("lowest_C"), Math.max(conductivity.number("lowest_C"), density.number("lowest_C")));
        double highest = Math.min(
                above.number("highest_C"), Math.min(conductivity.number("highest_C"), density.number("highest_C")));
        List<Provenance> origins = new ArrayList<>();
        for (CsvTable.Row row : rows) {
            if (!origins.contains(row.provenance())) {
                origins.add(row.provenance());
            }
        }
        return new ComponentProperties(
                component,
                polynomial(conductivity),
                polynomial(density),
                polynomial(above),
                polynomial(below),
                lowest,
                highest,
                origins);
    }

    private static CsvTable.Row only(List<CsvTable.Row> rows, Component component, String property) {
        List<CsvTable.Row> found = new ArrayList<>(rows);
        found.removeIf(row -> !row.text("property").equals(property));
        if (found.size() != 1) {
            throw new IllegalArgumentException(COMPONENTS + " must hold one row of " + property + " for " + component
                    + ", but holds " + found.size());
        }
        return found.get(0);
    }

    private static Polynomial polynomial(CsvTable.Row row) {
        return new Polynomial(row.number("c0"), row.number("c1"), row.number("c2"));
    }

    static Catalogue catalogue(ParameterFiles files) {
        List<Food> foods = new ArrayList<>();
        for (CsvTable.Row row : files.table(FOODS).rowsUniqueBy("id")) {
            foods.add(food(row));
        }
        return new Catalogue(foods);
    }

    private static Food food(CsvTable.Row row) {
        double freezingPointC = row.number("freezing_point_C");
        if (!(freezingPointC < 0.0)) {
            throw row.fault("freezing_point_C", "holds " + freezingPointC + ", but must lie below zero");
        }
        return new Food(
                row.text("id"),
                row.text("name"),
                row.word(FoodGroup.class, "group"),
                composition(row),
                freezingPointC,
                row.optionalText("texture_class"),
                row.wordSet(Form.class, "forms"),
                row.word(Condition.class, "condition"),
                row.words("hazards"),
                List.of(row.provenance(), row.provenance("freezing_mark", "freezing_source")),
                doneness(row),
                row.yes("wild"));
    }

    private static Composition composition(CsvTable.Row row) {
        double sum = 0.0;
        for (String column : List.of("water", "protein", "fat", "carbohydrate", "fibre", "ash")) {
            double fraction = row.number(column);
            if (!(fraction >= 0.0 && fraction <= 1.0)) {
                throw row.fault(column, "holds " + fraction + ", but a mass fraction lies between 0 and 1");
            }
            sum += fraction;
        }
        if (!(sum > 0.95 && sum < 1.05)) {
            throw row.fault("ash", "the mass fractions up to here add up to " + sum + ", too far from 1");
        }
        return Composition.normalised(
                row.number("water"),
                row.number("protein"),
                row.number("fat"),
                row.number("carbohydrate"),
                row.number("fibre"),
                row.number("ash"));
    }

    private static Optional<DonenessRange> doneness(CsvTable.Row row) {
        if (row.optionalText("doneness_low_C").isEmpty()) {
            return Optional.empty();
        }
        double lowC = row.number("doneness_low_C");
        double highC = row.number("doneness_high_C");
        if (!(lowC >= DonenessRange.LOWEST_C && lowC <= highC && highC <= DonenessRange.HIGHEST_C)) {
            throw row.fault(
                    "doneness_high_C",
                    "the range " + lowC + " to " + highC + " C must rise and lie between " + DonenessRange.LOWEST_C
                            + " and " + DonenessRange.HIGHEST_C + " C");
        }
        return Optional.of(new DonenessRange(lowC, highC, row.provenance("doneness_mark", "doneness_source")));
    }

    static SortedMap<String, Film> films(ParameterFiles files) {
        SortedMap<String, Film> films = new TreeMap<>();
        for (CsvTable.Row row : files.table(FILMS).rowsUniqueBy("id")) {
            requireUnit(row, "W/(m2 K)");
            double low = row.number("low");
            double typical = row.number("typical");
            double high = row.number("high");
            if (!(low > 0.0 && low <= typical && typical <= high)) {
                throw row.fault("typical", "low, typical and high must be positive and rise");
            }
            films.put(row.text("id"), new Film(row.text("id"), row.text("name"), low, typical, high, row.provenance()));
        }
        return Collections.unmodifiableSortedMap(films);
    }
}
