import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { parse } from '@formatjs/icu-messageformat-parser'
import { describe, expect, it } from 'vitest'
import { allWords } from '../src/terminal/terminal.ts'
import { allFiles, repository } from './repository.ts'

const packages = 'model|survey|biology|questions|report|exchange|store|host|server|cli'
const part = '[a-zA-Z0-9-]+'

/** Source of the packages as one text, without the catalogues themselves. */
function sourceOf(files: readonly string[]): string {
  return files
    .filter((name) => /^packages\/[^/]+\/src\/.*\.ts$/u.test(name) && !/words\/[^/]+$|words\.en\.ts$/u.test(name))
    .map((name) => readFileSync(join(repository, name), 'utf8'))
    .join('\n')
}

interface Written {
  /** Ids of sentences that stand in the code as they are. */
  readonly literals: readonly string[]
  /** Ids put together from parts (`questions/reason/${code}`); a blank holds one part or several. */
  readonly patterns: readonly RegExp[]
  readonly thrown: readonly string[]
}

function idsWrittenIn(source: string): Written {
  // Codes of InputError are for programmers and have no words.
  const ofProgrammers = new Set([...source.matchAll(/new InputError\(\s*'([^']+)'/gu)].map((match) => match[1]))
  const literals = [...source.matchAll(new RegExp(`'(text|(?:${packages})(?:/${part})+)'`, 'gu'))].map(
    (match) => match[1] as string,
  )
  const templates = [...source.matchAll(new RegExp(`\`((?:${packages})/[^\`\\n]*\\$\\{[^\`\\n]*)\``, 'gu'))].map((match) =>
    (match[1] as string).replace(/\$\{(?:[^{}]|\{[^{}]*\})*\}/gu, '*'),
  )
  const patterns = [...new Set(templates)]
    .filter((template) => /^[a-z]+\/[a-zA-Z0-9/*-]*$/u.test(template))
    .map((template) => new RegExp(`^${template.replaceAll('*', '[a-zA-Z0-9/-]+')}$`, 'u'))
  const thrown = [...source.matchAll(/new ThrumError\(\s*'([^']+)'/gu)].map((match) => match[1] as string)
  return { literals: literals.filter((id) => !ofProgrammers.has(id)), patterns, thrown }
}

// Files that are new count too: what they say is missed before they are committed, not after.
const { literals, patterns, thrown } = idsWrittenIn(sourceOf(allFiles()))
const ids = new Set(Object.keys(allWords))

describe('the catalogue', () => {
  it('every id that stands in the code has a text', () => {
    // A literal may be the start of ids that are put together: `guess(.., 'exchange/propose')` or a folder of a package.
    const unsaid = literals.filter((id) => !ids.has(id) && ![...ids].some((own) => own.startsWith(`${id}/`)))
    expect([...new Set(unsaid)]).toEqual([])
    expect(literals.length).toBeGreaterThan(300)
  })

  it('every failure that a person may meet says what it is, and what to do', () => {
    expect(new Set(thrown).size).toBeGreaterThan(60)
    expect(thrown.filter((code) => !ids.has(code) || !ids.has(`${code}/remedy`))).toEqual([])
  })

  it('every id that is put together can be one that has a text', () => {
    expect(patterns.length).toBeGreaterThan(40)
    expect(patterns.filter((pattern) => ![...ids].some((id) => pattern.test(id))).map(String)).toEqual([])
  })

  it('every text is a message that can be read', () => {
    for (const [id, text] of Object.entries(allWords)) expect(() => parse(text, { ignoreTag: true }), id).not.toThrow()
  })

  it('no text stands there for nothing', () => {
    const isUsed = (id: string): boolean => literals.includes(id) || patterns.some((pattern) => pattern.test(id))
    const unused = [...ids].filter((id) => !isUsed(id) && !isUsed(id.replace(/\/remedy$/u, '')))
    expect(unused).toEqual([])
  })
})
