import { readFileSync } from 'node:fs'
import { projects, states } from './every-state.ts'
import { expect, makeDemonstration, questionAddress, run, settled, test } from './served.ts'

const strips = { kinds: ['bumble bee'], between: 'strip', worth: 2 }

test('the language is chosen on the page, stays chosen, and reaches figures and refusals', async ({ page, folder, start }) => {
  await makeDemonstration(folder)
  const served = await start('ostrel-vale.thrum')
  await page.goto(questionAddress(served, 'what-differs', strips))
  await settled(page)
  await page.getByRole('button', { name: 'Español' }).click()
  await expect(page.locator('html')).toHaveAttribute('lang', 'es')
  await expect(page.getByRole('heading', { name: 'Lo que se puede decir' })).toBeVisible()
  await expect(page.getByRole('heading', { level: 1 })).toContainText('3,02')
  await expect(page.locator('.drawing').first()).toContainText('3,02')
  await expect(page.locator('.drawing').first()).not.toContainText('3.02')
  await page.getByText('Los números de esta figura').first().click()
  await expect(page.locator('.table-view').first()).toContainText('3,0')

  await page.reload()
  await expect(page.getByRole('button', { name: 'English' })).toBeVisible()
  const taken = page.waitForEvent('download')
  await page.getByRole('button', { name: /SVG/u }).click()
  expect(readFileSync(await (await taken).path(), 'utf8')).toContain('lang="es"')

  // What only the server says is said in the language of the page too.
  await page.goto(questionAddress(served, 'what-differs', { between: 'nothing of the kind', worth: 2 }))
  await expect(page.getByRole('alert')).not.toContainText('recorded')
  await page.getByRole('button', { name: 'English' }).click()
  await expect(page.getByRole('alert')).toContainText('was recorded in this project')
})

test('in Spanish every page and state is said, and none in English', async ({ browser, folder, start }) => {
  test.setTimeout(180_000)
  await makeDemonstration(folder)
  await run(folder, 'new', 'empty.thrum')
  // Words that no Spanish sentence holds; names of the data (bumble bee, strip) are the data's own.
  const english = /\b(?:the|and|with|which|was|were|cannot|counts|fields|seasons|rows)\b/iu
  for (const project of projects.filter((own) => own !== 'large.thrum')) {
    const served = await start(project)
    for (const { name, open } of states.filter((own) => own.project === project)) {
      const context = await browser.newContext({ locale: 'es-ES', viewport: { width: 390, height: 844 } })
      const page = await context.newPage()
      await open(page, served)
      await expect(page.locator('html')).toHaveAttribute('lang', 'es')
      // biome-ignore lint/performance/useDomNodeTextContent: only what is seen, and words of two elements are two words
      const text = await page.locator('body').innerText()
      const found = english.exec(text)
      expect(found === null ? null : text.slice(Math.max(0, found.index - 60), found.index + 60), name).toBeNull()
      const wide = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)
      expect(wide, `${name}: no scrolling sideways`).toBeLessThanOrEqual(0)
      await context.close()
    }
  }
})
