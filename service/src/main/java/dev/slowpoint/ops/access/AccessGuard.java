package dev.slowpoint.ops.access;

import dev.slowpoint.ops.PlanMetrics;
import dev.slowpoint.ops.Refusing;
import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.Collections;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.springframework.http.HttpHeaders;
import org.springframework.web.filter.OncePerRequestFilter;

/**
 * Lets in who shows a key or a token that is good, as often as they may. Holds no session and sets no cookie: each request
 * shows who asks.
 */
final class AccessGuard extends OncePerRequestFilter {

    /** After the guard against overload, which costs less. */
    static final int ORDER = 200;

    private static final String CHALLENGE = "Bearer realm=\"slowpoint\"";

    /** As RFC 6750, section 2.1, writes it; longer ones do not fit the headers of a request. */
    private static final Pattern BEARER = Pattern.compile("(?i:Bearer) +([A-Za-z0-9._~+/-]{1,8192}=*)");

    private static final int ISSUER_WAIT_S = 5;

    private final Credentials credentials;
    private final PlanMetrics metrics;

    AccessGuard(Credentials credentials, PlanMetrics metrics) {
        this.credentials = credentials;
        this.metrics = metrics;
    }

    @Override
    protected boolean shouldNotFilter(HttpServletRequest request) {
        return OpenPaths.has(request.getRequestURI());
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        Identity identity = identity(Collections.list(request.getHeaders(HttpHeaders.AUTHORIZATION)));
        if (identity instanceof Identity.Known known) {
            letIn(known.account(), request, response, chain);
        } else if (identity instanceof Identity.Unknown unknown) {
            metrics.notKnown(unknown.reason().word());
            response.setHeader(
                    HttpHeaders.WWW_AUTHENTICATE,
                    unknown.reason() == Identity.Reason.MISSING ? CHALLENGE : CHALLENGE + ", error=\"invalid_token\"");
            refuse(Refusing.UNAUTHENTICATED, request, response);
        } else if (identity instanceof Identity.NotAllowed not) {
            response.setHeader(
                    HttpHeaders.WWW_AUTHENTICATE,
                    CHALLENGE + ", error=\"insufficient_scope\", scope=\"" + not.scope() + "\"");
            refuse(Refusing.FORBIDDEN, request, response);
        } else {
            response.setIntHeader(HttpHeaders.RETRY_AFTER, ISSUER_WAIT_S);
            refuse(Refusing.ISSUER_UNREACHABLE, request, response);
        }
    }

    private Identity identity(List<String> shown) {
        if (shown.isEmpty()) {
            return new Identity.Unknown(Identity.Reason.MISSING);
        }
        Matcher bearer = BEARER.matcher(shown.get(0));
        return shown.size() > 1 || !bearer.matches()
                ? new Identity.Unknown(Identity.Reason.MALFORMED)
                : credentials.of(bearer.group(1));
    }

    private void letIn(Account account, HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        int wait = account.take(Work.of(request.getServletPath()));
        if (wait > 0) {
            response.setIntHeader(HttpHeaders.RETRY_AFTER, wait);
            refuse(Refusing.TOO_MANY_REQUESTS, request, response);
            return;
        }
        try {
            chain.doFilter(request, response);
        } finally {
            account.go();
        }
    }

    private void refuse(Refusing code, HttpServletRequest request, HttpServletResponse response) throws IOException {
        metrics.refused(code.name());
        code.send(request, response);
    }
}
