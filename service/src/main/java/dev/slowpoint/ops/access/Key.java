package dev.slowpoint.ops.access;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Instant;
import java.util.regex.Pattern;

/**
 * A key of a client, as far as the service knows it: its hash.
 *
 * <p>A key is {@code spk_} and 256 random bits in base64url. Nobody finds that by trying, so its plain SHA-256 may lie in a
 * file: slow hashes are for what people make up. Nothing else is taken as a key, so that the hash of a made-up word lets
 * nobody in.
 *
 * @param client whose it is
 * @param hash SHA-256 of the key in ASCII
 * @param from when it begins to be good
 * @param until when it ends to be good
 */
record Key(String client, Hash hash, Instant from, Instant until) {

    private static final Pattern FORM = Pattern.compile("spk_[A-Za-z0-9_-]{43}");

    /** Whether something looks like a key. */
    static boolean hasForm(String shown) {
        return FORM.matcher(shown).matches();
    }

    boolean goodAt(Instant moment) {
        return !moment.isBefore(from) && moment.isBefore(until);
    }

    /** A SHA-256. */
    static final class Hash {

        static final int HEX_DIGITS = 64;

        private final byte[] bytes;

        private Hash(byte[] bytes) {
            this.bytes = bytes;
        }

        /** The hash of what somebody shows. */
        static Hash of(String shown) {
            try {
                return new Hash(MessageDigest.getInstance("SHA-256").digest(shown.getBytes(StandardCharsets.US_ASCII)));
            } catch (NoSuchAlgorithmException e) {
                throw new IllegalStateException("every Java platform has SHA-256", e);
            }
        }

        /** A hash that is written as {@link #HEX_DIGITS} digits. */
        static Hash parse(String hex) {
            return new Hash(java.util.HexFormat.of().parseHex(hex));
        }

        /** The first bytes, by which hashes are told apart quickly. Whoever times that learns nothing of a key. */
        long start() {
            return java.nio.ByteBuffer.wrap(bytes).getLong();
        }

        /** Whether two are the same, in a time that does not tell how much of them is. */
        boolean is(Hash other) {
            return MessageDigest.isEqual(bytes, other.bytes);
        }

        /** Whether so few values stand in it that no key has it. */
        boolean isMadeUp() {
            boolean[] seen = new boolean[256];
            int distinct = 0;
            for (byte one : bytes) {
                if (!seen[one & 0xff]) {
                    seen[one & 0xff] = true;
                    distinct++;
                }
            }
            // 32 random bytes have some 30 values; fewer than 16 come once in more than 10^15 times.
            return distinct < 16 || is(Hash.of(""));
        }
    }
}
