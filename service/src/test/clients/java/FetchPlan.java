import dev.slowpoint.client.ApiClient;
import dev.slowpoint.client.ApiException;
import dev.slowpoint.client.api.PlansApi;
import dev.slowpoint.client.model.Bath;
import dev.slowpoint.client.model.CookPlanAnswer;
import dev.slowpoint.client.model.CookPlanRequest;
import dev.slowpoint.client.model.FoodChoice;
import dev.slowpoint.client.model.Geometry;
import dev.slowpoint.client.model.Start;
import dev.slowpoint.client.model.Surroundings;
import dev.slowpoint.client.model.Target;

/** Asks for a plan with the generated client and prints when to take the piece out: earliest, best and latest, in seconds. */
final class FetchPlan {

    public static void main(String[] arguments) throws ApiException {
        ApiClient client = new ApiClient();
        client.updateBaseUri(arguments[0]);
        CookPlanRequest request = new CookPlanRequest()
                .food(new FoodChoice().id("pork-loin"))
                .geometry(new Geometry().shape(Geometry.ShapeEnum.SLAB).thicknessMm(45.0))
                .start(new Start().temperatureC(4.0))
                .surroundings(new Surroundings().bath(new Bath().setpointC(60.0)))
                .target(new Target().purpose(Target.PurposeEnum.SERVE));
        CookPlanAnswer plan = new PlansApi(client).planCook(request, null, null, null);
        System.out.println(plan.getTakeOut().getEarliestS() + " " + plan.getTakeOut().getBestS() + " "
                + plan.getTakeOut().getLatestS());
    }
}
