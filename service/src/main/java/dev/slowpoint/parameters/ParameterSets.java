package dev.slowpoint.parameters;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The parameter sets that this program can answer from. */
public final class ParameterSets {

    private static final String LIST = "sets.csv";

    private final List<ParameterSet> sets;
    private final ParameterSet current;

    /** Refuses two sets of one version, and any number of current sets but one. */
    public ParameterSets(List<ParameterSet> sets) {
        List<ParameterSet> currents = new ArrayList<>();
        List<String> versions = new ArrayList<>();
        for (ParameterSet set : sets) {
            if (versions.contains(set.version())) {
                throw new IllegalArgumentException("parameter set " + set.version() + " was given twice");
            }
            versions.add(set.version());
            if (set.status() == ParameterSet.Status.CURRENT) {
                currents.add(set);
            }
        }
        if (currents.size() != 1) {
            throw new IllegalArgumentException(
                    "one parameter set must be current, but of " + versions + " there are " + currents.size());
        }
        this.sets = List.copyOf(sets);
        this.current = currents.get(0);
    }

    /**
     * Reads and checks all released sets.
     *
     * @throws IllegalArgumentException at the first fault, naming file, line and column
     */
    public static ParameterSets released() {
        List<ParameterSet> sets = new ArrayList<>();
        for (CsvTable.Row row :
                CsvTable.read(LIST, ParameterFiles.resource(LIST)).rowsUniqueBy("version")) {
            sets.add(ParameterSet.load(
                    ParameterFiles.released(row.text("version")),
                    row.word(ParameterSet.Status.class, "status"),
                    day(row)));
        }
        return new ParameterSets(sets);
    }

    private static LocalDate day(CsvTable.Row row) {
        try {
            return LocalDate.parse(row.text("released"));
        } catch (DateTimeParseException e) {
            throw row.fault("released", "holds '" + row.text("released") + "', which is no day like 2026-01-31");
        }
    }

    /** All sets, in the order of their list. */
    public List<ParameterSet> all() {
        return sets;
    }

    /** The set of a version, if there is one. */
    public Optional<ParameterSet> find(String version) {
        return sets.stream().filter(set -> set.version().equals(version)).findFirst();
    }

    /** The set to use where a request pins no version. */
    public ParameterSet current() {
        return current;
    }
}
