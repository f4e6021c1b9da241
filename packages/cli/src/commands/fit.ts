import { plainColumns, readSheet, type Sheet } from '@thrum/exchange'
import { usualSeed, version } from '@thrum/host'
import { saying, ThrumError } from '@thrum/model/ground'
import { type FitTable, type FitWords, fitTable } from '@thrum/questions'
import { printTableFit, withTexts, wrap } from '@thrum/report'
import { type Arguments, single } from '../terminal/arguments.ts'
import type { Command } from './command.ts'
import { readBytes } from './read-file.ts'
import { requireReceiptFolder, writeReceipt } from './write-receipt.ts'

/** Options with one value, as declared. */
const singles = [
  'response',
  'family',
  'fixed',
  'random',
  'slope',
  'effort',
  'offset',
  'trials',
  'zerosBy',
  'asLevels',
  'compare',
  'per',
  'by',
  'refits',
  'nodes',
  'without',
] as const

/** Flags that say something of the model. */
const switches = ['zeros', 'slopeApart', 'reml', 'unchecked'] as const

/** Any table as it stands. */
function tableOf(sheet: Sheet): FitTable {
  return {
    columns: plainColumns(sheet),
    lines: sheet.lines,
    aside: sheet.asides.map(({ line }) => line).filter((line) => !sheet.headerLines.includes(line)),
    refused: sheet.refused.map(({ line }) => line),
  }
}

function wordsOf(given: Arguments): FitWords {
  const own = Object.fromEntries(singles.map((name) => [name, single(given, name)]))
  const flags = Object.fromEntries(switches.map((name) => [name, given.flags.has(name)]))
  return { ...own, ...flags, levels: given.options.get('levels') }
}

export const fitCommand: Command = {
  name: 'fit',
  options: [...singles, 'levels', 'receipt', 'seed'],
  flags: [...switches, 'brief'],
  run: async (given, terminal) => {
    const [path, ...more] = given.words
    if (path === undefined || more.length > 0) throw new ThrumError('cli/fit/usage')
    const folder = single(given, 'receipt')
    requireReceiptFolder(folder)
    const { say, work } = terminal
    const table = tableOf(readSheet(readBytes(path)))
    const { told, receipt } = await fitTable(table, wordsOf(given), single(given, 'seed') ?? usualSeed, work)
    if (work.signal.aborted) throw new ThrumError('cli/stopped')
    terminal.print(printTableFit(told, say, version, given.flags.has('brief') ? 'short' : 'full'))
    const machine = withTexts({ thrum: version, ...told }, say)
    if (folder !== undefined && receipt === null) terminal.print(`\n${wrap(say(saying('cli/fit/no-receipt'))).join('\n')}`)
    if (folder !== undefined && receipt !== null)
      writeReceipt(folder, [...receipt.files, { name: 'fit.json', text: `${JSON.stringify(machine, null, 2)}\n` }], terminal)
    terminal.json(machine)
    return told.kind === 'fitted' ? 0 : 1
  },
}
