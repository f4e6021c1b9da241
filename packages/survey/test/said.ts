import type { Saying, SayingValue } from '@thrum/model/ground'
import { IntlMessageFormat } from 'intl-messageformat'
import { surveyWords } from '../src/index.ts'

/**
 * A sentence in English, every sentence inside it too. Fails where a text is missing, a blank is not filled, or a number in it
 * is none.
 */
export function said(saying: Saying): string {
  const text = surveyWords[saying.id]
  if (text === undefined) throw new Error(`no words for ${saying.id}`)
  const fill = (value: SayingValue): string | number => {
    if (typeof value === 'string') return value
    if (typeof value === 'number') {
      if (!Number.isFinite(value)) throw new Error(`${saying.id} holds ${value}`)
      return value
    }
    return Array.isArray(value) ? value.map((own: Saying) => said(own)).join(', ') : said(value as Saying)
  }
  const values = Object.fromEntries(Object.entries(saying.values).map(([name, value]) => [name, fill(value)]))
  const sentence = new IntlMessageFormat(text, 'en').format(values)
  if (typeof sentence !== 'string' || /NaN|undefined|null|∞|[{}]/u.test(sentence))
    throw new Error(`${saying.id} reads: ${sentence}`)
  return sentence
}
