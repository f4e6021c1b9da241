import type { Rng } from '@thrum/model/ground'

type Mutation = (bytes: Uint8Array, rng: Rng) => Uint8Array

const below = (rng: Rng, end: number): number => (end < 1 ? 0 : rng.below(end))
const pick = <T>(rng: Rng, list: readonly T[]): T => list[below(rng, list.length)] as T
const latin = (bytes: Uint8Array): string => Array.from(bytes, (byte) => String.fromCharCode(byte)).join('')
const fromLatin = (text: string): Uint8Array => Uint8Array.from(text, (sign) => sign.charCodeAt(0) & 0xff)
const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text)

function insert(bytes: Uint8Array, at: number, part: Uint8Array): Uint8Array {
  const out = new Uint8Array(bytes.length + part.length)
  out.set(bytes.subarray(0, at))
  out.set(part, at)
  out.set(bytes.subarray(at), at + part.length)
  return out
}

const onLines = (bytes: Uint8Array, change: (lines: string[]) => string[]): Uint8Array =>
  fromLatin(change(latin(bytes).split(/\r\n|\r|\n/u)).join('\n'))

/** Cells of every sort that hands, programs and accidents leave in sheets. */
const odd = [
  ...[
    '',
    ' ',
    '-',
    '–',
    '?',
    'NA',
    '#REF!',
    '=SUM(A1:A9)',
    '1e5',
    '1e999',
    '-0',
    '007',
    '1.150',
    '1,150',
    '1.150,5',
    '٣',
    '１２',
    '3-4',
    '>50',
    '<1',
  ],
  ...[
    'ca. 12',
    '5*',
    '7 (2 drones)',
    'nil',
    'tick',
    'lots',
    '99999999',
    '1.5',
    '-1',
    'Infinity',
    '31/02/2024',
    '13/13/2024',
    '00:00',
    '25:61',
    '9h30',
  ],
  ...[
    '2024-02-30',
    '27-May',
    '45811',
    '5+5',
    'ten',
    'total',
    'GRAND TOTAL',
    '__proto__',
    'constructor',
    '{x}',
    "it's",
    '<b>x</b>',
    '\u202e12',
    '1\u200b2',
    'a\tb',
  ],
]

export const mutations: { readonly [name: string]: Mutation } = {
  'flip bytes': (bytes, rng) => {
    const out = bytes.slice()
    for (let k = 1 + below(rng, 20); k > 0 && out.length > 0; k--) out[below(rng, out.length)] = below(rng, 256)
    return out
  },
  'cut the end': (bytes, rng) => bytes.slice(0, below(rng, bytes.length + 1)),
  'cut the beginning': (bytes, rng) => bytes.slice(below(rng, Math.ceil(bytes.length / 2))),
  'cut a piece': (bytes, rng) => {
    const at = below(rng, bytes.length + 1)
    const to = Math.min(bytes.length, at + below(rng, 200))
    return insert(bytes.slice(0, at), at, bytes.subarray(to))
  },
  'repeat lines': (bytes, rng) =>
    onLines(bytes, (lines) => {
      const at = below(rng, lines.length)
      return [...lines.slice(0, at), ...Array.from({ length: 1 + below(rng, 4) }, () => lines[at] ?? ''), ...lines.slice(at)]
    }),
  'swap lines': (bytes, rng) =>
    onLines(bytes, (lines) => {
      const a = below(rng, lines.length)
      const b = below(rng, lines.length)
      return lines.map((line, k) => (k === a ? lines[b] : k === b ? lines[a] : line) ?? line)
    }),
  'drop a line': (bytes, rng) =>
    onLines(bytes, (lines) => {
      const at = below(rng, lines.length)
      return lines.filter((_, k) => k !== at)
    }),
  'header once more': (bytes, rng) =>
    onLines(bytes, (lines) => {
      const at = below(rng, lines.length)
      return [...lines.slice(0, at), lines[0] ?? '', ...lines.slice(at)]
    }),
  'swap delimiters': (bytes, rng) => {
    const [from, to] = [pick(rng, [',', ';', '\t']), pick(rng, [',', ';', '\t', '|', ' '])]
    const share = pick(rng, [1, 0.5, 0.05])
    return fromLatin(Array.from(latin(bytes), (sign) => (sign === from && rng.uniform() < share ? to : sign)).join(''))
  },
  'line ends': (bytes, rng) => fromLatin(latin(bytes).replace(/\r\n|\r|\n/gu, () => pick(rng, ['\r', '\n', '\r\n']))),
  'control and direction signs': (bytes, rng) => {
    let out = bytes
    for (let k = 1 + below(rng, 5); k > 0; k--) {
      const sign = pick(rng, [
        '\u0000',
        '\u0007',
        '\u001b[31m',
        '\u202e',
        '\u2066',
        '\u200b',
        '\ufeff',
        '\u0085',
        '\u2028',
        '\ud83d\udc1d',
      ])
      out = insert(out, below(rng, out.length + 1), utf8(sign))
    }
    return out
  },
  'huge cell': (bytes, rng) => insert(bytes, below(rng, bytes.length + 1), utf8('x'.repeat(30_000 + below(rng, 10_000)))),
  quotes: (bytes, rng) => {
    let out = bytes
    for (let k = 1 + below(rng, 4); k > 0; k--)
      out = insert(out, below(rng, out.length + 1), utf8(pick(rng, ['"', '""', '"\n', ',"', '",'])))
    return out
  },
  'odd cells': (bytes, rng) =>
    onLines(bytes, (lines) =>
      lines.map((line) => {
        if (rng.uniform() > 0.3) return line
        const cells = line.split(/([,;\t])/u)
        const at = below(rng, Math.ceil(cells.length / 2)) * 2
        return cells.map((cell, k) => (k === at ? latin(utf8(pick(rng, odd))) : cell)).join('')
      }),
    ),
  'wrong encoding': (bytes, rng) => {
    const text = latin(bytes)
    const wide = (little: boolean): Uint8Array =>
      Uint8Array.from([...text].flatMap((sign) => (little ? [sign.charCodeAt(0), 0] : [0, sign.charCodeAt(0)])))
    return pick(rng, [
      () => utf8(text),
      () => wide(true),
      () => wide(false),
      () => insert(wide(true), 0, Uint8Array.from([0xff, 0xfe])),
    ])()
  },
  'extra lines': (bytes, rng) =>
    onLines(bytes, (lines) => {
      const at = below(rng, lines.length)
      return [
        ...lines.slice(0, at),
        pick(rng, ['', ',,,,', 'Total,,,,12', 'a note of one cell', ';;;', '\u001a', '"']),
        ...lines.slice(at),
      ]
    }),
  noise: (_bytes, rng) => Uint8Array.from({ length: below(rng, 400) }, () => below(rng, 256)),
}

/** One mutated file: one to three mutations of a base, all drawn from the generator. */
export function mutate(base: Uint8Array, rng: Rng): { readonly bytes: Uint8Array; readonly how: readonly string[] } {
  const names = Object.keys(mutations)
  let bytes = base
  const how: string[] = []
  for (let k = 1 + below(rng, 3); k > 0; k--) {
    const name = pick(rng, names)
    bytes = mutations[name]?.(bytes, rng) ?? bytes
    how.push(name)
  }
  return { bytes, how }
}
