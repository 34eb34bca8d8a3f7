package dev.slowpoint.api;

import dev.slowpoint.parameters.Deprecation;
import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.beans.factory.SmartInitializingSingleton;
import org.springframework.beans.factory.annotation.Qualifier;
import org.springframework.http.server.PathContainer;
import org.springframework.stereotype.Component;
import org.springframework.web.bind.annotation.RequestMethod;
import org.springframework.web.filter.OncePerRequestFilter;
import org.springframework.web.method.HandlerMethod;
import org.springframework.web.servlet.mvc.method.RequestMappingInfo;
import org.springframework.web.servlet.mvc.method.annotation.RequestMappingHandlerMapping;
import org.springframework.web.util.pattern.PathPattern;

/**
 * Announces {@link Retiring} operations, also where they refuse what they are sent: by path and method, since a problem
 * may come before the operation is found. What is refused before it comes here, an overload or a message that is no HTTP,
 * is no answer of an operation.
 */
@Component
final class RetiringOperations extends OncePerRequestFilter implements SmartInitializingSingleton {

    private record Operation(PathPattern path, Set<RequestMethod> methods, Deprecation deprecation, String see) {

        boolean answers(PathContainer asked, String method) {
            return methods.stream().anyMatch(known -> known.name().equals(method)) && path.matches(asked);
        }
    }

    private final ObjectProvider<RequestMappingHandlerMapping> mappings;
    private List<Operation> operations = List.of();

    RetiringOperations(
            @Qualifier("requestMappingHandlerMapping") ObjectProvider<RequestMappingHandlerMapping> mappings) {
        this.mappings = mappings;
    }

    /**
     * The deprecation of an operation, if it has one.
     *
     * @throws IllegalArgumentException if its days are none, or out of order
     */
    static Optional<Deprecation> deprecation(HandlerMethod method) {
        return Optional.ofNullable(method.getMethodAnnotation(Retiring.class))
                .map(retiring -> new Deprecation(
                        LocalDate.parse(retiring.since()),
                        retiring.sunset().isEmpty()
                                ? Optional.empty()
                                : Optional.of(LocalDate.parse(retiring.sunset()))));
    }

    /** Finds them all, so that days out of order stop the start. */
    @Override
    public void afterSingletonsInstantiated() {
        List<Operation> found = new ArrayList<>();
        mappings.getObject()
                .getHandlerMethods()
                .forEach((info, method) ->
                        deprecation(method).ifPresent(days -> found.addAll(operations(info, method, days))));
        operations = List.copyOf(found);
    }

    private static List<Operation> operations(RequestMappingInfo info, HandlerMethod method, Deprecation days) {
        Retiring retiring = method.getMethodAnnotation(Retiring.class);
        if (retiring == null || info.getPathPatternsCondition() == null) {
            throw new IllegalStateException(method + " has no path of its own");
        }
        return info.getPathPatternsCondition().getPatterns().stream()
                .map(path -> new Operation(path, info.getMethodsCondition().getMethods(), days, retiring.see()))
                .toList();
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        if (!operations.isEmpty()) {
            PathContainer asked = PathContainer.parsePath(request.getRequestURI());
            operations.stream()
                    .filter(operation -> operation.answers(asked, request.getMethod()))
                    .forEach(operation ->
                            DeprecationHeaders.announce(request, response, operation.deprecation(), operation.see()));
        }
        chain.doFilter(request, response);
    }
}
