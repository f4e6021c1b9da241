import { questionsWordsEs as words } from '@thrum/questions'
import { surveyWordsEs } from '@thrum/survey'
import { expect, it } from 'vitest'

// The language ladder (methods handbook 0.3) in Spanish: no word is stronger than the English one.

const caused = 'questions/what-differs/headline/shown/caused'
const isDenied = (id: string): boolean => id.includes('/cannot-say/')
/** Ids and texts of what an answer asserts; names of blanks are no words of it. */
const asserted = Object.entries({ ...surveyWordsEs, ...words })
  .filter(([id]) => !isDenied(id))
  .map(([id, text]) => [id, text.replaceAll('{cause}', '')] as const)

it.each([
  [caused, '{levelB} causó, en estas condiciones,'],
  ['questions/what-differs/headline/shown/associated', '{levelB} se asoció con'],
  ['questions/what-differs/headline/shown/changed-more', /\{levelB\} cambió .* veces lo que \{levelA\}/u],
  ['questions/what-differs/headline/alike/no-difference-seen', 'son similares a efectos prácticos'],
  ['questions/what-differs/headline/alike/difference-too-small', 'demasiado pequeña para actuar'],
  ['questions/what-differs/headline/leaning', 'sin que baste para actuar'],
  ['questions/what-differs/headline/unsettled', 'sin resolver. '],
  ['questions/what-differs/headline/design-blocks', 'estos conteos no pueden decir qué hizo {cause}'],
  ['questions/can-say/counted', 'Contamos {kind} en'],
] as const)('%s has its rung', (id, rung) => {
  if (typeof rung === 'string') expect(words[id]).toContain(rung)
  else expect(words[id]).toMatch(rung)
})

it('nothing is called significant, proved, or owed to what is compared', () => {
  const never =
    /significativ|demostra|demuestr|demuéstr|prueba|probad|debid[oa]|deberse|gracias a|a causa de|por culpa|sin efecto|ningún efecto/iu
  expect(asserted.filter(([, text]) => never.test(text)).map(([id]) => id)).toEqual([])
})

it('a cause is named where levels were dealt out at random, and nowhere else', () => {
  const causal = /(?<!\p{L})caus[aeóoá]|provoc|produj|produc/iu
  expect(asserted.filter(([, text]) => causal.test(text)).map(([id]) => id)).toEqual([caused])
})
