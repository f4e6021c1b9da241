import type { Method } from '@thrum/model'
import { type Saying, saying } from '@thrum/model/ground'
import { holm } from '@thrum/stats'
import { nuisanceSaying } from '@thrum/survey'
import type { ContrastCase } from '../contrast/contrast-case.ts'
import type { PairVerdict } from '../contrast/pair-verdict.ts'
import type { TestedPermutation } from '../contrast/permutation.ts'

const equations = {
  'between-fields':
    'z_f = ln((Y_f + 0.5) / e_f);  z = a + blocks + nuisances + b * level;  ratio = exp(b), limits exp(b -/+ t(df) * se)',
  'within-fields':
    'd_f = z_f,level - z_f,reference;  one-sample t of d over fields;  ratio = exp(mean d), df = fields - 1 - nuisances',
  'before-after':
    'd_f = z_f,after - z_f,before;  one-sample t of d over fields;  ratio = exp(mean d), df = fields - 1 - nuisances',
  'before-after-control':
    'd_f = z_f,after - z_f,before;  d = a + blocks + nuisances + b * level;  ratio = exp(b), limits exp(b -/+ t(df) * se)',
} as const

const slopeEquations = {
  between: 'z_f = ln((Y_f + 0.5) / e_f);  z = a + blocks + nuisances + b * x;  ratio per step = exp(b * step)',
  within: 'a least-squares slope of z on x for each field;  one-sample t of the slopes;  ratio per step = exp(mean * step)',
} as const

const thinnedEquation =
  'h_f(r) = E ln(Bin(Y_f, q_f) + 1), q_f = least exposure / (e_f * r at the level asked);  then as for rates with h for z;  limits: the r at which t = -/+ t(df)'

const relativeEquation = 'z_f = ln((A_f + 0.5) / (B_f + 0.5));  then as for rates'

function permutationSayings(found: readonly PairVerdict[], tests: readonly (TestedPermutation | null)[]): readonly Saying[] {
  return found.flatMap(({ kind }, k): readonly Saying[] => {
    const test = tests[k] ?? null
    if (test === null) return []
    return [
      saying('questions/check/permutation', {
        kind: kind.kind.label,
        p: test.p,
        smallest: test.smallestP,
        arrangements: test.looked,
        how: saying(`questions/check/permutation/${test.method}`),
      }),
    ]
  })
}

function holmSaying(found: readonly PairVerdict[]): readonly Saying[] {
  const tested = found.flatMap(({ kind, pair }) =>
    pair.kind === 'estimated' ? [{ kind: kind.kind.label, p: pair.contrast.p }] : [],
  )
  if (tested.length < 2) return []
  const adjusted = holm(tested.map(({ p }) => p))
  return [
    saying('questions/check/holm', {
      each: tested.map(({ kind }, k) => saying('questions/check/holm-one', { kind, p: adjusted[k] ?? 1 })),
    }),
  ]
}

/** A primary kind among several is judged by itself, and that is said. */
function primaryChoice({ primary }: ContrastCase, found: readonly PairVerdict[], together: number): readonly Saying[] {
  const own = found.find(({ kind }) => kind.kind.label === primary)
  if (own === undefined || own.contrasts === together) return []
  return [saying('questions/choice/primary', { kind: own.kind.kind.label, contrasts: own.contrasts })]
}

