import { correctCell, settleCell, withdraw } from '@thrum/host'
import { describe, expect, it } from 'vitest'
import { bring, copyOf, exchange, factLines, madeProject, mappingOf, offer, person, told } from '../corrections/made-counts.ts'

const first = `field,plot,date,start,minutes,honey bee,hover fly
Weir,edge,2031-05-04,09:10,10,12,3
Weir,centre,2031-05-04,10:10,10,14,-
Ings,edge,2031-05-04,11:10,10,3-4,0
`
const second = `field,plot,date,start,minutes,honey bee,hover fly
Ings,edge,2031-05-04,11:10,10,3,0
Weir,edge,2031-05-04,09:10,12,12,4
Weir,centre,2031-05-04,10:10,10,14,-
Oxlea,edge,2031-05-06,09:00,10,7,1
`
const mapping = mappingOf(first)

describe('a mended file', () => {
  it('after acceptance the project holds no row twice, and says what the file says', async () => {
    const project = await madeProject()
    await bring(project, 'counts.csv', first)
    expect(await bring(project, 'counts.csv', second)).toEqual({
      corrections: 3,
      counts: 1,
      tallies: 0,
      withdrawn: 0,
      kept: true,
    })
    expect(await told(project)).toEqual([
      'Ings edge 10 honey bee 3 hover fly 0',
      'Oxlea edge 10 honey bee 7 hover fly 1',
      'Weir centre 10 honey bee 14 hover fly ?',
      'Weir edge 12 honey bee 12 hover fly 4',
    ])
  })

  it('identity: it says what a new project says that brought it alone', async () => {
    const mended = await madeProject()
    await bring(mended, 'counts.csv', first)
    await bring(mended, 'counts.csv', second)
    const alone = await madeProject()
    await bring(alone, 'counts.csv', second)
    expect(await told(mended)).toEqual(await told(alone))
  })

  it('identity: any of both files again adds nothing', async () => {
    const project = await madeProject()
    await bring(project, 'counts.csv', first)
    await bring(project, 'counts.csv', second)
    const facts = await factLines(project)
    expect(await bring(project, 'counts.csv', second)).toBe('known')
    expect(await bring(project, 'counts.csv', first, mapping)).toBe('known')
    expect(await factLines(project)).toEqual(facts)
  })

  it('identity: accepted at two copies it is the same facts, and a merge changes nothing', async () => {
    const here = await madeProject()
    await bring(here, 'counts.csv', first)
    const there = await copyOf(here, 'there', person('tablet', Date.UTC(2031, 5, 2)))
    await bring(here, 'counts.csv', second)
    await bring(there, 'counts.csv', second)
    const before = await told(here)
    expect(await told(there)).toEqual(before)
    await exchange(here, there)
    expect(await told(here)).toEqual(before)
    expect(await told(there)).toEqual(before)
    expect(await factLines(here)).toEqual(await factLines(there))
    expect((await here.snapshot()).conflicts).toEqual([])
    expect((await here.snapshot()).digest).toBe((await there.snapshot()).digest)
  })

  it('what a person corrected stays, and is told where the file changed it as well', async () => {
    const project = await madeProject()
    await bring(project, 'counts.csv', first)
    await correctCell(project, { row: 'counts.csv:2', column: 'hover fly', value: '9', reason: 'photo' })
    await settleCell(project, { row: 'counts.csv:3', column: 'hover fly', value: '0' })
    const offered = await offer(project, 'counts.csv', second)
    if (offered.kind !== 'mended') throw new Error(offered.kind)
    expect(offered.plan.kept.map(({ line, label, to }) => [line, label, to.value])).toEqual([[3, 'hover fly', 4]])
    await bring(project, 'counts.csv', second)
    expect(await told(project)).toContain('Weir edge 12 honey bee 12 hover fly 9')
    expect(await told(project)).toContain('Weir centre 10 honey bee 14 hover fly 0')
  })

  it('a third version is compared with what the second said', async () => {
    const project = await madeProject()
    await bring(project, 'counts.csv', first)
    await bring(project, 'counts.csv', second)
    const third = second.replace('09:10,12,12,4', '09:10,12,12,5').replace('09:00,10,7', '09:00,10,8')
    expect(await bring(project, 'counts.csv', third)).toMatchObject({ corrections: 2, counts: 0 })
    expect(await told(project)).toContain('Weir edge 12 honey bee 12 hover fly 5')
    expect(await told(project)).toContain('Oxlea edge 10 honey bee 8 hover fly 1')
  })

  it('rows that are gone stay, or are withdrawn if the person says so', async () => {
    const without = first
      .split('\n')
      .filter((_, k) => k !== 2)
      .join('\n')
    const project = await madeProject()
    await bring(project, 'counts.csv', first)
    await bring(project, 'counts.csv', without)
    expect(await told(project)).toHaveLength(3)
    const other = await madeProject()
    await bring(other, 'counts.csv', first)
    expect(await bring(other, 'counts.csv', without, mapping, { withdrawMissing: true })).toMatchObject({ withdrawn: 1 })
    expect(await told(other)).toHaveLength(2)
  })

  it('a row that was withdrawn here is not brought back', async () => {
    const project = await madeProject()
    await bring(project, 'counts.csv', first)
    await withdraw(project, { row: 'counts.csv:2', reason: 'wrong orchard' })
    await bring(project, 'counts.csv', second)
    expect(await told(project)).toEqual([
      'Ings edge 10 honey bee 3 hover fly 0',
      'Oxlea edge 10 honey bee 7 hover fly 1',
      'Weir centre 10 honey bee 14 hover fly ?',
    ])
  })

  it('a column for another kind brings its tallies to counts that are there', async () => {
    const project = await madeProject()
    await bring(project, 'counts.csv', first)
    const more =
      'field,plot,date,start,minutes,honey bee,hover fly,bumble bee\n' +
      'Weir,edge,2031-05-04,09:10,10,12,3,5\nWeir,centre,2031-05-04,10:10,10,14,-,0\nIngs,edge,2031-05-04,11:10,10,3-4,0,1\n'
    expect(await bring(project, 'counts.csv', more)).toMatchObject({ corrections: 0, counts: 0, tallies: 3 })
    const alone = await madeProject()
    await bring(alone, 'counts.csv', more)
    expect(await told(project)).toEqual(await told(alone))
    await correctCell(project, { row: 'counts.csv:2', column: 'bumble bee', value: '6', reason: 'slip' })
    expect(await told(project)).toContain('Weir edge 10 bumble bee 6 honey bee 12 hover fly 3')
  })

  it('the same file under another mapping is a mended version of itself', async () => {
    const project = await madeProject()
    const twice = `${first}Weir,edge,2031-05-04,09:10,10,12,3\n`
    await bring(project, 'counts.csv', twice)
    expect(await told(project)).toHaveLength(3)
    const means = { ...mappingOf(twice), means: { '-': 0 } }
    expect(await bring(project, 'counts.csv', twice, means)).toMatchObject({ corrections: 1, counts: 0 })
    expect(await told(project)).toContain('Weir centre 10 honey bee 14 hover fly 0')
  })

  it('another name mends if the person says so; the same name is another file if the person says so', async () => {
    const project = await madeProject()
    await bring(project, 'counts.csv', first)
    expect((await offer(project, 'later.csv', second)).kind).toBe('new')
    expect((await offer(project, 'later.csv', second, mapping, { mends: 'counts.csv' })).kind).toBe('mended')
    expect((await offer(project, 'counts.csv', second, mapping, { separate: true })).kind).toBe('new')
    await expect(offer(project, 'later.csv', second, mapping, { mends: 'other.csv' })).rejects.toMatchObject({
      code: 'host/mended/no-such-file',
    })
  })

  it('a file that was withdrawn may be brought again read otherwise, and comes back by withdrawing that', async () => {
    const project = await madeProject()
    await bring(project, 'counts.csv', first)
    const { fact } = await withdraw(project, { row: 'counts.csv', reason: 'wrong columns' })
    expect(await told(project)).toEqual([])
    await expect(bring(project, 'counts.csv', first)).rejects.toMatchObject({
      code: 'host/mended/withdrawn',
      values: { withdrawal: fact },
    })
    expect(await bring(project, 'counts.csv', first, { ...mapping, means: { '-': 0 } })).toBe('new')
    expect(await told(project)).toContain('Weir centre 10 honey bee 14 hover fly 0')
    await correctCell(project, { row: 'counts.csv:2', column: 'honey bee', value: '21', reason: 'slip' })
    expect(await told(project)).toContain('Weir edge 10 honey bee 21 hover fly 3')
  })
})

