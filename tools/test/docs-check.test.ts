import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { checkDocs, pagesOf } from '../docs-check.ts'

let root = ''

beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'docs-check-'))
  write('packages/model/src/fold.ts', '')
  write('packages/model/test/fold.test.ts', '')
  write('docs/tour.md', '# Tour\n')
})
afterEach(() => {
  rmSync(root, { recursive: true, force: true })
})

function write(path: string, text: string): void {
  mkdirSync(dirname(join(root, path)), { recursive: true })
  writeFileSync(join(root, path), text)
}

describe('checkDocs', () => {
  it('has nothing to say about pages that are right', () => {
    write(
      'README.md',
      [
        'See [the tour](docs/tour.md#start), [here](#here), [there](https://example.org/x.md) and ![it](./docs/tour.md "title").',
        '[ref]: docs/tour.md',
        'Files: `packages/model/src/fold.ts:12`, `packages/<name>/src`, `docs/*.md`, `node docs/tour.md --x`, `[not](a-link.md)`.',
        '```',
        '[fenced](nowhere.md) `packages/none`',
        '```',
      ].join('\n'),
    )
    write('packages/model/README.md', 'Back to [the tour](../../docs/tour.md); `a/packages/other` is not ours.')
    write('docs/decisions/0001-facts.md', '# Facts\n\nTest: packages/model/test/fold.test.ts\n')
    write('docs/decisions/README.md', 'A list, not a decision.\n')
    expect(pagesOf(root)).toEqual([
      'README.md',
      'packages/model/README.md',
      'docs/decisions/0001-facts.md',
      'docs/decisions/README.md',
      'docs/tour.md',
    ])
    expect(checkDocs(root)).toEqual([])
  })

  it.each([
    ['a dead link', 'README.md', '[x](docs/none.md)', 'the link docs/none.md leads nowhere'],
    ['a dead reference', 'README.md', '[x]: docs/none.md', 'the link docs/none.md leads nowhere'],
    ['a dead picture, from its own folder', 'docs/page.md', '![x](docs/tour.md)', 'the link docs/tour.md leads nowhere'],
    ['a link out of the repository', 'CHANGELOG.md', '[x](../other.md)', 'the link ../other.md leaves the repository'],
    [
      'a file that is gone',
      'packages/model/README.md',
      'in `packages/model/src/gone.ts`.',
      '`packages/model/src/gone.ts` does not exist',
    ],
    ['a pattern in a folder that is gone', 'CONTRIBUTING.md', '`tools/*.ts`', '`tools` does not exist'],
    [
      'a folder of one machine',
      'docs/page.md',
      'put it in /home/somebody/thrum',
      '/home/somebody/thrum is a folder of one machine',
    ],
  ])('finds %s', (_, page, line, fault) => {
    write(page, `one\n${line}\n`)
    expect(checkDocs(root)).toEqual([{ at: `${page}:2`, fault }])
  })

  it('finds a folder of one machine inside fenced code too', () => {
    write('README.md', ['```', 'cd C:\\thrum', '```'].join('\n'))
    expect(checkDocs(root).map((found) => found.at)).toEqual(['README.md:2'])
  })

  it('finds a decision without a test, with a test that is gone, with something else for a test', () => {
    write('docs/decisions/0001-a.md', '# A\n')
    write('docs/decisions/0002-b.md', '# B\nTest: `packages/model/test/gone.test.ts`\n')
    write('docs/decisions/0003-c.md', '# C\n- Test: packages/model/src/fold.ts\n')
    expect(checkDocs(root).map((found) => found.at)).toEqual([
      'docs/decisions/0002-b.md:2',
      'docs/decisions/0001-a.md:1',
      'docs/decisions/0002-b.md:2',
      'docs/decisions/0003-c.md:2',
    ])
  })
})
