import { defineConfig } from 'vitest/config'

// Tests named *.full.test.ts are costly: they run with `npm run test:full` only.
const full = process.env.THRUM_TESTS === 'full'

export default defineConfig({
  test: {
    include: full
      ? ['packages/*/test/**/*.test.ts', 'tools/test/**/*.test.ts']
      : ['packages/*/test/**/!(*.full).test.ts', 'tools/test/**/*.test.ts'],
    testTimeout: 60_000,
    // What a program says in a test hangs on nobody's machine.
    env: { THRUM_LANGUAGE: 'en' },
    pool: 'threads',
    maxWorkers: 2,
  },
})
