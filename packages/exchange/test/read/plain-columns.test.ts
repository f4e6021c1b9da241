import { plainColumns, readSheet } from '@thrum/exchange'
import { describe, expect, it } from 'vitest'
import { utf8 } from '../files.ts'

const read = (text: string) => plainColumns(readSheet(utf8(text)))

describe('plainColumns', () => {
  it('gives each cell as text and as the number it plainly is', () => {
    const [field, bees, weight] = read('field,bees,weight\nÅs ,3,2.5\nDal,ca. 4,-1e2\nÅs,NA,?\n')
    expect(field?.texts).toEqual(['Ås', 'Dal', 'Ås'])
    expect([...(field?.numbers ?? [])]).toEqual([Number.NaN, Number.NaN, Number.NaN])
    expect(bees?.texts).toEqual(['3', 'ca. 4', null])
    expect([...(bees?.numbers ?? [])]).toEqual([3, Number.NaN, Number.NaN])
    expect(weight?.texts).toEqual(['2.5', '-1e2', null])
    expect([...(weight?.numbers ?? [])]).toEqual([2.5, -100, Number.NaN])
  })

  it('takes the decimal mark that the column proves, else that of the file', () => {
    const [, weight, days] = read('plant;weight;days\na;2,5;1,125\nb;13,25;2,250\n')
    expect([...(weight?.numbers ?? [])]).toEqual([2.5, 13.25])
    expect([...(days?.numbers ?? [])]).toEqual([1.125, 2.25])
    // Where cells are parted by commas, a comma is no decimal mark, and a point before three digits is.
    expect([...(read('plant,weight\na,1.125\nb,2.250\n')[1]?.numbers ?? [])]).toEqual([1.125, 2.25])
  })

  it('does not guess where either mark could be meant, or both were found', () => {
    expect([...(read('plant;weight\na;1.125\nb;2.250\n')[1]?.numbers ?? [])]).toEqual([Number.NaN, Number.NaN])
    expect([...(read('plant;weight\na;1.5\nb;2,5\nc;1.125\n')[1]?.numbers ?? [])]).toEqual([1.5, 2.5, Number.NaN])
  })
})
