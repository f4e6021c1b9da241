import { whatWaits } from '@thrum/host'
import { expect, it } from 'vitest'
import { bring, madeProject, mappingOf } from '../corrections/made-counts.ts'

it('a mended file over many waiting cells takes seconds, not minutes', { timeout: 20_000 }, async () => {
  const lines = Array.from({ length: 8000 }, (_, k) => `Weir,${k},2031-05-04,09:10,10,3-4`)
  const sheet = (own: readonly string[]): string => ['field,plot,date,start,minutes,honey bee', ...own, ''].join('\n')
  const project = await madeProject()
  const mapping = mappingOf(sheet(['Weir,edge,2031-05-04,09:10,10,3', ...lines.slice(0, 3)]))
  await bring(project, 'counts.csv', sheet(lines), mapping)
  const mended = sheet(lines.map((line, k) => (k === 7 ? line.replace('3-4', '3') : line)))
  expect(await bring(project, 'counts.csv', mended, mapping)).toMatchObject({ corrections: 1, counts: 0 })
  expect((await whatWaits(project)).cells).toHaveLength(7999)
})
