import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, questionAddress, run, settled, test } from './served.ts'

/** Two sheets of paper: one field, two dates, hives that came nearer while the bloom was on its way out. */
const sheets = `field,date,start,minutes,stage,flowers,hives,hive distance m,honey bee,bumble bee,small solitary bee,hover fly,drone fly
Lower Sill,2033-07-11,10:30,10,65,240,8,320,24,9,3,4,1
Lower Sill,2033-07-19,10:40,10,67,130,8,25,11,5,1,2,0
`
const asked = { kinds: ['honey bee'], since: '2033-07-15', worth: 2 }

test('two sheets of paper, from a dragged table to an answer', async ({ page, folder, start, complaints }) => {
  await run(folder, 'new', 'paper.thrum')
  const served = await start('paper.thrum')
  await page.goto(served.address)
  await expect(page.getByRole('heading', { level: 1, name: 'A project without counts' })).toBeVisible()
  await page.getByRole('link', { name: 'Bring a table' }).last().click()

  // Dragged onto the window, as from a folder.
  const data = await page.evaluateHandle((text) => {
    const transfer = new DataTransfer()
    transfer.items.add(new File([text], 'counts.csv', { type: 'text/csv' }))
    return transfer
  }, sheets)
  await page.dispatchEvent('.tables', 'drop', { dataTransfer: data })
  await expect(page.getByText('2 rows – 2 accepted, 0 waiting for an answer, 0 set aside')).toBeVisible()
  await expect(page.getByRole('row', { name: /hive distance m/u })).toContainText('its header says so')
  await page.getByRole('button', { name: 'Accept: 2 counts' }).click()
  await expect(page.getByText('2 counts now stand in the project.')).toBeVisible()
  await page.getByRole('link', { name: 'Ask a question' }).click()

  // The sentence, blank by blank.
  await page.getByRole('button', { name: /^Question:/u }).click()
  await page.getByRole('radio', { name: 'What differs' }).click()
  await page.getByRole('button', { name: /^Kinds:/u }).click()
  await page.getByRole('checkbox', { name: /honey bee/u }).check()
  await page.getByRole('button', { name: 'Done' }).click()
  await page.getByRole('button', { name: /^Day of a change:/u }).click()
  await page.getByLabel('Day of a change').locator('input[type="date"]').fill('2033-07-15')
  await page.keyboard.press('Escape')
  await page.getByRole('button', { name: /^Smallest ratio/u }).click()
  await page.getByRole('button', { name: /^2 suggested for one kind/u }).click()

  await expect(page.getByRole('heading', { level: 1 })).toContainText(
    'these counts cannot tell what the change on 2033-07-15 did',
  )
  await settled(page)
  await expect(page.locator('.verdict')).toContainText('design blocks')
  await expect(page.locator('.can-say')).toContainText('honey bee 59')
  await expect(page.locator('.cannot-say')).toContainText('That the change on 2033-07-15 has no effect on honey bee.')
  await expect(page.locator('.cautions')).toContainText('Cure:')
  expect(complaints).toEqual([])
})

test('the same question gives the same answer here and in the terminal', async ({ page, folder, start }) => {
  writeFileSync(join(folder, 'counts.csv'), sheets)
  await run(folder, 'new', 'paper.thrum')
  await run(folder, 'import', 'counts.csv', '--in', 'paper.thrum', '--accept')
  const served = await start('paper.thrum')
  const given = page.waitForResponse((reply) => reply.url().endsWith('/api/ask'))
  await page.goto(questionAddress(served, 'what-differs', asked))
  const here = await (await given).text()
  const options = ['--kinds', 'honey bee', '--since', '2033-07-15', '--worth', '2', '--json']
  const { out } = await run(folder, 'ask', 'what-differs', '--in', 'paper.thrum', ...options)
  expect(JSON.parse(here)).toEqual(JSON.parse(out))
})
