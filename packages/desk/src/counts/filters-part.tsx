import { type FormEvent, useState } from 'react'
import { useSay } from '../say/say.ts'
import { type Filter, filterText, type How, hows } from './filters.ts'

/** Conditions on the rows that are shown, one after the other. */
export function FiltersPart({
  columns,
  filters,
  onChange,
}: {
  readonly columns: readonly { readonly name: string; readonly title: string }[]
  readonly filters: readonly Filter[]
  readonly onChange: (filters: readonly Filter[]) => void
}) {
  const say = useSay()
  const [column, setColumn] = useState('')
  const [how, setHow] = useState<How>('is')
  const [value, setValue] = useState('')
  const chosen = column === '' ? (columns[0]?.name ?? '') : column
  const add = (event: FormEvent): void => {
    event.preventDefault()
    if (chosen === '' || value.trim() === '') return
    // A number may be typed with a comma.
    const typed = how === 'above' || how === 'below' ? value.trim().replace(/^(-?\d+),(\d+)$/u, '$1.$2') : value.trim()
    onChange([...filters, { column: chosen, how, value: typed }])
    setValue('')
  }
  return (
    <form className="filters" onSubmit={add} aria-label={say('counts/filter')}>
      <span>{say('counts/filter')}</span>
      <select aria-label={say('counts/filter/column')} value={chosen} onChange={({ target }) => setColumn(target.value)}>
        {columns.map(({ name, title }) => (
          <option key={name} value={name}>
            {title}
          </option>
        ))}
      </select>
      <select aria-label={say('counts/filter/how')} value={how} onChange={({ target }) => setHow(target.value as How)}>
        {hows.map((own) => (
          <option key={own} value={own}>
            {say(`counts/filter/${own}`)}
          </option>
        ))}
      </select>
      <input aria-label={say('counts/filter/value')} value={value} onChange={({ target }) => setValue(target.value)} />
      <button type="submit" disabled={value.trim() === ''}>
        {say('counts/filter/add')}
      </button>
      {filters.map((own) => (
        <button
          type="button"
          className="chip"
          key={filterText(own)}
          aria-label={say('counts/filter/drop', { filter: filterText(own) })}
          onClick={() => onChange(filters.filter((other) => other !== own))}
        >
          {filterText(own)} ×
        </button>
      ))}
    </form>
  )
}
