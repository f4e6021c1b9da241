import { expect, it } from 'vitest'
import { askAnyProject } from './any-project.ts'

it('identity: 6000 projects, however little is in them: each question is answered or ends with a remedy', async () => {
  const { answered, stopped } = await askAnyProject(42, 6000)
  expect(answered).toBeGreaterThan(stopped)
}, 600_000)
