package dev.slowpoint.ops;

/** Where a failure happened and of what kind it was, without its words: those may quote what was asked. */
public final class Whereabouts extends Exception {

    private static final long serialVersionUID = 1L;

    /** Of a failure and all its causes. */
    public Whereabouts(Throwable failure) {
        super(
                failure.getClass().getName(),
                failure.getCause() == null ? null : new Whereabouts(failure.getCause()),
                false,
                true);
        setStackTrace(failure.getStackTrace());
    }
}
