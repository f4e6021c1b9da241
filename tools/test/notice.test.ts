import { describe, expect, it } from 'vitest'
import { type LockPackages, runtimePackages } from '../notice/runtime-packages.ts'
import { copyrightLines, isAllowedLicence, writeNotice } from '../notice.ts'

const lock: LockPackages = {
  '': { version: '1.0.0', optionalDependencies: { 'node-other-os': '24.0.0' } },
  'packages/model': { dependencies: { zod: '1', '@thrum/stats': '1' } },
  'packages/stats': { dependencies: { outer: '1' } },
  'node_modules/@thrum/stats': { link: true, resolved: 'packages/stats' },
  'node_modules/zod': { version: '4.0.0', license: 'MIT' },
  'node_modules/outer': { version: '1.0.0', license: 'ISC', dependencies: { inner: '2', shared: '1' } },
  'node_modules/outer/node_modules/inner': { version: '2.0.0', license: 'MIT', dependencies: { shared: '1', outer: '1' } },
  'node_modules/inner': { version: '1.0.0', license: 'GPL-3.0' },
  'node_modules/shared': { version: '1.0.0', license: 'MIT' },
  'node_modules/some-tool': { version: '1.0.0', license: 'GPL-3.0' },
  'node_modules/node-other-os': { version: '24.0.0', license: 'MIT', os: ['other'], cpu: ['x64'] },
}

describe('runtimePackages', () => {
  it('follows what runs, takes the nearest copy, and leaves tools alone', () => {
    expect(runtimePackages(lock).map((one) => `${one.name} ${one.version}`)).toEqual([
      'inner 2.0.0',
      'node-other-os 24.0.0',
      'outer 1.0.0',
      'shared 1.0.0',
      'zod 4.0.0',
    ])
  })

  it('does not follow the development tools of the root', () => {
    const withTools: LockPackages = {
      '': { dependencies: {}, ...{ devDependencies: { 'some-tool': '1' } } },
      'node_modules/some-tool': { version: '1.0.0' },
    }
    expect(runtimePackages(withTools)).toEqual([])
  })
})

describe('isAllowedLicence', () => {
  it.each([
    ['MIT', true],
    ['(MIT OR GPL-3.0)', true],
    ['MIT AND Zlib', true],
    ['MIT AND GPL-3.0', false],
    ['GPL-3.0', false],
    ['', false],
    ['SEE LICENSE IN x', false],
  ])('%s: %s', (expression, allowed) => {
    expect(isAllowedLicence(expression)).toBe(allowed)
  })
})

describe('copyrightLines', () => {
  it('takes the lines that name somebody and leaves the sentences about copyright', () => {
    const text =
      'MIT License\n\nCopyright (c) 2022 A. Person\nCopyright  (c) 2022 A. Person\n\nThe above copyright notice ...\nCOPYRIGHT HOLDERS BE LIABLE FOR\n'
    expect(copyrightLines(text)).toEqual(['Copyright (c) 2022 A. Person'])
  })
})

describe('writeNotice', () => {
  it('says the same on every platform of packages that are made for one', () => {
    const [, node] = runtimePackages(lock)
    const text = writeNotice('nowhere', node === undefined ? [] : [node])
    expect(text).toContain('node-other-os 24.0.0\n  Licence: MIT\n  Copyright Node.js contributors.')
  })
})
