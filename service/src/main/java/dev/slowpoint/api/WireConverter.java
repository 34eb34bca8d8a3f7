package dev.slowpoint.api;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpInputMessage;
import org.springframework.http.HttpOutputMessage;
import org.springframework.http.MediaType;
import org.springframework.http.converter.AbstractHttpMessageConverter;

/** Carries the records of this package over HTTP in one representation, and nothing else. */
final class WireConverter extends AbstractHttpMessageConverter<Record> {

    /** Longest body that is read. */
    static final int LONGEST_BODY = 64 * 1024;

    private final Wire wire;

    WireConverter(Wire wire) {
        super(wire.mediaType());
        this.wire = wire;
    }

    @Override
    protected boolean supports(Class<?> type) {
        return type.isRecord() && type.getPackage() == WireConverter.class.getPackage();
    }

    @Override
    protected Record readInternal(Class<? extends Record> type, HttpInputMessage message) throws IOException {
        refuseCoding(message.getHeaders());
        if (message.getHeaders().getContentLength() > LONGEST_BODY) {
            throw tooLarge();
        }
        byte[] body = message.getBody().readNBytes(LONGEST_BODY + 1);
        if (body.length > LONGEST_BODY) {
            throw tooLarge();
        }
        return RequestReader.read(body, wire, type);
    }

    private static RequestRefused tooLarge() {
        return new RequestRefused(Fault.of(
                Pointer.BODY, ProblemCode.BODY_TOO_LARGE, "The body is longer than " + LONGEST_BODY + " bytes."));
    }

    private static void refuseCoding(HttpHeaders headers) {
        String coding = headers.getFirst(HttpHeaders.CONTENT_ENCODING);
        if (coding != null && !coding.equalsIgnoreCase("identity")) {
            throw new RequestRefused(
                    Fault.of(Pointer.BODY, ProblemCode.UNSUPPORTED_MEDIA_TYPE, "A compressed body is not read.")
                            .value(coding));
        }
        MediaType type = headers.getContentType();
        // The framework adds UTF-8 where the client named no charset, also to CBOR.
        String charset = type == null ? null : type.getParameter("charset");
        if (charset != null && !charset.replace("\"", "").equalsIgnoreCase(StandardCharsets.UTF_8.name())) {
            throw new RequestRefused(Fault.of(
                            Pointer.BODY,
                            ProblemCode.UNSUPPORTED_MEDIA_TYPE,
                            "The body is announced in another charset than UTF-8.")
                    .value(charset));
        }
    }

    @Override
    protected void writeInternal(Record answer, HttpOutputMessage message) throws IOException {
        byte[] body = wire.write(answer);
        // Written whole, so that small clients see the length before the body.
        message.getHeaders().setContentLength(body.length);
        message.getBody().write(body);
    }
}
