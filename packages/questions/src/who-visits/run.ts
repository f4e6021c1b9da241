import type { Answer, Snapshot } from '@thrum/model'
import { type Saying, saying } from '@thrum/model/ground'
import { byGravity, comfortableFields, isBlocked, leastFields } from '@thrum/survey'
import { cautionOf } from '../contrast/cautions.ts'
import { recipeOf } from '../contrast/recipe.ts'
import type { Work } from '../question.ts'
import { cannotSay, canSay, headline } from './claims.ts'
import { rateEstimates, shareEstimates } from './estimates.ts'
import { figures } from './figures.ts'
import { clumped, outside } from './findings.ts'
import { fieldsOf, type VisitCase, visitCase, type WhoVisitsOptions } from './groups.ts'

const equations = {
  overFields: 'R = sum Y_f / sum E_f;  se = sqrt(F/(F-1) * sum (Y_f - R E_f)^2) / sum E;  limits R * exp(-/+ t(F-1) * se / R)',
  ofWatches: 'R = Y / E;  limits chi2(0.025, 2 Y) / (2 E) and chi2(0.975, 2 Y + 2) / (2 E)',
} as const

function nextSteps(asked: VisitCase, blocked: boolean): readonly Saying[] {
  const cures = asked.findings.flatMap(({ severity, cure }) => (severity === 'block' && cure !== null ? [cure] : []))
  if (blocked) return cures
  const fields = fieldsOf(asked.snapshot, Array.from(asked.selected.rows))
  if (fields < leastFields) return [saying('questions/who-visits/next/fields', { more: leastFields - fields })]
  return fields < comfortableFields
    ? [saying('questions/who-visits/next/few-fields', { fields })]
    : [saying('questions/who-visits/next/compare')]
}

/** Rates and shares of kinds, with the scatter between fields; one or two fields: these watches only. */
export async function runWhoVisits(snapshot: Snapshot, options: WhoVisitsOptions, work: Work): Promise<Answer> {
  const asked = visitCase(snapshot, options)
  await work.breathe()
  const findings = byGravity([...asked.findings, ...clumped(asked), ...outside(asked)])
  const blocked = isBlocked(findings)
  const estimates = asked.groups.flatMap((group) => [
    ...(blocked ? [] : rateEstimates(asked, group)),
    ...shareEstimates(group, asked.sightingsOnly),
  ])
  const grouped = asked.groups.reduce((sum, { rows }) => sum + rows.length, 0)
  const ungrouped = asked.selected.rows.length - grouped
  const homeless = asked.selected.rows.reduce((sum, row) => sum + ((snapshot.countField[row] ?? -1) < 0 ? 1 : 0), 0)
  const overFields = asked.groups.some(({ rates }) =>
    rates.some(({ rate }) => rate !== null && rate.fields.kind !== 'too-few-units'),
  )
  return {
    version: 1,
    question: 'who-visits',
    asked: saying('questions/who-visits/asked', {
      kinds: asked.kinds.map(({ label }) => label).join(', '),
      by: options.by ?? '',
      grouped: options.by === undefined ? 'no' : 'yes',
    }),
    verdict: blocked ? 'design-blocks' : null,
    evidence: 'counted',
    headline: headline(asked, blocked),
    claims: { canSay: canSay(asked, blocked), cannotSay: cannotSay(asked, blocked) },
    estimates,
    cautions: findings.map((finding) => cautionOf(snapshot, finding)),
    method: {
      name: saying(overFields ? 'questions/method/ratio-of-sums' : 'questions/method/poisson-watches'),
      equation: overFields ? equations.overFields : equations.ofWatches,
      choices: [
        saying(overFields ? 'questions/choice/rates-over-fields' : 'questions/choice/rates-of-watches'),
        ...(homeless > 0 ? [saying('questions/left-out/no-field', { counts: homeless, fields: '' })] : []),
        ...(ungrouped > 0 ? [saying('questions/left-out/no-level', { counts: ungrouped, fields: '' })] : []),
        ...(asked.selected.excepted > 0 ? [saying('questions/left-out/excepted', { counts: asked.selected.excepted })] : []),
      ],
      checks: asked.groups.flatMap(({ rates }) =>
        rates.flatMap(({ kind, rate }) =>
          rate?.dispersion == null
            ? []
            : [saying('questions/check/dispersion', { kind: kind.label, dispersion: rate.dispersion })],
        ),
      ),
      references: [
        {
          source: 'Cochran W.G. (1977) Sampling Techniques, 3rd ed., ch. 6 (ratio estimate), on the log scale.',
          trust: 'from memory',
        },
        {
          source: 'Garwood F. (1936) Fiducial limits for the Poisson distribution. Biometrika 28, 437-442.',
          trust: 'from memory',
        },
        {
          source: 'Goodman L.A. (1965) Simultaneous confidence intervals for multinomial proportions. Technometrics 7, 247-254.',
          trust: 'from memory',
        },
      ],
    },
    figures: figures(asked, estimates),
    next: nextSteps(asked, blocked),
    receipt: recipeOf(snapshot, options, asked.selected.rows.length, work),
  }
}
