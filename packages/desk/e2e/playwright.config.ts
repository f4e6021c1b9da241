import { defineConfig } from '@playwright/test'
import { chromiumPath } from './chromium.ts'

/** Browser tests of the desk, in the Chromium of the machine, each against a server of its own on loopback. */
export default defineConfig({
  testDir: '.',
  outputDir: '../../../.cache/e2e',
  timeout: 60_000,
  workers: 2,
  fullyParallel: true,
  reporter: [['line']],
  use: {
    launchOptions: {
      executablePath: chromiumPath(),
      args: ['--no-sandbox', '--disable-quic', '--disable-background-networking', '--disable-component-update', '--disable-sync'],
    },
  },
})
