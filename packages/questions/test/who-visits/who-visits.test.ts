import { describe, expect, it } from 'vitest'
import { projectOfCounts } from '../../../survey/test/project-of-counts.ts'
import { checkAnswer } from '../answer-shape.ts'
import { cannotSay, canSay, headlineIn, said, stoppedBy, whatDiffersIn, whoVisitsIn } from '../ask.ts'
import { stripProject } from '../projects.ts'

describe('who-visits', () => {
  const snapshot = stripProject({ arm: 3, kinds: { bee: { ratio: 1, mean: 10 }, fly: { ratio: 1, mean: 5 } } })

  it('over fields: the commonest kind, its rate and its share, with the number of fields', async () => {
    const answer = await whoVisitsIn(snapshot)
    expect(headlineIn(answer)).toMatch(
      /^Most frequent: bee \d\d(\.\d)? per hour \(.* to .*; 6 fields\); \d\d\u00a0% of all visitors \(.*\)\.$/u,
    )
    expect(answer.verdict).toBeNull()
    expect(
      answer.estimates.filter(({ role }) => role === 'headline').map(({ id, n, counts }) => `${id}: ${n} ${counts}`),
    ).toEqual(['rate/bee: 6 fields', 'rate/fly: 6 fields', 'share/bee: 6 fields', 'share/fly: 6 fields'])
    expect(cannotSay(answer)).toEqual(['How much of the pollination each kind does: visits are not pollination.'])
    checkAnswer(answer)
  })

  it('the rate is what was counted over what was watched, per hour', async () => {
    const answer = await whoVisitsIn(snapshot, { kinds: ['bee'] })
    const { values } = snapshot.tables.tally.columns.number
    const bees = Array.from(values).filter((_, row) => snapshot.kinds[snapshot.tallyKind[row] ?? -1]?.name === 'bee')
    const total = bees.reduce((sum, value) => sum + value, 0)
    expect(answer.estimates[0]?.value).toBeCloseTo(total / ((24 * 10) / 60), 10)
  })

  it('by field: a group each, these watches only; to compare them is another question', async () => {
    const answer = await whoVisitsIn(snapshot, { by: 'field', kinds: ['bee'] })
    expect(headlineIn(answer)).toBe('24 counts in 6 groups; the rates stand below.')
    expect(canSay(answer).filter((own) => own.includes('these minutes only'))).toHaveLength(6)
    expect(cannotSay(answer)).toContain('That groups differ: compare them with what-differs, which looks at the design first.')
    checkAnswer(answer)
  })

  it('one field and two watches get an answer: in this field, on these days', async () => {
    const small = stripProject({ arm: 1, kinds: { bee: { ratio: 1, mean: 10 } }, change: () => ({ field: 'Weir' }) })
    const answer = await whoVisitsIn(small)
    expect(canSay(answer)[0]).toBe('In 8 watches of one field we counted bee 72.')
    expect(canSay(answer)[1]).toMatch(/8 watches, these minutes only/u)
    expect(cannotSay(answer)[0]).toContain('with fewer than three fields')
    expect(answer.next.map(said)).toEqual(['2 more fields would let the rate speak for fields like these.'])
    checkAnswer(answer)
  })

  it('counts of no known field are no field of their own, and shares tell how many watches they rest on', async () => {
    const homeless = stripProject({
      arm: 1,
      kinds: { bee: { ratio: 1, mean: 10 }, fly: { ratio: 1, mean: 5 } },
      change: (row, k) => ({
        field: k % 4 === 0 ? undefined : 'Weir',
        ...(k === 1 ? { tallies: { bee: 3 } } : {}),
        ...(row && {}),
      }),
    })
    const answer = await whoVisitsIn(homeless)
    expect(canSay(answer)[0]).toContain('In 8 watches of one field')
    expect(answer.method.choices.map(said).join(' ')).toContain('2 counts name no field; left out.')
    expect(answer.method.name.id).toBe('questions/method/poisson-watches')
    // Six of a known field, in one of which flies were not looked for.
    expect(answer.estimates.find(({ id }) => id === 'share/bee')).toMatchObject({ n: 5, counts: 'watches' })
    checkAnswer(answer)
  })

  it('nobody wrote down how long they watched: no rate, shares all the same', async () => {
    const untimed = stripProject({ arm: 3, kinds: { bee: { ratio: 1 }, fly: { ratio: 1 } }, change: () => ({ minutes: null }) })
    const answer = await whoVisitsIn(untimed)
    expect(answer.verdict).toBe('design-blocks')
    expect(headlineIn(answer)).toBe(
      'No rate can be given: watched minutes are not recorded. Shares among what was seen stand below.',
    )
    expect(answer.estimates.map(({ id }) => id)).toEqual(['share/bee', 'share/fly'])
    expect(canSay(answer)).toHaveLength(2)
    expect(canSay(answer)[0]).toMatch(/^In 24 watches of 6 fields we counted bee \d+, fly \d+\.$/u)
    checkAnswer(answer)
  })

  it('some counts lack their minutes: what is blocked is not said either', async () => {
    const half = stripProject({
      arm: 3,
      kinds: { bee: { ratio: 1 }, fly: { ratio: 1 } },
      change: (_, k) => (k < 12 ? { minutes: null } : {}),
    })
    const answer = await whoVisitsIn(half)
    const rates = canSay(answer).filter((own) => own.includes('per hour'))
    expect(rates).toHaveLength(answer.verdict === null ? 1 : 0)
    checkAnswer(answer)
  })

  it('none was seen: at most so many, and never a rate of nothing without its limit', async () => {
    const answer = await whoVisitsIn(stripProject({ arm: 3, kinds: { bee: { ratio: 1, mean: 0 } } }))
    expect(headlineIn(answer)).toBe('None of these kinds was counted in 24 watches.')
    expect(canSay(answer).join(' ')).toMatch(/bee: none seen, at most \S+ per hour/u)
    checkAnswer(answer)
  })

  it('counts without the level asked about are left out, and told', async () => {
    const some = stripProject({ arm: 3, kinds: { bee: { ratio: 1 } }, change: (_, k) => (k < 4 ? { strip: null } : {}) })
    const answer = await whoVisitsIn(some, { by: 'strip' })
    expect(answer.method.choices.map(said)).toContain('4 counts have no level recorded; left out.')
    expect(
      await stoppedBy(
        whoVisitsIn(stripProject({ kinds: { bee: { ratio: 1 } }, change: () => ({ strip: null }) }), { by: 'strip' }),
      ),
    ).toEqual({ code: 'questions/no-levels', values: { factor: 'strip' } })
  })
})

