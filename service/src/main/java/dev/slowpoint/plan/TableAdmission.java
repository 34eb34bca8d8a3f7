package dev.slowpoint.plan;

import dev.slowpoint.plan.LookupTable.Quantity;
import dev.slowpoint.plan.Refusal.Fault;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** What is refused before a lookup table is computed. */
final class TableAdmission {

    private static final String SETPOINT = "#/surroundings/bath/setpointC";

    private TableAdmission() {}

    /** Refuses a task with everything that stands in its way at any end of its ranges. */
    static void check(LookupTableTask task, Knowledge knowledge) {
        List<Fault> faults = new ArrayList<>();
        double freezingC = task.cook().food().freezingPointC();
        if (task.startC().from() < freezingC && task.startC().to() >= freezingC) {
            faults.add(Fault.of(
                            "#/start",
                            "START_ACROSS_FREEZING",
                            "FAULT_START_ACROSS_FREEZING",
                            Figures.temperature(freezingC))
                    .withHint("HINT_TWO_TABLES"));
        }
        for (boolean hot : new boolean[] {false, true}) {
            for (boolean warm : new boolean[] {false, true}) {
                CookTask end = task.at(
                        task.across().to(),
                        hot ? task.setpointC().to() : task.setpointC().from(),
                        warm ? task.startC().to() : task.startC().from());
                for (Fault fault : Admission.faults(end, knowledge)) {
                    Fault placed = placed(fault, hot, warm);
                    if (faults.stream()
                            .noneMatch(f -> f.code().equals(placed.code())
                                    && f.pointer().equals(placed.pointer()))) {
                        faults.add(placed);
                    }
                }
            }
        }
        if (!faults.isEmpty()) {
            throw new Refusal(faults);
        }
    }

    /** A fault of one end, at the place where a request for a table says it. */
    static Fault placed(Fault fault, boolean hot, boolean warm) {
        return switch (fault.pointer()) {
            case SETPOINT -> fault.at(hot ? "#/setpoint/toC" : "#/setpoint/fromC");
            case "#/start" -> fault.at(warm ? "#/start/toC" : "#/start/fromC");
            default -> fault;
        };
    }

    /** What is tabulated, in the order of the answer; refuses what is not modelled for this food. */
    static List<Quantity> quantities(LookupTableTask task, Terms terms) {
        boolean asked = terms.requirements().stream().anyMatch(r -> !r.advisory());
        List<Quantity> modelled = Arrays.stream(Quantity.values())
                .filter(q -> switch (q) {
                    case HOT_THROUGH, GOOD_UNTIL -> true;
                    case SAFE -> asked;
                    case TENDER, SOFT_FROM -> terms.softening().isPresent();
                })
                .toList();
        if (task.quantities().isEmpty()) {
            return modelled.stream().filter(q -> q != Quantity.SOFT_FROM).toList();
        }
        if (!modelled.containsAll(task.quantities())) {
            throw new Refusal(Fault.of(
                            "#/quantities",
                            "QUANTITY_NOT_MODELLED",
                            asked ? "FAULT_NO_TEXTURE_TIMES" : "FAULT_NO_SAFE_TIMES")
                    .withHint("HINT_ALL_QUANTITIES"));
        }
        return modelled.stream().filter(task.quantities()::contains).toList();
    }
}
