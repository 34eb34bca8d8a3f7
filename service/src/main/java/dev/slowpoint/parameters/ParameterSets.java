package dev.slowpoint.parameters;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** The parameter sets that this program can answer from. */
public final class ParameterSets {

    private static final String LIST = "sets.csv";

    private final List<ParameterSet> sets;
    private final ParameterSet current;

    /** Refuses two sets of one version, a successor that is none of them, and any number of current sets but one. */
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
        for (ParameterSet set : sets) {
            set.retirement()
                    .map(ParameterSet.Retirement::successor)
                    .filter(successor -> !versions.contains(successor) || successor.equals(set.version()))
                    .ifPresent(successor -> {
                        throw new IllegalArgumentException("parameter set " + set.version()
                                + " must be followed by another of " + versions + ", not by " + successor);
                    });
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
        return read(ParameterFiles.resource(LIST), ParameterFiles::released);
    }

    /**
     * Reads and checks the sets of a list.
     *
     * @param list columns {@code version,status,released,deprecated,sunset,successor,note}
     * @param files of the set of a version
     */
    static ParameterSets read(byte[] list, Function<String, ParameterFiles> files) {
        List<ParameterSet> sets = new ArrayList<>();
        for (CsvTable.Row row : CsvTable.read(LIST, list).rowsUniqueBy("version")) {
            ParameterSet.Status status = row.word(ParameterSet.Status.class, "status");
            Optional<ParameterSet.Retirement> retirement = retirement(row);
            if (retirement.isPresent() != (status == ParameterSet.Status.DEPRECATED)) {
                throw row.fault("deprecated", "must hold a day for a deprecated set, and for no other");
            }
            sets.add(ParameterSet.load(files.apply(row.text("version")), status, released(row), retirement));
        }
        return new ParameterSets(sets);
    }

    /**
     * These sets, and one more that is now the current one: the set that an overlay is for, with all that the overlay adds.
     * The set that was current so far answers where a request pins it.
     *
     * @throws IllegalArgumentException at the first fault, naming file, line and column
     */
    public ParameterSets with(Overlay overlay) {
        ParameterSet base = overlay.base(this);
        ParameterSet own = ParameterSet.load(
                base.files().with(overlay), ParameterSet.Status.CURRENT, base.released(), Optional.empty());
        OwnRules.check(overlay, own.knowledge().safety().rules());
        List<ParameterSet> all = new ArrayList<>();
        all.add(own);
        for (ParameterSet set : sets) {
            all.add(set == current ? set.standing(ParameterSet.Status.AVAILABLE) : set);
        }
        return new ParameterSets(all);
    }

    private static LocalDate released(CsvTable.Row row) {
        return day(row, "released").orElseThrow(() -> row.fault("released", "must not be empty"));
    }

    private static Optional<ParameterSet.Retirement> retirement(CsvTable.Row row) {
        Optional<LocalDate> since = day(row, "deprecated");
        Optional<LocalDate> sunset = day(row, "sunset");
        Optional<String> successor = row.optionalText("successor");
        if (since.isEmpty()) {
            if (sunset.isPresent() || successor.isPresent()) {
                throw row.fault("deprecated", "must not be empty beside a sunset or a successor");
            }
            return Optional.empty();
        }
        if (since.get().isBefore(released(row))) {
            throw row.fault("deprecated", "must not lie before the release");
        }
        String next = row.text("successor");
        try {
            return Optional.of(new ParameterSet.Retirement(new Deprecation(since.get(), sunset), next));
        } catch (IllegalArgumentException e) {
            throw row.fault("sunset", String.valueOf(e.getMessage()));
        }
    }

    private static Optional<LocalDate> day(CsvTable.Row row, String column) {
        try {
            return row.optionalText(column).map(LocalDate::parse);
        } catch (DateTimeParseException e) {
            throw row.fault(column, "holds '" + row.text(column) + "', which is no day like 2026-01-31");
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
