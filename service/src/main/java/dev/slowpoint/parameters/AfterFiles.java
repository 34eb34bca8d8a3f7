package dev.slowpoint.parameters;

import dev.slowpoint.food.Film;
import dev.slowpoint.food.Provenance;
import dev.slowpoint.plan.AfterBath;
import dev.slowpoint.plan.Range;
import dev.slowpoint.plan.ReheatRule;
import dev.slowpoint.plan.SearHeat;
import dev.slowpoint.plan.Step.ChillMedium;
import dev.slowpoint.plan.Step.SearMethod;
import dev.slowpoint.safety.CoolingRule;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/** Reads what a parameter set says of steps after the bath. */
final class AfterFiles {

    static final String SEAR = "sear.csv";
    static final String REHEATING = "reheating.csv";

    private static final double HOUR = 3600.0;
    private static final double W_PER_KW = 1000.0;
    private static final Range NO_FLUX = new Range(0.0, 0.0, 0.0);

    private final NamedValues defaults;
    private final Map<String, Film> films;

    private AfterFiles(NamedValues defaults, Map<String, Film> films) {
        this.defaults = defaults;
        this.films = films;
    }

    /**
     * Reads and checks.
     *
     * @param defaults of the set, whose films were found to be known
     * @param films by id
     * @param cooling rules by id
     */
    static AfterBath read(
            ParameterFiles files, NamedValues defaults, Map<String, Film> films, Map<String, CoolingRule> cooling) {
        for (String name : List.of("cooling_rule", "interruption_rule")) {
            if (!cooling.containsKey(defaults.id(name))) {
                throw defaults.fault(name, "is no cooling rule of limits.csv, only " + cooling.keySet() + " are");
            }
        }
        AfterFiles after = new AfterFiles(defaults, films);
        CsvTable.Row wet = only(after.rows(files), "any", Quantity.WET_LIMIT);
        return new AfterBath(
                defaults.number("room_temperature", "C"),
                defaults.number("room_tolerance", "K"),
                defaults.number("tap_water_temperature", "C"),
                new Range(
                        HOUR * defaults.number("bath_cooling_time", "h"),
                        HOUR * defaults.number("bath_cooling_time_low", "h"),
                        HOUR * defaults.number("bath_cooling_time_high", "h")),
                defaults.number("grey_level", "C"),
                HOUR * defaults.number("rest_watched", "h"),
                HOUR * defaults.number("longest_chill", "h"),
                defaults.id("cooling_rule"),
                defaults.id("interruption_rule"),
                after.film("film_room"),
                after.film("film_seared"),
                after.film("film_fridge"),
                after.media(),
                after.sear(after.rows(files)),
                range(wet, "C", 1.0),
                reheating(files));
    }

    private Film film(String name) {
        return Objects.requireNonNull(films.get(defaults.id(name)));
    }

    private Map<ChillMedium, AfterBath.Cold> media() {
        Map<ChillMedium, AfterBath.Cold> media = new EnumMap<>(ChillMedium.class);
        media.put(ChillMedium.ICE_WATER, cold("ice_bath_temperature", "film_ice_bath"));
        media.put(ChillMedium.COLD_WATER, cold("tap_water_temperature", "film_cold_water"));
        media.put(ChillMedium.BLAST_AIR, cold("blast_chiller_temperature", "film_blast_chiller"));
        media.put(ChillMedium.FRIDGE, cold("fridge_temperature", "film_fridge"));
        return media;
    }

    private AfterBath.Cold cold(String temperature, String film) {
        return new AfterBath.Cold(defaults.number(temperature, "C"), film(film));
    }

    private List<CsvTable.Row> rows(ParameterFiles files) {
        return files.table(SEAR).rows();
    }

    private Map<SearMethod, SearHeat> sear(List<CsvTable.Row> rows) {
        Map<SearMethod, SearHeat> heats = new EnumMap<>(SearMethod.class);
        heats.put(SearMethod.PAN, medium(rows, "pan", "film_sear_pan"));
        heats.put(SearMethod.HOT_OIL, medium(rows, "hot-oil", "film_sear_oil"));
        heats.put(SearMethod.COALS, flux(rows, "coals"));
        heats.put(SearMethod.TORCH, flux(rows, "torch"));
        return heats;
    }

    private SearHeat medium(List<CsvTable.Row> rows, String method, String filmName) {
        CsvTable.Row row = only(rows, method, Quantity.TEMPERATURE);
        Film film = film(filmName);
        return new SearHeat(
                Optional.of(range(row, "C", 1.0)),
                Optional.of(film),
                NO_FLUX,
                List.of(row.provenance(), film.origin()));
    }

    private static SearHeat flux(List<CsvTable.Row> rows, String method) {
        CsvTable.Row row = only(rows, method, Quantity.FLUX);
        return new SearHeat(
                Optional.empty(), Optional.empty(), range(row, "kW/m2", W_PER_KW), List.of(row.provenance()));
    }

    private static CsvTable.Row only(List<CsvTable.Row> rows, String method, Quantity quantity) {
        Map<String, CsvTable.Row> found = new HashMap<>();
        for (CsvTable.Row row : rows) {
            if (row.word(Quantity.class, "quantity") == quantity
                    && row.text("method").equals(method)
                    && found.put(method, row) != null) {
                throw row.fault("method", "stands twice with this quantity");
            }
        }
        CsvTable.Row row = found.get(method);
        if (row == null) {
            throw new IllegalArgumentException(SEAR + ": no row of " + quantity + " for '" + method + "'");
        }
        return row;
    }

    private static Range range(CsvTable.Row row, String unit, double factor) {
        if (!row.text("unit").equals(unit)) {
            throw row.fault("unit", "must be '" + unit + "'");
        }
        double low = row.number("low");
        double typical = row.number("typical");
        double high = row.number("high");
        if (!(low > 0.0 && low <= typical && typical <= high)) {
            throw row.fault("typical", "low, typical and high must be positive and rise");
        }
        row.provenance();
        return new Range(factor * typical, factor * low, factor * high);
    }

    private static List<ReheatRule> reheating(ParameterFiles files) {
        List<ReheatRule> rules = new ArrayList<>();
        for (CsvTable.Row row : files.table(REHEATING).rowsUniqueBy("id")) {
            Provenance provenance = row.provenance();
            rules.add(new ReheatRule(
                    row.text("id"),
                    row.word(ReheatRule.Use.class, "use"),
                    row.optionalNumber("core_c"),
                    row.number("held_s"),
                    seconds(row.optionalNumber("within_h")),
                    provenance,
                    row.optionalText("note").orElse("")));
        }
        return rules;
    }

    private static OptionalDouble seconds(OptionalDouble hours) {
        return hours.isPresent() ? OptionalDouble.of(HOUR * hours.getAsDouble()) : hours;
    }

    private enum Quantity {
        TEMPERATURE,
        FLUX,
        WET_LIMIT
    }
}
