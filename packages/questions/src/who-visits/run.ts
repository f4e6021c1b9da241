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
import { type VisitCase, visitCase, type WhoVisitsOptions } from './groups.ts'

function nextSteps(asked: VisitCase, blocked: boolean): readonly Saying[] {
  const cures = asked.findings.flatMap(({ severity, cure }) => (severity === 'block' && cure !== null ? [cure] : []))
  if (blocked) return cures
  const fields = new Set(Array.from(asked.selected.rows, (row) => asked.snapshot.countField[row])).size
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
      name: saying('questions/method/ratio-of-sums'),
      equation: 'R = sum Y_f / sum E_f;  se = sqrt(F/(F-1) * sum (Y_f - R E_f)^2) / sum E;  limits R * exp(-/+ t(F-1) * se / R)',
      choices: [
        saying('questions/choice/rates-over-fields'),
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
