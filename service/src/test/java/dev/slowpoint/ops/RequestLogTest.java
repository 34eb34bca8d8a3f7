package dev.slowpoint.ops;

import static org.assertj.core.api.Assertions.assertThat;

import dev.slowpoint.api.HttpTest;
import java.util.concurrent.TimeUnit;
import org.awaitility.Awaitility;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.springframework.boot.test.system.CapturedOutput;
import org.springframework.boot.test.system.OutputCaptureExtension;

@ExtendWith(OutputCaptureExtension.class)
class RequestLogTest extends HttpTest {

    @Test
    void a_fault_of_ours_tells_where_it_happened_and_nothing_of_what_was_asked(CapturedOutput output) {
        String incident = http().contentType(JSON)
                .body(porkWith("pork-loin", "bug"))
                .post(PLANS)
                .header("Slowpoint-Incident");
        assertThat(incident).isNotBlank();
        // The line of a request is written after its answer.
        Awaitility.await()
                .atMost(10, TimeUnit.SECONDS)
                .until(() -> output.getOut().contains("failed: "));
        assertThat(output.getOut())
                .contains("incident " + incident + " on POST /v1/cook-plans")
                .contains("failed: POST /v1/cook-plans answered 500 in")
                .contains("problem INTERNAL_ERROR")
                .contains("java.lang.IllegalStateException")
                .contains("TroubledKitchen.refuseSome")
                .doesNotContain("jdbc:inside/secret");
    }

    @Test
    void a_plan_and_a_refusal_leave_no_line(CapturedOutput output) {
        http().contentType(JSON).body(PORK).post(PLANS);
        http().contentType(JSON).body("{}").post(PLANS);
        http().get("/v1/foods/xyzzy");
        assertThat(output.getOut()).doesNotContain("/v1/");
    }
}
