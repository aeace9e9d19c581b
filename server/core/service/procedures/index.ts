export { holds } from './condition.ts';
export { filledBy, lacks, openGates, type Slot, slotsOf } from './lacks.ts';
export { type Practice, plainPractice, type ShopProcedure, strayNames, withShopProcedures } from './overlay.ts';
export { axlesInWork, type PlannedStep, planSteps } from './plan.ts';
