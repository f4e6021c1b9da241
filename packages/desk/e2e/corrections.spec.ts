import { end, expect, makeDemonstration, ownPort, run, serve, test } from './served.ts'

test('a cell is corrected with a reason; the old value stays in its history', async ({ page, folder, start }) => {
  await makeDemonstration(folder)
  const served = await start('ostrel-vale.thrum')
  await page.goto(served.address.replace('/#', '/counts#'))
  const cell = page.locator('[aria-rowindex="2"] [role="gridcell"].number').last()
  const before = await cell.textContent()
  await cell.click()
  const dialog = page.getByRole('dialog')
  await expect(dialog).toContainText(`Stands: ${before}`)
  await dialog.getByLabel('Should be').fill('77')
  await dialog.getByLabel('Reason').fill('misread <b>7</b> & 1')
  await dialog.getByRole('button', { name: 'Keep the correction' }).click()
  await expect(dialog).toContainText('Kept. The old value stays in the history.')
  await expect(dialog.locator('.steps')).toContainText('misread <b>7</b> & 1')
  await dialog.getByRole('button', { name: 'Close' }).click()
  await expect(cell).toHaveText('77')
  const { out } = await run(folder, 'check', 'ostrel-vale.thrum', '--json')
  expect(JSON.parse(out)).toHaveProperty('digest')
})

test('ended in order and started again, Thrum is there, and says that it does not know this page', async ({ page, folder }) => {
  await makeDemonstration(folder)
  const port = await ownPort()
  const first = await serve(folder, 'ostrel-vale.thrum', port)
  await page.goto(first.address.replace('/#', '/counts#'))
  await expect(page.locator('[aria-rowindex="2"]')).toBeVisible()
  await end(first)
  await expect(page.getByText('Thrum cannot be reached', { exact: false }).first()).toBeVisible()
  const second = await serve(folder, 'ostrel-vale.thrum', port)
  try {
    await expect(page.getByText('opened by an earlier start of Thrum', { exact: false }).first()).toBeVisible()
    await expect(page.getByText('Thrum cannot be reached', { exact: false })).toHaveCount(0)
  } finally {
    await end(second)
  }
})

test('the server dies: the page says so, the project is whole, and the page goes on when it is back', async ({
  page,
  folder,
}) => {
  await makeDemonstration(folder)
  const port = await ownPort()
  const first = await serve(folder, 'ostrel-vale.thrum', port)
  await page.goto(first.address.replace('/#', '/counts#'))
  await expect(page.getByText('160 counts', { exact: false }).first()).toBeVisible()
  await end(first, 'SIGKILL')
  await expect(page.getByText('Thrum cannot be reached', { exact: false }).first()).toBeVisible()
  const { code } = await run(folder, 'check', 'ostrel-vale.thrum')
  expect(code).not.toBe(2)
  const second = await serve(folder, 'ostrel-vale.thrum', port)
  try {
    await expect(page.getByText('Thrum is here again', { exact: false })).toBeVisible()
    await expect(page.getByText('Thrum cannot be reached', { exact: false })).toHaveCount(0)
    await page.getByRole('button', { name: 'Good' }).click()
    await expect(page.locator('[aria-rowindex="2"]')).toBeVisible()
  } finally {
    await end(second)
  }
})
