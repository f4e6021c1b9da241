// How quick the desk is: node tools/boot.mjs packages/desk/e2e/bench.ts   Writes docs/bench/desk.json and desk.md.
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { gzipSync } from 'node:zlib'
import { type Browser, chromium, type Page } from '@playwright/test'
import { machine, versions } from '../../../bench/machine.ts'
import { median } from '../../../bench/median.ts'
import { chromiumPath } from './chromium.ts'
import { largeSheet } from './large-sheet.ts'
import { end, makeDemonstration, questionAddress, run, type Served, serve } from './served.ts'

const runs = 5
const dist = join(import.meta.dirname, '..', 'dist')
const strips = { kinds: ['bumble bee'], between: 'strip', levels: ['no strip', 'strip'], worth: 2 }

/** Bytes that come before the first figure, packed as a server may send them; faces and the page itself among them. */
function firstBytes(): number {
  const first = /^(?:index-.*\.(?:js|css)|.*-latin-.*\.woff2)$/u
  const files = readdirSync(join(dist, 'assets')).filter((name) => first.test(name))
  const packed = (file: string): number =>
    file.endsWith('.woff2') ? readFileSync(file).length : gzipSync(readFileSync(file)).length
  return [join(dist, 'index.html'), ...files.map((name) => join(dist, 'assets', name))].reduce(
    (sum, file) => sum + packed(file),
    0,
  )
}

/** From the address to the headline of an answer [ms]. */
async function firstAnswer(browser: Browser, served: Served): Promise<number> {
  const page = await browser.newPage()
  const start = performance.now()
  await page.goto(questionAddress(served, 'what-differs', strips))
  await page.getByRole('heading', { level: 1 }).waitFor()
  const took = performance.now() - start
  await page.close()
  return took
}

/** Kinds ticked or unticked one after the other, each of which makes another question; back again, each was answered before. */
const changes = ['honey bee', 'hover fly', 'small solitary bee', 'bumble bee']

/** From a click in a blank to the new headline [ms], for each of several clicks, seen by the page itself. */
async function changedBlanks(page: Page, kinds: readonly string[]): Promise<readonly number[]> {
  return await page.evaluate(async (wanted) => {
    const headline = (): string => document.querySelector('.answer h1')?.textContent ?? ''
    const found: number[] = []
    for (const kind of wanted) {
      const boxes = [...document.querySelectorAll<HTMLLabelElement>('.sheet label')]
      const before = headline()
      const start = performance.now()
      boxes
        .find((label) => label.textContent?.startsWith(kind))
        ?.querySelector('input')
        ?.click()
      while (headline() === before) {
        if (performance.now() - start > 10_000) throw new Error(`nothing came of ${kind}: ${before}`)
        await new Promise(requestAnimationFrame)
      }
      found.push(performance.now() - start)
      // What follows an answer, such as the list of what was asked, is over before the next click.
      await new Promise((resolve) => setTimeout(resolve, 700))
    }
    return found
  }, kinds)
}

/** Longest and middle time between two frames while the grid is scrolled from end to end [ms]. */
async function scrolling(page: Page): Promise<{ readonly longest: number; readonly middle: number }> {
  const gaps = await page.evaluate(async () => {
    const grid = document.querySelector('.grid')
    if (grid === null) return []
    const found: number[] = []
    let last = performance.now()
    for (let step = 0; step < 180; step++) {
      grid.scrollTop += grid.clientHeight * 0.4
      await new Promise(requestAnimationFrame)
      const now = performance.now()
      found.push(now - last)
      last = now
    }
    return found
  })
  return { longest: Math.max(...gaps), middle: median(gaps) }
}

const folder = mkdtempSync(join(tmpdir(), 'thrum-desk-bench-'))
const browser = await chromium.launch({ executablePath: chromiumPath(), args: ['--no-sandbox'] })
try {
  await makeDemonstration(folder)
  const small = await serve(folder, 'ostrel-vale.thrum')
  const answers: number[] = []
  for (let k = 0; k < runs; k++) answers.push(await firstAnswer(browser, small))
  const page = await browser.newPage()
  await page.goto(questionAddress(small, 'what-differs', strips))
  await page.getByRole('heading', { level: 1 }).waitFor()
  await page.getByRole('button', { name: /^Kinds:/u }).click()
  const anew = await changedBlanks(page, changes)
  const kept = await changedBlanks(page, changes.toReversed())
  await end(small)

  writeFileSync(join(folder, 'large.csv'), largeSheet(100_000))
  await run(folder, 'new', 'large.thrum')
  await run(folder, 'import', 'large.csv', '--in', 'large.thrum', '--unit', 'individuals', '--accept')
  const large = await serve(folder, 'large.thrum')
  const grid = await browser.newPage()
  await grid.goto(large.address.replace('/#', '/counts#'))
  await grid.locator('[aria-rowindex="2"]').waitFor()
  const frames = await scrolling(grid)
  await end(large)

  const results = {
    date: new Date().toISOString().slice(0, 10),
    machine,
    versions,
    firstBytes: firstBytes(),
    firstAnswer: median(answers),
    changedBlank: { anew, kept },
    frames,
  }
  const to = join(import.meta.dirname, '..', '..', '..', 'docs', 'bench')
  const ms = (value: number): string => `${Math.round(value)} ms`
  mkdirSync(to, { recursive: true })
  writeFileSync(join(to, 'desk.json'), `${JSON.stringify(results, null, 2)}\n`)
  writeFileSync(
    join(to, 'desk.md'),
    [
      '# Bench of the desk',
      '',
      `Measured on ${results.date} with Thrum ${versions.thrum} in Chromium, headless, on ${machine.cpu}, ${machine.cores} cores, ${machine.system}; server and page on one machine.`,
      '',
      '| what | goal | found |',
      '| --- | --- | --- |',
      `| bytes before the first figure, packed | 250 KB | ${Math.round(results.firstBytes / 1000)} KB |`,
      `| from the address to the first answer of the demonstration (median of ${runs}) | 1000 ms | ${ms(results.firstAnswer)} |`,
      `| a changed blank, worked out anew: middle and longest of ${anew.length} clicks | 150 ms | ${ms(median(anew))}, ${ms(Math.max(...anew))} |`,
      `| a changed blank, answered before: middle and longest of ${kept.length} clicks | 150 ms | ${ms(median(kept))}, ${ms(Math.max(...kept))} |`,
      `| frames while 100,000 counts are scrolled: middle, longest gap | 17 ms | ${ms(frames.middle)}, ${ms(frames.longest)} |`,
      '',
    ].join('\n'),
  )
  process.stdout.write(
    `${JSON.stringify({ firstBytes: results.firstBytes, firstAnswer: results.firstAnswer, anew, kept, frames })}\n`,
  )
} finally {
  await browser.close()
  rmSync(folder, { recursive: true, force: true })
}
