import { type DecimalHabit, isPlainly, parseDecimal } from './decimal.ts'
import { type Reading, readAbsence, readTooLong } from './reading.ts'

/** Small number words in the languages of the header words, as people write lengths of watches. */
const numberWords: ReadonlyMap<string, number> = new Map(
  [
    [5, 'five fünf fem cinco cinq'],
    [6, 'six'],
    [10, 'ten zehn tio ti diez dix'],
    [15, 'fifteen fünfzehn femton femten quince quinze'],
    [20, 'twenty zwanzig tjugo tyve veinte vingt'],
    [30, 'thirty dreissig dreißig trettio tredive treinta trente'],
  ].flatMap(([value, words]) =>
    String(words)
      .split(' ')
      .map((word): [string, number] => [word, Number(value)]),
  ),
)

const read = (written: string, value: number, because: string): Reading => ({ kind: 'number', written, value, because })

/** How a length of time is written where the mapping says so; `min` is plain minutes. */
export type DurationUnit = 'min' | 'h' | 's' | 'h:min' | 'min:s'

function clockLike(written: string, text: string, unit: DurationUnit): Reading | null {
  const three = /^(\d{1,3}):([0-5]\d):([0-5]\d)$/u.exec(text)
  if (three !== null) {
    return read(written, Number(three[1]) * 60 + Number(three[2]) + Number(three[3]) / 60, 'exchange/cell/hours-minutes-seconds')
  }
  const two = /^(\d{1,3}):([0-5]\d)$/u.exec(text)
  if (two === null) return null
  const first = Number(two[1])
  const second = Number(two[2])
  if (unit === 'h:min') return read(written, first * 60 + second, 'exchange/cell/hours-minutes')
  if (unit === 'min:s') return read(written, first + second / 60, 'exchange/cell/minutes-seconds')
  // 00:10 is ten minutes either way one would time a watch; 10:00 is ten hours or ten minutes.
  if (first === 0) return read(written, second, 'exchange/cell/hours-minutes')
  return { kind: 'waiting', written, because: 'exchange/cell/hours-or-minutes', proposed: String(first + second / 60) }
}

/** Reads how long a watch lasted, in minutes: `10`, `10 min`, `5+5`, `00:10`, `07:32:00`, `1 h 30`; `ten` is offered. */
export function readMinutes(written: string, habit: DecimalHabit, unit: DurationUnit = 'min'): Reading {
  const absence = readAbsence(written) ?? readTooLong(written)
  if (absence !== null) return absence
  const text = written.trim().toLowerCase()
  const factor = unit === 'h' ? 60 : unit === 's' ? 1 / 60 : 1
  const parsed = parseDecimal(text, habit)
  if (parsed?.kind === 'open') {
    return { kind: 'waiting', written, because: 'exchange/cell/point-or-thousands', proposed: String(parsed.likely * factor) }
  }
  if (parsed?.kind === 'value') {
    if (parsed.value < 0) return { kind: 'waiting', written, because: 'exchange/cell/below-zero' }
    const value = parsed.value * factor
    return isPlainly(text, parsed.value) ? { kind: 'number', written, value } : read(written, value, 'exchange/cell/read-as')
  }
  const clock = clockLike(written, text, unit)
  if (clock !== null) return clock
  const sum = /^\d+(?:[.,]\d+)?(?:\s*\+\s*\d+(?:[.,]\d+)?)+$/u.test(text)
  if (sum) {
    const total = text.split('+').reduce((minutes, part) => minutes + Number(part.trim().replace(',', '.')), 0)
    return read(written, total * factor, 'exchange/cell/sum')
  }
  const minutes = /^(\d+(?:[.,]\d+)?)\s*(?:m|min|mins|minutes?|minuten|minuter|minutter|minutos|['′])\.?$/u.exec(text)
  if (minutes !== null) return read(written, Number((minutes[1] ?? '').replace(',', '.')), 'exchange/cell/minutes')
  const hours =
    /^(\d+(?:[.,]\d+)?)\s*(?:h|hrs?|hours?|std|stunden?|tim|timmar|timer|horas?|heures?)\.?\s*(?:(\d{1,2})\s*(?:m|min)?\.?)?$/u.exec(
      text,
    )
  if (hours !== null) {
    return read(written, Number((hours[1] ?? '').replace(',', '.')) * 60 + Number(hours[2] ?? 0), 'exchange/cell/hours-minutes')
  }
  const about = /^(?:ca?\.?|about|cirka|etwa|~|≈)\s*(\d+(?:[.,]\d+)?)(\s*min\.?)?$/u.exec(text)
  if (about !== null) {
    // In the unit of the column, unless the cell says minutes.
    const value = Number((about[1] ?? '').replace(',', '.')) * (about[2] === undefined ? factor : 1)
    return { kind: 'approximate', written, value, because: 'exchange/cell/about' }
  }
  const word = numberWords.get(text.replace(/\s*min(?:utes|uten|uter)?\.?$/u, ''))
  if (word !== undefined) return { kind: 'waiting', written, because: 'exchange/cell/number-word', proposed: String(word) }
  return { kind: 'waiting', written, because: 'exchange/cell/not-a-number' }
}
