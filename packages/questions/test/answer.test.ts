import type { Answer } from '@thrum/model'
import { describe, expect, it } from 'vitest'
import { questions, whatDiffers } from '../src/index.ts'
import { checkAnswer, shapeOf } from './answer-shape.ts'
import { isDesignSoundIn, whatDiffersIn, whoVisitsIn } from './ask.ts'
import { stripProject } from './projects.ts'

const snapshot = stripProject({ kinds: { bee: { ratio: 2, scatter: 0.4, mean: 10 }, fly: { ratio: 1 } }, assigned: 'chosen' })
const strips = { between: 'strip', levels: ['no', 'yes'], kinds: ['bee', 'fly'], worth: 2 } as const
const asked: { readonly [name: string]: (seed?: string) => Promise<Answer> } = {
  'who-visits': (seed) => whoVisitsIn(snapshot, { by: 'strip' }, seed),
  'what-differs': (seed) => whatDiffersIn(snapshot, strips, seed),
  'what-differs, kinds': (seed) => whatDiffersIn(snapshot, { between: 'kind', levels: ['bee', 'fly'], worth: 2 }, seed),
  'is-design-sound': (seed) => isDesignSoundIn(snapshot, { between: 'strip' }, seed),
}

describe('Answer, JSON version 1', () => {
  it.each(Object.entries(asked))('%s: what stands where, and numbers that JSON can hold', async (_, ask) => {
    checkAnswer(await ask())
  })

  it.each(Object.entries(asked))('%s: the same snapshot, options and seed give the same bytes', async (_, ask) => {
    expect(JSON.stringify(await ask('one'))).toBe(JSON.stringify(await ask('one')))
  })

  it('the seed stands in the recipe, and so do the options, in one order', async () => {
    const { receipt } = await whatDiffersIn(snapshot, strips, 'another seed')
    expect(receipt).toEqual({
      digest: snapshot.digest,
      options: { between: 'strip', kinds: ['bee', 'fly'], levels: ['no', 'yes'], worth: 2 },
      rows: { selected: 48, of: 48 },
      seed: 'another seed',
      random: 'xoshiro128++/sha256-fork/1',
      thrum: '0.0.0',
    })
    expect(Object.keys(receipt.options)).toEqual(['between', 'kinds', 'levels', 'worth'])
  })

  // Golden: what programs read from `--json` since version 1. A key that goes, or changes its type, needs a version 2.
  it('golden: its keys and their types', async () => {
    expect(shapeOf(await whatDiffersIn(snapshot, strips))).toMatchInlineSnapshot(`
      {
        "analyses": [
          {
            "analyses": [
              {
                "id": "string",
                "interval": "null",
                "label": "saying",
                "told": "saying",
                "value": "null",
                "verdict": "null",
              },
              {
                "id": "string",
                "interval": {
                  "high": "number",
                  "level": "number",
                  "low": "number",
                },
                "label": "saying",
                "told": "null",
                "value": "number",
                "verdict": "string",
              },
            ],
            "comparison": "saying",
            "fields": "number",
            "hangs": "boolean",
            "told": "saying",
          },
        ],
        "asked": "saying",
        "cautions": [
          {
            "code": "string",
            "cure": "saying",
            "evidence": [
              "string",
            ],
            "evidenceRows": "number",
            "severity": "string",
            "text": "saying",
          },
        ],
        "claims": {
          "canSay": [
            "saying",
          ],
          "cannotSay": [
            "saying",
          ],
        },
        "estimates": [
          {
            "counts": "string",
            "id": "string",
            "interval": {
              "high": "number",
              "level": "number",
              "low": "number",
            },
            "label": "saying",
            "method": "saying",
            "n": "number",
            "role": "string",
            "scale": "string",
            "unit": "saying",
            "value": "number",
            "verdict": "null",
          },
          {
            "counts": "string",
            "id": "string",
            "interval": {
              "high": "number",
              "level": "number",
              "low": "number",
            },
            "label": "saying",
            "method": "saying",
            "n": "number",
            "role": "string",
            "scale": "string",
            "unit": "saying",
            "value": "number",
            "verdict": "string",
          },
        ],
        "evidence": "string",
        "figures": [
          {
            "kind": "string",
            "points": [
              {
                "count": "number",
                "effort": "number",
                "field": "string",
                "kind": "string",
                "level": "string",
                "rate": "number",
              },
            ],
            "title": "saying",
            "unit": "saying",
          },
          {
            "band": {
              "high": "number",
              "low": "number",
            },
            "kind": "string",
            "rows": [
              {
                "high": "number",
                "label": "saying",
                "level": "number",
                "low": "number",
                "n": "number",
                "role": "string",
                "value": "number",
              },
            ],
            "scale": "string",
            "title": "saying",
            "unit": "saying",
          },
          {
            "band": {
              "high": "number",
              "low": "number",
            },
            "kind": "string",
            "rows": [
              {
                "high": "null",
                "label": "saying",
                "level": "number",
                "low": "null",
                "n": "number",
                "role": "string",
                "value": "null",
              },
              {
                "high": "number",
                "label": "saying",
                "level": "number",
                "low": "number",
                "n": "number",
                "role": "string",
                "value": "number",
              },
            ],
            "scale": "string",
            "title": "saying",
            "told": [
              "saying",
            ],
            "unit": "saying",
          },
        ],
        "headline": "saying",
        "method": {
          "checks": [
            "saying",
          ],
          "choices": [
            "saying",
          ],
          "equation": "string",
          "name": "saying",
          "references": [
            {
              "source": "string",
              "trust": "string",
            },
          ],
        },
        "next": [
          "saying",
        ],
        "question": "string",
        "receipt": {
          "digest": "string",
          "options": {
            "between": "string",
            "kinds": [
              "string",
            ],
            "levels": [
              "string",
            ],
            "worth": "number",
          },
          "random": "string",
          "rows": {
            "of": "number",
            "selected": "number",
          },
          "seed": "string",
          "thrum": "string",
        },
        "verdict": "string",
        "version": "number",
      }
    `)
  })
})

