import { spawnSync } from 'node:child_process'
import { join } from 'node:path'
import type { Saying } from '@thrum/model/ground'
import { jsonText, speaker } from '../../src/terminal/terminal.ts'
import { tell } from '../in-process.ts'
import { repository } from '../repository.ts'
import { harmOf, harmOfPrinted } from './harmless.ts'

/** What a command line printed and ended with, and what is wrong with it. */
export interface ToldCommand {
  readonly code: number | null
  readonly out: string
  readonly notes: string
  readonly json: unknown
  /** Code of the error it was refused with; null where it was not. */
  readonly refusal: string | null
  readonly wrong: string | null
}

/** Codes that a failure of the program itself has: a person could do nothing about it. */
const mishap = 'cli/mishap'

const remedy = '/remedy'
const own = speaker()
const said: string[] = []
/** Says everything as the program does, and remembers what was said. */
const listened = Object.assign(
  (saying: Saying): string => {
    said.push(saying.id)
    return own(saying)
  },
  { language: own.language, nameOf: own.nameOf },
)

function wrongEnd(argv: readonly string[], told: Omit<ToldCommand, 'wrong'>): string | null {
  const { code, notes, refusal } = told
  const mostCode = argv[0] === 'check' ? 1 : 0
  if (refusal === mishap) return `crash: ${notes.slice(0, 300)}`
  if (code === 2)
    return refusal === null || (notes.trim() === '' && told.json === undefined) ? 'ends with 2 and says nothing' : null
  if (code === null || code < 0 || code > mostCode) return `ends with ${code}`
  return refusal === null ? null : `refuses with ${refusal} and ends with ${code}`
}

const judged = (argv: readonly string[], told: Omit<ToldCommand, 'wrong'>): ToldCommand => {
  const wrong =
    wrongEnd(argv, told) ??
    harmOfPrinted(told.out, 'stdout') ??
    harmOfPrinted(told.notes, 'stderr') ??
    (told.json === undefined ? null : harmOf(jsonText(told.json), 'the machine form'))
  return { ...told, wrong: wrong === null ? null : `${argv[0]}: ${wrong}` }
}

/** Runs a command line in this process, by the function that the program runs. */
export async function toldInProcess(argv: readonly string[], isJson = false): Promise<ToldCommand> {
  said.length = 0
  const { code, out, notes, json } = await tell(argv, { say: listened, isJson })
  const refused = code === 2 ? said.findLast((id) => id.endsWith(remedy)) : undefined
  return judged(argv, { code, out: isJson ? '' : out, notes, json, refusal: refused?.slice(0, -remedy.length) ?? null })
}

/** Runs a command line as a program of its own, as a person does in a folder. */
export function toldByProgram(folder: string, argv: readonly string[]): ToldCommand {
  const isJson = argv.includes('--json')
  const env = { ...process.env, THRUM_HOME: join(folder, 'home'), THRUM_BY: 'walker' }
  const { status, stdout, stderr } = spawnSync(join(repository, 'thrum'), argv, { cwd: folder, env, maxBuffer: 2 ** 28 })
  const out = stdout.toString('utf8')
  const notes = stderr.toString('utf8')
  let json: unknown
  if (isJson) {
    try {
      json = JSON.parse(out)
    } catch {
      return { code: status, out, notes, json, refusal: null, wrong: `${argv[0]} --json: prints no JSON` }
    }
    const error = (json as { readonly error?: { readonly code: string } }).error
    const harm = harmOf(out, 'stdout')
    const told = judged(argv, { code: status, out: '', notes, json, refusal: error?.code ?? null })
    return harm === null ? told : { ...told, wrong: `${argv[0]} --json: ${harm}` }
  }
  const first = notes.trim().split('\n')[0] ?? ''
  const refusal = status !== 2 || first === '' ? null : first.startsWith('Thrum itself failed') ? mishap : first
  return judged(argv, { code: status, out, notes, json, refusal })
}
