// Whose work Thrum stands on, under which licence: the file NOTICE.
//
//   node tools/boot.mjs tools/notice.ts            checks that NOTICE is current and every licence is on our list
//   node tools/boot.mjs tools/notice.ts --write    writes it

import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { type LockPackages, type RuntimePackage, runtimePackages } from './notice/runtime-packages.ts'

/** Licences that a package may have without asking anybody. A new one is a decision of people, written here. */
const allowedLicences = [
  'MIT',
  'ISC',
  'BSD-2-Clause',
  'BSD-3-Clause',
  'Apache-2.0',
  '0BSD',
  'MPL-2.0',
  'Unlicense',
  'BlueOak-1.0.0',
  'Zlib',
]

/** True for an allowed licence, a choice with an allowed one, or a sum of allowed ones (SPDX: `A OR B`, `A AND B`). */
export function isAllowedLicence(expression: string): boolean {
  const plain = expression.replace(/[()]/g, ' ').trim()
  return plain.split(/\s+OR\s+/).some((choice) => choice.split(/\s+AND\s+/).every((one) => allowedLicences.includes(one.trim())))
}

/** Copyright lines of a licence text, as they stand there. Sentences about copyright are none. */
export function copyrightLines(text: string): readonly string[] {
  const lines = text.split(/\r?\n/).map((line) => line.trim().replace(/\s+/g, ' '))
  return [...new Set(lines.filter((line) => /^(portions )?copyright\b.*(\(c\)|©|\d{4})/i.test(line)))]
}

function copyrightOf(root: string, one: RuntimePackage): readonly string[] {
  // Not read from the disk: only one of these is on any machine, and NOTICE must be the same on all.
  if (/^node-/.test(one.name))
    return ['Copyright Node.js contributors. The licences of what Node bundles stand in the file LICENSE of the package.']
  if (one.platformBound) return ['Copyright and licence text: see the package.']
  const folder = join(root, one.folder)
  const file = existsSync(folder) ? readdirSync(folder).find((name) => /^(licen[cs]e|copying)/i.test(name)) : undefined
  return file === undefined ? ['No licence file in the package.'] : copyrightLines(readFileSync(join(folder, file), 'utf8'))
}

/** The text of NOTICE. */
export function writeNotice(root: string, packages: readonly RuntimePackage[]): string {
  const head = [
    'Thrum',
    'Copyright (c) 2026 The Thrum authors. Licence: MIT, see LICENSE.',
    '',
    'Thrum runs with the packages below, which are brought by npm and are not part of this repository. The full text of each',
    'licence comes with its package, in node_modules/<package>. Written by tools/notice.ts from package-lock.json.',
  ]
  const entries = packages.map((one) => [
    '',
    `${one.name} ${one.version}`,
    `  Licence: ${one.license}`,
    ...copyrightOf(root, one).map((line) => `  ${line}`),
  ])
  return `${[...head, ...entries.flat()].join('\n')}\n`
}

function main(root: string): number {
  const lock = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8')) as { readonly packages: LockPackages }
  const packages = runtimePackages(lock.packages)
  const refused = packages.filter((one) => !isAllowedLicence(one.license))
  for (const one of refused) {
    console.error(`${one.name} ${one.version}: licence "${one.license || 'not stated'}" is not on the list in tools/notice.ts`)
    console.error('  What to do: choose another package, or have the licence agreed and add it to the list.')
  }
  if (refused.length > 0) return 1
  const file = join(root, 'NOTICE')
  const text = writeNotice(root, packages)
  if (process.argv.includes('--write')) writeFileSync(file, text)
  else if (!existsSync(file) || readFileSync(file, 'utf8') !== text) {
    console.error('NOTICE is not current.\n  What to do: npm run notice')
    return 1
  }
  console.log(`notice: ${packages.length} packages`)
  return 0
}

if (import.meta.main) process.exitCode = main(dirname(import.meta.dirname))
