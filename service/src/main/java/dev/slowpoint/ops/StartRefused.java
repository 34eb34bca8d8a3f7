package dev.slowpoint.ops;

/** The service does not start, for a reason that whoever runs it can mend. Told as a message without a stack trace. */
public final class StartRefused extends RuntimeException {

    private static final long serialVersionUID = 1L;

    private final String remedy;

    /**
     * A reason not to start.
     *
     * @param reason what is wrong, and where
     * @param remedy what to do about it
     */
    public StartRefused(String reason, String remedy) {
        super(reason);
        this.remedy = remedy;
    }

    /** What to do about it. */
    public String remedy() {
        return remedy;
    }
}
