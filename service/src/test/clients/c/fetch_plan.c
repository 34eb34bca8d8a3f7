/* Asks for a plan with the generated client and prints when to take the piece out: earliest, best and latest, in seconds. */

#include <stdio.h>

#include "api/PlansAPI.h"

int main(int count, char **words) {
    if (count != 2) {
        fprintf(stderr, "Usage: %s <address>\n", words[0]);
        return 2;
    }
    double thickness_mm = 45;
    double temperature_c = 4;
    double setpoint_c = 60;
    food_choice_t food = {.id = "pork-loin"};
    geometry_t geometry = {.shape = slowpoint_geometry_SHAPE_slab, .thickness_mm = &thickness_mm};
    start_t start = {.temperature_c = &temperature_c};
    bath_t bath = {.setpoint_c = &setpoint_c};
    surroundings_t surroundings = {.bath = &bath};
    target_t target = {.purpose = slowpoint_target_PURPOSE_serve};
    cook_plan_request_t request = {
        .food = &food, .geometry = &geometry, .start = &start, .surroundings = &surroundings, .target = &target};

    apiClient_t *client = apiClient_create_with_base_path(words[1], NULL);
    cook_plan_answer_t *plan =
        PlansAPI_planCook(client, &request, NULL, slowpoint_planCook_UNITS_metric, NULL);
    if (plan == NULL || plan->take_out == NULL || plan->take_out->latest_s == NULL) {
        fprintf(stderr, "No plan: status %ld\n", client->response_code);
        apiClient_free(client);
        return 1;
    }
    printf("%d %d %d\n", *plan->take_out->earliest_s, *plan->take_out->best_s, *plan->take_out->latest_s);
    cook_plan_answer_free(plan);
    apiClient_free(client);
    return 0;
}
