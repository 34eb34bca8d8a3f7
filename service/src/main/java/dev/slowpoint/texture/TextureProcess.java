package dev.slowpoint.texture;

import java.util.List;

/**
 * One clock of a texture class: a rate law, summed at one place, with the levels it passes.
 *
 * @param part what changes: the class itself, or a part of it such as {@code egg_white}
 * @param kind what happens
 * @param place where it is judged
 * @param law rate of the dose
 * @param levels by rising threshold, at least one
 */
public record TextureProcess(String part, ProcessKind kind, Place place, ArrheniusLaw law, List<TextureLevel> levels) {

    /** Copies the levels and refuses none, and levels out of order. */
    public TextureProcess {
        levels = List.copyOf(levels);
        if (levels.isEmpty()) {
            throw new IllegalArgumentException("process " + kind + " of " + part + " has no level");
        }
        for (int i = 1; i < levels.size(); i++) {
            if (levels.get(i).threshold() < levels.get(i - 1).threshold()) {
                throw new IllegalArgumentException("level " + levels.get(i).name() + " of " + part + " lies below "
                        + levels.get(i - 1).name() + " and must come first");
            }
        }
    }

    /** Whether it only explains what happens and is no part of a reading. */
    public boolean explains() {
        return levels.stream().allMatch(level -> level.edge() == Edge.EXPLAINS);
    }
}
