import type { Rng } from '@thrum/model/ground'

/** Bytes as text, one character a byte, so that any file can be cut into lines and cells and put together again. */
const latin = (bytes: Uint8Array): string => Buffer.from(bytes).toString('latin1')
const fromLatin = (text: string): Uint8Array => new Uint8Array(Buffer.from(text, 'latin1'))
/** The bytes of a text in UTF-8, one character a byte. */
const inUtf8 = (text: string): string => Buffer.from(text, 'utf8').toString('latin1')

const pick = <T>(rng: Rng, list: readonly T[]): T => list[rng.below(list.length)] as T

type Mutation = (bytes: Uint8Array, rng: Rng) => Uint8Array

const onLines = (bytes: Uint8Array, change: (lines: string[]) => string[]): Uint8Array =>
  fromLatin(change(latin(bytes).split(/\r\n|\r|\n/u)).join('\n'))

/** Changes some cells, the header's among them. */
const inCells = (bytes: Uint8Array, rng: Rng, most: number, change: (cell: string) => string): Uint8Array =>
  onLines(bytes, (lines) => {
    const out = [...lines]
    for (let k = 1 + rng.below(most); k > 0; k--) {
      // The header is one line of many, and what it says is shown most often.
      const at = rng.uniform() < 0.25 ? 0 : rng.below(out.length)
      const parts = (out[at] ?? '').split(/([,;\t])/u)
      const cell = rng.below(Math.ceil(parts.length / 2)) * 2
      out[at] = parts.map((part, place) => (place === cell ? change(part) : part)).join('')
    }
    return out
  })

/** Puts a sign somewhere into a cell. */
const into = (cell: string, sign: string, rng: Rng): string => {
  const at = rng.below(cell.length + 1)
  return cell.slice(0, at) + sign + cell.slice(at)
}

const escapes = [
  '\u001b[31mred\u001b[0m',
  '\u001b[2J\u001b[H',
  '\u001b[8m',
  '\u001b[1A\u001b[2K',
  '\u001b]0;title\u0007',
  '\u001b]8;;http://example.org\u001b\\link\u001b]8;;\u001b\\',
  '\u001b]52;c;cm0gLXJm\u0007',
  '\u001bP1;2|3\u001b\\',
  '\u009b31m',
  '\u009d52;c;eA==\u009c',
  '\u0090q\u009c',
  '\u001bc',
  '\u000e\u000f',
]

const bidi = [
  '\u202a',
  '\u202b',
  '\u202c',
  '\u202d',
  '\u202e',
  '\u2066',
  '\u2067',
  '\u2068',
  '\u2069',
  '\u200e',
  '\u200f',
  '\u061c',
]

/** Bytes that are no UTF-8: halves of pairs, longer forms than needed, beginnings without their end, bytes that never stand. */
const badUtf8 = [
  '\xed\xa0\x80',
  '\xed\xbf\xbf',
  '\xc0\x80',
  '\xe0\x80\xaf',
  '\xf8\x88\x80\x80\x80',
  '\xe2\x82',
  '\xf0\x9f',
  '\xff',
  '\xfe',
  '\x80',
]

const markup = [
  '<script>alert(1)</script>',
  '"><svg onload=alert(1)>',
  ']]><!--',
  '&amp;&#x0;&lol;',
  '{x}',
  '{0, plural, other {#}}',
  "'{",
  '<?xml version="1.0"?>',
  '\ufffe\uffff',
  '\u{1fffe}',
]

/** Numbers, times and days that are more, or less, than their digits. */
const readings = [
  ...['64 °F', '18 °C', '50 %', '12 m', '+5', '.5', '5.', '1e3', '12.0', '1 200', '1.080,5', '−3', '0x10', '1_000', '12 km'],
  ...['2:15 pm', '10:15Z', '10:15+02:00', '2031-05-04 10:15', '10.15', '0930', '9h30', '24:00', '10:15:30', 'kl 10'],
  ...[
    '4.5.2031',
    '4/5/31',
    '5/14/2031',
    'Mon 4.5.2031',
    '2031-05-04T00:00:00',
    '2031-05-04T23:30-08:00',
    '20310504',
    '4 May',
    'May 4, 2031',
  ],
  ...['10 min', '1 h 30', '00:10', '5+5', '90 s', 'NA', 'na', '?', 'nil', '12 ', '\u00a012', '1２', '١٢'],
]

