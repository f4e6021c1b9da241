import { QueryClient, QueryClientProvider } from '@tanstack/react-query'
import { createRootRoute, createRoute, createRouter, lazyRouteComponent, RouterProvider } from '@tanstack/react-router'
import { Connected } from './frame/connection.tsx'
import { Frame } from './frame/frame.tsx'
import { readAsking } from './questions/asking.ts'
import { QuestionsPage } from './questions/questions-page.tsx'
import { Speaking } from './say/speaking.tsx'

const root = createRootRoute({ component: Frame })
export const questionsRoute = createRoute({
  getParentRoute: () => root,
  path: '/',
  component: QuestionsPage,
  validateSearch: readAsking,
})
export const countsRoute = createRoute({
  getParentRoute: () => root,
  path: '/counts',
  component: lazyRouteComponent(() => import('./counts/counts-page.tsx'), 'CountsPage'),
  validateSearch: (search: { readonly rows?: unknown }): { readonly rows?: readonly string[] } =>
    Array.isArray(search.rows) ? { rows: search.rows.map(String) } : {},
})
const tablesRoute = createRoute({
  getParentRoute: () => root,
  path: '/tables',
  component: lazyRouteComponent(() => import('./tables/tables-page.tsx'), 'TablesPage'),
})

const router = createRouter({ routeTree: root.addChildren([questionsRoute, countsRoute, tablesRoute]) })
// The server is on this machine: whether there is a network says nothing.
const queries = new QueryClient({
  defaultOptions: { queries: { retry: false, refetchOnWindowFocus: false, networkMode: 'always' } },
})

declare module '@tanstack/react-router' {
  interface Register {
    router: typeof router
  }
}

/** The whole desk. */
export function Desk() {
  return (
    <QueryClientProvider client={queries}>
      <Speaking>
        <Connected>
          <RouterProvider router={router} />
        </Connected>
      </Speaking>
    </QueryClientProvider>
  )
}
