import { readdirSync, readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { version } from '../../src/index.ts'

const root = new URL('../../../../', import.meta.url)
const versionOf = (path: string): string => JSON.parse(readFileSync(new URL(path, root), 'utf8')).version

it('answers and receipts name the version of the package', () => {
  expect(version).toBe(versionOf('package.json'))
})

it('all packages have one version', () => {
  const packages = readdirSync(new URL('packages/', root))
  expect(packages.length).toBeGreaterThan(5)
  expect(packages.filter((name) => versionOf(`packages/${name}/package.json`) !== version)).toEqual([])
})