describe('a mended long table', () => {
  const long =
    'field,date,start,minutes,kind,number\nWeir,2031-05-04,09:10,10,honey bee,12\nWeir,2031-05-04,09:10,10,hover fly,3\nIngs,2031-05-04,10:10,10,honey bee,5\n'

  it('a line for a kind of a watch that is there, a changed number, a kind nobody had seen: as if it were read alone', async () => {
    const mended =
      'field,date,start,minutes,kind,number\nWeir,2031-05-04,09:10,10,honey bee,13\nWeir,2031-05-04,09:10,10,hover fly,3\nIngs,2031-05-04,10:10,10,honey bee,5\nIngs,2031-05-04,10:10,10,hover fly,2\nIngs,2031-05-04,10:10,10,carder bee,1\n'
    const project = await madeProject()
    await bring(project, 'long.csv', long)
    expect(await bring(project, 'long.csv', mended)).toEqual({ corrections: 2, counts: 0, tallies: 2, withdrawn: 0, kept: true })
    const alone = await madeProject()
    await bring(alone, 'long.csv', mended)
    expect(await told(project)).toEqual(await told(alone))
    expect(await told(project)).toContain('Ings  10 carder bee 1 honey bee 5 hover fly 2')
  })

  it('a line of one kind leads to its watch and to its tally', async () => {
    const project = await madeProject()
    await bring(project, 'long.csv', long)
    expect(await correctCell(project, { row: 'long.csv:3', column: 'number', value: '4', reason: 'slip' })).toMatchObject({
      column: 'hover fly',
      from: '3',
    })
    expect(await correctCell(project, { row: 'long.csv:3', column: 'minutes', value: '15', reason: 'slip' })).toMatchObject({
      to: '15',
    })
    expect(await told(project)).toContain('Weir  15 honey bee 12 hover fly 4')
  })
})
