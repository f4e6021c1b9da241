// Pictures of the desk, made from the demonstration in the Chromium of the machine, so that they show what is there now.
//
//   npm run pictures                           those of the README, into docs/pictures
//   npm run pictures -- --all FOLDER           every page and state, to be looked at
//     --widths 390,1440  --looks light,dark  --language en|es  --only NAME,NAME
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { parseArgs } from 'node:util'
import { type Browser, chromium, type Page } from '@playwright/test'
import { chromiumPath } from './chromium.ts'
import { makeProjects, states } from './every-state.ts'
import { end, questionAddress, type Served, serve } from './served.ts'

const { values } = parseArgs({
  options: {
    all: { type: 'string' },
    widths: { type: 'string', default: '390,1440' },
    looks: { type: 'string', default: 'light,dark' },
    language: { type: 'string', default: 'en' },
    only: { type: 'string' },
  },
})
type Look = 'light' | 'dark'

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
  readonly project: string
  readonly width: number
  readonly look: Look
  /** Whether all of the page is shown, or what a window shows of it. */
  readonly whole: boolean
  readonly take: (page: Page, served: Served) => Promise<void>
}

const open = (address: (served: Served) => string) => async (page: Page, served: Served) => {
  await page.goto(address(served))
}
const answer = open((served) => questionAddress(served, 'what-differs', strips))
const usual = { project: 'ostrel-vale.thrum', width: 1280, look: 'light', whole: true } as const

const ofReadme: readonly Picture[] = [
  { ...usual, name: 'walk', take: open(({ address }) => address) },
  { ...usual, name: 'answer', take: answer },
  { ...usual, name: 'answer-dark', look: 'dark', take: answer },
  { ...usual, name: 'answer-phone', width: 390, take: answer },
  { ...usual, name: 'counts', whole: false, take: open(({ address }) => address.replace('/#', '/counts#')) },
  {
    ...usual,
    name: 'table',
    whole: false,
    take: async (page, { address }) => {
      await page.goto(address.replace('/#', '/tables#'))
      await page.setInputFiles('input[type="file"]', { name: 'lower-sill.csv', mimeType: 'text/csv', buffer: Buffer.from(sheet) })
      await page.locator('.offer').waitFor()
    },
  },
]

/** States whose page is as tall as the window. */
const asTallAsTheWindow = ['counts', 'cell', 'evidence', 'no-counts', 'blank-open']

function everyState(): readonly Picture[] {
  const only = values.only?.split(',')
  return states
    .filter(({ name }) => only === undefined || only.includes(name))
    .flatMap(({ name, project, open: take }) =>
      values.widths.split(',').flatMap((width) =>
        values.looks.split(',').map((look) => ({
          name: `${name}-${width}-${look}`,
          project,
          width: Number(width),
          look: look as Look,
          whole: !asTallAsTheWindow.includes(name),
          take,
        })),
      ),
    )
}

async function takePicture(browser: Browser, served: Served, { name, width, look, whole, take }: Picture): Promise<void> {
  const page = await browser.newPage({
    viewport: { width, height: width < 600 ? 844 : 900 },
    colorScheme: look,
    reducedMotion: 'reduce',
    locale: values.language,
  })
  await take(page, served)
  await page.waitForTimeout(700)
  await page.evaluate(() => document.fonts.ready)
  await page.screenshot({ path: join(to, `${name}.png`), fullPage: whole })
  process.stdout.write(`${name}.png\n`)
  await page.close()
}

const to = values.all ?? join(import.meta.dirname, '..', '..', '..', 'docs', 'pictures')
const pictures = values.all === undefined ? ofReadme : everyState()
const folder = mkdtempSync(join(tmpdir(), 'thrum-pictures-'))
try {
  mkdirSync(to, { recursive: true })
  await makeProjects(folder)
  const browser = await chromium.launch({ executablePath: chromiumPath(), args: ['--no-sandbox'] })
  for (const project of new Set(pictures.map((own) => own.project))) {
    const served = await serve(folder, project)
    for (const picture of pictures.filter((own) => own.project === project)) await takePicture(browser, served, picture)
    await end(served)
  }
  await browser.close()
} finally {
  rmSync(folder, { recursive: true, force: true })
}
