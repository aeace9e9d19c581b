export { holds } from './condition.ts';
export { filledBy, lacks, openGates, type Slot, slotsOf } from './lacks.ts';
export { type ShopProcedure, type ShopStep, withShopProcedures } from './overlay.ts';
export { axlesInWork, type PlannedStep, planSteps } from './plan.ts';
