// Puts the receipts of many answers to R and says whether R agrees.
//
//   npm run verify:receipts
//
// Without R on the machine nothing is checked, which is said loudly in the last line; with CI=true or THRUM_NEED_R=1 that fails.
// Models of counts need R's package glmmTMB, mixed models of measured numbers lme4; without them they are skipped, which is said and fails in the same cases.

import { spawnSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { ask, createDemonstration, english, openProject, type Project, usualSeed } from '@thrum/host'
import { type LongWork, unwatched } from '@thrum/model/ground'
import { fitTable, type Receipt } from '@thrum/questions'
import { createSpeaker } from '@thrum/report'
import { demonstrationCases, type ReceiptCase } from './verify-receipts/cases.ts'
import { bringExtract, extracts } from './verify-receipts/extracts.ts'
import { type TableFitCase, tableFitCases, tableOfCase } from './verify-receipts/table-fits.ts'

const work: LongWork = unwatched
const say = createSpeaker(english)

interface Outcome {
  readonly agrees: boolean
  readonly numbers: number
  /** Numbers that R skipped for want of a package. */
  readonly skipped: number
}

const isNeeded = process.env.CI === 'true' || process.env.THRUM_NEED_R === '1'

async function verify(project: Project, { question, options }: ReceiptCase, folder: string): Promise<Outcome> {
  const first = (await project.snapshot()).fields[0]?.name ?? ''
  const filled = Object.fromEntries(
    Object.entries(options).map(([name, value]) => [name, Array.isArray(value) && value[0] === 'FIRST' ? [first] : value]),
  )
  const asked = await ask(project, question, filled, work)
  const { files } = asked.question.receipt(asked.snapshot, asked.answer)
  const what = `${asked.answer.verdict ?? '-'}  ${question} ${JSON.stringify(options)}`
  return putToR(files, folder, what, say(asked.answer.headline))
}

async function verifyTableFit(own: TableFitCase, folder: string): Promise<Outcome> {
  const { told, receipt } = await fitTable(tableOfCase(own), own.words, usualSeed, work)
  const what = `-  fit ${own.file} ${JSON.stringify(own.words)}`
  return putToR(receipt?.files ?? [], folder, what, say(told.kind === 'fitted' ? told.about : told.text))
}

/** Writes a receipt, has R recompute it, and says how that went. */
function putToR(files: Receipt['files'], folder: string, what: string, headline: string): Outcome {
  mkdirSync(folder, { recursive: true })
  for (const { name, text } of files) writeFileSync(join(folder, name), text)
  const run = spawnSync('Rscript', ['--vanilla', 'receipt.R'], { cwd: folder, encoding: 'utf8' })
  const lines = `${run.stdout}${run.stderr}`.trim().split('\n')
  const agreed = lines.filter((line) => line.startsWith('agrees')).length
  const skipped = lines.filter((line) => line.startsWith('skipped')).length
  const agrees = run.status === 0 && agreed + skipped > 0 && !(isNeeded && skipped > 0)
  process.stdout.write(`${agrees ? 'agrees ' : 'DIFFERS'} ${String(agreed).padStart(3)} numbers  ${what.slice(0, 112)}\n`)
  if (!agrees) {
    process.stdout.write(`  ${headline}\n`)
    for (const line of lines.slice(-12)) process.stdout.write(`  ${line}\n`)
  }
  return { agrees, numbers: agreed, skipped }
}

async function verifyAll(): Promise<boolean> {
  const folder = mkdtempSync(join(tmpdir(), 'thrum-receipts-'))
  process.env.THRUM_HOME = folder
  try {
    const outcomes: Outcome[] = []
    const path = join(folder, 'ostrel-vale.thrum')
    await createDemonstration(path)
    const demonstration = await openProject(path, 'read')
    for (const [k, own] of demonstrationCases.entries())
      outcomes.push(await verify(demonstration, own, join(folder, `receipt-${k}`)))
    await demonstration.close()
    for (const extract of extracts) {
      const project = await bringExtract(extract, join(folder, `${extract.name}.thrum`))
      for (const [k, own] of extract.cases.entries())
        outcomes.push(await verify(project, own, join(folder, `${extract.name}-${k}`)))
      await project.close()
    }
    for (const [k, own] of tableFitCases.entries()) outcomes.push(await verifyTableFit(own, join(folder, `fit-${k}`)))
    const numbers = outcomes.reduce((sum, own) => sum + own.numbers, 0)
    const differ = outcomes.filter(({ agrees }) => !agrees).length
    process.stdout.write(
      `\n${outcomes.length} receipts, ${numbers} numbers recomputed by R; ${differ === 0 ? 'all agree' : `${differ} DIFFER`}\n`,
    )
    const skipped = outcomes.reduce((sum, own) => sum + own.skipped, 0)
    if (skipped > 0)
      process.stdout.write(
        `*** ${skipped} numbers were NOT checked: R lacks glmmTMB or lme4 (r-cran-glmmtmb, r-cran-lme4). ***\n`,
      )
    process.stdout.write(`${outcomes.length - differ} passed, ${differ} failed\n`)
    return differ === 0
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

if (spawnSync('Rscript', ['--version']).error === undefined) process.exitCode = (await verifyAll()) ? 0 : 1
else {
  process.stdout.write(
    '\n*** R IS NOT INSTALLED: NO RECEIPT WAS CHECKED. Install R (r-base-core) and run npm run verify:receipts again. ***\n',
  )
  process.exitCode = isNeeded ? 1 : 0
}
