import { isoDate, type Snapshot } from '@thrum/model'

/** First and last day on which anything was counted; null where no count has a date. */
function daysCounted(snapshot: Snapshot): { readonly first: number; readonly last: number } | null {
  let [first, last] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
  for (const day of snapshot.tables.count.columns.date.values) {
    if (day < first) first = day
    if (day > last) last = day
  }
  return first > last ? null : { first, last }
}

/** True while counts are still to come: the plan's last visit lies after the latest count of the project. */
export function isEarly(snapshot: Snapshot): boolean {
  const last = snapshot.plan?.lastVisit ?? null
  return last !== null && (daysCounted(snapshot)?.last ?? Number.NEGATIVE_INFINITY) < last
}

/** The kind that the plan declared primary before counting began; null where none was. */
export function primaryKind(snapshot: Snapshot): string | null {
  const { plan } = snapshot
  if (plan === null || plan.primaryKind === null) return null
  const days = daysCounted(snapshot)
  return days === null || plan.at.slice(0, 10) <= isoDate(days.first) ? plan.primaryKind : null
}
