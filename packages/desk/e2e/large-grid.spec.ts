import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { largeSheet } from './large-sheet.ts'
import { expect, run, test } from './served.ts'

const rows = 100_000

test('a hundred thousand counts: every row can be reached, by wheel, by keys and by conditions', async ({
  page,
  folder,
  start,
}) => {
  test.setTimeout(120_000)
  writeFileSync(join(folder, 'large.csv'), largeSheet(rows))
  await run(folder, 'new', 'large.thrum')
  await run(folder, 'import', 'large.csv', '--in', 'large.thrum', '--unit', 'individuals', '--accept')
  const served = await start('large.thrum')
  await page.goto(served.address.replace('/#', '/counts#'))
  await expect(page.locator('.told')).toContainText('100,000 counts')
  const grid = page.getByRole('grid')
  await expect(grid).toHaveAttribute('aria-rowcount', String(rows + 1))
  // Few rows are drawn, however many there are.
  expect(await grid.getByRole('row').count()).toBeLessThan(120)
  await grid.evaluate((element) => {
    element.scrollTop = element.scrollHeight
  })
  await expect(grid.locator(`[aria-rowindex="${rows + 1}"]`)).toContainText('Field 39')
  await grid.locator('[role="gridcell"]').first().focus()
  await page.keyboard.press('Control+Home')
  await expect(grid.locator('[aria-rowindex="2"]')).toContainText('Field 00')
  await expect(grid.locator('[data-place="0/0"]')).toBeFocused()
  await page.keyboard.press('ArrowDown')
  await expect(grid.locator('[data-place="1/0"]')).toBeFocused()
  // The cell that keys go from is scrolled out of sight: the tab key leads to what is in sight.
  await grid.evaluate((element) => {
    element.scrollTop = element.scrollHeight / 2
  })
  await expect(grid.locator('[data-place="50000/0"]')).toBeVisible()
  await page.getByRole('button', { name: 'Add' }).focus()
  await page.getByLabel('Value').focus()
  await grid.focus()
  await expect(grid.locator('[role="gridcell"]:focus')).toBeInViewport()
  await page.getByLabel('Column').selectOption('plot')
  await page.getByLabel('Value').fill('P77777')
  await page.getByRole('button', { name: 'Add' }).click()
  await expect(grid).toHaveAttribute('aria-rowcount', '2')
  // Of one row that is left, a cell can be gone to.
  await expect(grid.locator('[tabindex="0"]').or(page.locator('.grid[tabindex="0"]')).first()).toBeAttached()
  await expect(page.locator('.standing')).toHaveCount(0)
})
