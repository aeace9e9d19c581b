// Random tests draw from one seed, so that a red run is the same run twice. SEED=random (or a number) draws others.
import fc from 'fast-check';

const { SEED = '565' } = process.env;
fc.configureGlobal(SEED === 'random' ? {} : { seed: Number(SEED) });
