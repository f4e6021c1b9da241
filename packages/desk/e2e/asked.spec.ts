import { expect, makeDemonstration, questionAddress, settled, test } from './served.ts'

const strips = { kinds: ['bumble bee'], between: 'strip', levels: ['no strip', 'strip'], worth: 2 }

test('a question that was pinned is found again, with its answer; other data make it stale', async ({ page, folder, start }) => {
  await makeDemonstration(folder)
  const served = await start('ostrel-vale.thrum')
  await page.goto(questionAddress(served, 'what-differs', strips))
  await settled(page)
  const headline = await page.getByRole('heading', { level: 1 }).textContent()
  await page.getByRole('button', { name: 'Pin', exact: true }).click()
  await expect(page.getByRole('button', { name: 'Unpin' })).toHaveAttribute('aria-pressed', 'true')

  await page.getByRole('link', { name: 'Counts', exact: true }).click()
  await page.getByRole('link', { name: 'Questions', exact: true }).click()
  const list = page.getByRole('navigation', { name: 'Asked before' })
  await expect(list.getByRole('heading', { name: 'Pinned' })).toBeVisible()
  await list
    .getByRole('link', { name: /What differs.*bumble bee/u })
    .first()
    .click()
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(headline ?? '')

  // A correction makes other data of it.
  await page.getByRole('link', { name: 'Counts', exact: true }).click()
  await page.locator('[aria-rowindex="3"] [role="gridcell"].number').last().click()
  await page.getByLabel('Should be').fill('3')
  await page.getByLabel('Reason').fill('misread')
  await page.getByRole('button', { name: 'Keep the correction' }).click()
  await page.getByRole('button', { name: 'Close' }).click()
  await page.getByRole('link', { name: 'Questions', exact: true }).click()
  await expect(list).toContainText('the data have changed since')
})

test('a changed blank answers at once, and the answer before it stays beside it', async ({ page, folder, start }) => {
  await makeDemonstration(folder)
  const served = await start('ostrel-vale.thrum')
  await page.goto(questionAddress(served, 'what-differs', strips))
  await settled(page)
  const before = await page.getByRole('heading', { level: 1 }).textContent()
  await page.getByRole('button', { name: /^Kinds:/u }).click()
  await page.getByRole('checkbox', { name: /bumble bee/u }).uncheck()
  await page.getByRole('checkbox', { name: /hover fly/u }).check()
  await page.getByRole('button', { name: 'Done' }).click()
  await expect(page.getByRole('heading', { level: 1 })).toContainText('hover fly')
  await expect(page.getByRole('complementary', { name: 'Before' })).toBeVisible()
  await page.goBack()
  await page.goBack()
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(before ?? '')
})

test('a question that takes long can be stopped, and asked again', async ({ page, folder, start }) => {
  await makeDemonstration(folder)
  const served = await start('ostrel-vale.thrum')
  const stopped: string[] = []
  page.on('request', (request) => {
    if (request.method() === 'DELETE') stopped.push(new URL(request.url()).pathname)
  })
  await page.route('**/api/ask', () => undefined)
  await page.goto(questionAddress(served, 'what-differs', strips))
  await page.getByRole('button', { name: 'Stop' }).click()
  await expect(page.getByText('Stopped; there is no answer to this yet.')).toBeVisible()
  expect(stopped).toEqual([expect.stringMatching(/^\/api\/jobs\/desk-/u)])
  await page.unroute('**/api/ask')
  await page.getByRole('button', { name: 'Try again' }).click()
  await expect(page.getByRole('heading', { level: 1 })).toContainText('bumble bee')
})

test('a figure tells its marks to the pointer and to the keys', async ({ page, folder, start }) => {
  await makeDemonstration(folder)
  const served = await start('ostrel-vale.thrum')
  await page.goto(questionAddress(served, 'what-differs', strips))
  await settled(page)
  const told = page.locator('.mark-told')
  const rates = page.locator('.marked').last()
  await rates.focus()
  await page.keyboard.press('End')
  await expect(told).toContainText('per hour')
  const last = await told.textContent()
  await page.keyboard.press('ArrowLeft')
  await expect(told).not.toHaveText(last ?? '')
  await page.keyboard.press('Escape')
  await expect(told).toHaveCount(0)
  // A row of the intervals is named wherever along it the pointer is.
  const row = page.locator('.marked').first()
  await row.scrollIntoViewIfNeeded()
  const box = await row.locator('circle').first().boundingBox()
  const edge = await row.boundingBox()
  await page.mouse.move((edge?.x ?? 0) + 60, (box?.y ?? 0) + 3)
  await expect(told).toContainText('bumble bee: strip / no strip: 3.02')
  await page.mouse.move(5, 5)
  await expect(told).toHaveCount(0)
})
