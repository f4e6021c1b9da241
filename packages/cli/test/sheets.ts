/** A wide sheet, a column a kind: fields with and without a strip, each watched four times. Invented; nothing is drawn. */
export function wideSheet(fields = 8): string {
  const rows = Array.from({ length: fields * 4 }, (_, k) => {
    const field = Math.floor(k / 4)
    const visit = k % 4
    const strip = field % 2 === 0 ? 'no' : 'yes'
    const bees = (strip === 'yes' ? 12 : 5) + ((field * 3 + visit) % 4) + (field % 3)
    return [
      `Field ${'ABCDEFGHIJKLMNOP'[field]}`,
      `2031-05-${String(5 + 3 * visit).padStart(2, '0')}`,
      (field + visit) % 2 === 0 ? '10:30' : '14:30',
      `walker ${1 + (((field >> 1) + visit) % 2)}`,
      strip,
      10,
      200,
      bees,
      2 + ((field + 2 * visit) % 3),
    ].join(',')
  })
  return `${['field,date,start,observer,strip,minutes,open flowers,honey bee,hover fly', ...rows].join('\n')}\n`
}

/** A long sheet, a row a kind. */
export function longSheet(): string {
  const rows = Array.from({ length: 12 }, (_, k) => {
    const watch = `Field ${'ABC'[k % 3]},2031-06-${String(10 + (k % 4)).padStart(2, '0')},${9 + (k % 5)}:15,10`
    return `${watch},honey bee,${3 + (k % 4)}\n${watch},hover fly,${k % 3}`
  })
  return `${['field,date,start,minutes,kind,number', ...rows].join('\n')}\n`
}

/** Cells as they come: approximate, a dash, a range, and a line that says nothing of insects. */
export const messySheet = `field,date,start,minutes,honey bee,hover fly
Field A,2031-05-05,10:30,10,ca. 12,3
Field B,2031-05-05,10:45,10,-,2
Field C,2031-05-05,11:00,10,3-5,1
Field A,2031-05-08,10:30,10,7,many
Field B,2031-05-08,10:45,10,4.5,0
Field C,2031-05-08,11:00,10,-1,2
Field A,2031-05-11,10:30,,6,2
`
