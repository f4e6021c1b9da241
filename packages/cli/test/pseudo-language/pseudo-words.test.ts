import { type MessageFormatElement, parse } from '@formatjs/icu-messageformat-parser'
import { saying } from '@thrum/model/ground'
import { createSpeaker } from '@thrum/report'
import { describe, expect, it } from 'vitest'
import { allWords } from '../../src/terminal/terminal.ts'
import { namesIn, plainLetters } from './plain-letters.ts'
import { pseudoText, pseudoWords } from './pseudo-words.ts'

/** What a message is made of, apart from its own letters: blanks, choices, formats. */
function skeleton(elements: readonly MessageFormatElement[]): unknown {
  return elements.flatMap((element): readonly unknown[] => {
    if (!('value' in element)) return [element.type]
    if (element.type === 0) return []
    const { type, value } = element
    const style = 'style' in element ? JSON.stringify(element.style) : null
    const options =
      'options' in element ? Object.entries(element.options).map(([name, option]) => [name, skeleton(option.value)]) : []
    return [[type, value, style, options]]
  })
}

describe('the pseudo-language', () => {
  it.each([
    ['No count.', '⟦Ñö çöüñţ.⟧'],
    ['{n, plural, one {a #} other {# watches}} of {field}', '⟦{n, plural, one {å #} other {# ŵåţçĥéš}} öƒ {field}⟧'],
    ["it's '{'a brace'}' and {kind, select, yes {it} other {}}", "⟦îţ''š '{'å ƀŕåçé'}' åñđ {kind, select, yes {îţ} other {}}⟧"],
    ['<b>{x, number, ::scale/100 .##}</b>', '⟦<ƀ>{x, number, ::scale/100 .##}</ƀ>⟧'],
    ["{n, plural, other {no '#'}}", "⟦{n, plural, other {ñö '#'}}⟧"],
  ])('%s', (text, pseudo) => {
    expect(pseudoText(text)).toBe(pseudo)
  })

  it('keeps every blank, choice and format of every text, and leaves no plain letter of its own', () => {
    for (const [id, text] of Object.entries(allWords)) {
      const pseudo = parse(pseudoText(text), { ignoreTag: true })
      expect(skeleton(pseudo), id).toEqual(skeleton(parse(text, { ignoreTag: true })))
      const literals = (elements: readonly MessageFormatElement[]): readonly string[] =>
        elements.flatMap((element) =>
          element.type === 0
            ? [element.value]
            : 'options' in element
              ? Object.values(element.options).flatMap((option) => literals(option.value))
              : [],
        )
      expect(literals(pseudo).join(''), id).not.toMatch(/[A-Za-z]/u)
    }
  })

  it('a printer that puts in words of its own is caught', () => {
    const say = createSpeaker(pseudoWords(allWords), 'en')
    const names = namesIn('honey bee')
    const sentence = saying('questions/who-visits/can-say/total', { kind: 'honey bee', total: 3 })
    expect(plainLetters(say(sentence), names)).toEqual([])
    const wrongPrinter = (): string => `Total: ${say(sentence)}`
    expect(plainLetters(wrongPrinter(), names)).toEqual(['Total: Total: ⟦honey bee 3⟧'])
    const wrongValue = saying('questions/who-visits/can-say/total', { kind: 'all other kinds', total: 3 })
    expect(plainLetters(say(wrongValue), names)).toEqual([
      'all: ⟦all other kinds 3⟧',
      'other: ⟦all other kinds 3⟧',
      'kinds: ⟦all other kinds 3⟧',
    ])
    expect(plainLetters('verdict: design-blocks', names)).toEqual([])
    expect(plainLetters('the verdict: shown', names)).toHaveLength(3)
  })
})
