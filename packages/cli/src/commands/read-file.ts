import { readFileSync } from 'node:fs'
import { ThrumError } from '@thrum/model/ground'

/** The bytes of a file a person named. @throws ThrumError cli/import/no-file */
export function readBytes(path: string): Uint8Array {
  try {
    return readFileSync(path)
  } catch (cause) {
    throw new ThrumError('cli/import/no-file', { file: path }, { cause })
  }
}
