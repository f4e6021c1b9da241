// Do the pages still speak of what is there?
//
//   node tools/boot.mjs tools/docs-check.ts        exit 1 with file:line where they do not

import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { dirname, join, posix, resolve } from 'node:path'

export interface DocsFault {
  /** path:line inside the repository */
  readonly at: string
  readonly fault: string
}

/** Folders of one machine, which mean nothing on another. */
const machinePaths = /(?:^|[\s"'`(=:])((?:\/(?:home|root|Users|work|tmp)\/|[A-Za-z]:\\)[^\s"'`)]*)/

/** Paths inside the repository that a page may name between backticks. */
const repositoryPath = /^(?:packages|docs|tools)\//

function filesUnder(root: string, folder: string): readonly string[] {
  const at = join(root, folder)
  if (!existsSync(at)) return []
  const names = readdirSync(at, { recursive: true, encoding: 'utf8' }).map((name) => name.replaceAll('\\', '/'))
  return names
    .filter((name) => name.endsWith('.md'))
    .sort()
    .map((name) => `${folder}/${name}`)
}

/** The pages that are checked, by path inside the repository. */
export function pagesOf(root: string): readonly string[] {
  const packages = existsSync(join(root, 'packages')) ? readdirSync(join(root, 'packages')).sort() : []
  const single = ['README.md', 'CONTRIBUTING.md', 'CHANGELOG.md', ...packages.map((name) => `packages/${name}/README.md`)]
  return [...single.filter((page) => existsSync(join(root, page))), ...filesUnder(root, 'docs')]
}

/** Lines outside of fenced code, each with its number from 1; a fenced line is kept as an empty one. */
function proseOf(lines: readonly string[]): readonly string[] {
  let fence: string | null = null
  return lines.map((line) => {
    const mark = /^\s*(```+|~~~+)/.exec(line)?.[1]
    if (mark === undefined) return fence === null ? line : ''
    if (fence === null) fence = mark
    else if (mark.startsWith(fence)) fence = null
    return ''
  })
}

const withoutCode = (line: string): string => line.replace(/`[^`]*`/g, '')

/** Targets of `[text](target)`, `![text](target "title")` and `[name]: target`. */
function linksOf(line: string): readonly string[] {
  const inline = [...withoutCode(line).matchAll(/\]\(\s*<?([^)\s>]+)>?(?:\s+["'][^)]*)?\)/g)].map((match) => match[1] ?? '')
  const reference = /^\s*\[[^\]]+\]:\s*<?([^\s>]+)/.exec(withoutCode(line))?.[1]
  return reference === undefined ? inline : [...inline, reference]
}

/** Repository paths in inline code. Of a pattern (`packages/<name>/src`, `docs/*.md`) only the part before it can be checked. */
function namedPathsOf(line: string): readonly string[] {
  const words = [...line.matchAll(/`([^`]+)`/g)].flatMap((match) => (match[1] ?? '').split(/\s+/))
  return words
    .filter((word) => repositoryPath.test(word))
    .map((word) => word.replace(/[.,;:)]+$/, '').replace(/[:#].*$/, ''))
    .map((word) => {
      const pattern = word.search(/[*<{…$]|\.\.\./)
      return pattern === -1 ? word : word.slice(0, word.lastIndexOf('/', pattern))
    })
}

function faultsOfPage(root: string, page: string): readonly DocsFault[] {
  const lines = readFileSync(join(root, page), 'utf8').split(/\r?\n/)
  const faults: DocsFault[] = []
  proseOf(lines).forEach((line, i) => {
    const at = `${page}:${i + 1}`
    for (const link of linksOf(line)) {
      if (/^[a-z][a-z0-9+.-]*:/i.test(link) || link.startsWith('#')) continue
      const path = decodeURI(link.replace(/[#?].*$/, ''))
      const target = path.startsWith('/') ? path.slice(1) : posix.join(posix.dirname(page), path)
      if (target.startsWith('..')) faults.push({ at, fault: `the link ${link} leaves the repository` })
      else if (!existsSync(resolve(root, target))) faults.push({ at, fault: `the link ${link} leads nowhere` })
    }
    for (const path of namedPathsOf(line))
      if (!existsSync(join(root, path))) faults.push({ at, fault: `\`${path}\` does not exist` })
  })
  lines.forEach((line, i) => {
    const found = machinePaths.exec(line)?.[1]
    if (found !== undefined) faults.push({ at: `${page}:${i + 1}`, fault: `${found} is a folder of one machine` })
  })
  return faults
}

/** A decision stands as long as something would notice its end: each names the test that does. */
function faultsOfDecision(root: string, page: string): readonly DocsFault[] {
  const lines = readFileSync(join(root, page), 'utf8').split(/\r?\n/)
  const named = lines.flatMap((line, i) => {
    const path = /^\W*Test:\W*([\w./@-]+\w)/.exec(line)?.[1]
    return path === undefined ? [] : [{ path, line: i + 1 }]
  })
  if (named.length === 0) return [{ at: `${page}:1`, fault: 'names no test; add a line "Test: <path of a test file>"' }]
  return named
    .filter(({ path }) => !existsSync(join(root, path)) || !/\.test\.ts$/.test(path))
    .map(({ path, line }) => ({ at: `${page}:${line}`, fault: `${path} is not a test file that exists` }))
}

/** Everything in the pages of a repository that is not, or not any more, so. */
export function checkDocs(root: string): readonly DocsFault[] {
  const pages = pagesOf(root)
  const decisions = pages.filter((page) => /^docs\/decisions\/\d{4}-[^/]*\.md$/.test(page))
  return [...pages.flatMap((page) => faultsOfPage(root, page)), ...decisions.flatMap((page) => faultsOfDecision(root, page))]
}

if (import.meta.main) {
  const root = dirname(import.meta.dirname)
  const faults = checkDocs(root)
  for (const { at, fault } of faults) console.error(`${at}  ${fault}`)
  console.log(`docs check: ${pagesOf(root).length} pages, ${faults.length} faults`)
  process.exitCode = faults.length > 0 ? 1 : 0
}
