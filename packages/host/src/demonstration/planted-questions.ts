import type { Verdict } from '@thrum/model'
import { firstFadingDate } from './calendar.ts'
import { stripFactor, stripLevels } from './planted-nouns.ts'
import { bumbleBee, honeyBee, hoverFly, smallSolitaryBee } from './planted-truths.ts'

/** Options of the question `what-differs`, as far as the planted contrasts use them. */
export interface PlantedOptions {
  readonly kinds: readonly string[]
  readonly between?: string
  /** The reference first. */
  readonly levels?: readonly string[]
  readonly since?: string
  readonly where?: readonly string[]
  readonly except?: readonly string[]
  readonly worth: number
}

/** A contrast that was planted, and the verdict that it was planted for. */
export interface PlantedQuestion {
  readonly id: string
  readonly question: 'what-differs'
  readonly options: PlantedOptions
  /** Kind whose verdict was planted, among those asked. */
  readonly kind: string
  readonly verdict: Verdict
  /** Share of seeds that give the verdict, as computed when the plan of the valley was drawn up. */
  readonly promised: number
}

/**
 * The smallest ratio worth acting on: for one kind, for honey bees by hour, and for kinds that are asked together. With 2 for
 * the last the interval of hover flies would lie inside the band, `alike`, in one valley of six.
 */
const worth = { oneKind: 2, byHour: 1.5, together: 1.5 } as const

/** Strips are compared without sunflower's days 4 and 5 of season 2, on which hives were moved while the bloom faded. */
const strips = { between: stripFactor, levels: stripLevels, except: ['crop=sunflower', `date>=${firstFadingDate}`] } as const

export const plantedQuestions: readonly PlantedQuestion[] = [
  {
    id: 'strips/bumble-bees',
    question: 'what-differs',
    options: { kinds: [bumbleBee.name], ...strips, worth: worth.oneKind },
    kind: bumbleBee.name,
    verdict: 'shown',
    promised: 0.998,
  },
  {
    id: 'afternoon/honey-bees',
    question: 'what-differs',
    options: { kinds: [honeyBee.name], between: 'daypart', levels: ['morning', 'afternoon'], worth: worth.byHour },
    kind: honeyBee.name,
    verdict: 'alike',
    promised: 0.998,
  },
  {
    id: 'strips/other-kinds',
    question: 'what-differs',
    options: { kinds: [hoverFly.name, honeyBee.name, smallSolitaryBee.name], ...strips, worth: worth.together },
    kind: hoverFly.name,
    verdict: 'unsettled',
    promised: 0.968,
  },
  {
    id: 'hives-moved/honey-bees',
    question: 'what-differs',
    options: { kinds: [honeyBee.name], since: firstFadingDate, where: ['crop=sunflower', 'season=2032'], worth: worth.oneKind },
    kind: honeyBee.name,
    verdict: 'design-blocks',
    promised: 1,
  },
  {
    id: 'strips-in-sunflower/bumble-bees',
    question: 'what-differs',
    options: {
      kinds: [bumbleBee.name],
      between: stripFactor,
      levels: stripLevels,
      where: ['crop=sunflower'],
      worth: worth.oneKind,
    },
    kind: bumbleBee.name,
    verdict: 'design-blocks',
    promised: 1,
  },
  {
    id: 'edge/small-solitary-bees',
    question: 'what-differs',
    options: { kinds: [smallSolitaryBee.name], between: 'position', levels: ['centre', 'edge'], worth: worth.oneKind },
    kind: smallSolitaryBee.name,
    verdict: 'shown',
    promised: 0.994,
  },
]
