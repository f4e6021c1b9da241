import { Link, useSearch } from '@tanstack/react-router'
import { useState } from 'react'
import { useProject } from '../door/project.ts'
import { useSay } from '../say/say.ts'
import { CellPart, type OpenCell } from './cell-part.tsx'
import type { Filter } from './filters.ts'
import { FiltersPart } from './filters-part.tsx'
import { Grid } from './grid.tsx'

/** All counts as a grid; a cell opens with its history and can be corrected. */
export function CountsPage() {
  const say = useSay()
  const { rows = null } = useSearch({ from: '/counts' }) as { readonly rows?: readonly string[] | null }
  const { data: project } = useProject()
  const [filters, setFilters] = useState<readonly Filter[]>([])
  const [columns, setColumns] = useState<readonly { readonly name: string; readonly title: string }[]>([])
  const [open, setOpen] = useState<OpenCell | null>(null)
  return (
    <div className="counts">
      <title>{`${say('counts')} – Thrum`}</title>
      <h1>{say('counts')}</h1>
      {rows === null ? (
        <FiltersPart columns={columns} filters={filters} onChange={setFilters} />
      ) : (
        <p>
          {say('counts/evidence')} <Link to="/counts">{say('counts/all')}</Link>
        </p>
      )}
      {project === undefined ? null : (
        <Grid asked={{ digest: project.digest, filters, rows }} onColumns={setColumns} onOpen={setOpen} />
      )}
      {open === null ? null : (
        <CellPart
          key={`${open.row} ${open.column}`}
          open={open}
          canWrite={project?.mode === 'write'}
          onClose={() => {
            setOpen(null)
            requestAnimationFrame(() => document.querySelector<HTMLElement>(`[data-place="${open.place}"]`)?.focus())
          }}
        />
      )}
    </div>
  )
}
