import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, run, test } from './served.ts'

const rows = 100_000

function sheet(): string {
  const lines = Array.from({ length: rows }, (_, k) => {
    const day = new Date(Date.UTC(2031, 4, 1 + (k % 60))).toISOString().slice(0, 10)
    return `Field ${String(k % 40).padStart(2, '0')},P${k},${day},${10 + (k % 6)}:00,10,${k % 9},${k % 5}`
  })
  return `field,plot,date,start,minutes,honey bee,bumble bee\n${lines.join('\n')}\n`
}

test('a hundred thousand counts: every row can be reached, by wheel, by keys and by conditions', async ({
  page,
  folder,
  start,
}) => {
  test.setTimeout(120_000)
  writeFileSync(join(folder, 'large.csv'), sheet())
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
  await page.getByLabel('Column').selectOption('plot')
  await page.getByLabel('Value').fill('P77777')
  await page.getByRole('button', { name: 'Add' }).click()
  await expect(grid).toHaveAttribute('aria-rowcount', '2')
  await expect(page.locator('.standing')).toHaveCount(0)
})
