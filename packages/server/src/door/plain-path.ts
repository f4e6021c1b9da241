/** What no honest address of ours has in its path: escapes of a dot, of either slash, of NUL; a backslash; a control code. */
const disguised = /%(?:2e|2f|5c|00)|\\|\p{Cc}/iu

/**
 * True for a path that says what it means. Nothing is mended: a path that climbs, or hides a sign that could, is refused
 * before anybody looks for a file or a route.
 */
export function isPlainPath(url: string): boolean {
  const path = url.split(/[?#]/u, 1)[0] ?? ''
  if (!path.startsWith('/') || path.includes('//') || disguised.test(path)) return false
  if (path.split('/').some((part) => part === '.' || part === '..')) return false
  try {
    decodeURIComponent(path)
    return true
  } catch {
    return false
  }
}
