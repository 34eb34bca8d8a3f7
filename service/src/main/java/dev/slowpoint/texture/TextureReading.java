package dev.slowpoint.texture;

import dev.slowpoint.heat.Dose;
import dev.slowpoint.heat.TemperatureHistory;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a temperature history does to the texture of a food. The close rests mostly on common practice: it is advice,
 * never an error.
 *
 * @param textureClass id of the class
 * @param window when it is good to eat
 * @param levels all levels of the processes that are edges or states, with their times
 * @param confidence the least of the levels that make the window
 * @param extrapolated whether such a level is judged by temperatures above those its law was made for
 * @param moisture loss of juice over time, if the class models it
 */
public record TextureReading(
        String textureClass,
        TextureWindow window,
        List<LevelTime> levels,
        Confidence confidence,
        boolean extrapolated,
        Optional<MoistureLoss> moisture) {

    /** Copies the levels. */
    public TextureReading {
        levels = List.copyOf(levels);
    }

    /**
     * Reads the history of a raw piece.
     *
     * @param textureClass model of its texture
     * @param history of the piece from the moment it went in
     * @param hotThroughC core temperature [C] at which it counts as hot through, see {@link TextureWindow#hotThroughC}
     */
    public static TextureReading of(TextureClass textureClass, TemperatureHistory history, double hotThroughC) {
        return of(textureClass, history, hotThroughC, EarlierDoses.none(textureClass));
    }

    /**
     * Reads the history of a piece that has been cooked before: what was done then counts.
     *
     * @param textureClass model of its texture
     * @param history of the piece from the moment it went in again
     * @param hotThroughC core temperature [C] at which it counts as hot through, see {@link TextureWindow#hotThroughC}
     * @param earlier doses and loss of the earlier cooks, counted for the same class
     */
    public static TextureReading of(
            TextureClass textureClass, TemperatureHistory history, double hotThroughC, EarlierDoses earlier) {
        earlier.requireOf(textureClass);
        Optional<MoistureLoss> moisture =
                textureClass.moisture().map(curve -> curve.over(history, earlier.lossPercent()));
        List<LevelTime> levels = new ArrayList<>();
        boolean extrapolated = false;
        for (int i = 0; i < textureClass.processes().size(); i++) {
            TextureProcess process = textureClass.processes().get(i);
            double before = earlier.doses().get(i);
            if (process.explains()) {
                continue;
            }
            Dose dose = process.place().dose(process.law(), history);
            for (TextureLevel level : process.levels()) {
                levels.add(
                        new LevelTime(process.part(), process.kind(), level, dose.timeOf(level.threshold() - before)));
            }
            extrapolated |= extrapolates(
                    process,
                    history,
                    levels.subList(levels.size() - process.levels().size(), levels.size()));
        }
        TextureWindow window = window(textureClass, history, hotThroughC, levels, moisture);
        return new TextureReading(
                textureClass.id(), window, levels, confidence(textureClass, window.limit()), extrapolated, moisture);
    }

    /** Where a time [s] lies with respect to the window. */
    public Verdict verdict(double time) {
        return window.verdict(time);
    }

    /** Loss of juice [% of the raw mass] at a time [s], if the class models it. */
    public OptionalDouble lossPercentAt(double time) {
        return moisture.map(loss -> OptionalDouble.of(loss.percentAt(time))).orElseGet(OptionalDouble::empty);
    }

    /** The levels reached at a time [s], in the order of the model: how firm the white is, whether it is mushy. */
    public List<LevelTime> reachedAt(double time) {
        return levels.stream().filter(level -> level.time() <= time).toList();
    }

    private static TextureWindow window(
            TextureClass textureClass,
            TemperatureHistory history,
            double hotThroughC,
            List<LevelTime> levels,
            Optional<MoistureLoss> moisture) {
        double opens = textureClass.opening() == Opening.CORE_AND_DOSES
                ? history.core().firstAtOrAbove(hotThroughC)
                : Double.NEGATIVE_INFINITY;
        double best = Double.POSITIVE_INFINITY;
        double softens = Double.POSITIVE_INFINITY;
        double softFrom = Double.POSITIVE_INFINITY;
        double ruinedFrom = Double.POSITIVE_INFINITY;
        for (LevelTime reached : levels) {
            double time = reached.time();
            switch (reached.level().edge()) {
                case OPENS -> opens = Math.max(opens, time);
                case BEST_UNTIL -> best = Math.min(best, time);
                case CLOSES -> softens = Math.min(softens, time);
                case SOFT_FROM -> softFrom = Math.min(softFrom, time);
                case RUINED_FROM -> ruinedFrom = Math.min(ruinedFrom, time);
                case STATE, EXPLAINS -> {}
            }
        }
        double dries = Double.POSITIVE_INFINITY;
        if (moisture.isPresent() && textureClass.dryCurve().isPresent()) {
            dries = moisture.get().timeOf(textureClass.dryCurve().get().dryPercent());
        }
        return new TextureWindow(opens, best, softens, dries, softFrom, ruinedFrom, textureClass.closeModelled());
    }

    /** Whether an edge was, or would be, reached only after a place grew hotter than its law was made for. */
    private static boolean extrapolates(TextureProcess process, TemperatureHistory history, List<LevelTime> reached) {
        if (process.law().stops()) {
            return false;
        }
        double limitC = Double.NaN;
        double above = Double.POSITIVE_INFINITY;
        for (LevelTime at : reached) {
            if (at.level().edge() == Edge.STATE || at.level().edge() == Edge.EXPLAINS) {
                continue;
            }
            if (at.level().testedToC() != limitC) {
                limitC = at.level().testedToC();
                above = process.place().firstAbove(history, limitC);
            }
            if (above < at.time()) {
                return true;
            }
        }
        return false;
    }

    /** The least of the levels that open the window, and of what closes it or might. */
    private static Confidence confidence(TextureClass textureClass, CloseLimit limit) {
        boolean softening = limit != CloseLimit.DRYNESS;
        boolean dryness = limit == CloseLimit.DRYNESS || limit == CloseLimit.NOT_REACHED;
        Confidence least = textureClass.processes().stream()
                .flatMap(process -> process.levels().stream())
                .filter(level -> level.edge() == Edge.OPENS || (softening && level.edge() == Edge.CLOSES))
                .map(TextureLevel::confidence)
                .reduce(Confidence.MEDIUM, Confidence::least);
        return dryness && textureClass.dryCurve().isPresent()
                ? least.least(textureClass.dryCurve().get().confidence())
                : least;
    }
}
