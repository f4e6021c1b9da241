import type { Names } from './forgotten-names.ts'

/** Characters of a part that are looked at again with the next one: a name may lie across the border. */
const overlap = 400

/** How texts may be written; a name in one of them is found. */
function encodingsOf(first: Uint8Array): readonly string[] {
  const zeros = first.subarray(0, 4096).filter((byte) => byte === 0).length
  return zeros > 0 ? ['utf-16le', 'utf-16be'] : ['utf-8', 'windows-1252']
}

/** True where the text of a file holds a name. Bytes that are no text in an encoding hold none in it. */
export function holdsName(parts: Iterable<Uint8Array>, names: Names): boolean {
  let readers: { readonly decoder: InstanceType<typeof TextDecoder>; tail: string }[] | null = null
  for (const part of parts) {
    readers ??= encodingsOf(part).map((encoding) => ({ decoder: new TextDecoder(encoding), tail: '' }))
    for (const reader of readers) {
      const text = reader.tail + reader.decoder.decode(part, { stream: true })
      if (names.without(text) !== text) return true
      reader.tail = text.slice(-overlap)
    }
  }
  return false
}
