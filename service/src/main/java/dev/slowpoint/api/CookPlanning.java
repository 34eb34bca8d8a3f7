package dev.slowpoint.api;

import java.util.Set;

/** Answers cook-plan questions. */
interface CookPlanning {

    /**
     * Plans a cook.
     *
     * @param request read and found to keep the contract
     * @param include what to answer beyond the plan itself; nothing else of it is filled
     * @param sentences in the language asked for
     * @return the plan, the same for the same request
     * @throws dev.slowpoint.plan.Refusal if the question cannot be answered
     */
    CookPlanAnswer plan(CookPlanRequest request, Set<Include> include, Sentences sentences);
}
