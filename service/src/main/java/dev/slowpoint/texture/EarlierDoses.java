package dev.slowpoint.texture;

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
}
