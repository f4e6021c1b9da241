import { AxeBuilder } from '@axe-core/playwright'
import { expect, makeDemonstration, questionAddress, type Served, settled, test } from './served.ts'

const sizes = [
  { width: 1440, height: 1000 },
  { width: 390, height: 844 },
] as const
const looks = ['light', 'dark'] as const

const strips = { kinds: ['bumble bee'], between: 'strip', worth: 2 }

/** Every page and state, and where it is. */
const states: readonly { readonly name: string; readonly at: (served: Served) => string }[] = [
  { name: 'walk', at: ({ address }) => address },
  { name: 'answer', at: (served) => questionAddress(served, 'what-differs', strips) },
  { name: 'rates', at: (served) => questionAddress(served, 'who-visits', {}) },
  {
    name: 'blocked',
    at: (served) => questionAddress(served, 'what-differs', { ...strips, where: ['crop=sunflower'] }),
  },
  { name: 'audit', at: (served) => questionAddress(served, 'is-design-sound', { between: 'strip' }) },
  { name: 'wanting', at: (served) => questionAddress(served, 'what-differs', { between: 'strip' }) },
  { name: 'failed', at: (served) => questionAddress(served, 'what-differs', { between: 'nothing of the kind', worth: 2 }) },
  { name: 'counts', at: ({ address }) => address.replace('/#', '/counts#') },
  { name: 'tables', at: ({ address }) => address.replace('/#', '/tables#') },
]

for (const size of sizes) {
  for (const look of looks) {
    test(`every page at ${size.width} px, ${look}: nothing is in the way of anyone`, async ({ browser, folder, start }) => {
      test.setTimeout(180_000)
      await makeDemonstration(folder)
      const served = await start('ostrel-vale.thrum')
      const context = await browser.newContext({ viewport: size, colorScheme: look, reducedMotion: 'reduce' })
      const page = await context.newPage()
      const complaints: string[] = []
      page.on('pageerror', (error) => complaints.push(error.message))
      for (const { name, at } of states) {
        await page.goto(at(served))
        await settled(page)
        await expect(page.locator('main')).not.toBeEmpty()
        await expect(page.locator('.standing'), `${name}: the server is there`).toHaveCount(0)
        expect(new URL(page.url()).hash, `${name}: the key leaves the address bar`).toBe('')
        const { violations } = await new AxeBuilder({ page }).withTags(['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa']).analyze()
        expect(violations.map(({ id, nodes }) => `${name}: ${id} ${nodes[0]?.html}`)).toEqual([])
        const wide = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)
        expect(wide, `${name}: no scrolling sideways`).toBeLessThanOrEqual(0)
      }
      expect(complaints).toEqual([])
      await context.close()
    })
  }
}
