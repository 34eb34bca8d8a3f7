package dev.slowpoint.texture;

/** How far a constant of the texture table may be trusted, the least first. */
public enum Confidence {
    /** By analogy, from memory or fitted to common practice alone. */
    LOW,
    /** Published kinetics or independent measurements stand behind it. */
    MEDIUM;

    /** The lesser of two. */
    public Confidence least(Confidence other) {
        return compareTo(other) <= 0 ? this : other;
    }
}
