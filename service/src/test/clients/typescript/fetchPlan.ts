import { Configuration, GeometryShapeEnum, PlansApi, TargetPurposeEnum } from './client';

declare const process: { argv: string[]; exitCode?: number };

/** Asks for a plan with the generated client and prints when to take the piece out: earliest, best and latest, in seconds. */
async function fetchPlan(address: string): Promise<void> {
    const plans = new PlansApi(new Configuration({ basePath: address }));
    const plan = await plans.planCook({
        cookPlanRequest: {
            food: { id: 'pork-loin' },
            geometry: { shape: GeometryShapeEnum.Slab, thicknessMm: 45 },
            start: { temperatureC: 4 },
            surroundings: { bath: { setpointC: 60 } },
            target: { purpose: TargetPurposeEnum.Serve },
        },
    });
    console.log(`${plan.takeOut?.earliestS} ${plan.takeOut?.bestS} ${plan.takeOut?.latestS}`);
}

fetchPlan(process.argv[2]).catch((error: unknown) => {
    console.error(error);
    process.exitCode = 1;
});
