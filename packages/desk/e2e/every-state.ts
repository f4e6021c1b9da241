import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from '@playwright/test'
import { largeSheet } from './large-sheet.ts'
import { makeDemonstration, questionAddress, run, type Served, settled } from './served.ts'

/** A page in a state, and how it comes to be in it. */
export interface State {
  readonly name: string
  /** The file of the project it is shown on. */
  readonly project: (typeof projects)[number]
  readonly open: (page: Page, served: Served) => Promise<void>
}

export const projects = ['ostrel-vale.thrum', 'empty.thrum', 'large.thrum'] as const

/** Makes the projects on which the states are shown. */
export async function makeProjects(folder: string): Promise<void> {
  await makeDemonstration(folder)
  await run(folder, 'new', 'empty.thrum')
  await run(folder, 'new', 'large.thrum')
  writeFileSync(join(folder, 'large.csv'), largeSheet(100_000))
  await run(folder, 'import', 'large.csv', '--in', 'large.thrum', '--unit', 'individuals', '--accept')
}

const strips = { kinds: ['bumble bee'], between: 'strip', worth: 2 }

/** A table that leaves much open: no minutes, a dash, a blank, a levels column, dates both ways. */
export const openSheet = `field,date,strip,honey bee,bumble bee,hover fly,what is this
Lower Sill,11/07/2033,yes,24,9,,3
Lower Sill,09/07/2033,no,many,-,2,5
`

const page =
  (path: string) =>
  async (at: Page, { address }: Served) => {
    await at.goto(address.replace('/#', `${path}#`))
    await settled(at)
  }
const asked = (question: string, options: object) => async (at: Page, served: Served) => {
  await at.goto(questionAddress(served, question, options))
  await settled(at)
}
const demonstration = (name: string, open: State['open']): State => ({ name, project: 'ostrel-vale.thrum', open })

async function offered(at: Page, served: Served): Promise<void> {
  await page('/tables')(at, served)
  await at.setInputFiles('input[type="file"]', { name: 'sill.csv', mimeType: 'text/csv', buffer: Buffer.from(openSheet) })
  await at.locator('.offer').waitFor()
}

/** Every page and state of the desk that a person can meet. */
export const states: readonly State[] = [
  demonstration('walk', page('/')),
  demonstration('answer', asked('what-differs', strips)),
  demonstration('rates', asked('who-visits', {})),
  demonstration('blocked', asked('what-differs', { ...strips, where: ['crop=sunflower'] })),
  demonstration('audit', asked('is-design-sound', { between: 'strip' })),
  demonstration('wanting', asked('what-differs', { between: 'strip' })),
  demonstration('failed', asked('what-differs', { between: 'soil', worth: 2 })),
  demonstration('working', async (at, served) => {
    await at.route('**/api/ask', () => undefined)
    await at.goto(questionAddress(served, 'what-differs', strips))
    await at.locator('.working').waitFor()
  }),
  demonstration('blank-open', async (at, served) => {
    await asked('what-differs', strips)(at, served)
    await at.locator('.asks .blank button').nth(1).click()
    await at.locator('.sheet').waitFor()
  }),
  demonstration('mark-told', async (at, served) => {
    await asked('what-differs', strips)(at, served)
    await at.locator('.marked').first().focus()
    await at.keyboard.press('ArrowDown')
    await at.locator('.mark-told').waitFor()
  }),
  demonstration('locked', async (at, served) => {
    await at.goto(new URL(served.address).origin)
    await at.locator('.trouble').waitFor()
  }),
  demonstration('gone', async (at, served) => {
    await asked('what-differs', strips)(at, served)
    await at.route('**/api/**', (route) => route.abort())
    await at.goto(questionAddress(served, 'who-visits', {}))
    await at.locator('.standing.bad').waitFor()
  }),
  demonstration('counts', page('/counts')),
  demonstration('cell', async (at, served) => {
    await page('/counts')(at, served)
    await at.locator('[aria-rowindex="2"] [role="gridcell"].number').last().click()
    await at.locator('dialog.cell .note').last().waitFor()
  }),
  demonstration('evidence', async (at, served) => {
    await asked('what-differs', strips)(at, served)
    await at.locator('.cautions a').first().click()
    await at.locator('[aria-rowindex="2"]').waitFor()
  }),
  demonstration('tables', page('/tables')),
  demonstration('offered', offered),
  {
    name: 'begin',
    project: 'empty.thrum',
    open: async (at, served) => {
      await page('/')(at, served)
      await at.locator('.ways').waitFor()
    },
  },
  {
    name: 'by-hand',
    project: 'empty.thrum',
    open: async (at, served) => {
      await page('/')(at, served)
      await at.locator('.ways li').last().locator('button').click()
      await at.locator('.fields').waitFor()
    },
  },
  { name: 'no-counts', project: 'empty.thrum', open: page('/counts') },
  {
    name: 'large',
    project: 'large.thrum',
    open: async (at, served) => {
      await page('/counts')(at, served)
      await at.locator('[aria-rowindex="2"]').waitFor()
      await at.locator('.grid').evaluate((grid) => {
        grid.scrollTop = grid.scrollHeight / 2
      })
      await at.locator('[aria-rowindex="50000"]').waitFor()
    },
  },
]
