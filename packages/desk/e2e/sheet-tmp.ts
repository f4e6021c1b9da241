import { readFileSync } from 'node:fs'
import { chromium } from '@playwright/test'
import { chromiumPath } from './chromium.ts'

const [to = '', height = '1500', ...names] = process.argv.slice(2)
const browser = await chromium.launch({ executablePath: chromiumPath(), args: ['--no-sandbox'] })
const page = await browser.newPage({ viewport: { width: 400, height: 300 } })
const html = names
  .map(
    (n) =>
      `<figure style="margin:0;max-height:${height}px;overflow:hidden"><img style="display:block" src="data:image/png;base64,${readFileSync(n).toString('base64')}"></figure>`,
  )
  .join('')
await page.setContent(`<body style="margin:0;display:inline-flex;gap:8px;align-items:flex-start;background:#888">${html}</body>`)
await page.waitForTimeout(400)
await page.locator('body').screenshot({ path: to })
await browser.close()
