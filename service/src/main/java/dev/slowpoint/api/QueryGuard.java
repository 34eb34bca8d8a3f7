package dev.slowpoint.api;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.method.HandlerMethod;
import org.springframework.web.servlet.HandlerInterceptor;

/** Refuses query parameters that an operation does not have, for the same reason as unknown fields. */
final class QueryGuard implements HandlerInterceptor {

    @Override
    public boolean preHandle(HttpServletRequest request, HttpServletResponse response, Object handler) {
        if (!(handler instanceof HandlerMethod method) || request.getQueryString() == null) {
            return true;
        }
        List<String> known = new ArrayList<>(Arrays.stream(method.getMethodParameters())
                .map(parameter -> parameter.getParameterAnnotation(RequestParam.class))
                .filter(Objects::nonNull)
                .map(RequestParam::name)
                .toList());
        Queried queried = method.getMethodAnnotation(Queried.class);
        if (queried != null) {
            known.addAll(FlatMembers.of(queried.value()).names());
        }
        if (speaks(method)) {
            known.add(Languages.UNITS);
        }
        Faults faults = new Faults();
        for (String name : new TreeSet<>(request.getParameterMap().keySet())) {
            if (!known.contains(name)) {
                faults.add(unknown(name, known));
            }
        }
        faults.throwIfAny();
        return true;
    }

    /** Whether an operation answers with sentences. */
    static boolean speaks(HandlerMethod method) {
        return Arrays.stream(method.getMethodParameters())
                .anyMatch(parameter -> parameter.getParameterType() == Sentences.class);
    }

    private static Fault unknown(String name, List<String> known) {
        Fault fault = Fault.of(
                        Pointer.query(name),
                        ProblemCode.UNKNOWN_PARAMETER,
                        "FAULT_UNKNOWN_PARAMETER",
                        Fault.shortened(name))
                .allowed(known.stream().sorted().collect(Collectors.toList()));
        return Words.nearest(name, known)
                .map(word -> fault.hint("HINT_MAYBE", word))
                .orElse(fault);
    }
}
