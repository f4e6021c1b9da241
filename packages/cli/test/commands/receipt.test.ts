import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { sha256Hex } from '@thrum/model/ground'
import { beforeEach, describe, expect, it } from 'vitest'
import { tell, testFolder } from '../in-process.ts'
import { wideSheet } from '../sheets.ts'

let folder = ''
let project = ''
let receipt = ''
beforeEach(async () => {
  folder = testFolder()
  process.env.THRUM_HOME = join(folder, 'home')
  project = join(folder, 'own.thrum')
  receipt = join(folder, 'receipt')
  writeFileSync(join(folder, 'sheets.csv'), wideSheet())
  await tell(['new', project])
  await tell(['import', join(folder, 'sheets.csv'), '--in', project, '--accept'])
})

const visits = () => tell(['ask', 'who-visits', '--in', project, '--receipt', receipt], { isJson: true })
const strips = () => tell(['ask', 'what-differs', '--between', 'strip', '--worth', '2', '--in', project, '--receipt', receipt])
const held = (): readonly string[] => readdirSync(receipt).sort()
const codeOf = ({ json }: { readonly json: unknown }) => (json as { readonly error?: { readonly code: string } }).error?.code

describe('the folder of a receipt', () => {
  it('holds the receipt of one answer: that of an earlier one is replaced as a whole', async () => {
    await visits()
    expect(held()).toEqual(['SHA256SUMS', 'answer.json', 'counts.csv', 'receipt.R', 'shares.csv'])
    expect((await strips()).code).toBe(0)
    // Beside the counts: what the other analyses were made of.
    expect(held()).toEqual(expect.arrayContaining(['SHA256SUMS', 'answer.json', 'counts.csv', 'design.csv', 'receipt.R']))
    expect(held()).not.toContain('shares.csv')
    expect(readFileSync(join(receipt, 'receipt.R'), 'utf8')).toContain('Question what-differs')
  })

  it('may be there, and empty', async () => {
    mkdirSync(receipt)
    expect((await visits()).code).toBe(0)
    expect(held()).toContain('answer.json')
  })

  it('is refused where anything else lies in it, whatever its name, before anything is written down', async () => {
    mkdirSync(receipt)
    writeFileSync(join(receipt, 'counts.csv'), 'my own counts')
    const refused = await visits()
    expect([refused.code, codeOf(refused)]).toEqual([2, 'cli/ask/receipt-folder-used'])
    expect(held()).toEqual(['counts.csv'])
    expect(readFileSync(join(receipt, 'counts.csv'), 'utf8')).toBe('my own counts')
  })

  it('is refused where the list of hashes is not as it was written, so that nobody’s own list gives files away', async () => {
    await visits()
    const list = join(receipt, 'SHA256SUMS')
    writeFileSync(join(receipt, 'notes.txt'), 'mine')
    writeFileSync(list, `${readFileSync(list, 'utf8')}${sha256Hex('mine')}  notes.txt\n`)
    expect(codeOf(await visits())).toBe('cli/ask/receipt-folder-used')
    expect(held()).toContain('notes.txt')
  })

  it('is refused where a file was put beside a receipt, or one of its files was changed', async () => {
    await visits()
    writeFileSync(join(receipt, 'notes.txt'), 'mine')
    mkdirSync(join(receipt, 'drawings'))
    writeFileSync(join(receipt, 'receipt.R'), '# my own lines')
    const refused = await visits()
    expect(refused.json).toMatchObject({ error: { values: { found: 'drawings, notes.txt, receipt.R' } } })
    expect(existsSync(join(receipt, 'notes.txt'))).toBe(true)
    expect(readFileSync(join(receipt, 'receipt.R'), 'utf8')).toBe('# my own lines')
  })
})
