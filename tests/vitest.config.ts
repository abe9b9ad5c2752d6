// How the tests run: real parts start once in the global set-up, files run side by side, nothing is retried.
import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    root: new URL('..', import.meta.url).pathname,
    include: ['tests/**/*.test.ts'],
    globalSetup: 'tests/support/global-setup.ts',
    setupFiles: 'tests/support/speak-english.ts',
    testTimeout: 60_000,
    hookTimeout: 120_000,
    retry: 0,
    // Modules are read once for all files that run beside each other: no file replaces one, and each test closes what it opened.
    isolate: false,
    // Some files wait for real time to pass: two side by side, also on two cores.
    maxWorkers: 2,
  },
});
