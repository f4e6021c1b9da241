import { type Answer, type Estimate, isoDate, type OptionsOf, type Snapshot } from '@thrum/model'
import { type Saying, saying, ThrumError } from '@thrum/model/ground'
import { contrastCautions } from '../contrast/cautions.ts'
import { type ContrastCase, contrastCase, countsAlone, kindsAsked, suggestedWorth } from '../contrast/contrast-case.ts'
import { contrastEstimates } from '../contrast/estimates.ts'
import { nextSteps } from '../contrast/next-steps.ts'
import type { PairVerdict } from '../contrast/pair-verdict.ts'
import { permutationsOf } from '../contrast/permutation.ts'
import { contrastName, levelNames } from '../contrast/phrases.ts'
import { recipeOf } from '../contrast/recipe.ts'
import { relativeEstimates, relativeOffer, shareEstimates } from '../contrast/relative-offer.ts'
import type { Work } from '../question.ts'
import { combineVerdicts } from '../verdict/read-verdict.ts'
import { comparedBy } from './analyses-told.ts'
import { type BlockedCounts, claimsOf, noGain } from './claims.ts'
import { contrastFigures } from './figures.ts'
import { headlineOf, refusalSaying } from './headline.ts'
import { analyseOtherwise, judgeContrast } from './judged.ts'
import { methodOf } from './method.ts'
import type { whatDiffersOptions } from './options.ts'
import { peeks } from './peeks.ts'
import { sensitivityOf } from './sensitivity.ts'
import { fairMeasure } from './variants.ts'

export type WhatDiffersOptions = OptionsOf<typeof whatDiffersOptions>

/** @throws ThrumError questions/worth-needed, naming the suggested S: it has no silent default */
export function requireWorth(options: WhatDiffersOptions): number {
  if (options.worth !== undefined) return options.worth
  throw new ThrumError('questions/worth-needed', { suggested: suggestedWorth(kindsAsked(options)) })
}

export function askedSaying(asked: ContrastCase): Saying {
  const { design, against } = asked
  const values = {
    kinds: asked.kinds.map(({ kind }) => kind.label).join(', '),
    many: asked.kinds.length > 1 ? 'yes' : 'no',
    contrast: contrastName(asked),
    levels: design.levels.map((level) => saying('text', { text: level })),
    date: design.since === null ? '' : isoDate(design.since),
    against: against === null ? '' : saying('questions/what-differs/asked/against', { kind: against.kind.label }),
  }
  if (design.measured !== null) {
    return saying('questions/what-differs/asked/slope', {
      ...values,
      name: design.measured.name,
      step: levelNames(asked, 1).levelB,
    })
  }
  if (design.factor === null) return saying('questions/what-differs/asked/since', values)
  return saying(
    design.structure === 'before-after-control' ? 'questions/what-differs/asked/since-by' : 'questions/what-differs/asked',
    values,
  )
}

const refusalOf = (own: PairVerdict): Saying | null => (own.pair.kind === 'refused' ? refusalSaying(own.pair.refusal) : null)

function blockedCounts(snapshot: Snapshot, asked: ContrastCase, options: WhatDiffersOptions): BlockedCounts {
  const alone = countsAlone(snapshot, asked, options)
  return { asked: alone, offer: relativeOffer(alone) }
}

const countsEstimates = ({ asked, offer }: BlockedCounts): readonly Estimate[] => [
  ...(offer === null ? [] : relativeEstimates(offer, asked.design.rows.length)),
  ...shareEstimates(asked),
]

/** A contrast between levels of anything recorded: the audit first, then the field-level t, then the verdict rule. */
export async function runContrast(snapshot: Snapshot, options: WhatDiffersOptions, work: Work): Promise<Answer> {
  const asked = fairMeasure(snapshot, contrastCase(snapshot, options, requireWorth(options)), options)
  await work.breathe()
  const judged = judgeContrast(snapshot, asked, options)
  const { variants, found, fits } = judged
  const verdict = combineVerdicts(found.map((own) => own.verdict))
  const blocked = verdict === 'design-blocks' ? blockedCounts(snapshot, asked, options) : null
  const sensitivity = sensitivityOf(asked, found, fits)
  const tests = permutationsOf(asked, found, work.rng)
  await work.breathe()
  const made = analyseOtherwise(snapshot, asked, options, judged)
  const compared = found.flatMap((own, k) => {
    const analyses = made[k] ?? null
    return analyses === null ? [] : [comparedBy(asked, own, analyses, tests[k] ?? null)]
  })
  const estimates = [
    ...contrastEstimates(asked, found),
    ...variants.estimates,
    ...sensitivity.estimates,
    ...(blocked === null ? [] : countsEstimates(blocked)),
  ]
  const notes = [
    ...(options.worthSet === 'after-looking' ? [saying('questions/headline/worth-after-look', { worth: asked.worth })] : []),
    ...found.flatMap((own) => noGain(asked, own, options.expect) ?? []),
  ]
  return {
    version: 1,
    question: 'what-differs',
    asked: askedSaying(asked),
    verdict,
    evidence: 'counted',
    headline: headlineOf(asked, found, notes),
    claims: claimsOf(asked, found, blocked, options.expect),
    estimates,
    ...(compared.length === 0 ? {} : { analyses: compared }),
    cautions: contrastCautions(asked, found, refusalOf, [
      ...variants.findings,
      ...sensitivity.findings,
      ...peeks(snapshot, options.looks),
    ]),
    method: methodOf(asked, found, tests),
    figures: contrastFigures(asked, estimates, compared),
    next: nextSteps(asked, found),
    receipt: recipeOf(snapshot, options, asked.design.rows.length, work),
  }
}
