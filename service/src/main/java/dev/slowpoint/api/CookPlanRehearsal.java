package dev.slowpoint.api;

import dev.slowpoint.ops.Rehearsal;
import java.util.EnumSet;
import java.util.List;
import org.springframework.stereotype.Component;

/** Plans the examples of the contract, from bytes to bytes and in every representation. */
@Component
final class CookPlanRehearsal implements Rehearsal {

    private final CookPlanning planning;
    private final List<byte[]> bodies;

    CookPlanRehearsal(CookPlanning planning, Examples examples) {
        this.planning = planning;
        this.bodies = List.copyOf(examples.requests("cook-plan").values());
        if (bodies.isEmpty()) {
            throw new IllegalStateException("there is no example of a cook plan to rehearse");
        }
    }

    @Override
    public void rehearse() {
        for (byte[] body : bodies) {
            CookPlanRequest request = RequestReader.read(body, Wire.JSON, CookPlanRequest.class);
            CookPlanAnswer plan = planning.plan(request, EnumSet.allOf(Include.class));
            for (Wire wire : Wire.values()) {
                if (wire.write(plan).length == 0) {
                    throw new IllegalStateException("a plan was written as nothing in " + wire);
                }
            }
        }
    }
}
