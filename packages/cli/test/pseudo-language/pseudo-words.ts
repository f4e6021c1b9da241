import { type MessageFormatElement, parse, TYPE } from '@formatjs/icu-messageformat-parser'
import type { Words } from '@thrum/model/ground'

const plain = 'abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ'
const accented = [...'åƀçđéƒĝĥîĵķļɱñöþɋŕšţüṽŵẋýžÅƁÇĐÉƑĜĤÎĴĶĻṀÑÖÞɊŔŠŢÜṼŴẊÝŽ']

const accent = (text: string): string => text.replace(/[a-z]/giu, (letter) => accented[plain.indexOf(letter)] ?? letter)

/** A literal as it stands in a message: quotes doubled, braces (and inside a plural the number sign) quoted. */
function written(text: string, inPlural: boolean): string {
  const quoted = text.replaceAll("'", "''").replace(/[{}]/gu, "'$&'")
  return inPlural ? quoted.replaceAll('#', "'#'") : quoted
}

/** The message with the letters of its own text accented; blanks and formats as they were written, choices by their names. */
function accentElements(source: string, elements: readonly MessageFormatElement[], inPlural: boolean): string {
  return elements
    .map((element): string => {
      if (element.type === TYPE.literal) return written(accent(element.value), inPlural)
      if (element.type === TYPE.pound) return '#'
      if (element.type === TYPE.select || element.type === TYPE.plural) {
        const isPlural = element.type === TYPE.plural
        const kind = element.type === TYPE.select ? 'select' : element.pluralType === 'ordinal' ? 'selectordinal' : 'plural'
        const offset = element.type === TYPE.plural && element.offset > 0 ? ` offset:${element.offset}` : ''
        const options = Object.entries(element.options).map(
          ([name, option]) => `${name} {${accentElements(source, option.value, isPlural || inPlural)}}`,
        )
        return `{${element.value}, ${kind},${offset} ${options.join(' ')}}`
      }
      return source.slice(element.location?.start.offset, element.location?.end.offset)
    })
    .join('')
}

/** An English text in the pseudo-language: its own letters accented, the whole between ⟦ and ⟧, ICU blanks untouched. */
export function pseudoText(text: string): string {
  return `⟦${accentElements(text, parse(text, { ignoreTag: true, captureLocation: true }), false)}⟧`
}

/** Every text of a catalogue in the pseudo-language. What stays plain when it is spoken did not come from the catalogue. */
export function pseudoWords(words: Words): Words {
  return Object.fromEntries(Object.entries(words).map(([id, text]) => [id, pseudoText(text)]))
}
