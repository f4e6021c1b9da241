import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { createDemonstration } from '@thrum/host'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { tell } from './in-process.ts'
import { repository } from './repository.ts'

const blocks = readFileSync(join(repository, 'README.md'), 'utf8')
  .split('```\n')
  .filter((_, k) => k % 2 === 1)

/** The block of the README that begins so. */
function block(start: string): string {
  const found = blocks.find((own) => own.startsWith(start))
  if (found === undefined) throw new Error(`the README shows nothing that begins with ${start}`)
  return found
}

let folder = ''
const at = (name: string): string => join(folder, name)
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'thrum-readme-'))
  process.env.THRUM_HOME = at('home')
  await createDemonstration(at('ostrel-vale.thrum'))
  writeFileSync(at('counts.csv'), block('field,date,start'))
  await tell(['new', at('paper.thrum')])
  await tell(['import', at('counts.csv'), '--in', at('paper.thrum'), '--accept'])
  await tell(wordsOf(block('./thrum ask what-differs --in ostrel-vale.thrum --kinds "bumble bee"')))
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

/** A command as the README gives it: its words, with the files where they lie here. */
const wordsOf = (command: string): readonly string[] =>
  [...command.replaceAll('\\\n', ' ').matchAll(/"([^"]*)"|(\S+)/gu)]
    .map(([, quoted, plain]) => quoted ?? plain ?? '')
    .slice(1)
    .map((word) => (word.endsWith('.thrum') || word.startsWith('strips') ? at(word) : word))

it.each([
  ['./thrum ask what-differs --in ostrel-vale.thrum --kinds "honey bee"', 'honey bee: did it change on 2032-07-23?'],
  ['./thrum ask what-differs --in paper', 'honey bee: these counts cannot tell what the change on 2033-07-15'],
  ['./thrum ask who-visits --in paper', 'Most frequent: honey bee'],
  ['./thrum fit strips', 'count in 160 rows'],
])('an answer in the README is the one that is printed: %s', async (command, shown) => {
  const { out } = await tell(wordsOf(block(command)))
  // What is left out is shown as three points.
  for (const part of block(shown).split('  ...\n')) expect(out).toContain(part.trimEnd())
})
