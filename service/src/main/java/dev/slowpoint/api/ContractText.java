package dev.slowpoint.api;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Objects;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.stereotype.Component;
import org.springframework.util.unit.DataSize;

/** What the contract says of all operations together, with the limits that are really kept. */
@Component
final class ContractText {

    private static final String FILE = "/contract.md";
    private static final int KIB = 1024;

    private final String description;

    ContractText(@Value("${server.max-http-request-header-size}") DataSize header) {
        String text = read();
        for (Map.Entry<String, Long> limit : Map.of(
                        "faults",
                        (long) Faults.MOST,
                        "bodyKiB",
                        (long) WireConverter.LONGEST_BODY / KIB,
                        "logMiB",
                        (long) LogReviewRequest.LONGEST_BODY / KIB / KIB,
                        "sheetMiB",
                        (long) PortionSheetRequest.LONGEST_BODY / KIB / KIB,
                        "lineKiB",
                        (long) SheetLines.LONGEST / KIB,
                        "depth",
                        (long) Wire.DEEPEST,
                        "headerKiB",
                        header.toKilobytes())
                .entrySet()) {
            text = text.replace("{" + limit.getKey() + "}", Long.toString(limit.getValue()));
        }
        this.description = text;
    }

    private static String read() {
        try (InputStream in = Objects.requireNonNull(ContractText.class.getResourceAsStream(FILE), FILE)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8).strip();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** In Markdown. */
    String description() {
        return description;
    }
}
