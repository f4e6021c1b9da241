import { queryOptions, useQuery } from '@tanstack/react-query'
import type { AskedTold, ProjectTold } from '@thrum/server/api'
import { get } from './request.ts'

export const projectQuery = queryOptions({ queryKey: ['project'], queryFn: () => get<ProjectTold>('project'), staleTime: 30_000 })
export const askedQuery = queryOptions({ queryKey: ['asked'], queryFn: () => get<AskedTold>('asked') })

export const useProject = () => useQuery(projectQuery)
export const useAsked = () => useQuery(askedQuery)
