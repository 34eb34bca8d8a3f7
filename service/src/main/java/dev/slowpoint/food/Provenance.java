package dev.slowpoint.food;

/**
 * Where a number comes from.
 *
 * @param mark how it is known
 * @param source author, year and table, or what it was fitted to
 */
public record Provenance(Mark mark, String source) {

    /** Whether it was recalled, in whole or in part. */
    public boolean recalled() {
        return mark == Mark.MEMORY || mark == Mark.MIXED;
    }

    /**
     * Refuses to let something be decided by what was recalled in whole or in part; it may warn.
     *
     * @param what would decide
     * @throws IllegalArgumentException if it was only recalled
     */
    public void refuseIfRecalled(String what) {
        if (recalled()) {
            throw new IllegalArgumentException(what + " rests on '" + source + "', marked " + mark
                    + ", so it must not decide. Maybe let it advise?");
        }
    }
}
