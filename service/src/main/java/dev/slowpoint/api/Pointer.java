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
        if (name.length() <= LONGEST_NAME && plain(name)) {
            // As nearly all names are; every member that is read has its place made.
            return at + '/' + name;
        }
        String shortened = name.length() > LONGEST_NAME ? name.substring(0, LONGEST_NAME) : name;
        StringBuilder pointer = new StringBuilder(at).append('/');
        for (byte octet : shortened.getBytes(StandardCharsets.UTF_8)) {
            char letter = (char) (octet & 0xff);
            if (letter == '~') {
                pointer.append("~0");
            } else if (letter == '/') {
                pointer.append("~1");
            } else if (plain(letter)) {
                pointer.append(letter);
            } else {
                pointer.append(String.format("%%%02X", (int) letter));
            }
        }
        return pointer.toString();
    }

    private static boolean plain(String name) {
        for (int i = 0; i < name.length(); i++) {
            if (!plain(name.charAt(i))) {
                return false;
            }
        }
        return true;
    }

    private static boolean plain(char letter) {
        return letter < 128 && (Character.isLetterOrDigit(letter) || "-._".indexOf(letter) >= 0);
    }

    /** The place of a parameter of the query. */
    static String query(String name) {
        return child("?", name).replaceFirst("/", "");
    }
}
