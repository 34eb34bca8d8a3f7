package dev.slowpoint.kit;

import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import java.util.List;

/** One request and its answer, as a report shows them. */
record Exchange(String request, byte[] sent, int status, List<String> headers, byte[] answered, boolean text) {

    private static final int LONGEST = 2000;

    @Override
    public String toString() {
        return "--- sent\n" + request + "\n" + told(sent) + "\n--- answered\n" + status + "\n"
                + String.join("\n", headers) + "\n\n" + told(answered);
    }

    private String told(byte[] body) {
        String whole =
                text ? new String(body, StandardCharsets.UTF_8) : HexFormat.of().formatHex(body);
        return whole.length() <= LONGEST
                ? whole
                : whole.substring(0, LONGEST) + " ... (" + body.length + " bytes in all)";
    }
}
