package dev.slowpoint.texture;

/**
 * When a level is reached.
 *
 * @param part what changes, see {@link TextureProcess#part}
 * @param kind what happens
 * @param level the state reached
 * @param time [s] from the start of the history; infinity when not before its end
 */
public record LevelTime(String part, ProcessKind kind, TextureLevel level, double time) {}
