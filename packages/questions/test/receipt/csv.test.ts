import { describe, expect, it } from 'vitest'
import { csv } from '../../src/index.ts'
import { rNumber, rString, rVector } from '../../src/receipt/csv.ts'

describe('csv', () => {
  it('is RFC 4180: quotes doubled, lines ended by CR LF, missing as NA', () => {
    expect(
      csv(
        ['field', 'count'],
        [
          ['Weir "upper", east', 3],
          ['a\nb', null],
          [null, Number.NaN],
        ],
      ),
    ).toBe('"field","count"\r\n"Weir ""upper"", east",3\r\n"a\nb",NA\r\nNA,NA\r\n')
  })

  it.each(['=1+1', '+1', '-1', '@cmd', '\tx', '\rx'])('a name that a spreadsheet would run ("%s") is text', (name) => {
    expect(csv(['field'], [[name]])).toBe(`"field"\r\n"'${name}"\r\n`)
    expect(rString(name).startsWith(`"'`)).toBe(true)
  })

  it('numbers stay numbers, negative ones too', () => {
    expect(csv(['x'], [[-1], [1e-7], [0]])).toBe('"x"\r\n-1\r\n1e-7\r\n0\r\n')
    expect([rNumber(null), rNumber(Infinity), rNumber(-2.5)]).toEqual(['NA', 'NA', '-2.5'])
    expect(rVector(['1', 'NA'])).toBe('c(1, NA)')
  })

  it('a name can end neither a string of R nor its line', () => {
    expect(rString('a"; quit(); "b\\\n\r')).toBe('"a\\"; quit(); \\"b\\\\\\n\\r"')
  })
})
