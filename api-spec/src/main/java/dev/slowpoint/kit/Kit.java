package dev.slowpoint.kit;

import java.lang.reflect.Method;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.jupiter.api.extension.ParameterContext;
import org.junit.jupiter.api.extension.ParameterResolver;
import org.junit.jupiter.api.extension.TestExecutionExceptionHandler;
import org.opentest4j.TestAbortedException;

/** Hands the subject to the tests of all layers, and shows in a failure what was sent and answered last. */
public final class Kit implements ParameterResolver, TestExecutionExceptionHandler {

    @Override
    public boolean supportsParameter(ParameterContext parameter, ExtensionContext context) {
        return parameter.getParameter().getType() == Subject.class;
    }

    @Override
    public Object resolveParameter(ParameterContext parameter, ExtensionContext context) {
        return subject(context);
    }

    @Override
    public void handleTestExecutionException(ExtensionContext context, Throwable thrown) throws Throwable {
        if (thrown instanceof TestAbortedException) {
            throw thrown;
        }
        throw new AssertionError(
                thrown.getMessage()
                        + subject(context)
                                .last()
                                .map(exchange -> "\n" + exchange)
                                .orElse(""),
                thrown);
    }

    private static Subject subject(ExtensionContext context) {
        return context.getRoot()
                .getStore(ExtensionContext.Namespace.create(Kit.class))
                .computeIfAbsent(
                        Subject.class, unused -> Subject.of(context::getConfigurationParameter), Subject.class);
    }

    /** A test is named by its requirement, so that a report reads like the list of requirements. */
    public static final class Names extends DisplayNameGenerator.Standard {
        @Override
        public String generateDisplayNameForMethod(List<Class<?>> enclosing, Class<?> layer, Method method) {
            Requirement requirement =
                    Requirement.ALL.get(method.getAnnotation(Tag.class).value());
            return requirement == null ? method.getName() : requirement.id() + " " + requirement.text();
        }
    }
}
