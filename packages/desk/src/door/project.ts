import { queryOptions, useQuery } from '@tanstack/react-query'
import { get } from './request.ts'
import type { AskedTold, ProjectTold } from './shapes.ts'

export const projectQuery = queryOptions({ queryKey: ['project'], queryFn: () => get<ProjectTold>('project'), staleTime: 30_000 })
export const askedQuery = queryOptions({ queryKey: ['asked'], queryFn: () => get<readonly AskedTold[]>('asked') })

export const useProject = () => useQuery(projectQuery)
export const useAsked = () => useQuery(askedQuery)
