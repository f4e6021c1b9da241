import { lstatSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { saying, sha256Hex, ThrumError } from '@thrum/model/ground'
import { wrap } from '@thrum/report'
import type { Terminal } from '../terminal/terminal.ts'

/** The list of a receipt's files with their hashes, as `sha256sum -c` reads it. What stands in it unchanged is ours to replace. */
const listName = 'SHA256SUMS'

interface ReceiptFile {
  readonly name: string
  readonly text: string
}

const lineOf = (name: string, content: Uint8Array | string): string => `${sha256Hex(content)}  ${name}`
/** The first line of a list, which holds the hash of the others: a list that somebody else wrote, or added to, is not ours. */
const headOf = (lines: readonly string[]): string => `# Receipt of an answer of Thrum ${sha256Hex(lines.join('\n'))}`

function namesIn(folder: string): readonly string[] {
  try {
    return readdirSync(folder).sort()
  } catch {
    // Not there yet; a folder that cannot be made or read is told when the receipt is written.
    return []
  }
}

/** What a plain file holds; null where there is none, or it cannot be read. */
function contentOf(path: string): Uint8Array | null {
  try {
    return lstatSync(path).isFile() ? readFileSync(path) : null
  } catch {
    return null
  }
}

/** Names in the folder that no receipt of ours put there, or that were changed since. */
function foreignIn(folder: string): readonly string[] {
  const names = namesIn(folder)
  const list = contentOf(join(folder, listName))
  const [head, ...lines] = new TextDecoder()
    .decode(list ?? new Uint8Array())
    .trimEnd()
    .split('\n')
  if (list === null || head !== headOf(lines)) return names
  return names.filter((name) => {
    const content = contentOf(join(folder, name))
    return name !== listName && (content === null || !lines.includes(lineOf(name, content)))
  })
}

/**
 * A folder for a receipt is new or empty, or holds an earlier receipt and nothing else.
 *
 * @throws ThrumError cli/ask/receipt-folder-used, before anything is worked out or written down
 */
export function requireReceiptFolder(folder: string | undefined): void {
  if (folder === undefined) return
  const foreign = foreignIn(folder)
  if (foreign.length > 0) throw new ThrumError('cli/ask/receipt-folder-used', { folder, found: foreign.join(', ') })
}

/** Writes a receipt in the place of an earlier one. @throws ThrumError cli/ask/receipt-folder-used, cli/ask/receipt-not-written */
export function writeReceipt(folder: string, files: readonly ReceiptFile[], terminal: Terminal): void {
  requireReceiptFolder(folder)
  const lines = files.map(({ name, text }) => lineOf(name, text))
  const list = { name: listName, text: `${[headOf(lines), ...lines].join('\n')}\n` }
  try {
    mkdirSync(folder, { recursive: true })
    for (const name of namesIn(folder)) rmSync(join(folder, name))
    for (const { name, text } of [...files, list]) writeFileSync(join(folder, name), text)
  } catch (cause) {
    throw new ThrumError('cli/ask/receipt-not-written', { folder }, { cause })
  }
  terminal.print(`\n${wrap(terminal.say(saying('cli/ask/receipt', { folder }))).join('\n')}`)
}
