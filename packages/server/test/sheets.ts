/** Eight fields, four of them with a strip, watched four times each. Invented. */
export function plainSheet(): string {
  const rows = Array.from({ length: 32 }, (_, k) => {
    const field = k % 8
    const bees = (field < 4 ? 3 : 9) + (k % 3)
    return `Field ${field + 1},2031-05-${String(10 + Math.floor(k / 8)).padStart(2, '0')},${9 + (k % 4)}:15,walker ${1 + (k % 2)},${field < 4 ? 'no' : 'yes'},10,${bees},${k % 4}`
  })
  return `${['field,date,start,observer,strip,minutes,honey bee,hover fly', ...rows].join('\n')}\n`
}

export const markup = '<img src=x onerror=alert(1)>'
/** Reads backwards where a screen obeys it. */
export const turned = 'Weir \u202eelbat\u202c'
export const hugeNote = 'a long note '.repeat(90_000)

/** Cells that wait, hostile names and a cell of a megabyte. */
export function messySheet(): string {
  return [
    `field,date,start,minutes,honey bee,${markup},note`,
    `${markup},2031-05-10,9:15,10,4,1,"said ""so"""`,
    `${turned},2031-05-10,9:45,10,ca. 12,0,=1+1`,
    `Ings,2031-05-10,10:15,10,-,2,"${hugeNote}"`,
    'Ings,2031-05-11,10:15,10,3-5,2,',
    'Ings,2031-05-12,10:15,10,7,2,plain',
    '',
  ].join('\n')
}

/** A sheet of many watches; each is its own by field, plot, date and start. */
export function largeSheet(rows: number): string {
  const text = Array.from({ length: rows }, (_, k) => {
    const day = String(1 + (k % 28)).padStart(2, '0')
    return `Field ${k % 40},plot ${Math.floor(k / 28) % 1000},2031-05-${day},${8 + (k % 9)}:${10 + (k % 50)},10,${k % 7},${k % 3}`
  })
  return `field,plot,date,start,minutes,honey bee,hover fly\n${text.join('\n')}\n`
}
