// Pictures of the desk for the README: node tools/boot.mjs packages/desk/e2e/pictures.ts [FOLDER]   (docs/pictures unless said)
// Made from the demonstration, in the Chromium of the machine, so that they show what is there now.
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { chromium, type Page } from '@playwright/test'
import { chromiumPath } from './chromium.ts'
import { makeDemonstration, questionAddress, type Served, serve } from './served.ts'

const to = process.argv[2] ?? join(import.meta.dirname, '..', '..', '..', 'docs', 'pictures')

const strips = {
  kinds: ['bumble bee'],
  between: 'strip',
  levels: ['no strip', 'strip'],
  except: ['crop=sunflower', 'date>=2032-07-23'],
  worth: 2,
}
const sheet = `field,date,start,minutes,stage,flowers,hives,hive distance m,honey bee,bumble bee,hover fly
Lower Sill,2033-07-11,10:30,10,65,240,8,320,24,9,4
Lower Sill,2033-07-19,10:40,10,67,130,8,25,many,5,2
`

interface Picture {
  readonly name: string
  readonly width: number
  readonly look: 'light' | 'dark'
  readonly take: (page: Page, served: Served) => Promise<void>
}

const open = (address: (served: Served) => string) => async (page: Page, served: Served) => {
  await page.goto(address(served))
}
const answer = open((served) => questionAddress(served, 'what-differs', strips))

const pictures: readonly Picture[] = [
  { name: 'walk', width: 1280, look: 'light', take: open(({ address }) => address) },
  { name: 'answer', width: 1280, look: 'light', take: answer },
  { name: 'answer-dark', width: 1280, look: 'dark', take: answer },
  { name: 'answer-phone', width: 390, look: 'light', take: answer },
  { name: 'counts', width: 1280, look: 'light', take: open(({ address }) => address.replace('/#', '/counts#')) },
  {
    name: 'table',
    width: 1280,
    look: 'light',
    take: async (page, { address }) => {
      await page.goto(address.replace('/#', '/tables#'))
      await page.setInputFiles('input[type="file"]', { name: 'lower-sill.csv', mimeType: 'text/csv', buffer: Buffer.from(sheet) })
      await page.locator('.offer').waitFor()
    },
  },
]

const folder = mkdtempSync(join(tmpdir(), 'thrum-pictures-'))
try {
  mkdirSync(to, { recursive: true })
  await makeDemonstration(folder)
  const served = await serve(folder, 'ostrel-vale.thrum')
  const browser = await chromium.launch({ executablePath: chromiumPath(), args: ['--no-sandbox'] })
  for (const { name, width, look, take } of pictures) {
    const page = await browser.newPage({
      viewport: { width, height: width < 600 ? 844 : 900 },
      colorScheme: look,
      reducedMotion: 'reduce',
    })
    await take(page, served)
    await page.waitForTimeout(700)
    await page.evaluate(() => document.fonts.ready)
    await page.screenshot({ path: join(to, `${name}.png`), fullPage: !['counts', 'table'].includes(name) })
    process.stdout.write(`${name}.png\n`)
    await page.close()
  }
  await browser.close()
  served.process.kill('SIGTERM')
  await new Promise((resolve) => served.process.on('close', resolve))
} finally {
  rmSync(folder, { recursive: true, force: true })
}
