import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['test/**/*.test.ts'],
    root: new URL('..', import.meta.url).pathname,
    reporters: ['default', './test/counts-reporter.ts'],
    testTimeout: 60_000,
    hookTimeout: 60_000,
  },
});
