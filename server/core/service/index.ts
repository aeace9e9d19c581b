// Service: procedures, torque, bearings, grease, alignment, brakes, intervals, sums.
export * from './procedures/index.ts';
export { type AxleName, makersValue, measured, type Place, type Reading, type SideName } from './reading.ts';
