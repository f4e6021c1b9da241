import { type DecimalHabit, parseDecimal } from './decimal.ts'
import { manyWords, type Reading, readAbsence, readTooLong } from './reading.ts'

/** Words for none, in the languages of the header words. */
const noneWords = /^(?:nil|none|zero|no|nothing|keine?|null insekten|inga|ingen|ingen set|ninguno|ninguna|aucun|aucune|rien)$/iu
/** Signs that something was seen, without saying how many. */
const presenceWords = /^(?:tick|x|✓|✔|yes|y|present|p|seen|ja|si|sí|oui|vorhanden|sedd|set)$/iu
const aboutSign =
  /^(?:ca?\.?|circa|about|approx\.?|around|cirka|ungefär|etwa|rund|omkring|aprox\.?|env\.?|environ|~|≈)\s*(?=\d)/iu

const waiting = (written: string, because: string, proposed?: string): Reading =>
  proposed === undefined ? { kind: 'waiting', written, because } : { kind: 'waiting', written, because, proposed }

/** Largest count that one watch can hold: beyond it a number is a slip of the keys. Common practice, no source. */
const largestCount = 1_000_000

function whole(written: string, value: number, shown: boolean): Reading {
  if (value < 0) return waiting(written, 'exchange/cell/below-zero')
  if (!Number.isInteger(value)) return waiting(written, 'exchange/cell/not-whole')
  if (value > largestCount) return waiting(written, 'exchange/cell/too-many')
  const printed = String(value)
  if (printed === written.trim()) return { kind: 'number', written, value }
  return { kind: 'number', written, value, because: shown ? 'exchange/cell/thousands' : 'exchange/cell/read-as' }
}

function bounded(written: string, sign: string, limit: number): Reading {
  // Whole insects: more than 50 is at least 51, fewer than 3 is at most 2.
  if (/^(?:>|over|more than)$/iu.test(sign))
    return { kind: 'at-least', written, value: limit + 1, because: 'exchange/cell/at-least' }
  if (/^(?:<|under|less than|fewer than)$/iu.test(sign)) {
    return limit < 1
      ? waiting(written, 'exchange/cell/below-zero')
      : { kind: 'at-most', written, value: limit - 1, because: 'exchange/cell/at-most' }
  }
  return /^(?:<=|≤|at most)$/iu.test(sign)
    ? { kind: 'at-most', written, value: limit, because: 'exchange/cell/at-most' }
    : { kind: 'at-least', written, value: limit, because: 'exchange/cell/at-least' }
}

/**
 * Reads how many insects were seen. Never turns a vague cell into a clean one: `ca. 12` is approximate, `>50` is at
 * least 51, `<3` at most 2, and `3-4`, `-`, `lots`, `tick`, `-1`, `1.5` wait for a person.
 */
export function readCount(written: string, habit: DecimalHabit): Reading {
  const text = written.trim()
  if (/^\d{1,6}$/u.test(text)) return whole(written, Number(text), false)
  const absence = readAbsence(written) ?? readTooLong(written)
  if (absence !== null) return absence
  if (noneWords.test(text)) return { kind: 'number', written, value: 0, because: 'exchange/cell/none-word' }
  if (presenceWords.test(text)) return waiting(written, 'exchange/cell/presence-only')
  if (manyWords.test(text)) return waiting(written, 'exchange/cell/many-word')

  const parsed = parseDecimal(text, habit)
  if (parsed?.kind === 'value') return whole(written, parsed.value, parsed.shown)
  if (parsed?.kind === 'open') return waiting(written, 'exchange/cell/point-or-thousands', String(parsed.likely))

  const about = text.replace(aboutSign, '')
  if (about !== text && /^\d{1,6}$/u.test(about)) {
    return { kind: 'approximate', written, value: Number(about), because: 'exchange/cell/about' }
  }
  const range = /^(\d{1,6})\s*(?:-|–|to|bis|till|til|or|\/)\s*(\d{1,6})$/iu.exec(text)
  if (range !== null) return waiting(written, 'exchange/cell/range')
  const bound = /^(>=|≥|>|<=|≤|<|over|under|more than|less than|fewer than|at least|at most|min\.?|max\.?)\s*(\d{1,6})$/iu.exec(
    text,
  )
  if (bound !== null) {
    const sign = (bound[1] ?? '').toLowerCase()
    return bounded(written, sign.startsWith('max') ? 'at most' : sign, Number(bound[2]))
  }
  const plus = /^(\d{1,6})\+$/u.exec(text)
  if (plus !== null) return bounded(written, 'at least', Number(plus[1]))
  const remarked = /^(\d{1,6})\s*(?:[*†#]+|\(.{1,200}\)|\[.{1,200}\])$/u.exec(text)
  if (remarked !== null) return { kind: 'approximate', written, value: Number(remarked[1]), because: 'exchange/cell/remark' }
  return waiting(written, 'exchange/cell/not-a-number')
}
