import type { Mapping } from '@thrum/exchange'
import { createRng, type Rng } from '@thrum/model/ground'
import { extractBytes, extractMapping, sheetBytes, utf8 } from '../files.ts'
import { checkInput, type Outcome } from './check-input.ts'
import { mutate } from './mutations.ts'

interface Base {
  readonly name: string
  readonly bytes: Uint8Array
  /** Read under this mapping in every other input; else as the mutated file itself proposes. */
  readonly mapping: Mapping | null
}

const plain = `field,plot,date,start,minutes,flowers,honey bee,bumble bee,hover fly,note
Larkfoot,edge,2031-05-04,10:15,10,240,3,1,0,
Larkfoot,centre,2031-05-04,10:40,10,180,0,2,1,"gusty, some sun"
Old Kiln,edge,2031-05-05,13:05,10,310,12,0,0,
Old Kiln,centre,2031-05-05,13:30,10,275,7,1,2,`

/** Sheets that mutations start from: tidy, untidy, wide, long, real. */
export function baseSheets(): readonly Base[] {
  return [
    { name: 'plain', bytes: utf8(plain), mapping: null },
    ...[
      's1-semicolon-decimal-comma-latin1',
      's2-title-rows-two-line-header-totals',
      's3-approximate-and-censored-counts',
      's5-duplicate-ids-second-header',
    ].map((name) => ({ name, bytes: sheetBytes(`${name}.csv`), mapping: null })),
    ...[
      ['osr-sweden-2013', 'pollinators.txt'],
      ['red-clover-denmark-2008-2009', 'insect_sampling.csv'],
      ['alpine-networks-2010', 'networks.csv'],
      ['blueberry-na-2013-2015', 'blueberry.csv'],
    ].map(([folder, file]) => ({
      name: folder ?? '',
      bytes: extractBytes(`${folder}/${file}`),
      mapping: extractMapping(`${folder}/mapping.json`),
    })),
  ]
}

export interface TrialInput {
  readonly base: string
  readonly how: readonly string[]
  readonly bytes: Uint8Array
  readonly outcome: Outcome
}

/** Input `number` of a seed: always the same file, whatever was run before. */
export async function tryInput(bases: readonly Base[], seed: number, number: number): Promise<TrialInput> {
  const rng: Rng = createRng(String(seed)).fork(`input/${number}`)
  const base = bases[Math.floor(rng.uniform() * bases.length)] as Base
  const { bytes, how } = mutate(base.bytes, rng)
  const outcome = await checkInput(bytes, rng.uniform() < 0.5 ? base.mapping : null)
  return { base: base.name, how, bytes, outcome }
}
