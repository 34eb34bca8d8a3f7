package dev.slowpoint.api;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/** Reads a body line by line, without holding more than one. Lines end with a line feed; a carriage return before it is no part of them. */
final class SheetLines {

    /** Longest line that is read [bytes]. */
    static final int LONGEST = 16 * 1024;

    /** A line so long that its end is no longer looked for [bytes]. */
    static final int ENDLESS = 1024 * 1024;

    private final InputStream in;
    private final byte[] buffer = new byte[8192];
    private int at;
    private int end;
    private int number;
    private boolean cut;

    SheetLines(InputStream in) {
        this.in = in;
    }

    /**
     * The next line without its end; its first bytes if it is longer than {@link #LONGEST}, see {@link #cut}.
     *
     * @return null at the end of the body
     * @throws RequestRefused when a line has no end
     */
    byte @Nullable [] next() throws IOException {
        ByteArrayOutputStream line = new ByteArrayOutputStream(256);
        int length = 0;
        cut = false;
        while (true) {
            if (at == end) {
                at = 0;
                end = Math.max(in.read(buffer), 0);
                if (end == 0) {
                    if (length == 0) {
                        return null;
                    }
                    number++;
                    return trimmed(line);
                }
            }
            int from = at;
            while (at < end && buffer[at] != '\n') {
                at++;
            }
            int take = Math.min(at - from, LONGEST - line.size());
            line.write(buffer, from, Math.max(take, 0));
            length += at - from;
            cut |= length > LONGEST;
            if (length > ENDLESS) {
                throw new RequestRefused(Fault.of(
                        Pointer.BODY,
                        ProblemCode.MALFORMED_BODY,
                        "FAULT_NO_LINES",
                        Integer.toString(number + 1),
                        Integer.toString(ENDLESS)));
            }
            if (at < end) {
                at++;
                number++;
                return trimmed(line);
            }
        }
    }

    private static byte[] trimmed(ByteArrayOutputStream line) {
        byte[] bytes = line.toByteArray();
        int length = bytes.length;
        if (length > 0 && bytes[length - 1] == '\r') {
            return Arrays.copyOf(bytes, length - 1);
        }
        return bytes;
    }

    /** Number of the line read last, from 1. */
    int number() {
        return number;
    }

    /** Whether the line read last was too long, and only its beginning is known. */
    boolean cut() {
        return cut;
    }

    /** Whether the next line, or its beginning, has arrived, so that reading it need not wait for the client. */
    boolean arrived() throws IOException {
        return at < end || in.available() > 0;
    }
}
