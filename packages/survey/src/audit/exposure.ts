import { foragingSeasonOf, greatCircleDistance, type HiveGroup, hiveExposure, honeyBeeRange } from '@thrum/biology'
import { type Field, type HivePlacement, isoDate, numberAt, type Snapshot } from '@thrum/model'

/** Where nobody gave a latitude, the northern calendar holds. */
const northern = 1

/** How far placed hives stand from a field [m]; null where that is not known. */
export function distanceOfHives(placed: HivePlacement, field: Field | undefined): number | null {
  if (field === undefined) return null
  if (placed.metres !== null && placed.field !== null) return placed.field === field.name ? placed.metres : null
  if (placed.point === null || field.point === null) return null
  const from = [placed.point.longitude, placed.point.latitude]
  return greatCircleDistance(from, [field.point.longitude, field.point.latitude])
}

/**
 * Hives around a count, from what the count itself says and from hives placed on that day. null: nobody looked.
 * A distance without a number of hives is taken as one group of hives: ratios then compare distances alone.
 */
export function hivesAround(snapshot: Snapshot, row: number): readonly HiveGroup[] | null {
  const { hives, hiveDistance, date } = snapshot.tables.count.columns
  const day = numberAt(date, row)
  const field = snapshot.fields[snapshot.countField[row] ?? -1]
  const distance = numberAt(hiveDistance, row)
  const number = numberAt(hives, row)
  if (distance !== null) return [{ hives: Math.round(number ?? 1), distance }]
  const covers = (from: number | null, to: number | null): boolean =>
    day === null ? from === null && to === null : (from === null || day >= from) && (to === null || day <= to)
  const groups = snapshot.hives.flatMap((placed): readonly HiveGroup[] => {
    const metres = covers(placed.from, placed.to) ? distanceOfHives(placed, field) : null
    return metres === null ? [] : [{ hives: Math.round(placed.hives), distance: metres }]
  })
  if (groups.length > 0) return groups
  if (number === 0) return []
  const looked = snapshot.hivesLookedFor.findLast((entry) => entry.field === field?.name && covers(entry.from, entry.to))
  return looked?.result === 'none found' ? [] : null
}

/** Scale of the distance kernel on the day of a count [m]. */
export function rangeOn(snapshot: Snapshot, row: number): number {
  const day = numberAt(snapshot.tables.count.columns.date, row)
  const point = snapshot.fields[snapshot.countField[row] ?? -1]?.point
  const month = day === null ? 7 : Number(isoDate(day).slice(5, 7))
  return honeyBeeRange[foragingSeasonOf(month, point?.latitude ?? northern)]
}

/** Exposure of a count to hives; null where nobody looked. `range` overrides the season's. */
export function exposureOf(snapshot: Snapshot, row: number, range: number | null): number | null {
  const groups = hivesAround(snapshot, row)
  return groups === null ? null : hiveExposure(groups, range ?? rangeOn(snapshot, row))
}
