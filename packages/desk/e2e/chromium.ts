import { existsSync } from 'node:fs'

const usual = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome', '/snap/bin/chromium']

/** The Chromium of the machine. @throws Error saying how to have one: a browser test is never skipped in silence */
export function chromiumPath(): string {
  const found = [process.env.CHROME_PATH ?? '', ...usual].find((path) => path !== '' && existsSync(path))
  if (found === undefined) throw new Error('No Chromium was found. Install it, or name it with CHROME_PATH.')
  return found
}
