// Who may import whom, and a check that everybody keeps to it.
//
//   node tools/boot.mjs tools/import-map.ts            checks; exit 1 on an offence
//   node tools/boot.mjs tools/import-map.ts --print    prints the map as it is

import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { dirname, join, relative, resolve } from 'node:path'
import { readImports } from './import-map/read-imports.ts'

interface Edges {
  /** Packages of ours, or one room of a package (`model/ground`). */
  readonly mayImport: readonly string[]
  /** Pure packages know no platform: the same code runs in Node and in a browser. */
  readonly platform: 'pure' | 'node' | 'browser'
}

/** The table of architecture.md, section 1. Written here and nowhere else as data. */
export const edges: { readonly [name: string]: Edges } = {
  model: { mayImport: [], platform: 'pure' },
  stats: { mayImport: ['model/ground'], platform: 'pure' },
  biology: { mayImport: ['model', 'stats'], platform: 'pure' },
  survey: { mayImport: ['model', 'stats', 'biology'], platform: 'pure' },
  questions: { mayImport: ['model', 'stats', 'biology', 'survey'], platform: 'pure' },
  exchange: { mayImport: ['model', 'biology', 'survey'], platform: 'pure' },
  report: { mayImport: ['model', 'survey', 'questions'], platform: 'pure' },
  store: { mayImport: ['model'], platform: 'node' },
  host: { mayImport: ['model', 'stats', 'biology', 'survey', 'questions', 'exchange', 'store', 'report'], platform: 'node' },
  server: {
    mayImport: ['model', 'stats', 'biology', 'survey', 'questions', 'exchange', 'store', 'report', 'host'],
    platform: 'node',
  },
  cli: {
    mayImport: ['model', 'stats', 'biology', 'survey', 'questions', 'exchange', 'store', 'report', 'host', 'server'],
    platform: 'node',
  },
  desk: { mayImport: ['model', 'exchange', 'report', 'server/api'], platform: 'browser' },
}

export interface Offence {
  /** path:line inside the repository */
  readonly at: string
  readonly found: string
  readonly remedy: string
}

export interface ImportMap {
  readonly files: number
  /** Edges in use, by package. */
  readonly used: { readonly [name: string]: readonly string[] }
  readonly offences: readonly Offence[]
}

interface Package {
  readonly name: string
  readonly source: string
  readonly dependencies: readonly string[]
  /** Files that are a face of the package, absolute. */
  readonly faces: readonly string[]
}

function readPackage(root: string, name: string): Package {
  const folder = join(root, 'packages', name)
  const manifest = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')) as {
    readonly dependencies?: { readonly [name: string]: string }
    readonly exports?: { readonly [path: string]: string }
  }
  return {
    name,
    source: join(folder, 'src'),
    dependencies: Object.keys(manifest.dependencies ?? {}),
    faces: Object.values(manifest.exports ?? {}).map((file) => resolve(folder, file)),
  }
}

function sourceFiles(folder: string): readonly string[] {
  if (!existsSync(folder)) return []
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((file) => /\.(ts|tsx|mts|js|mjs)$/.test(file))
    .sort()
    .map((file) => join(folder, file))
}

const within = (folder: string, file: string): boolean => file.startsWith(`${folder}/`) || file.startsWith(`${folder}\\`)

type Complaint = Omit<Offence, 'at'>

/** A path import: must stay in the package's sources and must not go through the package's own face. */
function judgePath(from: Package, file: string, specifier: string): Complaint | null {
  const target = resolve(dirname(file), specifier)
  if (!within(from.source, target)) {
    return {
      found: `imports ${specifier}, which leaves packages/${from.name}/src`,
      remedy: 'import the other package by its name (@thrum/...)',
    }
  }
  const face = from.faces.find((candidate) => candidate === target)
  if (face !== undefined && within(dirname(face), file)) {
    return {
      found: `imports ${specifier}, the face of the room it stands in`,
      remedy: 'import the file that holds the thing itself',
    }
  }
  return null
}

