package dev.slowpoint.parameters;

import dev.slowpoint.plan.SheetDefaults;
import java.util.NavigableMap;
import java.util.TreeMap;

/** Reads what holds for sheets of portions. */
final class SheetFiles {

    private static final String FACTORS = "sample-factors.csv";
    private static final double MM_PER_M = 1000.0;
    private static final double SECONDS_PER_MINUTE = 60.0;

    private SheetFiles() {}

    static SheetDefaults read(ParameterFiles files, NamedValues values) {
        NavigableMap<Integer, Double> factors = new TreeMap<>();
        double before = Double.POSITIVE_INFINITY;
        for (CsvTable.Row row : files.table(FACTORS).rows()) {
            double factor = row.number("factor");
            if (!(factor > 0.0 && factor < before)) {
                throw row.fault("factor", "must be above zero and fall as the sample grows");
            }
            row.provenance();
            factors.put((int) row.number("pieces"), factor);
            before = factor;
        }
        return new SheetDefaults(
                values.number("sheet_band", "mm") / MM_PER_M,
                values.number("sheet_band_us", "mm") / MM_PER_M,
                (int) values.number("sheet_band_halvings", "-"),
                values.number("sheet_other_size", "mm") / MM_PER_M,
                values.number("sheet_time_step", "min") * SECONDS_PER_MINUTE,
                values.number("sheet_setpoint_step", "K"),
                values.number("sheet_setpoint_step_us", "degF"),
                values.number("sheet_reference_size", "mm") / MM_PER_M,
                values.number("freezer_temperature", "C"),
                factors);
    }
}
