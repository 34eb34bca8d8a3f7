package dev.slowpoint.heat;

import java.util.List;

/**
 * Stages in the order in which a body passes through them, one temperature field carried through all.
 *
 * @param stages at least one
 */
public record Programme(List<Stage> stages) {

    /** Refuses an empty programme. */
    public Programme {
        stages = List.copyOf(stages);
        if (stages.isEmpty()) {
            throw new IllegalArgumentException("a programme needs at least one stage");
        }
    }

    /** A programme of the given stages. */
    public static Programme of(Stage... stages) {
        return new Programme(List.of(stages));
    }

    /** Length of all stages together [s]. */
    public double duration() {
        return stages.stream().mapToDouble(Stage::duration).sum();
    }
}
