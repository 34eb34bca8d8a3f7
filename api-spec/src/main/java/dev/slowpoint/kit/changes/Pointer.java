package dev.slowpoint.kit.changes;

/**
 * A place in a document, as a JSON pointer in the form of a URI fragment without percent signs (RFC 6901).
 *
 * @param text the pointer, {@code #} for the whole document
 */
record Pointer(String text) {

    static final Pointer ROOT = new Pointer("#");

    Pointer to(String... names) {
        StringBuilder longer = new StringBuilder(text);
        for (String name : names) {
            longer.append('/').append(name.replace("~", "~0").replace("/", "~1"));
        }
        return new Pointer(longer.toString());
    }

    @Override
    public String toString() {
        return text;
    }
}
