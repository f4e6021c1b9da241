import { correctCell, historyOfRow, type Project, settleCell, whatWaits, withdraw } from '@thrum/host'
import { fieldDescribed, makeFact, planMade } from '@thrum/model'
import { beforeEach, describe, expect, it } from 'vitest'
import { bring, copyOf, exchange, madeProject, mappingOf, person, told } from './made-counts.ts'

const sheet = `field,plot,date,start,minutes,stage,observer,note,honey bee,hover fly
Weir,edge,2031-05-04,09:10,10,65,Ann Other,,12,3
Weir,centre,2031-05-04,10:10,10,65,Ann Other,windy,14,-
Ings,edge,2031-05-04,11:10,10,65,Tom Made,,3-4,>50
Ings,centre,2031-05-05,11:40,10,67,Tom Made,,5,1
`

let project: Project
const refusal = async (doing: Promise<unknown>): Promise<string> =>
  await doing.then(
    () => 'done',
    (cause: { readonly code: string }) => cause.code,
  )
const correct = (row: string, column: string, value: string, own = project) =>
  correctCell(own, { row, column, value, reason: 'read again' })

beforeEach(async () => {
  project = await madeProject()
  await bring(project, 'counts.csv', sheet)
})

describe('correcting a cell', () => {
  it('a tally, a number with its unit, a date, a text: each by FILE:LINE', async () => {
    expect(await correct('counts.csv:2', 'honey bee', '21')).toMatchObject({
      row: 'counts.csv:2',
      from: '12',
      to: '21',
      isNewWord: false,
    })
    expect(await correct('counts.csv:2', 'minutes', '12.5')).toMatchObject({ from: '10', to: '12.5' })
    expect(await correct('counts.csv:2', 'date', '2031-05-06')).toMatchObject({ from: '2031-05-04', to: '2031-05-06' })
    expect(await correct('counts.csv:2', 'start', '9:45')).toMatchObject({ from: '09:10', to: '09:45' })
    expect(await correct('counts.csv:2', 'Field', 'Ings')).toMatchObject({ column: 'field', isNewWord: false })
    expect(await correct('counts.csv:2', 'field', 'Wier')).toMatchObject({ isNewWord: true })
    expect(await correct('counts.csv:2', 'temperature', '18')).toMatchObject({ to: '18' })
    expect(await told(project)).toContain('Wier edge 12.5 honey bee 21 hover fly 3')
  })

  it('by the address of a row and by the id of a fact', async () => {
    const { of } = await correct('counts.csv:2', 'honey bee', '21')
    expect(await correct(of, 'kind', 'drone fly')).toMatchObject({ from: 'honey bee', isNewWord: true })
    const weir = makeFact(fieldDescribed, { field: 'Weir', crop: 'sweet cherry', hectares: 2 }, project.author)
    const plan = makeFact(planMade, { lastVisit: '2031-06-01' }, project.author)
    await project.log.append([weir, plan])
    expect(await correct(weir.id, 'hectares', '3')).toMatchObject({ from: '2', to: '3' })
    expect(await correct(plan.id, 'lastVisit', '2031-06-09')).toMatchObject({ to: '2031-06-09' })
    expect((await project.snapshot()).fields.find(({ name }) => name === 'Weir')).toMatchObject({ hectares: 3 })
    expect(await refusal(correct(weir.id, 'hectares', '-3'))).toBe('host/correct/does-not-fit')
    expect(await refusal(correct(plan.id, 'lastVisit', 'May'))).toBe('host/correct/does-not-fit')
    expect(await refusal(correct(weir.id, 'colour', 'red'))).toBe('host/correct/does-not-fit')
  })

  it.each([
    ['counts.csv:22', 'honey bee', '1', 'host/row/no-such-line'],
    ['other.csv:2', 'honey bee', '1', 'host/row/unknown'],
    ['counts.csv', 'honey bee', '1', 'host/row/no-row'],
    ['counts.csv:2', 'wasp', '1', 'host/cell/unknown'],
    ['counts.csv:2', 'line', '1', 'host/cell/unknown'],
    ['counts.csv:2', 'honey bee', '4.5', 'exchange/typed/refused'],
    ['counts.csv:2', 'honey bee', '12', 'host/correct/no-change'],
    ['counts.csv@2:2', 'honey bee', '1', 'host/file/no-version'],
  ])('%s %s %s is refused, and nothing written', async (row, column, value, code) => {
    const seq = await project.log.lastSeq()
    expect(await refusal(correct(row, column, value))).toBe(code)
    expect(await project.log.lastSeq()).toBe(seq)
  })

  it('without a reason, or in a row that was withdrawn, it is refused', async () => {
    expect(await refusal(correctCell(project, { row: 'counts.csv:2', column: 'minutes', value: '9', reason: ' ' }))).toBe(
      'host/correct/no-reason',
    )
    await withdraw(project, { row: 'counts.csv:2', reason: 'twice' })
    expect(await refusal(correct('counts.csv:2', 'minutes', '9'))).toBe('host/row/withdrawn')
  })

  it('of two files with one name it is asked which; a line set aside says why', async () => {
    const other = 'field,plot,date,start,minutes,honey bee\nMill,edge,2031-07-04,09:10,10,1\nMill,edge,2031-07-04,09:10,10,1\n'
    await bring(project, 'counts.csv', other, mappingOf(other), { separate: true })
    expect(await refusal(correct('counts.csv:2', 'honey bee', '9'))).toBe('host/file/which')
    expect(await correct('counts.csv@2:2', 'honey bee', '9')).toMatchObject({ row: 'counts.csv@2:2', from: '1' })
    expect(await refusal(correct('counts.csv@2:3', 'honey bee', '9'))).toBe('host/row/set-aside')
    expect((await whatWaits(project)).rows.map(({ row }) => row)).toEqual(['counts.csv:3'])
  })
})

