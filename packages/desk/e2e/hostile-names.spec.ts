import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, questionAddress, run, settled, test } from './served.ts'

const image = '<img src=x onerror=document.title=1>'
const link = 'javascript:alert(1)'
const turned = 'a\u202Ebcd\u2066e'

/** A table whose names are what no name should be. */
function sheet(): string {
  const cell = (text: string): string => `"${text.replaceAll('"', '""')}"`
  const rows = [image, link, turned].flatMap((field, f) =>
    ['a', 'b', 'c'].map((plot, k) =>
      [cell(field), plot, `2031-05-0${k + 1}`, '10:00', '10', String(f + k), cell(image)].join(','),
    ),
  )
  return `field,plot,date,start,minutes,${cell(`${image} bee`)},note\n${rows.join('\n')}\n`
}

test('names from a table are text: on the page, in the grid, in figures', async ({ page, folder, start }) => {
  const alerts: string[] = []
  page.on('dialog', (dialog) => {
    alerts.push(dialog.message())
    void dialog.dismiss()
  })
  writeFileSync(join(folder, 'names.csv'), sheet())
  await run(folder, 'new', 'names.thrum', '--title', image)
  await run(folder, 'import', 'names.csv', '--in', 'names.thrum', '--unit', 'individuals', '--accept')
  const served = await start('names.thrum')
  for (const address of [questionAddress(served, 'who-visits', { by: 'field' }), served.address.replace('/#', '/counts#')]) {
    await page.goto(address)
    await settled(page)
    await expect(page.locator('main')).toContainText('<img src=x onerror')
    expect(await page.locator('img, a[href^="javascript"], script:not([src])').count()).toBe(0)
    expect(await page.locator('body').textContent()).not.toMatch(/[\u202a-\u202e\u2066-\u2069]/u)
    expect(await page.title()).not.toBe('1')
  }
  expect(alerts).toEqual([])
})
