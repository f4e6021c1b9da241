import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { testFolder } from '../in-process.ts'
import { importBases, mutatedInput } from './mutated-input.ts'
import { tryImport } from './try-import.ts'

// Recovery: a share of the trial in trials/mutated-imports.ts. A new seed is a new trial; this one is fixed.
const seed = 20_310_504
const inputs = 150

describe('mutated files through the whole program', () => {
  it(`${inputs} mutated files are brought or refused in words, and nothing they hold does harm`, async () => {
    const folder = testFolder()
    const bases = importBases()
    const failures: string[] = []
    const outcomes = { brought: 0, refused: 0, failed: 0 }
    let cells = 0
    let figures = 0
    let countedApart = 0
    for (let number = 0; number < inputs; number++) {
      const input = mutatedInput(bases, seed, number)
      const steps = { program: number % 75 === 0, figure: number % 3 === 0 }
      const outcome = await tryImport(input, join(folder, 'in'), steps)
      outcomes[outcome.kind]++
      if (outcome.kind === 'failed') failures.push(`${number}, ${input.base}, ${input.how.join(', ')}: ${outcome.because}`)
      if (outcome.kind !== 'brought') continue
      cells += outcome.cells
      figures += outcome.figures
      if (outcome.countedApart) countedApart++
    }
    expect(failures).toEqual([])
    // Both ways out are taken, and each check had something to look at.
    expect(outcomes.brought).toBeGreaterThan(inputs / 3)
    expect(outcomes.refused).toBeGreaterThan(inputs / 10)
    expect([cells > 1000, figures > 10, countedApart > 5]).toEqual([true, true, true])
  }, 300_000)
})
