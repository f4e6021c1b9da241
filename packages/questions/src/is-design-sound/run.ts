import type { Answer, Estimate, OptionsOf, Snapshot } from '@thrum/model'
import { type Saying, saying } from '@thrum/model/ground'
import { isBlocked, nuisanceSaying } from '@thrum/survey'
import { cautionOf } from '../contrast/cautions.ts'
import { type ContrastCase, contrastCase, kindsAsked, suggestedWorth } from '../contrast/contrast-case.ts'
import { contrastName } from '../contrast/phrases.ts'
import { finite } from '../contrast/ratio-estimate.ts'
import { recipeOf } from '../contrast/recipe.ts'
import type { Work } from '../question.ts'
import { contrastFigures } from '../what-differs/figures.ts'
import { reasons } from '../what-differs/headline.ts'
import type { isDesignSoundOptions } from './options.ts'

export type IsDesignSoundOptions = OptionsOf<typeof isDesignSoundOptions>

function inflations(asked: ContrastCase): readonly Estimate[] {
  return asked.tangles.found.map(
    ({ nuisances, inflation, level }): Estimate => ({
      id: `inflation/${nuisances.join('+')}`,
      label: saying('questions/estimate/inflation', {
        nuisances: nuisances.map(nuisanceSaying),
        levelA: asked.design.levels[0] ?? '',
        levelB: asked.design.levels[level] ?? '',
      }),
      value: finite(inflation),
      interval: { low: null, high: null, level: 0.95 },
      unit: saying('questions/unit/times'),
      scale: 'plain',
      n: asked.design.fields.length,
      counts: 'fields',
      method: saying('questions/method/inflation'),
      role: 'headline',
      verdict: null,
    }),
  )
}

function arms({ design }: ContrastCase): readonly Saying[] {
  const within = design.structure === 'within-fields' || design.structure === 'before-after'
  if (within)
    return [saying('questions/is-design-sound/pairs', { fields: design.fields.length, levels: design.levels.join(', ') })]
  return design.levels.map((level, k) =>
    saying('questions/is-design-sound/arm', { level, fields: design.fields.filter((field) => field.level === k).length }),
  )
}

/** The audit alone: what is tangled, missing or too few, before or after counting. Numbers of insects are not looked at. */
export async function runIsDesignSound(snapshot: Snapshot, options: IsDesignSoundOptions, work: Work): Promise<Answer> {
  const worth = options.worth ?? suggestedWorth(kindsAsked(options))
  const asked = contrastCase(snapshot, options, worth)
  await work.breathe()
  const blocked = isBlocked(asked.findings)
  const warned = asked.findings.filter(({ severity }) => severity === 'warn').length
  const values = {
    contrast: contrastName(asked),
    watches: asked.design.rows.length,
    fields: asked.design.fields.length,
    warnings: warned,
    arms: arms(asked),
  }
  const cures = asked.findings.flatMap(({ severity, cure }) => (severity !== 'note' && cure !== null ? [cure] : []))
  const id = blocked ? 'blocked' : warned > 0 ? 'warned' : 'sound'
  return {
    version: 1,
    question: 'is-design-sound',
    asked: saying('questions/is-design-sound/asked', values),
    verdict: blocked ? 'design-blocks' : null,
    evidence: 'counted',
    headline: saying(`questions/is-design-sound/headline/${id}`, { ...values, reasons: reasons(asked.findings) }),
    claims: {
      canSay: [
        saying('questions/is-design-sound/can-say/design', values),
        ...(blocked
          ? [saying(`questions/is-design-sound/can-say/${snapshot.tables.tally.rows === 0 ? 'planned' : 'describe'}`)]
          : [saying('questions/is-design-sound/can-say/compare', values)]),
      ],
      cannotSay: blocked
        ? [saying('questions/is-design-sound/cannot-say/credit', values)]
        : [saying('questions/is-design-sound/cannot-say/enough')],
    },
    estimates: inflations(asked),
    cautions: asked.findings.map((finding) => cautionOf(snapshot, finding)),
    method: {
      name: saying('questions/method/inflation'),
      equation: "inflation = [(X1'X1)^-1]_cc / [(X0'X0)^-1]_cc = 1 / (1 - R2)",
      choices: [
        saying(`questions/choice/structure/${asked.design.structure}`, { fields: asked.design.fields.length }),
        saying(options.worth === undefined ? 'questions/choice/worth-suggested' : 'questions/choice/worth', { worth }),
      ],
      checks: [saying('questions/check/thresholds')],
      references: [
        {
          source:
            'Hurlbert S.H. (1984) Pseudoreplication and the design of ecological field experiments. Ecol. Monogr. 54, 187-211.',
          trust: 'from memory',
        },
      ],
    },
    figures: contrastFigures(asked, [], []).filter(({ kind }) => kind === 'strips'),
    next: [...new Map(cures.map((cure) => [JSON.stringify(cure), cure])).values()],
    receipt: recipeOf(snapshot, options, asked.design.rows.length, work),
  }
}
