/** A table of so many watches in forty fields; each is its own by plot. */
export function largeSheet(rows: number): string {
  const lines = Array.from({ length: rows }, (_, k) => {
    const day = new Date(Date.UTC(2031, 4, 1 + (k % 60))).toISOString().slice(0, 10)
    return `Field ${String(k % 40).padStart(2, '0')},P${k},${day},${10 + (k % 6)}:00,10,${k % 9},${k % 5}`
  })
  return `field,plot,date,start,minutes,honey bee,bumble bee\n${lines.join('\n')}\n`
}