function megabyte(rng: Rng): string {
  const length = 1_048_576 + rng.below(1024)
  const word = pick(rng, [
    'x',
    '7',
    ' ',
    '7 ',
    'ab ',
    '\u001b[31m',
    inUtf8('\u202e'),
    inUtf8('e\u0301'),
    inUtf8('\u{1f41d}'),
    '<b>',
    '""',
    ',"a"',
    ',"a',
    ',',
    '\n"',
  ])
  return word.repeat(Math.ceil(length / word.length)).slice(0, length - (length % word.length))
}

export const hostileMutations: { readonly [name: string]: Mutation } = {
  'a cell of a megabyte': (bytes, rng) => {
    const long = megabyte(rng)
    return inCells(bytes, rng, 1, (cell) => (rng.uniform() < 0.5 ? long : into(cell, long, rng)))
  },
  'long cells': (bytes, rng) =>
    inCells(bytes, rng, 6, (cell) => {
      const sign = pick(rng, ['x', '9', ' ', '9 ', 'ab ', inUtf8('\u0301'), inUtf8('\u{1f41d}'), inUtf8('\u6f22')])
      return `${cell}${sign.repeat(100 + rng.below(pick(rng, [300, 3_000, 30_000])))}.`
    }),
  'escape sequences': (bytes, rng) => inCells(bytes, rng, 8, (cell) => into(cell, inUtf8(pick(rng, escapes)), rng)),
  'control codes': (bytes, rng) =>
    inCells(bytes, rng, 6, (cell) =>
      into(cell, inUtf8(String.fromCharCode(pick(rng, [rng.below(32), 127 + rng.below(33)]))), rng),
    ),
  'direction signs': (bytes, rng) => inCells(bytes, rng, 8, (cell) => into(cell, inUtf8(pick(rng, bidi)), rng)),
  NUL: (bytes, rng) => inCells(bytes, rng, 4, (cell) => into(cell, '\0', rng)),
  'bad UTF-8': (bytes, rng) => inCells(bytes, rng, 5, (cell) => into(cell, pick(rng, badUtf8), rng)),
  markup: (bytes, rng) => inCells(bytes, rng, 6, (cell) => into(cell, inUtf8(pick(rng, markup)), rng)),
  'other readings': (bytes, rng) => inCells(bytes, rng, 12, () => inUtf8(pick(rng, readings))),
  'a quote that never closes': (bytes, rng) => inCells(bytes, rng, 3, (cell) => `"${cell}`),
  'ten thousand columns': (bytes, rng) => {
    const more = Array.from({ length: pick(rng, [300, 990, 10_000]) }, (_, k) => k)
    const which = pick(rng, ['header', 'all', 'one'])
    return onLines(bytes, (lines) => {
      const one = rng.below(lines.length)
      return lines.map((line, at) => {
        if (which === 'header' ? at > 0 : which === 'one' && at !== one) return line
        return line + more.map((k) => `,${at === 0 ? `c${k}` : k % 7}`).join('')
      })
    })
  },
  'header again and again': (bytes, rng) =>
    onLines(bytes, (lines) => {
      const header = lines[0] ?? ''
      const cells = header.split(/[,;\t]/u)
      const again = pick(rng, [
        header,
        [...cells].reverse().join(','),
        [...cells.slice(1), ...cells.slice(0, 1), 'more'].join(','),
      ])
      return lines.flatMap((line, at) => (at > 0 && rng.uniform() < 0.2 ? [again, line] : [line]))
    }),
  'byte order marks': (bytes, rng) => {
    const mark = pick(rng, ['\xef\xbb\xbf', '\xef\xbb\xbf\xef\xbb\xbf', '\xff\xfe', '\xfe\xff', '\xff\xfe\0\0'])
    return rng.uniform() < 0.6 ? fromLatin(mark + latin(bytes)) : inCells(bytes, rng, 4, (cell) => `\xef\xbb\xbf${cell}`)
  },
  'mixed line ends': (bytes, rng) => {
    const ends = ['\r', '\n', '\r\n', '\n\r', '\v\n', '\f', inUtf8('\u0085'), inUtf8('\u2028'), '\r\r\n']
    return fromLatin(latin(bytes).replace(/\r\n|\r|\n/gu, () => (rng.uniform() < 0.8 ? '\n' : pick(rng, ends))))
  },
  'UTF-16': (bytes, rng) => {
    const text = Buffer.from(bytes).toString('utf8')
    const broken = rng.uniform() < 0.3 ? text.replace(/[aeo]/gu, (sign) => (rng.uniform() < 0.05 ? '\ud83d' : sign)) : text
    const little = Buffer.from(pick(rng, ['\ufeff', '']) + broken, 'utf16le')
    const wide = rng.uniform() < 0.5 ? little : little.swap16()
    return new Uint8Array(wide.subarray(0, wide.length - (rng.uniform() < 0.2 ? 1 : 0)))
  },
}
