import type { Mapping } from '@thrum/exchange'
import { createRng } from '@thrum/model/ground'
import { baseSheets } from '../../../exchange/test/mutated/bases.ts'
import { mutate } from '../../../exchange/test/mutated/mutations.ts'
import { longSheet, wideSheet } from '../sheets.ts'
import { hostileMutations } from './hostile-mutations.ts'

/** What a mutated file starts from; read under its mapping in every other input, else as the file itself proposes. */
export interface Base {
  readonly name: string
  readonly bytes: Uint8Array
  readonly mapping: Mapping | null
}

/** The base sheets of mutated reading, and two that lead to answers with figures. */
export function importBases(): readonly Base[] {
  const own = { wide: wideSheet(), long: longSheet() }
  return [
    ...baseSheets(),
    ...Object.entries(own).map(([name, text]) => ({ name, bytes: new TextEncoder().encode(text), mapping: null })),
  ]
}

export interface MutatedInput {
  readonly number: number
  readonly base: string
  readonly how: readonly string[]
  readonly bytes: Uint8Array
  /** Laid beside the file, as a person keeps it; null where one is to be proposed. */
  readonly mapping: Mapping | null
}

/** Input `number` of a seed: always the same file, whatever was run before. */
export function mutatedInput(bases: readonly Base[], seed: number, number: number): MutatedInput {
  const rng = createRng(String(seed)).fork(`import/${number}`)
  const base = bases[rng.below(bases.length)] as Base
  const plain = rng.uniform() < 0.35 ? mutate(base.bytes, rng) : { bytes: base.bytes, how: [] }
  let { bytes } = plain
  const how = [...plain.how]
  const names = Object.keys(hostileMutations)
  for (let k = (how.length === 0 ? 1 : 0) + rng.below(3); k > 0; k--) {
    const name = names[rng.below(names.length)] ?? ''
    bytes = hostileMutations[name]?.(bytes, rng) ?? bytes
    how.push(name)
  }
  return { number, base: base.name, how, bytes, mapping: rng.uniform() < 0.5 ? base.mapping : null }
}
