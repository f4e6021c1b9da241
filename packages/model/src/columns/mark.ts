/**
 * What stands beside a measured number. Zero is a number; the states without a number never become one.
 * The codes are written into files: they are never renumbered.
 */
export const mark = {
  asWritten: 0,
  notLookedFor: 1,
  lost: 2,
  approximate: 3,
  atLeast: 4,
  atMost: 5,
  waiting: 6,
} as const

export type MarkName = keyof typeof mark
export type Mark = (typeof mark)[MarkName]

/** Names of all marks, in the order of their codes. */
export const markNames = Object.keys(mark) as [MarkName, ...MarkName[]]

const names = Object.fromEntries(Object.entries(mark).map(([name, code]) => [code, name])) as {
  readonly [code: number]: MarkName
}

export function markName(code: number): MarkName | undefined {
  return names[code]
}

/** True where a cell holds no number: nobody looked, it was lost, or it waits for a person. */
export function isWithoutNumber(code: number): boolean {
  return code === mark.notLookedFor || code === mark.lost || code === mark.waiting
}

/** True where a number may enter an estimate of a count: as written, or settled as approximate by a person. */
export function isCounted(code: number): boolean {
  return code === mark.asWritten || code === mark.approximate
}
