package dev.slowpoint.ops.access;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Base64;
import java.util.HexFormat;
import java.util.Random;

/** Keys and their lines as the guide to access makes them, but the same each time. */
public final class Keys {

    private Keys() {}

    /** A key of an invented client. */
    public static String key(long seed) {
        byte[] bytes = new byte[32];
        new Random(seed).nextBytes(bytes);
        return "spk_" + Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
    }

    public static String hash(String key) {
        try {
            return HexFormat.of()
                    .formatHex(MessageDigest.getInstance("SHA-256").digest(key.getBytes(StandardCharsets.US_ASCII)));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }

    /** A line of the file. */
    public static String line(String client, String key, String rest) {
        return client + "," + hash(key) + "," + rest;
    }

    /** A file with these lines. */
    public static String file(String... lines) {
        return KeyFile.HEADER + "\n" + String.join("\n", lines) + "\n";
    }
}
