import type { TableView } from '@thrum/report'
import { Scroll } from '../frame/scroll.tsx'
import { useSay } from '../say/say.ts'

/** The numbers of a figure, for those who would rather read than look. */
export function TableOfFigure({ table }: { readonly table: TableView }) {
  const say = useSay()
  return (
    <details className="table-view">
      <summary>{say('figure/table')}</summary>
      <Scroll label={say('figure/table')}>
        <table>
          <thead>
            <tr>
              {table.head.map((cell) => (
                <th scope="col" key={cell}>
                  {cell}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {table.rows.map((row, line) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: a row of a table of numbers has no other name than its place
              <tr key={line}>
                {row.map((cell, k) => (
                  // biome-ignore lint/suspicious/noArrayIndexKey: a cell has no other name than its column
                  <td key={k}>{cell}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
    </details>
  )
}
