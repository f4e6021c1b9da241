import { mkdtempSync, writeFileSync } from 'node:fs'
import { importBases, mutatedInput } from '../packages/cli/test/mutated/mutated-input.ts'
import { tryImport } from '../packages/cli/test/mutated/try-import.ts'

const bases = importBases()
const folder = mkdtempSync('/tmp/some-')
const [seed = 0, from = 0, to = 0] = process.argv.slice(2).map(Number)
for (let n = from; n <= to; n++) {
  const input = mutatedInput(bases, seed, n)
  writeFileSync('/tmp/in-now.csv', input.bytes)
  const t = performance.now()
  process.stdout.write(`${n} ${input.base} ${input.how.join(', ')} `)
  const o = await tryImport(input, `${folder}/in`, { program: n % 100 === 0, figure: n % 5 === 0 })
  console.log(o.kind, (performance.now() - t).toFixed(0), o.kind === 'failed' ? o.because.slice(0, 500) : '')
}
