package dev.slowpoint.api;

import org.jspecify.annotations.Nullable;
import org.springframework.core.MethodParameter;
import org.springframework.stereotype.Component;
import org.springframework.web.bind.support.WebDataBinderFactory;
import org.springframework.web.context.request.NativeWebRequest;
import org.springframework.web.method.support.HandlerMethodArgumentResolver;
import org.springframework.web.method.support.ModelAndViewContainer;

/** Hands an operation the sentences in the language that a request asks for. */
@Component
final class Languages implements HandlerMethodArgumentResolver {

    private final Sentences english = new Sentences();

    /** The language of the contract. */
    Sentences english() {
        return english;
    }

    @Override
    public boolean supportsParameter(MethodParameter parameter) {
        return parameter.getParameterType() == Sentences.class;
    }

    @Override
    public Sentences resolveArgument(
            MethodParameter parameter,
            @Nullable ModelAndViewContainer container,
            NativeWebRequest request,
            @Nullable WebDataBinderFactory binders) {
        return english;
    }
}
