package dev.slowpoint.parameters;

import dev.slowpoint.food.Catalogue;
import dev.slowpoint.food.Film;
import dev.slowpoint.food.ThermalModel;
import java.time.LocalDate;
import java.util.SortedMap;

/**
 * All that one released set of parameters says, read and checked.
 *
 * @param version name of the set
 * @param status whether it is the one to use
 * @param released day of its release
 * @param digest see {@link ParameterFiles#digest}
 * @param thermalModel from composition to thermal properties
 * @param catalogue the foods
 * @param films film coefficients by id
 * @param defaults what holds where a request says nothing
 */
public record ParameterSet(
        String version,
        Status status,
        LocalDate released,
        String digest,
        ThermalModel thermalModel,
        Catalogue catalogue,
        SortedMap<String, Film> films,
        NamedValues defaults) {

    /** Whether a set is the one to use. */
    public enum Status {
        /** Used where a request pins no version. */
        CURRENT,
        /** Still answers where a request pins it, and will be retired. */
        DEPRECATED
    }

    private static final String DEFAULTS = "defaults.csv";

    /**
     * Reads and checks a set.
     *
     * @throws IllegalArgumentException at the first fault, naming file, line and column
     */
    static ParameterSet load(ParameterFiles files, Status status, LocalDate released) {
        SortedMap<String, Film> films = FoodFiles.films(files);
        NamedValues defaults = NamedValues.read(files, DEFAULTS);
        for (String name : defaults.names()) {
            if (name.startsWith("film") && !films.containsKey(defaults.id(name))) {
                throw defaults.fault(name, "is no film of " + FoodFiles.FILMS + ", only " + films.keySet() + " are");
            }
        }
        return new ParameterSet(
                files.version(),
                status,
                released,
                files.digest(),
                FoodFiles.thermalModel(files),
                FoodFiles.catalogue(files),
                films,
                defaults);
    }
}
