import type { RawOption } from '@thrum/model'

/** One answer whose receipt is put to R. */
export interface ReceiptCase {
  readonly question: string
  readonly options: { readonly [name: string]: RawOption }
}

const strips = { between: 'strip', levels: ['no strip', 'strip'], worth: 2 } as const
const hives = { since: '2032-07-23', where: ['crop=sunflower', 'season=2032'] } as const

/** Every structure, measure and refusal that an answer of the demonstration can have. */
export const demonstrationCases: readonly ReceiptCase[] = [
  { question: 'who-visits', options: {} },
  { question: 'who-visits', options: { by: 'season' } },
  { question: 'who-visits', options: { by: 'field', crop: ['sweet cherry'] } },
  { question: 'who-visits', options: { per: 'flower' } },
  { question: 'who-visits', options: { per: 'area', by: 'crop', kinds: ['bumble bee', 'hover fly'] } },
  { question: 'what-differs', options: { kinds: ['bumble bee'], ...strips } },
  { question: 'what-differs', options: { kinds: ['hover fly', 'honey bee', 'small solitary bee'], ...strips } },
  { question: 'what-differs', options: { kinds: ['bumble bee'], ...strips, per: 'flower' } },
  { question: 'what-differs', options: { kinds: ['bumble bee'], ...strips, per: 'area' } },
  { question: 'what-differs', options: { kinds: ['bumble bee'], ...strips, against: 'honey bee' } },
  {
    question: 'what-differs',
    options: { kinds: ['honey bee'], between: 'daypart', levels: ['morning', 'afternoon'], worth: 1.5 },
  },
  { question: 'what-differs', options: { kinds: ['small solitary bee'], between: 'position', worth: 2 } },
  { question: 'what-differs', options: { kinds: ['honey bee'], between: 'season', worth: 2 } },
  { question: 'what-differs', options: { between: 'observer', worth: 1.5 } },
  { question: 'what-differs', options: { between: 'crop', worth: 1.5 } },
  { question: 'what-differs', options: { kinds: ['bumble bee'], ...strips, crop: ['sunflower'] } },
  { question: 'what-differs', options: { kinds: ['honey bee'], ...hives, worth: 2 } },
  { question: 'what-differs', options: { kinds: ['honey bee'], ...hives, against: 'bumble bee', worth: 2 } },
  { question: 'what-differs', options: { kinds: ['bumble bee'], since: '2032-01-01', between: 'strip', worth: 2 } },
  { question: 'what-differs', options: { between: 'kind', levels: ['honey bee', 'bumble bee', 'hover fly'], worth: 2 } },
  { question: 'what-differs', options: { between: 'kind', levels: ['honey bee', 'bumble bee'], field: ['FIRST'], worth: 2 } },
  { question: 'what-differs', options: { kinds: ['honey bee'], between: 'month', worth: 2 } },
  { question: 'what-differs', options: { kinds: ['bumble bee'], between: 'temperature', step: 5, worth: 2 } },
  { question: 'what-differs', options: { kinds: ['honey bee'], between: 'stage', step: 1, crop: ['sweet cherry'], worth: 2 } },
  { question: 'what-differs', options: { kinds: ['bumble bee'], between: 'flowers', step: 100, worth: 2 } },
  { question: 'is-design-sound', options: { kinds: ['bumble bee'], between: 'temperature', step: 5 } },
  { question: 'is-design-sound', options: { kinds: ['bumble bee'], between: 'strip' } },
  { question: 'is-design-sound', options: { kinds: ['honey bee'], ...hives } },
  { question: 'is-design-sound', options: { between: 'position' } },
  { question: 'is-design-sound', options: { between: 'strip', since: '2032-01-01' } },
]
