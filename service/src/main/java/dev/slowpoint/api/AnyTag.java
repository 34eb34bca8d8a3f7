package dev.slowpoint.api;

import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.springframework.core.MethodParameter;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpMethod;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.converter.ByteArrayHttpMessageConverter;
import org.springframework.http.converter.HttpMessageConverter;
import org.springframework.http.server.ServerHttpRequest;
import org.springframework.http.server.ServerHttpResponse;
import org.springframework.web.bind.annotation.ControllerAdvice;
import org.springframework.web.servlet.mvc.method.annotation.ResponseBodyAdvice;

/**
 * Answers 304 to who asks, with {@code If-None-Match: *}, for nothing that is there (RFC 9110, section 13.1.2). The framework
 * only compares tags that are named.
 */
@ControllerAdvice
class AnyTag implements ResponseBodyAdvice<byte[]> {

    private static final Set<HttpMethod> SAFE = Set.of(HttpMethod.GET, HttpMethod.HEAD);

    @Override
    public boolean supports(MethodParameter returned, Class<? extends HttpMessageConverter<?>> converter) {
        return ByteArrayHttpMessageConverter.class.isAssignableFrom(converter);
    }

    @Override
    public byte @Nullable [] beforeBodyWrite(
            byte @Nullable [] body,
            MethodParameter returned,
            MediaType type,
            Class<? extends HttpMessageConverter<?>> converter,
            ServerHttpRequest request,
            ServerHttpResponse response) {
        if (SAFE.contains(request.getMethod())
                && List.of("*").equals(request.getHeaders().get(HttpHeaders.IF_NONE_MATCH))
                && response.getHeaders().getETag() != null) {
            response.setStatusCode(HttpStatus.NOT_MODIFIED);
            return null;
        }
        return body;
    }
}
