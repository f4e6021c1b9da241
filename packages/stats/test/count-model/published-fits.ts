import type { CountModel, FamilyName, Grouping } from '../../src/index.ts'
import { type Columns, crossed, type Design, designOf, factor, grouping, numbers, type Row, table } from './published-tables.ts'

/** A model as R was given it. */
export interface PublishedFit extends Omit<CountModel, 'design' | 'zeros'>, Design {
  readonly zerosBy?: Design
}

const cbpp = table('cbpp').map((row, i) => ({ ...row, obs: String(i) }))
const herd = grouping(cbpp, 'herd', 'herd')
const time = numbers(cbpp, 'period').map((period) => period - 2.5)
const shares = {
  family: 'binomial',
  counts: numbers(cbpp, 'incidence'),
  trials: numbers(cbpp, 'size'),
  ...designOf(cbpp.length, factor(cbpp, 'period', ['1', '2', '3', '4'])),
} as const

const quine = table('quine')
const eth = factor(quine, 'Eth', ['A', 'N'])
const lrn = factor(quine, 'Lrn', ['AL', 'SL'])
const schools = [eth, factor(quine, 'Sex', ['F', 'M']), factor(quine, 'Age', ['F0', 'F1', 'F2', 'F3']), lrn]
const days = { counts: numbers(quine, 'Days'), ...designOf(quine.length, ...schools) }

const salamanders = table('salamanders')
const spp = factor(salamanders, 'spp', ['GP', 'PR', 'DM', 'EC-A', 'EC-L', 'DES-L', 'DF'])
const mined = factor(salamanders, 'mined', ['yes', 'no'])
const byMining = designOf(salamanders.length, mined)
const streams = {
  counts: numbers(salamanders, 'count'),
  ...designOf(salamanders.length, spp, mined),
  groupings: [grouping(salamanders, 'site', 'site')],
}

/** Two rows for each row: first those of one column of counts, then those of the other. */
function twoGroups(rows: readonly Row[], first: string, second: string): readonly Row[] {
  return [first, second]
    .flatMap((group) => rows.map((row): Row => ({ ...row, group, count: row[group] ?? '' })))
    .map((row, i) => ({ ...row, obs: String(i) }))
}
const logOf = (values: readonly number[], per: number): readonly number[] => values.map((value) => Math.log(value / per))

const rape = table('oilseed-rape')
const bees = twoGroups(rape, 'honey', 'wild')
const group = factor(bees, 'group', ['honey', 'wild'])
const location = factor(bees, 'location', ['Crop', 'Edge'])
const field = grouping(bees, 'field', 'field')
const minutes = logOf(numbers(bees, 'minutes'), 1)
const flowers = numbers(bees, 'flowers')
const watches = {
  counts: numbers(bees, 'count'),
  offset: minutes,
  groupings: [field],
  ...designOf(bees.length, group, location),
}
const temperature = numbers(rape, 'temperature')
const meanTemperature = temperature.reduce((sum, value) => sum + value, 0) / temperature.length
const wild = numbers(rape, 'wild')

const clover = table('red-clover').map((row): Row => ({ ...row, bumble: String(Number(row.short) + Number(row.long)) }))
const years = ['2008', '2009']
function fieldsOf(rows: readonly Row[], levels: readonly string[]) {
  const kind = factor(rows, 'group', levels)
  const year = factor(rows, 'year', years)
  return {
    counts: numbers(rows, 'count'),
    offset: logOf(numbers(rows, 'seconds'), 60),
    added: designOf(rows.length, kind, year),
    withInteraction: designOf(rows.length, kind, year, crossed(kind, year)),
    site: grouping(rows, 'site', 'site'),
    place: grouping(rows, 'place', 'place'),
    obs: grouping(rows, 'obs', 'obs'),
  }
}
const kinds = fieldsOf(twoGroups(clover, 'honey', 'bumble'), ['honey', 'bumble'])
const tongues = fieldsOf(twoGroups(clover, 'short', 'long'), ['short', 'long'])
const clovers = { counts: kinds.counts, offset: kinds.offset, ...kinds.added }

const alps = table('alpine-visits')
const altitude = numbers(alps, 'altitude').map((metres) => (metres - 1500) / 100)
const warmth = numbers(alps, 'temperature').map((degrees) => degrees - 20)

const made = table('field-visits')
const warm = numbers(made, 'warmth').map((degrees) => degrees - 20)
const covariates: Columns = [
  ['treated', numbers(made, 'treated')],
  ['warm', warm],
]
const visited = { offset: logOf(numbers(made, 'minutes'), 10), ...designOf(made.length, covariates) }
const own = grouping(made, 'field', 'field')
const together: Grouping = { ...own, slope: { name: 'warm', values: warm } }
const apart: Grouping = { ...own, slope: { name: 'warm', values: warm, isCorrelated: false } }
const visit = grouping(made, 'visit', 'visit')
const structures: { readonly [name: string]: readonly Grouping[] } = {
  slope: [together],
  'slope apart': [apart],
  'slope and visits': [together, visit],
  'slope apart and visits': [apart, visit],
  'fields in regions': [grouping(made, 'field:region', 'region', 'field'), grouping(made, 'region', 'region')],
  'fields, visits, observers': [own, visit, grouping(made, 'observer', 'observer')],
}
const fieldVisits = (['poisson', 'nb2'] as const).flatMap((family) =>
  Object.entries(structures).map(([name, groupings]): [string, PublishedFit] => [
    `field visits: ${family}, ${name}`,
    { family, counts: numbers(made, family === 'poisson' ? 'plain' : 'clumped'), groupings, ...visited },
  ]),
)