/** An import of one of our packages by name. */
function judgeOwn(from: Package, specifier: string): Complaint | null {
  const target = specifier.slice('@thrum/'.length)
  const [name = ''] = target.split('/')
  if (name === from.name) return { found: `imports its own package as ${specifier}`, remedy: 'import the file by its path' }
  const allowed = edges[from.name]?.mayImport ?? []
  if (!allowed.some((edge) => edge === target || target.startsWith(`${edge}/`))) {
    const may = allowed.length === 0 ? 'nothing of ours' : allowed.join(', ')
    return {
      found: `imports ${specifier}, but ${from.name} may import ${may}`,
      remedy: 'move what both need further down, or join the two further up (architecture, "Where new code goes")',
    }
  }
  if (!from.dependencies.includes(`@thrum/${name}`)) {
    return {
      found: `imports ${specifier}, which packages/${from.name}/package.json does not name`,
      remedy: 'add it to "dependencies" and to tsconfig.json',
    }
  }
  return null
}

function judgeImport(from: Package, file: string, specifier: string): Complaint | null {
  if (specifier.startsWith('.')) return judgePath(from, file, specifier)
  if (specifier.startsWith('@thrum/')) return judgeOwn(from, specifier)
  if (specifier.startsWith('node:')) {
    if (edges[from.name]?.platform === 'node') return null
    return {
      found: `imports ${specifier}, but ${from.name} knows no platform`,
      remedy: 'pass the need in as a port of model/ground, with its adapter in host',
    }
  }
  const library = specifier
    .split('/')
    .slice(0, specifier.startsWith('@') ? 2 : 1)
    .join('/')
  if (from.dependencies.includes(library)) return null
  return {
    found: `imports ${specifier}, which packages/${from.name}/package.json does not name`,
    remedy: 'add it to "dependencies" there',
  }
}

/** Reads every source file under `packages` of a repository and judges each of its imports. */
export function mapImports(root: string): ImportMap {
  const names = readdirSync(join(root, 'packages'))
    .filter((name) => existsSync(join(root, 'packages', name, 'package.json')))
    .sort()
  const offences: Offence[] = []
  const used: Record<string, readonly string[]> = {}
  let files = 0
  for (const name of names) {
    if (edges[name] === undefined) {
      offences.push({
        at: `packages/${name}`,
        found: 'is a package without a row in the table',
        remedy: 'give it a row in tools/import-map.ts',
      })
      continue
    }
    const from = readPackage(root, name)
    const targets = new Set<string>()
    for (const file of sourceFiles(from.source)) {
      files += 1
      for (const { specifier, line, star } of readImports(readFileSync(file, 'utf8'))) {
        const at = `${relative(root, file).replaceAll('\\', '/')}:${line}`
        if (specifier.startsWith('@thrum/')) targets.add(specifier.slice('@thrum/'.length))
        if (star) offences.push({ at, found: `exports * from ${specifier}`, remedy: 'name what leaves the package' })
        const complaint = judgeImport(from, file, specifier)
        if (complaint !== null) offences.push({ at, ...complaint })
      }
    }
    used[name] = [...targets].sort()
  }
  // A gate that looked at nothing has found nothing out.
  if (files === 0)
    offences.push({ at: 'packages', found: 'holds no source files', remedy: 'run this from the repository it belongs to' })
  return { files, used, offences }
}

if (import.meta.main) {
  const map = mapImports(dirname(import.meta.dirname))
  if (process.argv.includes('--print')) {
    for (const [name, targets] of Object.entries(map.used))
      console.log(`${name.padEnd(10)} -> ${targets.join(', ') || '(nothing of ours)'}`)
  }
  for (const { at, found, remedy } of map.offences) console.error(`${at}\n  ${found}\n  What to do: ${remedy}.`)
  console.log(`import map: ${map.files} files, ${map.offences.length} offences`)
  process.exitCode = map.offences.length > 0 ? 1 : 0
}
