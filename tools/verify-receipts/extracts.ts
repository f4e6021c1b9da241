import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { parseMapping } from '@thrum/exchange'
import { bringCounts, createProject, offerCounts, type Project } from '@thrum/host'
import { unwatched } from '@thrum/model/ground'
import type { ReceiptCase } from './cases.ts'

/** A small extract of a real study that stands in the repository, and what is asked of it. */
export interface Extract {
  readonly name: string
  readonly file: string
  readonly cases: readonly ReceiptCase[]
}

const folder = join(import.meta.dirname, '../../packages/host/test/extracts')
const open = { where: ['treatment=Edge|Crop'], window: 'all' } as const

export const extracts: readonly Extract[] = [
  {
    name: 'osr-sweden-2013',
    file: 'pollinators.txt',
    cases: [
      { question: 'who-visits', options: { ...open } },
      { question: 'who-visits', options: { ...open, per: 'flower', by: 'treatment' } },
      {
        question: 'what-differs',
        options: { ...open, kinds: ['honey bee'], between: 'treatment', levels: ['Crop', 'Edge'], worth: 2 },
      },
      {
        question: 'what-differs',
        options: { ...open, between: 'kind', levels: ['honey bee', 'bumble bee', 'hover fly'], worth: 2 },
      },
      { question: 'is-design-sound', options: { ...open, between: 'treatment' } },
    ],
  },
  {
    name: 'red-clover-denmark-2008-2009',
    file: 'insect_sampling.csv',
    cases: [
      { question: 'who-visits', options: {} },
      { question: 'what-differs', options: { between: 'kind', levels: ['honey bee', 'bumble bee'], worth: 2 } },
      { question: 'what-differs', options: { kinds: ['bumble bee'], between: 'season', worth: 2 } },
    ],
  },
  {
    name: 'alpine-networks-2010',
    file: 'networks.csv',
    cases: [{ question: 'who-visits', options: { by: 'field', window: 'all' } }],
  },
]

/** A project that holds the extract, brought under the mapping that stands beside it. */
export async function bringExtract({ name, file }: Extract, path: string): Promise<Project> {
  const source = join(folder, name, file)
  const bytes = readFileSync(source)
  const mapping = parseMapping(JSON.parse(readFileSync(join(folder, name, 'mapping.json'), 'utf8')))
  const project = await createProject(path, name)
  await bringCounts(project, source, bytes, await offerCounts(bytes, mapping, unwatched), unwatched)
  return project
}
