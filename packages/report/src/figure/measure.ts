import { asciiWidths, type Face } from './widths.ts'

/** Widths of what is no letter of the Latin alphabet [em]: never less than the faces have. */
const special: { readonly [character: string]: number } = {
  '\u00a0': 0.28,
  '\u202f': 0.28,
  '–': 0.56,
  '—': 0.84,
  '…': 1,
  '×': 0.6,
  '·': 0.34,
  '°': 0.42,
  '²': 0.42,
  '³': 0.42,
  '‘': 0.34,
  '’': 0.34,
  '‰': 1.35,
}
const wide = /[\u1100-\u115f\u2e80-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\uffe0-\uffe6\u{1f000}-\u{3ffff}]/u
const wideEm = 1.2
const otherEm = 0.95

function characterEm(character: string, face: Face): number {
  const code = character.codePointAt(0) ?? 0
  const known = asciiWidths[face][code - 32]
  if (known !== undefined) return known / 1000
  const own = special[character]
  if (own !== undefined) return own
  if (/\p{M}/u.test(character)) return 0
  if (wide.test(character)) return wideEm
  const base = character.normalize('NFD')[0] ?? ''
  // A caron beside d or l widens it a little.
  return base === character ? otherEm : (asciiWidths[face][base.charCodeAt(0) - 32] ?? 950) / 1000 + 0.02
}

/**
 * Width of a line of text [px] at a size [px]. It is an upper estimate, so that what it keeps apart stays apart in the face
 * that is at hand.
 */
export function textWidth(text: string, size: number, face: Face = 'sans'): number {
  let em = 0
  for (const character of text) em += characterEm(character, face)
  return em * size
}

/** Of longer texts only the beginning can be shown; the rest need not be measured. */
const measuredAtMost = 1200

/** The longest beginning of a text that fits. At least one character. */
function beginning(text: string, room: number, size: number, face: Face): string {
  let kept = ''
  let width = 0
  for (const character of text) {
    width += textWidth(character, size, face)
    if (width > room && kept !== '') break
    kept += character
  }
  return kept
}

/** A line that fits, cut with an ellipsis where it does not. */
export function cutLine(text: string, room: number, size: number, face: Face = 'sans'): string {
  const start = text.slice(0, measuredAtMost)
  if (start.length === text.length && textWidth(start, size, face) <= room) return text
  return `${beginning(start, room - textWidth('…', size, face), size, face).trimEnd()}…`
}

/** Lines of nearly one length: as many as `wrapText` takes, in the narrowest room that holds them. */
export function wrapEvenly(text: string, room: number, lines: number, size: number, face: Face = 'sans'): readonly string[] {
  const wanted = wrapText(text, room, lines, size, face)
  let low = room / 2
  let high = room
  for (let k = 0; k < 7 && wanted.length > 1; k += 1) {
    const middle = (low + high) / 2
    const tried = wrapText(text, middle, lines, size, face)
    if (tried.length === wanted.length && tried.at(-1)?.endsWith('…') === wanted.at(-1)?.endsWith('…')) high = middle
    else low = middle
  }
  return wrapText(text, high, lines, size, face)
}

/**
 * A text as lines of a width [px], broken at blanks; words longer than a line are broken. What does not fit into the lines
 * ends with an ellipsis.
 *
 * @param lines most lines, at least 1 [count]
 */
export function wrapText(text: string, room: number, lines: number, size: number, face: Face = 'sans'): readonly string[] {
  const words = text.slice(0, measuredAtMost).split(' ')
  const done: string[] = []
  let line = ''
  while (words.length > 0) {
    const word = words.shift() ?? ''
    const joined = line === '' ? word : `${line} ${word}`
    if (textWidth(joined, size, face) <= room) {
      line = joined
      continue
    }
    if (done.length === lines - 1) {
      return [...done, cutLine([joined, ...words].join(' ') + text.slice(measuredAtMost), room, size, face)]
    }
    if (line === '') {
      const start = beginning(word, room, size, face)
      done.push(start)
      if (start.length < word.length) words.unshift(word.slice(start.length))
    } else {
      done.push(line)
      line = ''
      words.unshift(word)
    }
  }
  if (text.length > measuredAtMost) return [...done, `${line}…`]
  return line === '' && done.length > 0 ? done : [...done, line]
}
