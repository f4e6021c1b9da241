import { type Saying, saying, ThrumError } from '@thrum/model/ground'
import { unseenSigns } from '../cell/plain-name.ts'
import { limits } from './limits.ts'

export type Encoding = 'utf-8' | 'utf-16le' | 'utf-16be' | 'windows-1252'
export type LineEnds = 'CRLF' | 'LF' | 'CR' | 'mixed'

/** The text of a file: line ends made one (LF), byte order mark gone, with what had to be decided. */
export interface DecodedText {
  readonly text: string
  readonly encoding: Encoding
  readonly lineEnds: LineEnds
  readonly notes: readonly Saying[]
}

/** First bytes of files that are no text, and what they are. Published: the formats' own specifications. */
const signatures: readonly { readonly bytes: readonly number[]; readonly what: string }[] = [
  { bytes: [0x50, 0x4b, 0x03, 0x04], what: 'workbook' },
  { bytes: [0xd0, 0xcf, 0x11, 0xe0], what: 'workbook' },
  { bytes: [0x25, 0x50, 0x44, 0x46], what: 'pdf' },
  { bytes: [0x89, 0x50, 0x4e, 0x47], what: 'picture' },
  { bytes: [0xff, 0xd8, 0xff], what: 'picture' },
  { bytes: [0x1f, 0x8b], what: 'archive' },
]

function refuseOtherFormats(bytes: Uint8Array): void {
  if (bytes.length === 0) throw new ThrumError('exchange/file/empty')
  if (bytes.length > limits.bytes) {
    throw new ThrumError('exchange/file/too-large', {
      megabytes: Math.ceil(bytes.length / 1_048_576),
      limit: limits.bytes / 1_048_576,
    })
  }
  const found = signatures.find((signature) => signature.bytes.every((byte, k) => bytes[k] === byte))
  if (found !== undefined) throw new ThrumError('exchange/file/not-text', { what: found.what })
}

/** UTF-16 by its mark, or by every other byte of the beginning being 0. */
function utf16Of(bytes: Uint8Array): 'utf-16le' | 'utf-16be' | null {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return 'utf-16le'
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return 'utf-16be'
  const looked = Math.min(bytes.length, 4096)
  let even = 0
  let odd = 0
  for (let k = 0; k < looked; k++) if (bytes[k] === 0) k % 2 === 0 ? even++ : odd++
  const most = (looked / 2) * 0.7
  if (odd > most && even < looked * 0.05) return 'utf-16le'
  return even > most && odd < looked * 0.05 ? 'utf-16be' : null
}

function decodeStrictly(bytes: Uint8Array, label: string): string | null {
  try {
    return new TextDecoder(label, { fatal: true }).decode(bytes)
  } catch {
    return null
  }
}

/** Lines in UTF-8 where they are, the others in windows-1252: what two programs wrote into one file. */
function decodeByLine(bytes: Uint8Array): { readonly text: string; readonly utf8: number; readonly other: number } {
  const western = new TextDecoder('windows-1252')
  const parts: string[] = []
  let utf8 = 0
  let other = 0
  for (let from = 0; from < bytes.length; ) {
    let to = from
    let high = false
    while (to < bytes.length && bytes[to] !== 0x0a && bytes[to] !== 0x0d) if ((bytes[to++] as number) >= 0x80) high = true
    const line = bytes.subarray(from, Math.min(to + 1, bytes.length))
    const strict = decodeStrictly(line, 'utf-8')
    if (high && strict !== null) utf8++
    if (strict === null) other++
    parts.push(strict ?? western.decode(line))
    from = to + 1
  }
  return { text: parts.join(''), utf8, other }
}

function decode(bytes: Uint8Array, asked: Encoding | undefined): { text: string; encoding: Encoding; notes: Saying[] } {
  const encoding = asked ?? utf16Of(bytes)
  if (encoding === 'utf-16le' || encoding === 'utf-16be') {
    return { text: new TextDecoder(encoding).decode(bytes), encoding, notes: [saying('exchange/note/utf-16')] }
  }
  if (encoding !== 'windows-1252') {
    const text = decodeStrictly(bytes, 'utf-8')
    if (text !== null) return { text, encoding: 'utf-8', notes: [] }
  }
  if (asked === undefined) {
    const { text, utf8, other } = decodeByLine(bytes)
    if (utf8 > 0) return { text, encoding: 'utf-8', notes: [saying('exchange/note/mixed-encoding', { utf8, other })] }
  }
  const text = new TextDecoder('windows-1252').decode(bytes)
  return { text, encoding: 'windows-1252', notes: [saying('exchange/note/western-encoding')] }
}

function lineEndsOf(text: string): LineEnds {
  const crlf = text.includes('\r\n')
  const cr = /\r(?!\n)/u.test(text)
  const lf = /(?:^|[^\r])\n/u.test(text)
  if (Number(crlf) + Number(cr) + Number(lf) > 1) return 'mixed'
  return crlf ? 'CRLF' : cr ? 'CR' : 'LF'
}

/** More control characters than this share of the text, and it is no text. Common practice, no source. */
const mostControls = 0.02

function refuseBinary(text: string): Saying[] {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
  const controls = text.match(/[\u0000-\u0008\u000b\u000e-\u001f\u007f]/gu)?.length ?? 0
  if (controls > text.length * mostControls) throw new ThrumError('exchange/file/not-text', { what: 'other' })
  // Text in a wrong encoding is full of these: they are told, and no proof that it is no text.
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
  const characters = controls + (text.match(/[\u000c\u0080-\u009f]/gu)?.length ?? 0)
  return characters === 0 ? [] : [saying('exchange/note/control-characters', { characters })]
}

function noteUnseen(text: string): Saying[] {
  const characters = unseenSigns(text)
  return characters === 0 ? [] : [saying('exchange/note/unseen-signs', { characters })]
}

/**
 * Bytes to text: byte order mark, UTF-8 where it is valid, else windows-1252 (which holds Latin-1), and every line end
 * made LF.
 *
 * @throws ThrumError exchange/file/empty, exchange/file/too-large, exchange/file/not-text
 */
export function decodeBytes(bytes: Uint8Array, asked?: Encoding): DecodedText {
  refuseOtherFormats(bytes)
  const { text: raw, encoding, notes } = decode(bytes, asked)
  const marked = raw.charCodeAt(0) === 0xfeff ? raw.slice(1) : raw
  if (marked.trim() === '') throw new ThrumError('exchange/file/empty')
  const unreadable = refuseBinary(marked)
  const lineEnds = lineEndsOf(marked)
  const text = lineEnds === 'LF' ? marked : marked.replace(/\r\n?/gu, '\n')
  const ends = lineEnds === 'CR' || lineEnds === 'mixed' ? [saying('exchange/note/line-ends', { ends: lineEnds })] : []
  return { text, encoding, lineEnds, notes: [...notes, ...ends, ...unreadable, ...noteUnseen(text)] }
}
