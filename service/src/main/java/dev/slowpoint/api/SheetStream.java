package dev.slowpoint.api;

import dev.slowpoint.api.PortionSheetAnswer.PortionPlace;
import dev.slowpoint.api.PortionSheetAnswer.SheetBand;
import dev.slowpoint.api.PortionSheetAnswer.SheetTotals;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import org.springframework.http.MediaType;

/**
 * Writes a sheet line by line as its portions are planned. A client that has gone is noticed when a line is sent on; the
 * exception then ends the work.
 */
abstract class SheetStream implements SheetSink {

    static final String NDJSON_VALUE = "application/x-ndjson";
    static final MediaType NDJSON = MediaType.parseMediaType(NDJSON_VALUE);
    static final MediaType CSV = MediaType.parseMediaType(SheetTable.MEDIA_TYPE);

    /** For the contract. */
    static final String FORMAT =
            "One JSON object a line. The first line holds what all portions have in common (`{}` for the defaults), each"
                    + " further line one portion. Empty lines are passed over. No line is longer than 16 KiB.";

    static final String EXAMPLE =
            "{\"displayUnits\":\"metric\"}\n{\"id\":\"K1\",\"food\":{\"id\":\"pork-loin\"},\"geometry\":{\"shape\":\"slab\","
                    + "\"thicknessMm\":42},\"start\":{\"temperatureC\":4}}\n";

    static final String ANSWER_FORMAT = "One `SheetLine` a line.";

    private final OutputStream out;

    private SheetStream(OutputStream out) {
        this.out = out;
    }

    /** A stream in a representation. */
    static SheetStream to(OutputStream out, MediaType type) {
        return type.equals(CSV) ? new Table(out) : new Lines(out);
    }

    void write(byte[] line) throws IOException {
        out.write(line);
    }

    /** What the sheet is planned with. */
    abstract void head(SheetLine.Head head) throws IOException;

    /** How many there were; nothing follows. */
    abstract void totals(SheetTotals all) throws IOException;

    /** Why the stream breaks off; nothing follows. */
    abstract void problem(Problem problem) throws IOException;

    @Override
    public void flush() throws IOException {
        out.flush();
    }

    private static final class Lines extends SheetStream {

        Lines(OutputStream out) {
            super(out);
        }

        private void line(SheetLine line) throws IOException {
            write(Wire.JSON.write(line));
            write(new byte[] {'\n'});
        }

        @Override
        void head(SheetLine.Head head) throws IOException {
            line(SheetLine.of(head));
            flush();
        }

        @Override
        public void band(SheetBand band) throws IOException {
            line(SheetLine.of(band));
        }

        @Override
        public void portion(PortionPlace portion) throws IOException {
            line(SheetLine.of(portion));
        }

        @Override
        public void progress(SheetTotals soFar) throws IOException {
            line(SheetLine.progress(soFar));
            flush();
        }

        @Override
        void totals(SheetTotals all) throws IOException {
            line(SheetLine.totals(all));
        }

        @Override
        void problem(Problem problem) throws IOException {
            line(SheetLine.of(problem));
        }
    }

    private static final class Table extends SheetStream {

        /** Bands as they were told, the ones used least forgotten first; as many as keep their number. */
        private final Map<Integer, SheetBand> bands = new LinkedHashMap<>(64, 0.75f, true) {
            private static final long serialVersionUID = 1L;

            @Override
            protected boolean removeEldestEntry(Map.Entry<Integer, SheetBand> eldest) {
                return size() > SheetRun.NUMBERED;
            }
        };

        Table(OutputStream out) {
            super(out);
        }

        private void text(String text) throws IOException {
            write(text.getBytes(StandardCharsets.UTF_8));
        }

        @Override
        void head(SheetLine.Head head) throws IOException {
            text(SheetTable.ANSWER_HEADER + "\r\n");
            flush();
        }

        @Override
        public void band(SheetBand band) {
            bands.put(band.band(), band);
        }

        @Override
        public void portion(PortionPlace portion) throws IOException {
            SheetBand band = portion.band() == null ? null : Objects.requireNonNull(bands.get(portion.band()));
            text(SheetTable.lines(portion, band));
        }

        @Override
        public void progress(SheetTotals soFar) throws IOException {
            flush();
        }

        @Override
        void totals(SheetTotals all) {
            // The lines say it.
        }

        @Override
        void problem(Problem problem) throws IOException {
            text(SheetTable.brokenOff(problem));
        }
    }
}
