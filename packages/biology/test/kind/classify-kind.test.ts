import { describe, expect, it } from 'vitest'
import { classifyKind } from '../../src/kind/classify-kind.ts'

const classOf = (label: string): string => {
  const got = classifyKind(label)
  return got.kind === 'proposed' ? got.kindClass : got.kind
}

describe('classifyKind', () => {
  it.each([
    [
      'honey-bee',
      [
        'honey bee',
        'Honey bees',
        'honeybee',
        'HONEYBEES',
        'Apis mellifera',
        'A_mellifera',
        'A. mellifera',
        'apis',
        'honungsbi',
        'Honungsbin',
        'honningbier',
        'Honigbiene',
        'abeja de la miel',
        'abeille mellifère',
        'count_honeybee',
      ],
    ],
    [
      'bumble-bee',
      [
        'bumble bee',
        'bumblebees',
        'Bombus',
        'Bombus spp.',
        'B_terrestris',
        'B. lapidarius',
        'humla',
        'humlor',
        'humlebi',
        'Hummeln',
        'abejorro',
        'bourdons',
        'BumbleBees',
        'Bombus terrestris/lucorum (bumblebees)',
      ],
    ],
    [
      'solitary-bee',
      [
        'wild bees',
        'solitary bees',
        'small solitary bee',
        'Andrena',
        'Osmia bicornis',
        'Halictidae',
        'mason bee',
        'other bees',
        'non-Apis bees',
        'wild (non-honey) bees',
        'vildbin',
        'solitärbi',
        'Wildbienen',
        'abejas silvestres',
        'abeilles sauvages',
        'native_bees',
        'wildBees',
      ],
    ],
    [
      'hover-fly',
      [
        'hover flies',
        'hoverfly',
        'syrphid',
        'Syrphids',
        'syrhipds',
        'Syrphidae',
        'drone fly',
        'Eristalis tenax',
        'eristalis',
        'blomfluga',
        'Blomflugor',
        'svirrefluer',
        'Schwebfliegen',
        'sírfidos',
        'syrphes',
        'Episyrphus balteatus',
        'other hover flies',
        'honey-coloured hover fly',
      ],
    ],
    ['butterfly', ['butterflies', 'Lepidoptera', 'moths', 'fjärilar', 'sommerfugle', 'Schmetterlinge', 'mariposas', 'papillons']],
    ['beetle', ['beetles', 'Coleoptera', 'pollen beetle', 'skalbaggar', 'biller', 'Käfer', 'escarabajos', 'coléoptères']],
    [
      'other',
      [
        'other',
        'wasps',
        'flies',
        'Diptera',
        'ants',
        'bee fly',
        'Bombylius',
        'non-syrphid flies',
        'övriga',
        'andere',
        'otros',
        'mouches',
        'Wespen',
      ],
    ],
  ])('%s', (kindClass, labels) => {
    expect(labels.map((label) => [label, classOf(label)])).toEqual(labels.map((label) => [label, kindClass]))
  })

  it('tells which words led there, and what such a label often holds', () => {
    expect(classifyKind('Wild bees (all)')).toEqual({
      kind: 'proposed',
      kindClass: 'solitary-bee',
      because: 'wild bees',
      mayInclude: ['bumble-bee'],
    })
    expect(classifyKind('A_mellifera')).toEqual({
      kind: 'proposed',
      kindClass: 'honey-bee',
      because: 'mellifera',
      mayInclude: [],
    })
    expect(classifyKind('small solitary bees')).toMatchObject({ because: 'small solitary bees', mayInclude: [] })
  })

  it('does not choose between several classes', () => {
    expect(classifyKind('honey bees and bumble bees')).toEqual({ kind: 'ambiguous', candidates: ['honey-bee', 'bumble-bee'] })
    expect(classifyKind('beetles + butterflies').kind).toBe('ambiguous')
  })

  it.each([
    'bees',
    'bee',
    'Bin',
    'abejas',
    'total',
    '',
    '   ',
    '12',
    'species 7',
    'bee-like flies',
    'bumble bee mimics',
    'drone',
    'visits',
    'temperature',
    'plant',
    'field',
  ])('does not guess at "%s"', (label) => {
    expect(classifyKind(label)).toEqual({ kind: 'not-recognised' })
  })
})
