/**
 * The key of this start of Thrum: it comes once, behind the `#` of the address (which no server ever sees), is taken out of
 * the address bar at once, and is kept for this tab alone.
 */
const place = 'thrum-key'

export function takeKey(): string | null {
  const found = /^#key=([\w-]+)$/u.exec(location.hash)?.[1]
  if (found !== undefined) {
    sessionStorage.setItem(place, found)
    history.replaceState(null, '', location.pathname + location.search)
  }
  return sessionStorage.getItem(place)
}

export function key(): string {
  return sessionStorage.getItem(place) ?? ''
}
