import { isOnScale, markBloomStage } from '@thrum/biology'
import type { Snapshot } from '@thrum/model'

/** True for a count at a stage at which a crop has hardly any flowers open, or none; false where no stage was written down. */
export function isOutsideBloom({ tables }: Snapshot, row: number): boolean {
  const code = tables.count.columns.stage.values[row] ?? Number.NaN
  return !Number.isNaN(code) && (!isOnScale(code) || markBloomStage(code) !== 'in')
}
