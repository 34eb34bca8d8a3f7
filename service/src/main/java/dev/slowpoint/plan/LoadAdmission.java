package dev.slowpoint.plan;

import dev.slowpoint.plan.Refusal.Fault;
import java.util.ArrayList;
import java.util.List;

/** What is refused before a load is looked at. */
final class LoadAdmission {

    private LoadAdmission() {}

    /** Refuses a load with everything that stands in its way. */
    static void check(LoadTask load, Knowledge knowledge) {
        List<Fault> faults = new ArrayList<>();
        for (int i = 0; i < load.items().size(); i++) {
            CookTask task = load.items().get(i).task();
            try {
                Admission.check(task, knowledge);
            } catch (Refusal refusal) {
                for (Fault fault : refusal.faults()) {
                    Fault placed = LoadTask.placed(fault, i);
                    if (!faults.contains(placed)) {
                        faults.add(placed);
                    }
                }
            }
            if (task.arrangement().faceInAirC().isPresent()) {
                faults.add(LoadTask.placed(
                        Fault.of("#/geometry/arrangement", "LOAD_NEEDS_COVERED_FACES", "FAULT_LOAD_NEEDS_COVERED_FACES")
                                .withHint("HINT_PUSH_UNDER_OR_ALONE"),
                        i));
            }
        }
        if (!faults.isEmpty()) {
            throw new Refusal(faults);
        }
    }
}