const of = <T>(family: FamilyName, model: T): T & { readonly family: FamilyName } => ({ ...model, family })

export const publishedFits: { readonly [fit: string]: PublishedFit } = {
  'cbpp: binomial': { ...shares, groupings: [herd] },
  'cbpp: binomial by quadrature': { ...shares, groupings: [herd], nodes: 25 },
  'cbpp: herd and observation': { ...shares, groupings: [herd, grouping(cbpp, 'obs', 'obs')] },
  'cbpp: beta-binomial': { ...shares, family: 'beta-binomial', groupings: [herd] },
  'cbpp: slope on time, apart': {
    ...shares,
    ...designOf(cbpp.length, [['time', time]]),
    groupings: [{ ...herd, slope: { name: 'time', values: time, isCorrelated: false } }],
  },
  'quine: poisson': of('poisson', days),
  'quine: nb2': of('nb2', days),
  'quine: nb2 by glm.nb': of('nb2', days),
  'quine: nb2 with interaction': { ...of('nb2', days), ...designOf(quine.length, ...schools, crossed(eth, lrn)) },
  'salamanders: poisson': of('poisson', streams),
  'salamanders: nb1': of('nb1', streams),
  'salamanders: nb2': of('nb2', streams),
  'salamanders: poisson, zeros by mining': { ...of('poisson', streams), zerosBy: byMining },
  'salamanders: nb2, zeros by mining': { ...of('nb2', streams), zerosBy: byMining },
  'salamanders: nb2 with interaction': {
    ...of('nb2', streams),
    ...designOf(salamanders.length, spp, mined, crossed(spp, mined)),
  },
  'oilseed rape: poisson': of('poisson', watches),
  'oilseed rape: poisson by quadrature': { ...of('poisson', watches), nodes: 25 },
  'oilseed rape: nb1': of('nb1', watches),
  'oilseed rape: nb2': of('nb2', watches),
  'oilseed rape: nb2 by quadrature': { ...of('nb2', watches), nodes: 25 },
  'oilseed rape: nb2 with interaction': {
    ...of('nb2', watches),
    ...designOf(bees.length, group, location, crossed(group, location)),
  },
  'oilseed rape: nb2, quadrats in fields': {
    ...of('nb2', watches),
    groupings: [grouping(bees, 'quad:field', 'field', 'round', 'location', 'quadrat'), field],
  },
  'oilseed rape: nb2, flowers as effort': {
    ...of('nb2', watches),
    offset: minutes.map((value, i) => value + Math.log((flowers[i] ?? 0) / 6000)),
  },
  'oilseed rape: nb2, temperature': {
    family: 'nb2',
    counts: numbers(rape, 'honey').map((honey, i) => honey + (wild[i] ?? 0)),
    offset: logOf(numbers(rape, 'minutes'), 1),
    groupings: [grouping(rape, 'field', 'field')],
    ...designOf(
      rape.length,
      [['temp', temperature.map((degrees) => degrees - meanTemperature)]],
      factor(rape, 'location', ['Crop', 'Edge']),
      factor(rape, 'round', ['1', '2']),
    ),
  },
  'red clover: poisson by site': { ...of('poisson', clovers), groupings: [kinds.site] },
  'red clover: nb2 by site': { ...of('nb2', clovers), groupings: [kinds.site] },
  'red clover: nb2 by place': { ...of('nb2', clovers), groupings: [kinds.place] },
  'red clover: nb2 by place, interaction': {
    ...of('nb2', clovers),
    ...kinds.withInteraction,
    groupings: [kinds.place],
  },
  'red clover: poisson, observations': { ...of('poisson', clovers), groupings: [kinds.site, kinds.obs] },
  'red clover: nb2': of('nb2', clovers),
  'red clover: tongues': {
    family: 'nb2',
    counts: tongues.counts,
    offset: tongues.offset,
    ...tongues.withInteraction,
    groupings: [tongues.place],
  },
  'alpine: nb2': {
    family: 'nb2',
    counts: numbers(alps, 'visits'),
    offset: logOf(numbers(alps, 'seconds'), 3600),
    groupings: [grouping(alps, 'plot', 'plot')],
    ...designOf(alps.length, [
      ['alt100', altitude],
      ['tc', warmth],
    ]),
  },
  ...Object.fromEntries(fieldVisits),
  'field visits: nb1, slope': { family: 'nb1', counts: numbers(made, 'clumped'), groupings: [together], ...visited },
}
