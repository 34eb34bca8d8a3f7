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

    /** Longest body that is read, where the request does not say otherwise by {@link LongestBody}. */
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
        return RequestReader.read(body(message, type), wire, type);
    }

    /** The whole body, as long as the request may be at most. */
    static byte[] body(HttpInputMessage message, Class<? extends Record> type) throws IOException {
        refuseCoding(message.getHeaders());
        LongestBody said = type.getAnnotation(LongestBody.class);
        int longest = said == null ? LONGEST_BODY : said.value();
        if (message.getHeaders().getContentLength() > longest) {
            throw tooLarge(longest);
        }
        byte[] body = message.getBody().readNBytes(longest + 1);
        if (body.length > longest) {
            throw tooLarge(longest);
        }
        return body;
    }

    private static RequestRefused tooLarge(int longest) {
        return new RequestRefused(
                Fault.of(Pointer.BODY, ProblemCode.BODY_TOO_LARGE, "FAULT_BODY_TOO_LARGE", Integer.toString(longest)));
    }

    static void refuseCoding(HttpHeaders headers) {
        String coding = headers.getFirst(HttpHeaders.CONTENT_ENCODING);
        if (coding != null && !coding.equalsIgnoreCase("identity")) {
            throw new RequestRefused(Fault.of(Pointer.BODY, ProblemCode.UNSUPPORTED_MEDIA_TYPE, "FAULT_COMPRESSED")
                    .value(coding));
        }
        MediaType type = headers.getContentType();
        // The framework adds UTF-8 where the client named no charset, also to CBOR.
        String charset = type == null ? null : type.getParameter("charset");
        if (charset != null && !charset.replace("\"", "").equalsIgnoreCase(StandardCharsets.UTF_8.name())) {
            throw new RequestRefused(Fault.of(Pointer.BODY, ProblemCode.UNSUPPORTED_MEDIA_TYPE, "FAULT_OTHER_CHARSET")
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
