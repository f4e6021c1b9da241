import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { mustFail, readSkippedReceipts, skippedSaying } from '../run-checks/skipped-receipts.ts'

describe('skipped receipts', () => {
  it('are the lines of the file, none where there is no file', () => {
    const folder = mkdtempSync(join(tmpdir(), 'receipts-'))
    const file = join(folder, 'receipts-skipped')
    expect(readSkippedReceipts(file)).toEqual([])
    writeFileSync(file, 'what-differs\n\nwho-visits\n')
    expect(readSkippedReceipts(file)).toEqual(['what-differs', 'who-visits'])
    rmSync(folder, { recursive: true })
  })

  it('fail where R is asked for', () => {
    expect([{}, { CI: 'true' }, { THRUM_NEED_R: '1' }, { CI: 'false' }, { THRUM_NEED_R: '0' }].map(mustFail)).toEqual([
      false,
      true,
      true,
      false,
      false,
    ])
  })

  it('are counted aloud', () => {
    expect(skippedSaying(['a'], false)).toMatch(/^1 RECEIPT TEST WAS SKIPPED, because R is missing/)
    expect(skippedSaying(['a', 'b'], true)).toMatch(/^FAILED: 2 RECEIPT TESTS WERE SKIPPED/)
  })
})
