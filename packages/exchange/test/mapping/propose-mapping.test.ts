import { type Proposal, parseMapping, proposeMapping, readSheet } from '@thrum/exchange'
import { describe, expect, it } from 'vitest'
import { utf8 } from '../files.ts'

/** Rows of values that fit any of the headers below. */
const rows = [
  'Larkfoot,edge,2031-05-04,10:15,10:25,21.5,240,3,1,0,gusty today again',
  'Larkfoot,centre,2031-05-04,10:40,10:50,22,180,0,2,1,',
  'Old Kiln,edge,2031-05-05,13:05,13:15,19,310,12,0,0,',
  'Old Kiln,centre,2031-05-05,13:30,13:40,18.5,275,7,1,2,',
].join('\n')
const proposed = (header: string, body = rows): Proposal => proposeMapping(readSheet(utf8(`${header}\n${body}\n`)))
const asOf = ({ mapping }: Proposal): string[] =>
  mapping.columns.map(({ as, kind }) => (kind === undefined ? as : `${as} ${kind}`))

const expected = [
  'field',
  'plot',
  'date',
  'start',
  'end',
  'temperature',
  'flowers',
  'tally honey bee',
  'tally bumble bee',
  'tally hover fly',
  'note',
]

describe('proposeMapping', () => {
  it.each([
    ['English', 'Field,Plot,Date,Start,End,Temp C,Open flowers,Honey bees,Bumblebees,Hoverflies,Remarks'],
    ['German', 'Feld,Parzelle,Datum,Beginn,Ende,Temperatur °C,Blüten,Honigbienen,Hummeln,Schwebfliegen,Bemerkungen'],
    ['Swedish', 'Fält,Provyta,Datum,Start,Slut,Temp °C,Blommor,Honungsbin,Humlor,Blomflugor,Anmärkning'],
    ['Danish', 'Gård,Delfelt,Dato,Start,Slut,Temperatur C,Blomster,Honningbier,Humlebier,Svirrefluer,Bemærkninger'],
    ['Spanish', 'Finca,Transecto,Fecha,Inicio,Fin,Temperatura °C,Flores,Abejas melíferas,Abejorros,Sírfidos,Observaciones'],
    ['French', 'Parcelle,Transecte,Date,Début,Fin,Temp C,Fleurs,Abeilles domestiques,Bourdons,Syrphes,Remarques'],
  ])('reads %s headers', (_, header) => {
    expect(asOf(proposed(header))).toEqual(expected)
  })

  it('gives a reason for every column', () => {
    const { mapping, reasons } = proposed(
      'Field,Plot,Date,Start,End,Temp C,Open flowers,Honey bees,Bumblebees,Hoverflies,Remarks',
    )
    expect(reasons.map(({ header, as }) => [header, as])).toEqual(mapping.columns.map(({ header, as }) => [header, as]))
  })

  it('asks for a unit that the header does not say, and takes Fahrenheit from the size of the values', () => {
    const body = rows.replaceAll('21.5', '71').replaceAll(',22,', ',72,').replaceAll(',19,', ',66,').replaceAll('18.5', '65')
    const { mapping, questions } = proposed(
      'Field,Plot,Date,Start,End,Temp,Open flowers,Honey bees,Bumblebees,Hoverflies,Remarks',
      body,
    )
    expect(mapping.columns.find(({ as }) => as === 'temperature')?.unit).toBe('degF')
    expect(questions).toContainEqual(expect.objectContaining({ header: 'Temp', proposed: 'degF' }))
  })

  it('asks about effort that stands nowhere, and about a year that stands nowhere', () => {
    const { mapping, questions } = proposed('field,date,honey bee', 'A,27-May,3\nB,28-May,4\nC,29-May,5')
    const ids = questions.map(({ asks }) => asks.id)
    expect(ids).toEqual(expect.arrayContaining(['exchange/ask/effort', 'exchange/ask/year']))
    expect(mapping.constants?.minutes).toBeUndefined()
    expect(mapping.file?.year).toBeUndefined()
  })

  it('takes the year from the name of the file, and still asks', () => {
    const sheet = readSheet(utf8('field,date,honey bee\nA,27-May,3\nB,28-May,4\n'))
    const { mapping, questions } = proposeMapping(sheet, 'counts 2031.csv')
    expect(mapping.file?.year).toBe(2031)
    expect(questions).toContainEqual(expect.objectContaining({ header: 'date', proposed: '2031' }))
  })

  it('asks which comes first, day or month, where no row settles it', () => {
    const { mapping, questions } = proposed(
      'field,date,minutes,honey bee',
      'A,03/05/2031,10,3\nB,04/05/2031,10,4\nC,05/05/2031,10,5',
    )
    expect(mapping.file?.dateOrder).toBe('day first')
    expect(questions.map(({ asks }) => asks.id)).toContain('exchange/ask/date-order')
  })

  it('keeps two columns of one group apart, by their own names', () => {
    expect(asOf(proposed('field,minutes,B_terrestris,B_lapidarius', 'A,10,3,1\nB,10,4,0'))).toEqual([
      ...['field', 'minutes', 'tally B terrestris', 'tally B lapidarius'],
    ])
  })

  it('leaves out columns of sums and of presence, and asks', () => {
    const { mapping, questions } = proposed(
      'field,minutes,honey bee,other bees,total bees,beetles present',
      'A,10,3,1,4,1\nB,10,4,0,4,0',
    )
    expect(mapping.columns.map(({ as }) => as)).toEqual(['field', 'minutes', 'tally', 'tally', 'ignore', 'ignore'])
    expect(questions.map(({ asks }) => asks.id)).toEqual(
      expect.arrayContaining(['exchange/ask/sum-of-others', 'exchange/ask/presence']),
    )
  })

  it('a column of few repeated values is a factor, and how its levels were assigned is asked', () => {
    const body = Array.from({ length: 8 }, (_, k) => `F${k},${k % 2 ? 'yes' : 'no'},10,${k}`).join('\n')
    const { mapping, questions } = proposed('field,flower strip sown,minutes,honey bee', body)
    expect(mapping.columns[1]).toEqual({ header: 'flower strip sown', as: 'factor' })
    expect(questions).toContainEqual({
      header: 'flower strip sown',
      asks: expect.objectContaining({ id: 'exchange/ask/assigned' }),
      proposed: null,
    })
  })

  it('a row per kind seen makes a long table; what no row means is asked', () => {
    const body = 'A,2031-05-04,10,honey bee,3\nA,2031-05-04,10,hover fly,1\nB,2031-05-05,10,honey bee,4'
    const { mapping, questions } = proposed('field,date,minutes,species,count', body)
    expect(mapping).toMatchObject({ shape: 'long', absent: 'none-seen', key: ['field', 'date'] })
    expect(mapping.columns.map(({ as }) => as)).toEqual(['field', 'date', 'minutes', 'kind', 'number'])
    expect(questions.map(({ asks }) => asks.id)).toContain('exchange/ask/absent')
  })

  it('a dash is asked about, and a column of blanks without a zero', () => {
    const { questions } = proposed('field,minutes,honey bee,hover fly', 'A,10,3,\nB,10,-,2\nC,10,0,')
    expect(questions.map(({ header, asks }) => [header, asks.id])).toEqual(
      expect.arrayContaining([
        ['honey bee', 'exchange/ask/dash'],
        ['hover fly', 'exchange/ask/blank'],
      ]),
    )
  })
})

