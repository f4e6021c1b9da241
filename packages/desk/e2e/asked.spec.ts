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
