import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { plainColumns, readSheet } from '@thrum/exchange'
import type { FitTable, FitWords } from '@thrum/questions'

/** A model of an open extract whose receipt is put to R. */
export interface TableFitCase {
  readonly file: string
  readonly words: FitWords
}

const folder = join(import.meta.dirname, '../../packages/stats/test/reference')
const counts = (name: string) => `count-models/${name}.csv`

/** Every family, and every way that rows can resemble each other. */
export const tableFitCases: readonly TableFitCase[] = [
  { file: counts('quine'), words: { response: 'Days', family: 'poisson', fixed: 'Eth,Sex,Age,Lrn' } },
  { file: counts('quine'), words: { response: 'Days', family: 'nb2', fixed: 'Eth,Sex,Age and Lrn', levels: ['Age=F3'] } },
  { file: counts('salamanders'), words: { response: 'count', family: 'nb2', fixed: 'mined,spp', random: 'site' } },
  { file: counts('salamanders'), words: { response: 'count', family: 'nb1', fixed: 'mined', random: 'site' } },
  {
    file: counts('salamanders'),
    words: { response: 'count', family: 'poisson', fixed: 'mined and spp', random: 'site', zerosBy: 'mined', compare: 'mined' },
  },
  {
    file: counts('salamanders'),
    words: { response: 'count', family: 'nb2', fixed: 'mined', random: 'site,site and spp', zeros: true },
  },
  {
    file: counts('field-visits'),
    words: {
      ...{ response: 'clumped', family: 'nb2', fixed: 'treated,warmth', asLevels: 'treated', effort: 'minutes', per: '60' },
      random: 'region,field,observer',
    },
  },
  {
    file: counts('field-visits'),
    words: {
      ...{ response: 'plain', family: 'poisson', fixed: 'treated,warmth', effort: 'minutes', random: 'field' },
      slope: 'warmth by field',
    },
  },
  {
    file: counts('cbpp'),
    words: { response: 'incidence', family: 'binomial', trials: 'size', fixed: 'period', asLevels: 'period', random: 'herd' },
  },
  {
    file: counts('cbpp'),
    words: {
      response: 'incidence',
      family: 'binomial',
      trials: 'size',
      fixed: 'period',
      asLevels: 'period',
      random: 'herd',
      nodes: '15',
    },
  },
  {
    file: counts('cbpp'),
    words: {
      response: 'incidence',
      family: 'beta-binomial',
      trials: 'size',
      fixed: 'period',
      asLevels: 'period',
      random: 'herd',
    },
  },
  {
    file: 'linear-mixed/Penicillin.csv',
    words: { response: 'diameter', family: 'gaussian', random: 'plate,sample', reml: true },
  },
  {
    file: 'linear-mixed/sleepstudy.csv',
    words: { response: 'Reaction', family: 'gaussian', fixed: 'Days', random: 'Subject', slope: 'Days by Subject' },
  },
  {
    file: 'linear-mixed/sleepstudy.csv',
    words: {
      response: 'Reaction',
      family: 'gaussian',
      fixed: 'Days',
      random: 'Subject',
      slope: 'Days by Subject',
      slopeApart: true,
      reml: true,
    },
  },
  { file: 'linear-mixed/cake.csv', words: { response: 'angle', family: 'gaussian', fixed: 'recipe and temperature' } },
]

/** The table of a case, read as the command line reads one. */
export function tableOfCase({ file }: TableFitCase): FitTable {
  const sheet = readSheet(readFileSync(join(folder, file)))
  return { columns: plainColumns(sheet), lines: sheet.lines, aside: [], refused: [] }
}
