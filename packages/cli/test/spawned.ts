import { type ChildProcess, spawn, spawnSync } from 'node:child_process'
import { fileURLToPath } from 'node:url'

const entry = (name: string): string => fileURLToPath(new URL(`../src/${name}.ts`, import.meta.url))

export interface Ended {
  readonly code: number | null
  readonly out: string
  readonly err: string
}

export interface In {
  /** Folder in which the command is given; the device's own folder lies in it, too. */
  readonly folder: string
  readonly name?: 'thrum' | 'start'
  /** Runs as the account without rights, as rights do not bind the administrator. */
  readonly asNobody?: boolean
}

const settings = ({ folder, asNobody = false }: In) => ({
  cwd: folder,
  env: { ...process.env, THRUM_HOME: `${folder}/home`, THRUM_BY: 'walker' },
  ...(asNobody && process.getuid?.() === 0 ? { uid: 65_534, gid: 65_534 } : {}),
})

/** The real program, from its entry, as a person runs it in a folder. */
export function thrum(place: In, ...argv: readonly string[]): Ended {
  const { status, stdout, stderr } = spawnSync(process.execPath, [entry(place.name ?? 'thrum'), ...argv], {
    ...settings(place),
    encoding: 'utf8',
    maxBuffer: 2 ** 26,
  })
  return { code: status, out: stdout, err: stderr }
}

/** The same, begun and not waited for. */
export function thrumBegun(
  place: In,
  ...argv: readonly string[]
): { readonly child: ChildProcess; readonly ended: Promise<Ended> } {
  const child = spawn(process.execPath, [entry(place.name ?? 'thrum'), ...argv], settings(place))
  let out = ''
  let err = ''
  child.stdout.on('data', (part) => {
    out += String(part)
  })
  child.stderr.on('data', (part) => {
    err += String(part)
  })
  return { child, ended: new Promise((resolve) => child.on('close', (code) => resolve({ code, out, err }))) }
}
