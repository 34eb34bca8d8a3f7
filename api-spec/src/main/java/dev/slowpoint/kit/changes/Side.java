package dev.slowpoint.kit.changes;

/** Who writes what a schema describes, and so which way it may change. */
enum Side {
    /** Clients write it: it may only become looser. */
    REQUEST("request-"),
    /** Clients read it: it may only become tighter. */
    ANSWER("answer-");

    private final String prefix;

    Side(String prefix) {
        this.prefix = prefix;
    }

    String rule(String what) {
        return prefix + what;
    }

    /** Records a change that lets fewer values pass. */
    void tighter(Findings findings, String rule, Pointer where, String text) {
        if (this == REQUEST) {
            findings.breaking(rule(rule), where, text);
        } else {
            findings.compatible(rule(rule), where, text);
        }
    }

    /** Records a change that lets more values pass. */
    void looser(Findings findings, String rule, Pointer where, String text) {
        if (this == REQUEST) {
            findings.compatible(rule(rule), where, text);
        } else {
            findings.breaking(rule(rule), where, text);
        }
    }
}
