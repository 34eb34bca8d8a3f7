package dev.slowpoint.texture;

import dev.slowpoint.food.Provenance;
import dev.slowpoint.heat.Dose;
import dev.slowpoint.heat.Exp;
import dev.slowpoint.heat.TemperatureHistory;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Foods that share one model of texture.
 *
 * @param id of the class in the parameter set, such as {@code beef_tender}
 * @param opening what opens the window
 * @param processes the clocks, at least one with a level that opens or closes the window
 * @param moisture how juice is lost, if that is modelled
 * @param dryCloses whether the limit of the loss curve closes the window; otherwise the loss is told and not judged
 * @param donenessScale scale of words for doneness, if there is one
 * @param provenance of the choice of opening and loss curve
 */
public record TextureClass(
        String id,
        Opening opening,
        List<TextureProcess> processes,
        Optional<MoistureModel> moisture,
        boolean dryCloses,
        Optional<String> donenessScale,
        Provenance provenance) {

    /** Copies the processes and refuses a class without any edge, or without what its opening needs. */
    public TextureClass {
        processes = List.copyOf(processes);
        boolean opens = has(processes, Edge.OPENS);
        if (!opens && !has(processes, Edge.CLOSES)) {
            throw new IllegalArgumentException("texture class " + id + " has no level that opens or closes a window");
        }
        if (!opens && opening == Opening.DOSES_ALONE) {
            throw new IllegalArgumentException("texture class " + id
                    + " opens by doses alone and has no level that opens it. Maybe its opening is core_and_doses?");
        }
    }

    /** Whether anything is known that closes the window. */
    public boolean closeModelled() {
        return dryCurve().isPresent() || has(processes, Edge.CLOSES);
    }

    /** The loss curve whose limit closes the window, if there is one. */
    Optional<MoistureModel> dryCurve() {
        return dryCloses ? moisture : Optional.empty();
    }

    /**
     * Works out the processes that are no edges of the window but explain it: collagen, actin, colour. They are no part
     * of a reading, because most readers do not ask for them.
     */
    public List<Explanation> explain(TemperatureHistory history) {
        List<Explanation> explanations = new ArrayList<>();
        for (TextureProcess process : processes) {
            if (process.explains()) {
                Dose dose = process.place().dose(process.law(), history);
                for (TextureLevel level : process.levels()) {
                    explanations.add(new Explanation(
                            new LevelTime(process.part(), process.kind(), level, dose.timeOf(level.threshold())),
                            dose.total(),
                            1.0 - Exp.exp(-dose.total())));
                }
            }
        }
        return explanations;
    }

    private static boolean has(List<TextureProcess> processes, Edge edge) {
        return processes.stream().flatMap(process -> process.levels().stream()).anyMatch(level -> level.edge() == edge);
    }
}
