/**
 * Everything that is planted in the demonstration project Ostrel Vale, each truth by its name. The valley, its fields and its
 * numbers are invented: none of them is taken from a survey, so none has a source. They were chosen so that each of the five
 * verdicts that a design of this size can reach is reached by an honest route.
 */

/** A kind as it is tapped in the valley, and what is true of it. */
export interface PlantedKind {
  readonly name: string
  /** Scientific name, where the kind is one taxon. */
  readonly taxon: string | null
  /** Class of insect, in words. */
  readonly group: string
  /** Expected number in a count at a centre plot without strip, in season 1, seen by observer 1 [individuals in 10 minutes]. */
  readonly mean: number
  /** NB2 dispersion of single counts: variance = mean + mean^2 / theta. */
  readonly theta: number
  /** Ratio of fields with a flower strip to fields without. */
  readonly stripRatio: number
  /** Ratio of edge plots to centre plots, and the SD of its log between fields. */
  readonly edgeRatio: number
  readonly edgeSd: number
  /** Ratio of afternoon counts to morning counts. */
  readonly afternoonRatio: number
  /** Share of the insects there that observer 2 records; observer 1 records all. */
  readonly seenByObserver2: number
}

const evenly = { stripRatio: 1, edgeRatio: 1, edgeSd: 0, afternoonRatio: 1, seenByObserver2: 1 } as const

export const honeyBee: PlantedKind = {
  ...evenly,
  name: 'honey bee',
  taxon: 'Apis mellifera',
  group: 'honey bee',
  mean: 18,
  theta: 10,
}

export const bumbleBee: PlantedKind = {
  ...evenly,
  name: 'bumble bee',
  taxon: 'Bombus',
  group: 'bumble bee',
  mean: 12,
  theta: 10,
  stripRatio: 3,
}

export const smallSolitaryBee: PlantedKind = {
  ...evenly,
  name: 'small solitary bee',
  taxon: null,
  group: 'solitary bee',
  mean: 1.5,
  theta: 3,
  edgeRatio: 2.5,
  edgeSd: 0.25,
  seenByObserver2: 0.7,
}

export const hoverFly: PlantedKind = {
  ...evenly,
  name: 'hover fly',
  taxon: 'Syrphidae',
  group: 'hover fly',
  mean: 1.5,
  theta: 2,
}

export const plantedKinds: readonly PlantedKind[] = [honeyBee, bumbleBee, smallSolitaryBee, hoverFly]

/** Declared primary before counting began. */
export const primaryKind = bumbleBee.name

/** SD of the log of what fields have of their own, drawn for each kind. */
export const fieldSd = 0.2
/** SD of the log of what a field has of its own in one season. */
export const fieldSeasonSd = 0.08
/** SD of the log of what both counts of one visit share. */
export const visitSd = 0.15
/** Ratio of season 2 to season 1, for every kind. */
export const seasonRatio = 1.15

/** The move of hives in sunflower, season 2, between days 3 and 4. What falls is the bloom; the move itself does nothing. */
export const hiveMove = {
  metresBefore: 300,
  metresAfter: 10,
  /** Hives at each sunflower field. */
  hives: 20,
  /** Ratio that the move itself makes. */
  hiveRatio: 1,
  /** Ratio that the fading of the bloom makes on days 4 and 5, for every kind and for open flowers. */
  fade: 0.35,
  stageBefore: 65,
  stageAfter: 67,
} as const

/** Hives near the cherry orchards: far, and never moved. */
export const cherryHives = { hives: 12, metres: 1500 } as const

/** What the second look at vouchers finds. */
export const droneFly = 'drone fly'
/** Share of honey bee taps in sunflower that are drone flies. */
export const droneFlyShare = 0.12

/** Vouchers drawn at random among the taps of a kind in a crop: 120 in all. */
export const vouchersDrawn: readonly { readonly kind: string; readonly sweetCherry: number; readonly sunflower: number }[] = [
  { kind: honeyBee.name, sweetCherry: 20, sunflower: 50 },
  { kind: bumbleBee.name, sweetCherry: 10, sunflower: 10 },
  { kind: smallSolitaryBee.name, sweetCherry: 9, sunflower: 9 },
  { kind: hoverFly.name, sweetCherry: 6, sunflower: 6 },
]

/** Days a season between the bloom of cherry and that of sunflower on which nothing else blooms within reach of a field. */
export const foodShortDays = 24

/** Share of flowers that set a fruit or seed, by what was done to them; weight of one fruit or seed [g]. */
export const plantedSet = {
  'sweet cherry': { open: 0.3, bagged: 0.02, hand: 0.38, weight: 9 },
  sunflower: { open: 0.66, bagged: 0.18, hand: 0.75, weight: 0.055 },
} as const
/** SD of the logit of set between plants. */
export const plantSd = 0.25
