package dev.slowpoint.api;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;
import org.springframework.web.filter.OncePerRequestFilter;

/**
 * Tells browsers what the pages of the documentation may load, and to come back by TLS where they came by it. Pages that
 * hold what a caller sent have a stricter policy of their own.
 */
@Component
@Order(PageGuard.ORDER)
final class PageGuard extends OncePerRequestFilter {

    /** Before all that may refuse a request. */
    static final int ORDER = 50;

    /**
     * Scripts and styles of our own files alone. The page that shows the contract writes no style into its text; its
     * pictures stand in its style sheet.
     */
    static final String POLICY = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:;"
            + " connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

    /** A year, as is usual. */
    static final String TRANSPORT = "max-age=31536000";

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        String path = request.getServletPath();
        if (path.equals("/")
                || path.startsWith("/trial")
                || path.startsWith("/docs")
                || path.startsWith("/swagger-ui")) {
            response.setHeader("Content-Security-Policy", POLICY);
            response.setHeader("Referrer-Policy", "no-referrer");
        }
        if (request.isSecure()) {
            response.setHeader("Strict-Transport-Security", TRANSPORT);
        }
        chain.doFilter(request, response);
    }
}
