import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { correctCell, openProject, type Project } from '@thrum/host'
import type { Saying } from '@thrum/model/ground'
import { bring, madeProject, person } from '../corrections/made-counts.ts'

const sheet = 'field,plot,date,start,minutes,honey bee\nWeir,edge,2031-05-04,09:10,10,12\nIngs,edge,2031-05-04,10:10,10,7\n'

/** Noon of a day in June 2031, where this machine is: the project began on 31 May or 1 June. */
export const noon = (day: number): { readonly now: () => number } => ({ now: () => new Date(2031, 5, day, 12).getTime() })
const clockOn = (day: number) => ({ ...noon(day), monotonic: () => 0, zone: () => 'UTC' })

export async function projectWithCounts(): Promise<string> {
  const project = await madeProject()
  await bring(project, 'counts.csv', sheet)
  await project.close()
  return project.path
}

export async function on<T>(
  path: string,
  day: number,
  use: (project: Project) => Promise<T>,
  onNote?: (note: Saying) => void,
): Promise<T> {
  const project = await openProject(path, 'write', {
    author: person('desk', noon(day).now()),
    clock: clockOn(day),
    ...(onNote === undefined ? {} : { onNote }),
  })
  try {
    return await use(project)
  } finally {
    await project.close()
  }
}

export const write = (path: string, day: number, value: number, onNote?: (note: Saying) => void) =>
  on(
    path,
    day,
    (project) => correctCell(project, { row: 'counts.csv:2', column: 'honey bee', value: String(value), reason: 'again' }),
    onNote,
  )

export const backupsOf = (path: string): readonly string[] => {
  const folder = join(dirname(path), 'backups')
  return existsSync(folder) ? readdirSync(folder).sort() : []
}

/** Everything that lies at and beside a closed project, backups among it, as bytes read one to one. */
export function bytesBeside(path: string): string {
  const read = (folder: string): readonly string[] =>
    readdirSync(folder, { withFileTypes: true }).flatMap((entry) =>
      entry.isDirectory() ? read(join(folder, entry.name)) : [readFileSync(join(folder, entry.name), 'latin1')],
    )
  return read(dirname(path)).join('\n')
}
