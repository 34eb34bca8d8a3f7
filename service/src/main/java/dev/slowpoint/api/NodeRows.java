package dev.slowpoint.api;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import org.springframework.http.MediaType;

/** A lookup table as text, one node a row (RFC 4180, but for line ends of one character). */
final class NodeRows {

    static final MediaType MEDIA_TYPE = MediaType.parseMediaType(LogTable.MEDIA_TYPE);

    static final String FORMAT =
            "The nodes one a row, in the order of their index, -1 for never; the rest in headers of the answer.";

    private NodeRows() {}

    /** The bytes of a table. */
    static byte[] of(LookupTableAnswer table) {
        StringBuilder text = new StringBuilder("thicknessMm,setpointC,startC");
        table.columns()
                .forEach(column -> text.append(',').append(column.quantity()).append('S'));
        int node = 0;
        for (double thicknessMm : table.thicknessMm()) {
            for (double setpointC : table.setpointC()) {
                for (double startC : table.startC()) {
                    text.append('\n')
                            .append(plain(thicknessMm))
                            .append(',')
                            .append(plain(setpointC))
                            .append(',')
                            .append(plain(startC));
                    for (LookupTableAnswer.Column column : table.columns()) {
                        text.append(',').append(column.timesS().get(node));
                    }
                    node++;
                }
            }
        }
        return text.append('\n').toString().getBytes(StandardCharsets.US_ASCII);
    }

    private static String plain(double value) {
        return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
    }
}
