package dev.slowpoint.api;

import dev.slowpoint.ops.Refusing;
import java.io.IOException;
import java.util.concurrent.atomic.AtomicBoolean;
import org.apache.catalina.Context;
import org.apache.catalina.Pipeline;
import org.apache.catalina.Valve;
import org.apache.catalina.connector.Request;
import org.apache.catalina.connector.Response;
import org.apache.catalina.core.StandardHost;
import org.apache.catalina.valves.ErrorReportValve;
import org.apache.coyote.ActionCode;
import org.jspecify.annotations.Nullable;

/** Writes problems for what the container refuses before any controller sees it, and for what escapes all of them. */
final class ProblemValve extends ErrorReportValve {

    private final Languages languages;

    private ProblemValve(Languages languages) {
        this.languages = languages;
    }

    /** Replaces the pages of the container. */
    static void install(Context context, Languages languages) {
        StandardHost host = (StandardHost) context.getParent();
        Pipeline pipeline = host.getPipeline();
        for (Valve valve : pipeline.getValves()) {
            if (valve instanceof ErrorReportValve) {
                pipeline.removeValve(valve);
            }
        }
        // The host adds a valve of its own unless one of the named class stands in the pipeline.
        host.setErrorReportValveClass(ProblemValve.class.getName());
        pipeline.addValve(new ProblemValve(languages));
    }

    @Override
    protected void report(Request request, Response response, @Nullable Throwable failure) {
        if (response.getStatus() < 400 || response.getContentWritten() > 0 || !response.setErrorReported()) {
            return;
        }
        AtomicBoolean open = new AtomicBoolean(false);
        response.getCoyoteResponse().action(ActionCode.IS_IO_ALLOWED, open);
        if (!open.get()) {
            return;
        }
        ProblemCode code = Refusing.of(request)
                .flatMap(refusing -> ProblemCode.find(refusing.name()))
                .orElseGet(() -> ProblemCode.ofStatus(response.getStatus()));
        Sentences sentences = languages.ofFaulty(request);
        byte[] body = Wire.JSON.write(Problem.of(code, sentences));
        try {
            response.setStatus(code.status());
            response.setContentType(ProblemAdvice.MEDIA_TYPE.toString());
            response.setHeader("Cache-Control", "no-store");
            Languages.announce(sentences, response);
            response.setHeader(ContentTypeGuard.HEADER, ContentTypeGuard.VALUE);
            response.setContentLength(body.length);
            response.getOutputStream().write(body);
            response.finishResponse();
        } catch (IOException gone) {
            container.getLogger().debug("the client left before its problem was written", gone);
        }
    }
}