describe('the questions', () => {
  it('golden: their ids and options are words of the command line', () => {
    expect(questions.map(({ id, options }) => [id, Object.keys(options).join(' ')])).toMatchInlineSnapshot(`
      [
        [
          "who-visits",
          "kinds by field crop season where except unit window per",
        ],
        [
          "what-differs",
          "kinds between levels step since against field crop season where except unit window per worth expect worthSet looks",
        ],
        [
          "is-design-sound",
          "kinds between levels step since against field crop season where except unit window per worth",
        ],
      ]
    `)
  })

  it('each says what it needs, and explains each option', () => {
    for (const { needs, options } of questions) {
      expect(needs.length).toBeGreaterThan(0)
      for (const { explained } of Object.values(options)) expect(explained).toMatch(/^questions\/option\//u)
    }
  })

  it('a receipt is made of the answer alone: its recipe says which rows', async () => {
    const answer = await whatDiffersIn(snapshot, strips)
    const read = JSON.parse(JSON.stringify(answer)) as Answer
    const files = whatDiffers.receipt(snapshot, read).files
    expect(files).toEqual(whatDiffers.receipt(snapshot, answer).files)
    expect(files.map(({ name }) => name)).toEqual([
      'counts.csv',
      'design.csv',
      // A table for each model of counts: of the first kind, of the second.
      'model-1.csv',
      'model-per-flower-1.csv',
      'model-2.csv',
      'model-per-flower-2.csv',
      'receipt.R',
    ])
    // A row for each count and kind, and the header.
    expect(files[0]?.text.trimEnd().split('\r\n')).toHaveLength(97)
    expect(files.at(-1)?.text).toContain('check("ratio of bee, yes"')
    expect(files.at(-1)?.text).toContain('model("bee, yes: model", "model-1.csv", "')
  })
})
