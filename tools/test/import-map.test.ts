import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { readImports } from '../import-map/read-imports.ts'
import { edges, mapImports } from '../import-map.ts'

let root = ''

beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'import-map-'))
})
afterEach(() => {
  rmSync(root, { recursive: true, force: true })
})

function write(path: string, text: string): void {
  mkdirSync(dirname(join(root, path)), { recursive: true })
  writeFileSync(join(root, path), text)
}

/** A repository that keeps to the table, on which each test spoils one thing. */
function writeTree(): void {
  write(
    'packages/model/package.json',
    '{"exports":{".":"./src/index.ts","./ground":"./src/ground/index.ts"},"dependencies":{"zod":"1"}}',
  )
  write('packages/model/src/index.ts', "export { a } from './ground/a.ts'\n")
  write('packages/model/src/ground/index.ts', "export { a } from './a.ts'\n")
  write('packages/model/src/ground/a.ts', "import { z } from 'zod'\nexport const a = z\n")
  write('packages/model/src/fold.ts', "import { a } from './ground/index.ts'\nexport const b = a\n")
  write('packages/stats/package.json', '{"exports":{".":"./src/index.ts"},"dependencies":{"@thrum/model":"1"}}')
  write('packages/stats/src/index.ts', "export { s } from './s.ts'\n")
  write('packages/stats/src/s.ts', "import { a } from '@thrum/model/ground'\nexport const s = a\n")
  write('packages/host/package.json', '{"exports":{".":"./src/index.ts"},"dependencies":{"@thrum/stats":"1"}}')
  write(
    'packages/host/src/index.ts',
    "import { readFileSync } from 'node:fs'\nimport { s } from '@thrum/stats'\nexport const h = [readFileSync, s]\n",
  )
}

describe('mapImports', () => {
  it('has nothing to say about a tree that keeps to the table', () => {
    writeTree()
    expect(mapImports(root)).toEqual({ files: 7, used: { host: ['stats'], model: [], stats: ['model/ground'] }, offences: [] })
  })

  it.each([
    [
      'an edge that is not in the table',
      'packages/stats/src/bad.ts',
      "import { h } from '@thrum/host'",
      /stats may import model\/ground/,
    ],
    [
      'a room of a package beside the allowed one',
      'packages/stats/src/bad.ts',
      "import { m } from '@thrum/model'",
      /imports @thrum\/model, but/,
    ],
    [
      'an edge upwards, as a type',
      'packages/model/src/bad.ts',
      "import type { S } from '@thrum/stats'",
      /may import nothing of ours/,
    ],
    [
      'an edge hidden in a call',
      'packages/model/src/bad.ts',
      "const s = await import('@thrum/stats')",
      /may import nothing of ours/,
    ],
    [
      'an allowed edge that the manifest lacks',
      'packages/host/src/bad.ts',
      "import { m } from '@thrum/model'",
      /package.json does not name/,
    ],
    [
      'a path that leaves the package',
      'packages/stats/src/bad.ts',
      "import { a } from '../../model/src/ground/a.ts'",
      /leaves packages\/stats\/src/,
    ],
    ['a path into the tests', 'packages/stats/src/bad.ts', "import { a } from '../test/a.ts'", /leaves packages\/stats\/src/],
    ['its own barrel', 'packages/stats/src/room/bad.ts', "import { s } from '../index.ts'", /the face of the room/],
    ["its own room's barrel", 'packages/model/src/ground/bad.ts', "import { a } from './index.ts'", /the face of the room/],
    ['its own name', 'packages/stats/src/bad.ts', "import { s } from '@thrum/stats'", /its own package/],
    [
      'the platform in a pure package',
      'packages/stats/src/bad.ts',
      "import { readFileSync } from 'node:fs'",
      /knows no platform/,
    ],
    ['a library that the manifest lacks', 'packages/stats/src/bad.ts', "import { z } from 'zod'", /package.json does not name/],
    ['export star', 'packages/stats/src/bad.ts', "export * from './s.ts'", /exports \* from/],
  ])('refuses %s', (_, path, text, complaint) => {
    writeTree()
    write(path, `// line one\n${text}\n`)
    const { offences } = mapImports(root)
    expect(offences).toHaveLength(1)
    expect(offences[0]?.at).toBe(`${path}:2`)
    expect(offences[0]?.found).toMatch(complaint)
    expect(offences[0]?.remedy).not.toBe('')
  })

  it('refuses a package without a row, and a tree without sources', () => {
    write('packages/novel/package.json', '{}')
    write('packages/novel/src/index.ts', 'export const n = 1\n')
    expect(mapImports(root).offences.map((offence) => offence.at)).toEqual(['packages/novel', 'packages'])
  })

  it('the table has no ring: every package may only import those named before it', () => {
    const order = ['model', 'stats', 'biology', 'survey', 'questions', 'exchange', 'report', 'store', 'host', 'server', 'cli']
    expect(Object.keys(edges)).toEqual(order)
    for (const [i, name] of order.entries()) {
      for (const target of edges[name]?.mayImport ?? []) expect(order.slice(0, i)).toContain(target.split('/')[0])
    }
  })
})

describe('readImports', () => {
  it('reads imports over several lines, beside each other, and none in comments or templates', () => {
    const source = [
      'import {',
      '  a,',
      "} from './a.ts'",
      'import \'./effect.ts\'; import b from "./b.ts"',
      "// import c from './c.ts'",
      "/* import d from './d.ts' */ export * as e from './e.ts'",
      "const text = `import f from './f.ts'`",
      "const address = 'https://example.org' // not a comment before here",
      "export type { G } from './g.ts'",
      "type H = import('./h.ts').H",
    ].join('\n')
    expect(readImports(source).map(({ specifier, line }) => `${specifier}:${line}`)).toEqual([
      './a.ts:3',
      './effect.ts:4',
      './b.ts:4',
      './e.ts:6',
      './g.ts:9',
      './h.ts:10',
    ])
    expect(readImports(source).some((found) => found.star)).toBe(false)
  })
})
