package dev.slowpoint.api;

import java.util.List;
import org.springframework.boot.http.converter.autoconfigure.ServerHttpMessageConvertersCustomizer;
import org.springframework.boot.tomcat.ConfigurableTomcatWebServerFactory;
import org.springframework.boot.web.server.WebServerFactoryCustomizer;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.annotation.Order;
import org.springframework.web.method.support.HandlerMethodArgumentResolver;
import org.springframework.web.servlet.config.annotation.InterceptorRegistry;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;

/** Puts our representations, guards and problems in the places of the framework's own. */
@Configuration(proxyBeanMethods = false)
class WebConfiguration implements WebMvcConfigurer {

    /** More than the headers that are read can hold. */
    private static final int MOST_LOCALES = 10_000;

    private final Languages languages;

    WebConfiguration(Languages languages) {
        this.languages = languages;
    }

    @Override
    public void addArgumentResolvers(List<HandlerMethodArgumentResolver> resolvers) {
        resolvers.add(languages);
    }

    @Override
    public void addInterceptors(InterceptorRegistry registry) {
        registry.addInterceptor(new QueryGuard()).addPathPatterns("/v1/**", "/problems/**");
    }

    @Bean
    ServerHttpMessageConvertersCustomizer representations() {
        return converters -> converters
                .addCustomConverter(new WireConverter(Wire.JSON))
                // In the place of the framework's converter, which reads leniently whatever it is sent.
                .withCborConverter(new WireConverter(Wire.CBOR));
    }

    /** After the framework's own customizer, whose valve is taken out. */
    @Bean
    @Order(10)
    WebServerFactoryCustomizer<ConfigurableTomcatWebServerFactory> problemsOfTheContainer() {
        return factory -> factory.addContextCustomizers(context -> ProblemValve.install(context, languages));
    }

    /** A client may name more languages than the ten at which the container would fail. */
    @Bean
    WebServerFactoryCustomizer<ConfigurableTomcatWebServerFactory> languagesOfTheContainer() {
        return factory -> factory.addConnectorCustomizers(connector -> connector.setMaxLocaleCount(MOST_LOCALES));
    }
}
