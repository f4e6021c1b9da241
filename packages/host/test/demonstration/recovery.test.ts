import { describe, expect, it } from 'vitest'
import {
  bumbleBee,
  hiveMove,
  honeyBee,
  hoverFly,
  plantedKinds,
  seasonRatio,
  smallSolitaryBee,
} from '../../src/demonstration/planted-truths.ts'
import { type CountRow, countRows, projectOf } from './made-project.ts'

// Recovery: what was planted comes back on average over 40 seeds, within four Monte Carlo standard errors.
const projects = Array.from({ length: 40 }, (_, k) => countRows(projectOf(`recovery ${k}`)))
const moveDay = Date.parse('2032-07-23') / 86_400_000
const isMove = ({ crop, date }: CountRow): boolean => crop === 'sunflower' && date >= moveDay

/** Log of the mean number of a kind in a count, over the rows where a condition holds. */
function logMean(rows: readonly CountRow[], kind: string, holds: (row: CountRow) => boolean): number {
  const own = rows.filter(holds)
  return Math.log(own.reduce((sum, { kinds }) => sum + (kinds.get(kind) ?? Number.NaN), 0) / own.length)
}

/**
 * Asserts that a log found in each project scatters around the planted one. `bend` allows for what the log of a sum of
 * lognormals is off by: at most half the variance that was planted between the units summed.
 */
function expectPlanted(found: readonly number[], planted: number, bend: number): void {
  const mean = found.reduce((sum, value) => sum + value, 0) / found.length
  const variance = found.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (found.length - 1)
  const reach = 4 * Math.sqrt(variance / found.length) + bend
  expect(Math.abs(mean - planted), `mean ${mean}, planted ${planted}, reach ${reach}`).toBeLessThan(reach)
  // A test that nothing could fail would prove nothing: the reach stays below a third of the fade, which is the widest of all.
  expect(reach).toBeLessThan(0.35)
}

const unmoved = (rows: readonly CountRow[]): readonly CountRow[] => rows.filter((row) => !isMove(row))

describe('planted ratios', () => {
  for (const kind of plantedKinds) {
    const compare = (rows: (all: readonly CountRow[]) => readonly CountRow[], over: (row: CountRow) => boolean) =>
      projects.map((all) => logMean(rows(all), kind.name, over) - logMean(rows(all), kind.name, (row) => !over(row)))

    it(`${kind.name}: strip against no strip`, () => {
      expectPlanted(
        compare(unmoved, ({ strip }) => strip),
        Math.log(kind.stripRatio),
        0,
      )
    })
    it(`${kind.name}: edge against centre`, () => {
      expectPlanted(
        compare(
          (all) => all,
          ({ position }) => position === 'edge',
        ),
        Math.log(kind.edgeRatio),
        kind.edgeSd ** 2 / 2,
      )
    })
    it(`${kind.name}: afternoon against morning`, () => {
      expectPlanted(
        compare(
          (all) => all,
          ({ half }) => half === 'afternoon',
        ),
        Math.log(kind.afternoonRatio),
        0,
      )
    })
    it(`${kind.name}: observer 2 against observer 1`, () => {
      expectPlanted(
        compare(unmoved, ({ observer }) => observer === 'observer 2'),
        Math.log(kind.seenByObserver2),
        0,
      )
    })
    it(`${kind.name}: season 2 against season 1, in cherry, which nothing befell`, () => {
      expectPlanted(
        compare(
          (all) => all.filter(({ crop }) => crop === 'sweet cherry'),
          ({ season }) => season === '2032',
        ),
        Math.log(seasonRatio),
        0,
      )
    })
    it(`${kind.name}: the fade of sunflower`, () => {
      expectPlanted(
        compare((all) => all.filter(({ crop, season }) => crop === 'sunflower' && season === '2032'), isMove),
        Math.log(hiveMove.fade),
        0,
      )
    })
    it(`${kind.name}: mean of a count at the centre, without strip, in season 1, by observer 1`, () => {
      const plain = (row: CountRow): boolean =>
        row.position === 'centre' && !row.strip && row.season === '2031' && row.observer === 'observer 1'
      // Half of the planted variances of field, field by season and visit: 0.2, 0.08 and 0.15 squared.
      expectPlanted(
        projects.map((all) => logMean(all, kind.name, plain)),
        Math.log(kind.mean),
        (0.2 ** 2 + 0.08 ** 2 + 0.15 ** 2) / 2,
      )
    })
  }
})

describe('the move of the hives', () => {
  it('leaves honey bees per bumble bee as they were', () => {
    const relative = projects.map((all) => {
      const own = all.filter(({ crop, season }) => crop === 'sunflower' && season === '2032')
      const change = (kind: string): number => logMean(own, kind, isMove) - logMean(own, kind, (row) => !isMove(row))
      return change(honeyBee.name) - change(bumbleBee.name)
    })
    expectPlanted(relative, 0, 0)
  })

  it('finds flowers faded as the visitors', () => {
    for (const rows of projects.slice(0, 5)) {
      const mean = (list: readonly CountRow[]): number => list.reduce((sum, { flowers }) => sum + flowers, 0) / list.length
      const own = rows.filter(({ crop, season }) => crop === 'sunflower' && season === '2032')
      const ratio = mean(own.filter(isMove)) / mean(own.filter((row) => !isMove(row)))
      // 16 and 24 counts that scatter by 6 %: four standard errors of their ratio are 8 %.
      expect(Math.abs(Math.log(ratio / hiveMove.fade))).toBeLessThan(0.08)
    }
  })
})

describe('scatter of single counts', () => {
  it('is beyond Poisson as planted: variance over mean of hover flies', () => {
    // Method of moments over all plain counts: mean (1 + mean / theta) with the planted log variances of 0.0689 in all.
    const plain = projects.flatMap((all) =>
      all.filter((row) => row.season === '2031').map(({ kinds }) => kinds.get(hoverFly.name) ?? 0),
    )
    const mean = plain.reduce((sum, value) => sum + value, 0) / plain.length
    const variance = plain.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (plain.length - 1)
    const extra = Math.exp(0.2 ** 2 + 0.08 ** 2 + 0.15 ** 2)
    const planted = mean + mean ** 2 * ((1 + 1 / hoverFly.theta) * extra - 1)
    // 3,200 counts with a kurtosis near 7: four standard errors of their variance are 4 * sqrt(6 / 3200), 17 %.
    expect(Math.abs(variance / planted - 1)).toBeLessThan(0.17)
    expect(smallSolitaryBee.theta).toBeGreaterThan(hoverFly.theta)
  })
})
