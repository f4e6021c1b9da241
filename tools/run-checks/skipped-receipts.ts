import { existsSync, readFileSync } from 'node:fs'

/** Tests of receipts that could not run for want of R: they write a line each into one file. */
export function readSkippedReceipts(file: string): readonly string[] {
  if (!existsSync(file)) return []
  return readFileSync(file, 'utf8')
    .split(/\r?\n/)
    .filter((line) => line.trim() !== '')
}

/** Where nobody would read a warning, a receipt that was not recomputed is a failure. */
export function mustFail(env: { readonly [name: string]: string | undefined }): boolean {
  return env.CI === 'true' || env.THRUM_NEED_R === '1'
}

/** The last line of a run, so that it cannot be overlooked. */
export function skippedSaying(skipped: readonly string[], fails: boolean): string {
  const tests = skipped.length === 1 ? '1 RECEIPT TEST WAS' : `${skipped.length} RECEIPT TESTS WERE`
  return `${fails ? 'FAILED: ' : ''}${tests} SKIPPED, because R is missing: install R (Rscript) to recompute the receipts.`
}