describe('withdrawing', () => {
  it('a count goes with its tallies, a tally alone, and each comes back', async () => {
    const count = await withdraw(project, { row: 'counts.csv:2', reason: 'twice' })
    expect(count).toMatchObject({ what: 'count', tallies: 2, told: 'Weir, edge, 2031-05-04' })
    const tally = await withdraw(project, { row: 'counts.csv:5', kind: 'hover fly', reason: 'a wasp' })
    expect(tally.what).toBe('tally')
    expect(await told(project)).toHaveLength(3)
    expect(await told(project)).toContain('Ings centre 10 honey bee 5')
    expect(await refusal(withdraw(project, { row: 'counts.csv:2', reason: 'twice' }))).toBe('host/withdraw/already')
    await withdraw(project, { row: count.fact, reason: 'no, once' })
    await withdraw(project, { row: tally.fact, reason: 'a hover fly' })
    expect(await told(project)).toContain('Weir edge 10 honey bee 12 hover fly 3')
    expect(await told(project)).toContain('Ings centre 10 honey bee 5 hover fly 1')
  })

  it('a correction is undone, whatever stood before stands again', async () => {
    await correct('counts.csv:2', 'honey bee', '21')
    const { fact } = await correct('counts.csv:2', 'honey bee', '22')
    expect(await withdraw(project, { row: fact, reason: 'was right' })).toMatchObject({ what: 'correction' })
    expect(await told(project)).toContain('Weir edge 10 honey bee 21 hover fly 3')
  })

  it('that a sheet was accepted, or which project it is, cannot be taken back', async () => {
    const facts = []
    for await (const chunk of project.log.factsAfter(0)) facts.push(...chunk)
    for (const kind of ['sheet-accepted', 'project-described']) {
      const id = facts.find((fact) => fact.kind === kind)?.id ?? ''
      expect(await refusal(withdraw(project, { row: id, reason: 'r' }))).toBe('host/withdraw/never')
    }
    expect(await refusal(withdraw(project, { row: 'counts.csv:2', kind: 'minutes', reason: 'r' }))).toBe('host/withdraw/no-kind')
  })
})

describe('settling', () => {
  it('lists each cell that waits, with what was written and why, as it can be typed', async () => {
    const { cells } = await whatWaits(project)
    expect(cells.map(({ row, column, written, because }) => [row, column, written, because?.id])).toEqual([
      ['counts.csv:3', 'hover fly', '-', 'exchange/cell/dash'],
      ['counts.csv:4', 'honey bee', '3-4', 'exchange/cell/range'],
      ['counts.csv:4', 'hover fly', '>50', 'exchange/cell/at-least'],
    ])
    for (const { row, column } of cells)
      await settleCell(project, { row, column, value: row.endsWith(':3') ? 'not-looked-for' : '3' })
    expect((await whatWaits(project)).cells).toEqual([])
    expect(await told(project)).toContain('Ings edge 10 honey bee 3 hover fly 3')
    expect(await told(project)).toContain('Weir centre 10 honey bee 14 hover fly ?')
  })

  it('a cell that does not wait is not settled, and a vague word settles nothing', async () => {
    expect(await refusal(settleCell(project, { row: 'counts.csv:2', column: 'honey bee', value: '3' }))).toBe(
      'host/settle/not-waiting',
    )
    expect(await refusal(settleCell(project, { row: 'counts.csv:4', column: 'hover fly', value: '>60' }))).toBe(
      'host/settle/no-number',
    )
    expect(await refusal(settleCell(project, { row: 'counts.csv:4', column: 'honey bee', value: 'some' }))).toBe(
      'exchange/typed/refused',
    )
  })

  it('a cell that a correction left waiting waits again, with the words of the correction', async () => {
    const mended = sheet.replace('Ann Other,,12,3', 'Ann Other,,lots,3')
    await bring(project, 'counts.csv', mended, mappingOf(sheet))
    expect((await whatWaits(project)).cells[0]).toMatchObject({ row: 'counts.csv:2', column: 'honey bee', written: 'lots' })
    await settleCell(project, { row: 'counts.csv:2', column: 'honey bee', value: 'missing' })
    expect(await told(project)).toContain('Weir edge 10 honey bee ? hover fly 3')
  })
})

