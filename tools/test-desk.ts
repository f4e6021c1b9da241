// Browser tests of the desk, as it is built now: node tools/boot.mjs tools/test-desk.ts [names of spec files]
import { spawnSync } from 'node:child_process'
import { join } from 'node:path'

const root = join(import.meta.dirname, '..')
const steps = [
  [join(root, 'tools', 'build-desk.ts')],
  [
    join(root, 'node_modules', '@playwright', 'test', 'cli.js'),
    'test',
    '-c',
    join(root, 'packages', 'desk', 'e2e', 'playwright.config.ts'),
    ...process.argv.slice(2),
  ],
]
for (const args of steps) {
  const { status } = spawnSync(process.execPath, args, { cwd: root, stdio: 'inherit' })
  if (status !== 0) process.exit(status ?? 1)
}
