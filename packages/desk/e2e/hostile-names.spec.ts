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

test('a name of a megabyte neither fills the page nor stops it', async ({ page, folder, start }) => {
  const long = `${image}${'x'.repeat(1_000_000)}`
  const rows = ['A', 'B'].flatMap((field) => [1, 2].map((day) => `"${field} ${long}",2031-05-0${day},10:00,10,3`))
  writeFileSync(join(folder, 'long.csv'), `field,date,start,minutes,honey bee\n${rows.join('\n')}\n`)
  await run(folder, 'new', 'long.thrum')
  await run(folder, 'import', 'long.csv', '--in', 'long.thrum', '--unit', 'individuals', '--accept')
  const served = await start('long.thrum')
  for (const address of [questionAddress(served, 'who-visits', { by: 'field' }), served.address.replace('/#', '/counts#')]) {
    await page.goto(address)
    await settled(page)
    await expect(page.locator('main')).not.toBeEmpty()
    expect(await page.locator('img, script:not([src])').count()).toBe(0)
    const wide = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)
    expect(wide).toBeLessThanOrEqual(0)
  }
})

test('no script runs that did not come with the page', async ({ page, folder, start }) => {
  await run(folder, 'new', 'own.thrum')
  const served = await start('own.thrum')
  await page.goto(served.address)
  await settled(page)
  const refused = await page.evaluate(async () => {
    const violations: string[] = []
    document.addEventListener('securitypolicyviolation', ({ effectiveDirective }) => violations.push(effectiveDirective))
    const script = document.createElement('script')
    script.textContent = 'document.title = "run"'
    document.body.append(script)
    const button = document.createElement('button')
    button.setAttribute('onclick', 'document.title = "run"')
    document.body.append(button)
    button.click()
    const image = document.createElement('img')
    image.src = 'http://127.0.0.1:1/elsewhere.png'
    document.body.append(image)
    await fetch('http://127.0.0.1:1/elsewhere').catch(() => undefined)
    await new Promise((resolve) => setTimeout(resolve, 200))
    return { violations: [...new Set(violations)].sort(), title: document.title }
  })
  expect(refused.title).not.toBe('run')
  expect(refused.violations).toEqual(['connect-src', 'img-src', 'script-src-attr', 'script-src-elem'])
})

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