describe('two who knew nothing of each other', () => {
  it('are both shown, and a third decides, in either copy', async () => {
    const other = await copyOf(project, 'other', person('tablet', Date.UTC(2031, 5, 2)))
    await correct('counts.csv:2', 'honey bee', '21')
    await correct('counts.csv:2', 'honey bee', '22', other)
    await exchange(project, other)
    const history = await historyOfRow(project, { row: 'counts.csv:2' })
    expect(history.cells).toMatchObject([
      {
        column: 'honey bee',
        brought: '12',
        contested: true,
        stands: '22',
        steps: [
          { to: '21', by: 'walker of desk', reason: 'read again', contested: true },
          { to: '22', by: 'walker of tablet', contested: true },
        ],
      },
    ])
    const [contested] = (await whatWaits(project)).contested
    expect(contested).toMatchObject({ row: 'counts.csv:2', column: 'honey bee', told: 'Weir, edge, 2031-05-04' })
    expect(contested?.choices.map(({ to, by }) => `${to} ${by}`)).toEqual(['21 walker of desk', '22 walker of tablet'])
    // To say what stands already is a decision too.
    expect(await correct('counts.csv:2', 'honey bee', '22')).toMatchObject({ decides: true })
    await exchange(project, other)
    for (const copy of [project, other]) {
      expect((await whatWaits(copy)).contested).toEqual([])
      expect((await copy.snapshot()).conflicts).toEqual([])
    }
  })

  it('who say the same are no quarrel', async () => {
    const other = await copyOf(project, 'other', person('tablet', Date.UTC(2031, 5, 2)))
    await settleCell(project, { row: 'counts.csv:4', column: 'honey bee', value: '3' })
    await settleCell(other, { row: 'counts.csv:4', column: 'honey bee', value: '3' })
    await exchange(project, other)
    expect((await whatWaits(project)).contested).toEqual([])
  })
})

describe('the history of a row', () => {
  it('tells the line as it came, every step, and what stands', async () => {
    const { fact } = await correct('counts.csv:2', 'minutes', '12')
    await withdraw(project, { row: fact, reason: 'was ten' })
    await withdraw(project, { row: 'counts.csv:2', reason: 'wrong orchard' })
    const history = await historyOfRow(project, { row: 'counts.csv:2' })
    expect(history.line?.cells).toContainEqual(['observer', 'Ann Other'])
    expect(history.cells).toMatchObject([{ column: 'minutes', brought: '10', steps: [{ to: '12', takenBack: true }] }])
    expect(history.withdrawals).toMatchObject([{ reason: 'wrong orchard', takenBack: false }])
    expect(history.stands).toBe(false)
  })

  it('of a cell that nobody touched says what came and stands', async () => {
    const { cells, stands } = await historyOfRow(project, { row: 'counts.csv:3', column: 'note' })
    expect(cells).toMatchObject([{ column: 'note', brought: 'windy', stands: 'windy', steps: [], contested: false }])
    expect(stands).toBe(true)
  })

  it('follows a row into a later version of its file', async () => {
    const mended = `${sheet.split('\n')[0]}\n${sheet.split('\n')[4]}\n${(sheet.split('\n')[1] ?? '').replace('12,3', '13,3')}\n`
    await bring(project, 'counts.csv', mended, mappingOf(sheet))
    const history = await historyOfRow(project, { row: 'counts.csv:3' })
    expect(history).toMatchObject({
      row: 'counts.csv:3',
      told: 'Weir, edge, 2031-05-04',
      line: { file: 'counts.csv@1', number: 2 },
    })
    expect(history.cells).toMatchObject([{ column: 'honey bee', steps: [{ to: '13', file: 'counts.csv' }], stands: '13' }])
  })
})
