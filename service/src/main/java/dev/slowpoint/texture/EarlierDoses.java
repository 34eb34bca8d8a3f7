package dev.slowpoint.texture;

import dev.slowpoint.heat.TemperatureHistory;
import java.util.ArrayList;
import java.util.List;

/**
 * What earlier cooks have already done to a piece. Chilling between two cooks gives no texture and no juice back, so the
 * second begins where the first ended.
 *
 * @param textureClass id of the class for which the doses were counted
 * @param doses one for each process of the class, in its order [-], zero or more
 * @param lossPercent juice lost so far [% of the raw mass], zero or more
 */
public record EarlierDoses(String textureClass, List<Double> doses, double lossPercent) {

    /** Copies the list and refuses negative values. */
    public EarlierDoses {
        doses = List.copyOf(doses);
        for (double dose : doses) {
            if (!(dose >= 0.0)) {
                throw new IllegalArgumentException("earlier dose " + dose + " must be zero or more");
            }
        }
        if (!(lossPercent >= 0.0 && lossPercent <= 100.0)) {
            throw new IllegalArgumentException("lossPercent = " + lossPercent + " must lie between 0 and 100");
        }
    }

    /** Nothing: the piece is raw. */
    public static EarlierDoses none(TextureClass textureClass) {
        return new EarlierDoses(
                textureClass.id(),
                textureClass.processes().stream().map(p -> 0.0).toList(),
                0.0);
    }

    /**
     * With one more cook on top.
     *
     * @param textureClass the class for which these doses were counted
     * @param history of the piece in that cook
     * @param until when it was taken out [s from the start of the history]
     */
    public EarlierDoses then(TextureClass textureClass, TemperatureHistory history, double until) {
        requireOf(textureClass);
        List<Double> sums = new ArrayList<>();
        for (int i = 0; i < doses.size(); i++) {
            TextureProcess process = textureClass.processes().get(i);
            double more = process.explains()
                    ? 0.0
                    : process.place().dose(process.law(), history).at(until);
            sums.add(doses.get(i) + more);
        }
        double loss = textureClass
                .moisture()
                .map(curve -> curve.over(history, lossPercent).percentAt(until))
                .orElse(lossPercent);
        return new EarlierDoses(textureClass.id(), sums, loss);
    }

    /** Refuses another class than the one for which the doses were counted. */
    void requireOf(TextureClass other) {
        if (!textureClass.equals(other.id())
                || doses.size() != other.processes().size()) {
            throw new IllegalArgumentException("earlier doses of " + textureClass
                    + " do not belong to texture class " + other.id()
                    + ". Maybe the two cooks named different foods?");
        }
    }
}