function choices(asked: ContrastCase, found: readonly PairVerdict[]): readonly Saying[] {
  const { design } = asked
  const adjusted = [...new Set(found.flatMap(({ pair }) => (pair.kind === 'estimated' ? pair.adjusted : [])))]
  const notAdjusted = found.flatMap(({ pair }) => (pair.kind === 'estimated' ? pair.notAdjusted : []))
  // A kind declared primary is asked alone; the others are asked together all the same.
  const together = found.reduce((most, { contrasts }) => Math.max(most, contrasts), 1)
  const once = [...new Map(notAdjusted.map((own) => [`${own.name}/${own.because}`, own])).values()]
  return [
    saying(`questions/choice/structure/${design.structure}`, { fields: design.fields.length }),
    ...(design.structure !== 'within-fields' && design.structure !== 'before-after' && design.blocks.length > 1
      ? [saying('questions/choice/blocks', { blocks: design.blocks.join(', ') })]
      : []),
    ...(adjusted.length > 0 ? [saying('questions/choice/adjusted', { nuisances: adjusted.map(nuisanceSaying) })] : []),
    ...once.map(({ name, because }) => saying(`questions/choice/not-adjusted/${because}`, { nuisance: nuisanceSaying(name) })),
    ...(together > 1 ? [saying('questions/choice/several', { contrasts: together })] : []),
    ...primaryChoice(asked, found, together),
    ...(asked.early ? [saying('questions/choice/early')] : []),
    ...(asked.snapshot.plan === null ? [saying('questions/choice/no-plan')] : []),
    ...design.leftOut.map(({ because, rows, fields }) =>
      saying(`questions/left-out/${because}`, { counts: rows.length, fields: fields.join(', ') }),
    ),
    ...(asked.selected.excepted > 0 ? [saying('questions/left-out/excepted', { counts: asked.selected.excepted })] : []),
    ...(design.measured === null
      ? []
      : [
          saying(`questions/choice/measured/${design.measured.scale}`, {
            name: design.measured.name,
            step: design.measured.step,
          }),
        ]),
    ...thinnedChoice(found),
    saying('questions/choice/worth', { worth: asked.worth }),
  ]
}

/** Which comparisons thinning decides, and why. */
function thinnedChoice(found: readonly PairVerdict[]): readonly Saying[] {
  const kinds = found.flatMap(({ kind, pair }) => (pair.kind === 'estimated' && pair.isThinned ? [kind.kind.label] : []))
  return kinds.length === 0 ? [] : [saying('questions/choice/thinned', { kinds: [...new Set(kinds)].join(', ') })]
}

export function methodOf(
  asked: ContrastCase,
  found: readonly PairVerdict[],
  tests: readonly (TestedPermutation | null)[],
): Method {
  const equation =
    asked.design.measured === null
      ? equations[asked.design.structure]
      : slopeEquations[asked.design.structure === 'within-fields' ? 'within' : 'between']
  const rates = found.flatMap(({ pair }) => (pair.kind === 'estimated' ? [pair.isThinned] : []))
  const thinned = asked.against === null ? rates.filter(Boolean).length : 0
  const all = thinned > 0 && thinned === rates.length
  const name = asked.against !== null ? 'relative-t' : all ? 'thinned' : 'field-t'
  const ofRates = thinned === 0 ? equation : `${equation};  ${thinnedEquation}`
  return {
    name: saying(`questions/method/${name}`),
    equation: asked.against === null ? ofRates : `${relativeEquation}: ${equation}`,
    choices: choices(asked, found),
    checks: [
      ...permutationSayings(found, tests),
      ...holmSaying(found),
      ...(found.some(({ pair }) => pair.kind === 'estimated')
        ? [
            saying(
              asked.against === null && asked.design.measured === null
                ? 'questions/check/coverage/rates'
                : 'questions/check/coverage',
            ),
          ]
        : []),
    ],
    references: [
      { source: 'Student (1908) The probable error of a mean. Biometrika 6, 1-25.', trust: 'from memory' },
      {
        source:
          'Anscombe F.J. (1948) The transformation of Poisson, binomial and negative-binomial data. Biometrika 35, 246-254.',
        trust: 'from memory',
      },
      {
        source:
          'Hurlbert S.H. (1984) Pseudoreplication and the design of ecological field experiments. Ecol. Monogr. 54, 187-211.',
        trust: 'from memory',
      },
      ...(asked.design.structure === 'before-after-control'
        ? [
            {
              source: 'Stewart-Oaten A. et al. (1986) Environmental impact assessment. Ecology 67, 929-940.',
              trust: 'from memory' as const,
            },
          ]
        : []),
    ],
  }
}
