import { randomBytes } from 'node:crypto'
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { homedir, userInfo } from 'node:os'
import { join } from 'node:path'
import { type Author, createLogicalClock } from '@thrum/model'
import { systemClock } from './system-clock.ts'

/** Where this machine keeps what belongs to no project: its name as a device, and nothing else so far. */
function ownFolder(): string {
  if (process.env.THRUM_HOME !== undefined) return process.env.THRUM_HOME
  return join(process.env.XDG_CONFIG_HOME ?? join(homedir(), '.config'), 'thrum')
}

/** A name for this machine that tells nobody whose it is; made once, and anew for each run where it cannot be kept. */
function deviceName(): string {
  const file = join(ownFolder(), 'device')
  try {
    const kept = readFileSync(file, 'utf8').trim()
    if (/^[0-9a-f]{12}$/u.test(kept)) return kept
  } catch {
    // Not made yet.
  }
  const made = randomBytes(6).toString('hex')
  try {
    mkdirSync(ownFolder(), { recursive: true })
    writeFileSync(file, `${made}\n`, { flag: 'wx' })
  } catch {
    // A protected home: the name serves this run only.
  }
  return made
}

function personName(): string {
  if (process.env.THRUM_BY !== undefined && process.env.THRUM_BY !== '') return process.env.THRUM_BY
  try {
    return userInfo().username
  } catch {
    return 'somebody'
  }
}

/** Who writes facts here: the person (THRUM_BY, else the account's name), this machine, and its logical clock. */
export function localAuthor(): Author {
  const device = deviceName()
  return { by: personName(), device, clock: createLogicalClock(systemClock, device) }
}
