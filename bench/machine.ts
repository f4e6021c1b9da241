import { cpus, release, totalmem, type } from 'node:os'
import { version as thrum } from '@thrum/host'

/** Where a figure was measured: it means nothing without. */
export interface Machine {
  readonly cpu: string
  readonly cores: number
  /** GiB. */
  readonly memory: number
  readonly system: string
}

export const machine: Machine = {
  cpu: cpus()[0]?.model.trim() ?? 'unknown',
  cores: cpus().length,
  memory: Math.round(totalmem() / 2 ** 30),
  system: `${type()} ${release()}`,
}

export const versions = {
  thrum,
  node: process.versions.node,
  v8: process.versions.v8,
  sqlite: process.versions.sqlite ?? '',
} as const
