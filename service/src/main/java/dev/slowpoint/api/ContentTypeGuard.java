package dev.slowpoint.api;

import jakarta.servlet.Filter;
import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.ServletRequest;
import jakarta.servlet.ServletResponse;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import org.springframework.stereotype.Component;

/** Tells browsers to take every answer as what it says it is, and never as a page. */
@Component
final class ContentTypeGuard implements Filter {

    static final String HEADER = "X-Content-Type-Options";
    static final String VALUE = "nosniff";

    @Override
    public void doFilter(ServletRequest request, ServletResponse response, FilterChain chain)
            throws IOException, ServletException {
        if (response instanceof HttpServletResponse http) {
            http.setHeader(HEADER, VALUE);
        }
        chain.doFilter(request, response);
    }
}
