import type { Page } from '@playwright/test'
import { openSheet } from './every-state.ts'
import { expect, makeDemonstration, questionAddress, run, settled, test } from './served.ts'

async function bring(page: Page, text: string, name = 'sill.csv'): Promise<void> {
  await page.setInputFiles('input[type="file"]', { name, mimeType: 'text/csv', buffer: Buffer.from(text) })
  await page.locator('.offer').waitFor()
}

test('a table that leaves much open is answered on the page, and accepted', async ({ page, folder, start }) => {
  await run(folder, 'new', 'own.thrum')
  const served = await start('own.thrum')
  await page.goto(served.address.replace('/#', '/tables#'))
  await bring(page, openSheet)
  await expect(page.getByText('First it must be known how long each watch lasted.')).toBeVisible()
  const minutes = page.getByLabel('Minutes of each watch')
  // What is no number of minutes is told, and not kept.
  await minutes.fill('0')
  await expect(page.getByText('A number above 0, at most 1440.')).toBeVisible()
  await minutes.blur()
  await expect(minutes).toHaveValue('')
  const offers: string[] = []
  page.on('request', (request) => {
    if (request.url().endsWith('/offer')) offers.push(request.postData() ?? '')
  })
  await minutes.fill('10')
  await minutes.press('Enter')
  await expect(page.getByRole('button', { name: 'Accept: 2 counts' })).toBeVisible()
  await expect(minutes).toBeFocused()
  await minutes.blur()
  expect(offers).toHaveLength(1)
  const select = (asks: RegExp) => page.locator('.asks li').filter({ hasText: asks }).locator('select')
  await select(/first or month first/u).selectOption('day first')
  await select(/What is "what is this"/u)
    .or(select(/"what is this" holds/u))
    .selectOption('note')
  await select(/What does a dash/u).selectOption('not-looked-for')
  await select(/levels of "strip"/u).selectOption('at random')
  await expect(
    page.getByText('2 rows – 2 accepted', { exact: false }).or(page.getByText('2 rows – 1 accepted', { exact: false })),
  ).toBeVisible()
  const mapping = JSON.parse(offers.at(-1) ?? '{}').mapping
  expect(mapping).toMatchObject({
    constants: { minutes: 10 },
    file: { dateOrder: 'day first' },
    assigned: { strip: 'at random' },
  })
  await page.getByRole('button', { name: 'Accept: 2 counts' }).click()
  await expect(page.getByText('2 counts now stand in the project.')).toBeVisible()
  // What waits can be read where it stands.
  await page.getByRole('link', { name: 'Counts', exact: true }).click()
  await page.getByRole('gridcell', { name: /waits/u }).first().click()
  await expect(page.getByRole('dialog')).toContainText('many')
})

test('a question shows what its column is taken for, whatever that is, and goes where it makes no sense', async ({
  page,
  folder,
  start,
}) => {
  await run(folder, 'new', 'own.thrum')
  const served = await start('own.thrum')
  await page.goto(served.address.replace('/#', '/tables#'))
  await bring(page, openSheet)
  await page.getByLabel('what is this is taken as').selectOption('temperature')
  const asks = page.locator('.asks li').filter({ hasText: 'what is this' }).locator('select')
  await expect(asks).toHaveValue('temperature')
  await asks.selectOption('tally')
  await expect(page.getByLabel('what is this is taken as')).toHaveValue('tally')
  await page.getByLabel('strip is taken as').selectOption('note')
  await expect(page.locator('.asks li').filter({ hasText: 'levels of "strip"' })).toHaveCount(0)
})

test('a choice is chosen by its words as by its box; without a network the desk goes on', async ({ page, folder, start }) => {
  await makeDemonstration(folder)
  const served = await start('ostrel-vale.thrum')
  await page.goto(questionAddress(served, 'what-differs', { kinds: ['bumble bee'], between: 'strip', worth: 2 }))
  await settled(page)
  await page.evaluate(() => window.dispatchEvent(new Event('offline')))
  await page.getByRole('button', { name: /^Kinds:/u }).click()
  await page.locator('.sheet label', { hasText: 'hover fly' }).locator('span').first().click()
  await expect(page.getByRole('checkbox', { name: /hover fly/u })).toBeChecked()
  await expect(page.locator('.asked').first()).toContainText('hover fly')
})

test('another language keeps what is in hand', async ({ page, folder, start }) => {
  await run(folder, 'new', 'own.thrum')
  const served = await start('own.thrum')
  await page.goto(served.address.replace('/#', '/tables#'))
  await bring(page, openSheet)
  await page.getByRole('button', { name: 'Español' }).click()
  await expect(page.locator('html')).toHaveAttribute('lang', 'es')
  await expect(page.locator('.offer')).toBeVisible()
})

test('where the words of a language cannot be had the page speaks English', async ({ page, folder, start }) => {
  await run(folder, 'new', 'own.thrum')
  const served = await start('own.thrum')
  await page.route('**/spanish-*.js', (route) => route.abort())
  await page.goto(served.address)
  await settled(page)
  await page.evaluate(() => localStorage.setItem('thrum-language', 'es'))
  await page.reload()
  await expect(page.getByRole('heading', { level: 1, name: 'A project without counts' })).toBeVisible()
})

test('a table is still there after a look elsewhere, and a file may be dropped anywhere', async ({ page, folder, start }) => {
  await run(folder, 'new', 'own.thrum')
  const served = await start('own.thrum')
  await page.goto(served.address)
  await settled(page)
  const data = await page.evaluateHandle((text) => {
    const transfer = new DataTransfer()
    transfer.items.add(new File([text], 'dropped.csv', { type: 'text/csv' }))
    return transfer
  }, openSheet)
  await page.dispatchEvent('main', 'drop', { dataTransfer: data })
  await page.locator('.offer').waitFor()
  const minutes = page.getByLabel('Minutes of each watch')
  await minutes.fill('10')
  await minutes.press('Enter')
  await expect(page.getByRole('button', { name: 'Accept: 2 counts' })).toBeVisible()
  await page.getByRole('link', { name: 'Counts', exact: true }).click()
  await page.getByRole('link', { name: 'Bring a table', exact: true }).click()
  await expect(minutes).toHaveValue('10')
  // Another file does not push it aside.
  await page.dispatchEvent('.tables', 'drop', { dataTransfer: data })
  await expect(page.getByRole('alert')).toContainText('A table is in hand here.')
  await expect(minutes).toHaveValue('10')
})
