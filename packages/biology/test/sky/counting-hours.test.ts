import { describe, expect, it } from 'vitest'
import { countingHoursOf, cucumberHours, generalHours, squashHours } from '../../src/sky/counting-hours.ts'

describe('countingHoursOf', () => {
  it.each([
    ['Squash', squashHours],
    ['pumpkin (Jack)', squashHours],
    ['Cucurbita pepo', squashHours],
    ['Kürbis', squashHours],
    ['KURBIS', squashHours],
    ['watermelon', cucumberHours],
    ['Cucumis sativus', cucumberHours],
    ['Sandia', cucumberHours],
    ['apple', generalHours],
    ['lucerne', generalHours],
    ['', generalHours],
    [null, generalHours],
  ])('%s', (crop, hours) => {
    expect(countingHoursOf(crop)).toBe(hours)
  })
})
