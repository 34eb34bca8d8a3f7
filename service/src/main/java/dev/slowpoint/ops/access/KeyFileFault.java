package dev.slowpoint.ops.access;

/** A file of keys that cannot be taken. Names the place, and never what stands there: that may be a secret. */
final class KeyFileFault extends Exception {

    private static final long serialVersionUID = 1L;

    KeyFileFault(String what) {
        super(what);
    }

    KeyFileFault(int line, String what) {
        super("line " + line + ": " + what);
    }

    KeyFileFault(int line, String column, String what) {
        super("line " + line + ", column " + column + ": " + what);
    }
}