describe('what stops a question before it starts', () => {
  it('a project without counts', async () => {
    const empty = projectOfCounts({ counts: [] })
    expect((await stoppedBy(whoVisitsIn(empty))).code).toBe('questions/no-counts-yet')
    expect((await stoppedBy(whatDiffersIn(empty, { between: 'strip', worth: 2 }))).code).toBe('questions/no-counts-yet')
  })

  const snapshot = stripProject({ arm: 3, kinds: { bee: { ratio: 1 }, fly: { ratio: 1 } } })
  it.each([
    [{ where: ['date>=2040-01-01'] }, 'questions/no-counts-selected'],
    [{ field: ['Weir'] }, 'survey/condition/no-such-level'],
    [{ where: ['mood=good'] }, 'survey/factor/unknown'],
    [{ kinds: ['wasp'] }, 'survey/kind/unknown'],
    [{ where: ['nonsense'] }, 'survey/condition/unreadable'],
  ])('%j: %s', async (options, code) => {
    expect((await stoppedBy(whoVisitsIn(snapshot, options))).code).toBe(code)
  })

  it.each([
    [{ worth: 2 }, 'survey/contrast/nothing-asked'],
    [{ between: 'mood', worth: 2 }, 'survey/factor/unknown'],
    [{ between: 'strip', levels: ['no', 'maybe'], worth: 2 }, 'survey/factor/no-such-level'],
  ])('%j: %s', async (options, code) => {
    expect((await stoppedBy(whatDiffersIn(snapshot, options))).code).toBe(code)
  })

  it('a factor of one level in the whole project; if only these counts lack the other, that is an answer', async () => {
    const bare = stripProject({ arm: 3, kinds: { bee: { ratio: 1 } }, change: () => ({ strip: 'no' }) })
    expect(await stoppedBy(whatDiffersIn(bare, { between: 'strip', worth: 2 }))).toEqual({
      code: 'questions/one-level',
      values: { factor: 'strip', level: 'no' },
    })
    const answer = await whatDiffersIn(snapshot, { between: 'strip', where: ['strip=no'], worth: 2 })
    expect(answer.verdict).toBe('design-blocks')
    checkAnswer(answer)
  })
})
