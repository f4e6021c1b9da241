import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { LongWork } from '@thrum/model/ground'
import { unwatched } from '@thrum/model/ground'
import type { Speaker } from '@thrum/report'
import { onTestFinished } from 'vitest'
import { runCommand } from '../src/run-command.ts'
import { speaker } from '../src/terminal/terminal.ts'

/** What a command line printed, noted beside it, and ended with. */
export interface Told {
  readonly code: number
  readonly out: string
  readonly notes: string
  readonly json: unknown
}

export interface Telling {
  readonly say?: Speaker
  readonly isJson?: boolean
  readonly work?: LongWork
  /** Replies of the person who sits before it; nobody sits there without them. */
  readonly replies?: readonly string[]
}

/**
 * Runs a command line in this process, before a terminal that remembers. It stands in an empty folder: no test finds a project
 * of the person who runs it.
 */
export async function tell(
  argv: readonly string[],
  { say = speaker(), isJson = false, work = unwatched, replies }: Telling = {},
): Promise<Told> {
  const out: string[] = []
  const notes: string[] = []
  let json: unknown
  const waiting = [...(replies ?? [])]
  const here = mkdtempSync(join(tmpdir(), 'thrum-here-'))
  try {
    const code = await runCommand(argv, {
      say,
      isJson,
      isInteractive: replies !== undefined,
      here,
      work,
      print: (text) => void out.push(text),
      json: (value) => {
        json = value
      },
      note: (text) => void notes.push(text),
      ask: async (question) => {
        out.push(question)
        return waiting.shift() ?? ''
      },
      // Whoever tries a command in this process ends it at once.
      untilStopped: () => Promise.resolve(),
    })
    return { code, out: out.join('\n'), notes: notes.join('\n'), json }
  } finally {
    rmSync(here, { recursive: true, force: true })
  }
}

/** A folder of its own, gone when the test is over. */
export function testFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'thrum-cli-'))
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }))
  return folder
}
