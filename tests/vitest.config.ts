import { defineConfig } from 'vitest/config';

const project = (name: string, extra: object = {}) => ({
  test: {
    name,
    root: new URL('..', import.meta.url).pathname,
    include: [`tests/${name}/**/*.test.ts`],
    setupFiles: ['tests/support/seed.ts'],
    ...extra,
  },
});

export default defineConfig({
  test: {
    projects: [
      project('unit'),
      project('property', { testTimeout: 60_000 }),
      project('acceptance', { testTimeout: 60_000 }),
      project('faults', { testTimeout: 60_000 }),
      project('browser', { testTimeout: 120_000, hookTimeout: 120_000, fileParallelism: false, isolate: false }),
    ],
  },
});
