// Signs that steer how text is drawn but are not part of it: soft hyphen, zero-width signs, byte order mark,
// bidirectional marks, embeddings and isolates (Unicode Standard, general category Cf).
const unseen = /[\u00ad\u061c\u180e\u200b-\u200f\u202a-\u202e\u2060-\u2069\ufeff\ufff9-\ufffb]/gu
/** How many signs of a text are not seen, and left out of names. */
export const unseenSigns = (text: string): number => text.match(unseen)?.length ?? 0

// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is taken out
const controls = /[\u0000-\u001f\u007f-\u009f]+/gu

/** Most names are plain ASCII words: nothing is to be done for them. */
const asciiWords = /^[!-~]+(?: [!-~]+)*$/u

/**
 * A name as it is matched and shown: no control or direction signs, one blank between words, composed letters (NFC).
 * What was written stays in the file.
 */
export function plainName(written: string): string {
  if (asciiWords.test(written)) return written
  return written.replace(unseen, '').replace(controls, ' ').replace(/\s+/gu, ' ').trim().normalize('NFC')
}

/** A name as it is compared with known words: plain, lower case, without accents. */
export function foldedName(written: string): string {
  if (asciiWords.test(written)) return written.toLowerCase()
  return plainName(written)
    .toLowerCase()
    .replace(/ß/gu, 'ss')
    .replace(/æ/gu, 'ae')
    .replace(/œ/gu, 'oe')
    .replace(/ø/gu, 'o')
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
}
