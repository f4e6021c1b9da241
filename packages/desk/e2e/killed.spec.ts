import type { Page } from '@playwright/test'
import { checkProjectFile } from '@thrum/host'
import { largeSheet } from './large-sheet.ts'
import { end, expect, makeDemonstration, ownPort, run, type Served, serve, test } from './served.ts'

/** Kills the server, and serves the same project at the same address again. */
async function killAndServe(served: Served, project: string): Promise<Served> {
  await end(served, 'SIGKILL')
  await checkProjectFile(served.project)
  return await serve(served.folder, project, Number(new URL(served.address).port))
}

async function seenBack(page: Page): Promise<void> {
  await expect(page.getByText('Thrum is here again', { exact: false })).toBeVisible()
}

// From before the request is heard until after it is written.
for (const wait of [0, 2, 5, 10, 20, 40]) {
  test(`killed ${wait} ms into a correction: it stands whole or not at all, and can be made again`, async ({ page, folder }) => {
    await makeDemonstration(folder)
    const first = await serve(folder, 'ostrel-vale.thrum', await ownPort())
    await page.goto(first.address.replace('/#', '/counts#'))
    const cell = page.locator('[aria-rowindex="2"] [role="gridcell"].number').last()
    const before = await cell.textContent()
    await cell.click()
    const dialog = page.getByRole('dialog')
    await dialog.getByLabel('Should be').fill('77')
    await dialog.getByLabel('Reason').fill('misread')
    const sent = page.waitForRequest('**/api/corrections')
    await dialog.getByRole('button', { name: 'Keep the correction' }).click()
    await sent
    await new Promise((resolve) => setTimeout(resolve, wait))
    const second = await killAndServe(first, 'ostrel-vale.thrum')
    try {
      await seenBack(page)
      const kept = dialog.getByText('Kept. The old value stays in the history.')
      const lost = dialog.getByRole('alert').filter({ hasText: 'No reply came, because Thrum cannot be reached.' })
      await expect(kept.or(lost).first()).toBeVisible()
      // Of what may be lost, what was typed is still there.
      if (!(await kept.isVisible())) await expect(dialog.getByLabel('Should be')).toHaveValue('77')
      await dialog.getByRole('button', { name: 'Close' }).click()
      await expect(cell).toHaveText(new RegExp(`^(?:77|${before})$`, 'u'))
      if ((await cell.textContent()) === before) {
        await cell.click()
        await dialog.getByLabel('Should be').fill('77')
        await dialog.getByLabel('Reason').fill('misread')
        await dialog.getByRole('button', { name: 'Keep the correction' }).click()
        await expect(dialog).toContainText('Kept. The old value stays in the history.')
        await dialog.getByRole('button', { name: 'Close' }).click()
      }
      await expect(cell).toHaveText('77')
    } finally {
      await end(second)
    }
  })
}

test('killed in the middle of an import: nothing of the table counts; brought again, all of it does', async ({
  page,
  folder,
}) => {
  test.setTimeout(180_000)
  const rows = 150_000
  await run(folder, 'new', 'large.thrum')
  const first = await serve(folder, 'large.thrum', await ownPort())
  await page.goto(first.address.replace('/#', '/tables#'))
  const file = { name: 'large.csv', mimeType: 'text/csv', buffer: Buffer.from(largeSheet(rows)) }
  await page.setInputFiles('input[type="file"]', file)
  const accept = page.getByRole('button', { name: 'Accept: 150,000 counts' })
  await accept.waitFor({ timeout: 60_000 })
  const sent = page.waitForRequest('**/accept')
  await accept.click()
  await sent
  await new Promise((resolve) => setTimeout(resolve, 400))
  const second = await killAndServe(first, 'large.thrum')
  try {
    await seenBack(page)
    await expect(page.getByRole('alert')).toContainText('No reply came, because Thrum cannot be reached.')
    const { out } = await run(folder, 'check', 'large.thrum', '--json')
    expect(JSON.parse(out)).toMatchObject({ findings: expect.any(Array) })
    // The table went with the server that had it: the page says so, and takes the file again.
    await accept.click()
    await expect(page.getByRole('alert')).toContainText('Bring the file again.')
    await page.getByRole('button', { name: 'Another file' }).click()
    await page.setInputFiles('input[type="file"]', file)
    await accept.waitFor({ timeout: 60_000 })
    await accept.click()
    await expect(page.getByText('150,000 counts now stand in the project.')).toBeVisible({ timeout: 60_000 })
    await page.getByRole('link', { name: 'Counts', exact: true }).click()
    await expect(page.locator('.told')).toContainText('150,000 counts')
  } finally {
    await end(second)
  }
  await checkProjectFile(second.project)
})
