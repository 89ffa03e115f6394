// How the tests are run. Every *.test.ts and *.test.tsx under tests/ is one; the bundle is built once before them.
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: fileURLToPath(new URL('../', import.meta.url)),
  test: {
    include: ['tests/**/*.test.{ts,tsx}'],
    globalSetup: ['tests/build-before.ts'],
    // A test drives a whole program in a terminal; on a busy two-core machine that is slow, and being slow is no fault.
    testTimeout: 30_000,
    hookTimeout: 30_000,
    // Files share what they import: no module of src/ remembers anything between calls but what a ledger, a plan or a
    // frame was worked out to. Two at once even on two cores, since half of them wait for a program most of the time.
    isolate: false,
    maxWorkers: Math.max(2, availableParallelism() - 1),
  },
});
