package dev.slowpoint.kit;

import io.restassured.http.Header;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tools.jackson.databind.JsonNode;

/** A request to the subject, which is sent as it stands here and in no other way. */
public final class Ask {

    private final Subject subject;
    private final String method;
    private final String path;
    private final Map<String, String> query = new LinkedHashMap<>();
    private final Map<String, String> headers = new LinkedHashMap<>();
    private byte[] body = {};
    private boolean text = true;

    Ask(Subject subject, String method, String path) {
        this.subject = subject;
        this.method = method;
        this.path = path;
    }

    /** A parameter of the query. */
    public Ask query(String name, String value) {
        query.put(name, value);
        return this;
    }

    /** A header; a later one of the same name takes the place of an earlier one. */
    public Ask header(String name, String value) {
        headers.put(name, value);
        return this;
    }

    /** What is accepted as an answer. */
    public Ask accept(String types) {
        return header("Accept", types);
    }

    /** A body of this media type. */
    public Ask body(String type, byte[] bytes) {
        body = bytes.clone();
        text = !type.startsWith(Wire.CBOR.mediaType());
        return header("Content-Type", type);
    }

    /** A body of text in UTF-8. */
    public Ask body(String type, String characters) {
        return body(type, characters.getBytes(StandardCharsets.UTF_8));
    }

    /** A tree in one of the two notations, which is also accepted as the notation of the answer. */
    public Ask body(Wire wire, JsonNode tree) {
        if (!headers.containsKey("Accept")) {
            accept(wire.mediaType());
        }
        return body(wire.mediaType(), wire.write(tree));
    }

    /** Sends the request and waits for the whole answer. */
    public Answer send() {
        RequestSpecification request = subject.http();
        headers.forEach((name, value) -> request.header(name, value));
        query.forEach((name, value) -> request.queryParam(name, value));
        if (body.length > 0 || headers.containsKey("Content-Type")) {
            request.body(body);
        }
        Response response = request.request(method, subject.address() + path);
        List<String> told = new ArrayList<>();
        for (Header header : response.headers()) {
            told.add(header.getName() + ": " + header.getValue());
        }
        Exchange exchange = new Exchange(
                method + " " + path + (query.isEmpty() ? "" : " " + query) + " " + headers,
                body,
                response.statusCode(),
                told,
                response.asByteArray(),
                text);
        subject.keep(exchange);
        return new Answer(response.statusCode(), response.headers(), exchange.answered(), exchange);
    }
}
