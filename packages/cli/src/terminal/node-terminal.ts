import { createInterface } from 'node:readline/promises'
import type { Progress } from '@thrum/model/ground'
import { saying, ThrumError } from '@thrum/model/ground'
import { pageWidth } from '@thrum/report'
import { allWords, jsonText, personsLanguage, speaker, type Terminal } from './terminal.ts'

/** Progress is told from the second second on, at most five times a second. */
const quietFor = 1000
const between = 200

function progressTeller(say: Terminal['say']): (progress: Progress) => void {
  const start = performance.now()
  let last = 0
  return ({ done, total, unit }) => {
    const now = performance.now()
    if (now - start < quietFor || now - last < between) return
    last = now
    const named = `cli/progress/unit/${unit}`
    const values = { done, total: total ?? 0, unit: Object.hasOwn(allWords, named) ? saying(named) : unit }
    const line = say(saying(total === undefined ? 'cli/progress' : 'cli/progress/of', values))
    process.stderr.write(process.stderr.isTTY ? `\r\u001b[K${line}` : `${line}\n`)
  }
}

/**
 * A reader that went away (`thrum import ... | head`) is no failure, and no reason to leave a file half brought: what is printed
 * from then on is lost, the command goes on to its end, and its exit code stands.
 */
function goOnWithoutReader(): void {
  for (const stream of [process.stdout, process.stderr]) {
    stream.on('error', (error: NodeJS.ErrnoException) => {
      if (error.code !== 'EPIPE') throw error
    })
  }
}

/** Narrowest page that is kept to [columns]; in a narrower terminal lines are broken by the terminal. */
const narrowest = 40

/** Through a pipe and on a wide terminal the page is the usual one; it follows a narrower terminal. */
function fitPage(): void {
  // A terminal that does not know its width says 0.
  const { isTTY, columns } = process.stdout
  if (isTTY && columns > 0) pageWidth.columns = Math.max(narrowest, Math.min(pageWidth.columns, columns))
}

/** The terminal this program runs in, called by a name that a person can type. Ctrl-C stops work between whole steps; pressed twice it ends the program. */
export function nodeTerminal(isJson: boolean, called?: string): Terminal {
  goOnWithoutReader()
  fitPage()
  // Programs read the machine form: it says the same in every country.
  const say = speaker(called, isJson ? 'en' : personsLanguage(process.env))
  const stop = new AbortController()
  let waiting: (() => void) | null = null
  let isEnding = false
  process.on('SIGINT', () => {
    if (stop.signal.aborted || isEnding) process.exit(130)
    if (waiting !== null) return waiting()
    process.stderr.write(`\n${say(saying('cli/stopping'))}\n`)
    stop.abort(new ThrumError('cli/stopped'))
  })
  return {
    say,
    isJson,
    isInteractive: process.stdin.isTTY === true && process.stdout.isTTY === true && !isJson,
    here: '.',
    work: {
      signal: stop.signal,
      onProgress: progressTeller(say),
      breathe: () => new Promise((resolve) => setImmediate(resolve)),
    },
    print: (text) => {
      if (!isJson) process.stdout.write(`${text}\n`)
    },
    json: (value) => {
      if (isJson) process.stdout.write(`${jsonText(value)}\n`)
    },
    note: (text) => {
      process.stderr.write(`${text}\n`)
    },
    ask: async (question) => {
      const lines = createInterface({ input: process.stdin, output: process.stdout })
      try {
        return await lines.question(question, { signal: stop.signal })
      } catch {
        return ''
      } finally {
        lines.close()
      }
    },
    untilStopped: async () => {
      const { promise, resolve } = Promise.withResolvers<void>()
      waiting = resolve
      for (const signal of ['SIGTERM', 'SIGHUP'] as const) process.once(signal, resolve)
      await promise
      isEnding = true
    },
  }
}
