import { createLogicalClock, fieldDescribed, makeFact } from '@thrum/model'
import { unwatched } from '@thrum/model/ground'
import { describe, expect, it } from 'vitest'
import { askSnapshot, planSnapshot } from '../../src/index.ts'

const author = {
  by: 'a planner',
  device: 'desk',
  clock: createLogicalClock({ now: () => 1_900_000_000_000, monotonic: () => 0, zone: () => 'UTC' }, 'desk'),
}
const bytes = (lines: readonly string[]): Uint8Array => new TextEncoder().encode(`${lines.join('\n')}\n`)
const header = 'field,date,start,observer,bloom stage,strip,crop'

function plan(dateOf: (field: number, visit: number) => string): Uint8Array {
  const rows = ['A', 'B', 'C', 'D', 'E', 'F'].flatMap((field, k) =>
    [0, 1].map(
      (visit) =>
        `${field},${dateOf(k, visit)},${(k + visit) % 2 === 0 ? '10:30' : '14:30'},${(k + visit) % 2 === 0 ? 'K' : 'M'},${63 + 2 * visit},${k < 3 ? 'yes' : 'no'},bean`,
    ),
  )
  return bytes([header, ...rows])
}

const audit = async (table: Uint8Array, known: Parameters<typeof planSnapshot>[2] = []) => {
  const snapshot = await planSnapshot(table, 'plan.csv', known, author, unwatched)
  return askSnapshot(snapshot, 'is-design-sound', { between: 'strip', kinds: 'bumble bee' }, unwatched)
}

describe('a plan is a snapshot whose counts have no tallies yet', () => {
  it('common dates: the design carries the comparison', async () => {
    const { answer, snapshot } = await audit(plan((_, visit) => `2032-06-0${1 + 7 * visit}`))
    expect(snapshot.tables.count.rows).toBe(12)
    expect(snapshot.tables.tally.rows).toBe(0)
    expect(answer.verdict).toBeNull()
    expect(answer.cautions.map(({ code }) => code)).not.toContain('effort-unknown')
  })

  it('each level in a week of its own: blocked, naming the date', async () => {
    const { answer } = await audit(plan((field, visit) => (field < 3 ? `2032-06-0${1 + visit}` : `2032-06-2${1 + visit}`)))
    expect(answer.verdict).toBe('design-blocks')
    expect(JSON.stringify(answer.cautions)).toContain('survey/nuisance/date')
  })

  it('what the project knows of its fields comes along: places are then known', async () => {
    const known = ['A', 'B', 'C', 'D', 'E', 'F'].map((field, k) =>
      makeFact(fieldDescribed, { field, latitude: 45 + k, longitude: -30 }, author),
    )
    const codes = (answer: { readonly cautions: readonly { readonly code: string }[] }) => answer.cautions.map(({ code }) => code)
    const dates = plan((_, visit) => `2032-06-0${1 + 7 * visit}`)
    expect(codes((await audit(dates)).answer)).toContain('places-unknown')
    expect(codes((await audit(dates, known)).answer)).not.toContain('places-unknown')
  })
})
