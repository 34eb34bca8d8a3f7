package dev.slowpoint.ops;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.Optional;

/** What a request is refused for before an operation is asked. The names are codes of problems. */
public enum Refusing {
    UNAUTHENTICATED(401),
    FORBIDDEN(403),
    TOO_MANY_REQUESTS(429),
    OVERLOADED(503),
    ISSUER_UNREACHABLE(503);

    private static final String ATTRIBUTE = Refusing.class.getName();

    private final int status;

    Refusing(int status) {
        this.status = status;
    }

    /** Ends the request; its problem is written later, in the language that was asked for. */
    public void send(HttpServletRequest request, HttpServletResponse response) throws IOException {
        request.setAttribute(ATTRIBUTE, this);
        RequestLog.tell(request, name());
        response.sendError(status);
    }

    /** What a request was refused for. */
    public static Optional<Refusing> of(HttpServletRequest request) {
        return request.getAttribute(ATTRIBUTE) instanceof Refusing code ? Optional.of(code) : Optional.empty();
    }
}
