package dev.slowpoint.parameters;

import dev.slowpoint.food.Film;
import dev.slowpoint.plan.Defaults;
import dev.slowpoint.plan.Knowledge;
import dev.slowpoint.plan.LogDefaults;
import dev.slowpoint.plan.Range;
import dev.slowpoint.plan.ReplanDefaults;
import dev.slowpoint.plan.Spreads;
import dev.slowpoint.plan.VesselDefaults;
import dev.slowpoint.plan.WindowDefaults;
import dev.slowpoint.safety.Plausibility;
import dev.slowpoint.safety.SafetyKnowledge;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.SortedMap;

/**
 * All that one released set of parameters says, read and checked.
 *
 * @param version name of the set
 * @param status whether it is the one to use
 * @param released day of its release
 * @param retirement from when on it is deprecated and what comes after it; only of a set that is
 * @param files what it was read from
 * @param knowledge all that the planner takes from it
 * @param defaults what holds where a request says nothing, with where each value comes from
 */
public record ParameterSet(
        String version,
        Status status,
        LocalDate released,
        Optional<Retirement> retirement,
        ParameterFiles files,
        Knowledge knowledge,
        NamedValues defaults) {

    /** Refuses a deprecated set that does not say since when, and any other that does. */
    public ParameterSet {
        if (retirement.isPresent() != (status == Status.DEPRECATED)) {
            throw new IllegalArgumentException(
                    "parameter set " + version + " must say since when it is deprecated" + " if it is, and only then");
        }
    }

    /** See {@link ParameterFiles#digest}. */
    public String digest() {
        return knowledge.digest();
    }

    /** Where all values come from, read from the files anew. */
    public Sources sources() {
        return Sources.of(files);
    }

    /** The same set with another standing. */
    ParameterSet standing(Status other) {
        return new ParameterSet(version, other, released, retirement, files, knowledge, defaults);
    }

    /**
     * How a set goes.
     *
     * @param deprecation from when on
     * @param successor version of the set to change to
     */
    public record Retirement(Deprecation deprecation, String successor) {}

    /** Whether a set is the one to use. */
    public enum Status {
        /** Used where a request pins no version. */
        CURRENT,
        /** Answers where a request pins it, and is not on its way out. */
        AVAILABLE,
        /** Still answers where a request pins it, and will be retired. */
        DEPRECATED
    }

    private static final double MM_PER_M = 1000.0;
    private static final double SECONDS_PER_MINUTE = 60.0;
    private static final double SECONDS_PER_HOUR = 3600.0;
    private static final String DEFAULTS = "defaults.csv";

    /**
     * Reads and checks a set.
     *
     * @throws IllegalArgumentException at the first fault, naming file, line and column
     */
    static ParameterSet load(ParameterFiles files, Status status, LocalDate released, Optional<Retirement> retirement) {
        SortedMap<String, Film> films = FoodFiles.films(files);
        NamedValues defaults = NamedValues.read(files, DEFAULTS);
        for (String name : defaults.names()) {
            if (name.startsWith("film") && !films.containsKey(defaults.id(name))) {
                throw defaults.fault(name, "is no film of " + FoodFiles.FILMS + ", only " + films.keySet() + " are");
            }
        }
        SafetyKnowledge safety = SafetyFiles.read(files::table);
        Knowledge knowledge = new Knowledge(
                files.version(),
                files.digest(),
                FoodFiles.catalogue(files),
                FoodFiles.thermalModel(files),
                films,
                safety,
                TextureFiles.read(files::bytes),
                NoticeFiles.read(files),
                planDefaults(defaults),
                vesselDefaults(defaults, films),
                AfterFiles.read(files, defaults, films, safety.cooling()),
                spreads(defaults),
                logDefaults(defaults),
                replanDefaults(defaults),
                windowDefaults(defaults),
                SheetFiles.read(files, defaults));
        return new ParameterSet(files.version(), status, released, retirement, files, knowledge, defaults);
    }

    private static VesselDefaults vesselDefaults(NamedValues values, Map<String, Film> films) {
        return new VesselDefaults(
                values.number("wall_loss", "W/(m2 K)"),
                values.number("covered_share", "-"),
                values.number("trapped_air_conductivity", "W/(m K)"),
                Objects.requireNonNull(films.get(values.id("film_face_in_air"))),
                values.number("room_temperature", "C"));
    }

    /** The distributions are fixed; the file says which they are and why, so that a set that asks for others is refused. */
    private static Spreads spreads(NamedValues values) {
        requireWord(values, "distribution_of_tolerances", "uniform");
        requireWord(values, "distribution_of_films", "log-triangular");
        return new Spreads(
                values.number("spread_of_conductivity", "-"),
                values.number("spread_of_conductivity_plants", "-"),
                List.of(
                        values.origin("distribution_of_tolerances"),
                        values.origin("distribution_of_films"),
                        values.origin("spread_of_conductivity"),
                        values.origin("spread_of_conductivity_plants")));
    }

    private static void requireWord(NamedValues values, String name, String word) {
        if (!values.id(name).equals(word)) {
            throw values.fault(name, "must be " + word + ", the only one there is");
        }
    }

    private static LogDefaults logDefaults(NamedValues values) {
        return new LogDefaults(
                values.number("log_sensor_error", "K"),
                new Plausibility(
                        values.number("log_longest_gap", "s"),
                        values.number("log_lowest_reading", "C"),
                        values.number("log_highest_reading", "C"),
                        values.number("log_fastest_change", "K/s"),
                        values.number("log_step", "K"),
                        SECONDS_PER_MINUTE * values.number("log_stuck", "min"),
                        values.number("log_stuck_after", "K")));
    }

    private static ReplanDefaults replanDefaults(NamedValues values) {
        return new ReplanDefaults(
                values.number("bath_log_gap", "min") * SECONDS_PER_MINUTE,
                values.number("bath_log_tolerance", "K"),
                new Range(
                        values.number("bath_heating_rate", "K/min") / SECONDS_PER_MINUTE,
                        values.number("bath_heating_rate_low", "K/min") / SECONDS_PER_MINUTE,
                        values.number("bath_heating_rate_high", "K/min") / SECONDS_PER_MINUTE),
                values.number("core_probe_error", "K"));
    }

    private static WindowDefaults windowDefaults(NamedValues values) {
        return new WindowDefaults(
                values.number("window_below", "K"),
                values.number("window_above", "K"),
                values.number("window_step", "K"),
                values.number("moment_tolerance", "min") * SECONDS_PER_MINUTE,
                values.number("window_spare", "-"));
    }

    private static Defaults planDefaults(NamedValues values) {
        return new Defaults(
                values.number("thickness_tolerance_relative", "-"),
                values.number("thickness_tolerance", "mm") / MM_PER_M,
                values.number("start_tolerance", "K"),
                values.number("bath_tolerance", "K"),
                values.number("reading_tolerance", "K"),
                values.number("within", "K"),
                values.number("horizon", "h") * SECONDS_PER_HOUR,
                values.id("film_bath_pumped"),
                values.id("film_bath_still"),
                values.number("fridge_temperature", "C"));
    }
}