it('a title that never ends is looked through for effort before anybody loses patience', () => {
  for (const part of ['7', '7 ', ' ', '7 x ', '10 min '])
    expect(
      asOf(proposed(`${part.repeat(100_000 / part.length)}\nfield,plot,date,minutes,bees`, 'A,edge,2031-05-04,10,3')),
    ).toEqual(['field', 'plot', 'date', 'minutes', 'tally bees'])
})

it.each([
  ['plots of 2 x 1,5 m', 3],
  ['plots of 30 × 0 m', undefined],
  ['plots as ever', undefined],
])('takes the area of "%s" as %s m2', (title, area) => {
  const { mapping } = proposeMapping(
    readSheet(utf8(`"${title}",,,,\nField,Date,Minutes,Honey bees,Bumblebees\nWeir,2031-05-04,10,3,1\n`)),
  )
  expect(mapping.constants?.area).toBe(area)
  expect(parseMapping(mapping)).toEqual(mapping)
})

it('a column of yes and no is something compared, in however few rows, but of insects not', () => {
  const { mapping } = proposeMapping(
    readSheet(
      utf8('field,date,minutes,strip,honey bee,hover fly seen\nWeir,2031-05-04,10,yes,3,yes\nIngs,2031-05-04,10,no,4,no\n'),
    ),
  )
  expect(mapping.columns.map(({ as }) => as)).toEqual(['field', 'date', 'minutes', 'factor', 'tally', 'tally'])
})
