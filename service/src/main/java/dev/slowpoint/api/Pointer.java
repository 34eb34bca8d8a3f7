package dev.slowpoint.api;

import java.nio.charset.StandardCharsets;

/** JSON pointers in URI-fragment form (RFC 6901, section 6): {@code #/geometry/thicknessMm}. */
final class Pointer {

    /** The whole body. */
    static final String BODY = "#";

    private static final int LONGEST_NAME = 64;

    private Pointer() {}

    /** The place of a member of the object at a pointer. A name of any content gives a pointer of plain ASCII. */
    static String child(String at, String name) {
        String shortened = name.length() > LONGEST_NAME ? name.substring(0, LONGEST_NAME) : name;
        StringBuilder pointer = new StringBuilder(at).append('/');
        for (byte octet : shortened.getBytes(StandardCharsets.UTF_8)) {
            char letter = (char) (octet & 0xff);
            if (letter == '~') {
                pointer.append("~0");
            } else if (letter == '/') {
                pointer.append("~1");
            } else if (letter < 128 && (Character.isLetterOrDigit(letter) || "-._".indexOf(letter) >= 0)) {
                pointer.append(letter);
            } else {
                pointer.append(String.format("%%%02X", (int) letter));
            }
        }
        return pointer.toString();
    }

    /** The place of a parameter of the query. */
    static String query(String name) {
        return child("?", name).replaceFirst("/", "");
    }
}
