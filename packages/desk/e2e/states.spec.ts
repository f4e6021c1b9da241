import { AxeBuilder } from '@axe-core/playwright'
import { makeProjects, projects, states } from './every-state.ts'
import { expect, test } from './served.ts'

const sizes = [
  { width: 1440, height: 1000 },
  { width: 390, height: 844 },
] as const
const looks = ['light', 'dark'] as const

for (const size of sizes) {
  for (const look of looks) {
    test(`every page at ${size.width} px, ${look}: nothing is in the way of anyone`, async ({ browser, folder, start }) => {
      test.setTimeout(240_000)
      await makeProjects(folder)
      const complaints: string[] = []
      for (const project of projects) {
        const served = await start(project)
        for (const { name, open } of states.filter((own) => own.project === project)) {
          const context = await browser.newContext({ viewport: size, colorScheme: look, reducedMotion: 'reduce' })
          const page = await context.newPage()
          page.on('pageerror', (error) => complaints.push(`${name}: ${error.message}`))
          await open(page, served)
          await expect(page.locator('main'), name).not.toBeEmpty()
          await expect(page.locator('.standing'), `${name}: the server is there`).toHaveCount(
            ['gone', 'locked'].includes(name) ? 1 : 0,
          )
          expect(new URL(page.url()).hash, `${name}: the key leaves the address bar`).toBe('')
          const { violations } = await new AxeBuilder({ page }).withTags(['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa']).analyze()
          expect(violations.map(({ id, nodes }) => `${name}: ${id} ${nodes[0]?.html}`)).toEqual([])
          const wide = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)
          expect(wide, `${name}: no scrolling sideways`).toBeLessThanOrEqual(0)
          const moving = await page.evaluate(() => document.getAnimations().length)
          expect(moving, `${name}: nothing moves for who wants it still`).toBe(0)
          await context.close()
        }
      }
      expect(complaints).toEqual([])
    })
  }
}
