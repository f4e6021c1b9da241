import { existsSync, mkdirSync } from 'node:fs'
import { setTimeout } from 'node:timers/promises'
import { redacted } from '@thrum/model'
import { type Clock, type Saying, saying, ThrumError } from '@thrum/model/ground'
import type { ProjectLog } from '@thrum/store'
import { backupProject } from '@thrum/store/sqlite'
import { backupPath, backupPlace, dropOldBackups, localDay } from './backup-files.ts'
import { dropUnfinished } from './unfinished-copies.ts'

/** A write waits this long [ms] for the backup before it; a larger project is copied while the write goes on. */
const patience = 2000

export interface DailyBackup {
  readonly clock: Pick<Clock, 'now'>
  /** Told what went wrong with a backup; the write goes on. */
  readonly onNote?: ((note: Saying) => void) | undefined
}

/** The moment of the first fact in a log; null in an empty one. */
async function beganAt(log: ProjectLog): Promise<number | null> {
  for await (const facts of log.factsAfter(0)) return Date.parse(facts[0]?.at.split('/')[0] ?? '')
  return null
}

function because(cause: unknown): Saying {
  if (cause instanceof ThrumError) return cause.saying
  return saying('host/backup/system', { what: cause instanceof Error ? cause.message : String(cause) })
}

/**
 * A log that is backed up before the first writing of each day, into `backups/` beside the project; the last seven stay. A
 * project that began today has no yesterday to keep. A backup that fails is a note and never stops the write.
 */
export function withDailyBackup(log: ProjectLog, path: string, { clock, onNote }: DailyBackup): ProjectLog {
  if (log.access.mode === 'read') return log
  let running: Promise<void> = Promise.resolve()
  let checked = ''

  const make = async (day: string): Promise<void> => {
    const place = backupPlace(path)
    const to = backupPath(place, day)
    const began = await beganAt(log)
    if (existsSync(to) || began === null || localDay(began) >= day) return
    try {
      mkdirSync(place.folder, { recursive: true })
      await backupProject(path, to, { replace: true })
      dropOldBackups(place)
      dropUnfinished(place)
    } catch (cause) {
      onNote?.(saying('host/backup/failed', { folder: place.folder, because: because(cause) }))
    }
  }
  const beforeWriting = async (): Promise<void> => {
    const day = localDay(clock.now())
    if (day !== checked) {
      checked = day
      running = make(day)
    }
    const waiting = new AbortController()
    await Promise.race([running, setTimeout(patience, undefined, { signal: waiting.signal }).catch(() => undefined)])
    waiting.abort()
  }
  return {
    ...log,
    append: async (facts) => {
      if (facts.length > 0) await beforeWriting()
      // A copy still in the making would keep what is forgotten meanwhile.
      if (facts.some(({ kind }) => kind === redacted.kind)) await running
      return await log.append(facts)
    },
    putAttachment: async (media, bytes) => {
      await beforeWriting()
      return await log.putAttachment(media, bytes)
    },
    close: async () => {
      await running
      await log.close()
    },
  }
}
