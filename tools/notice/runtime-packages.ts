/** One entry of `packages` in package-lock.json, as far as we read it. */
export interface LockEntry {
  readonly version?: string
  readonly license?: string
  readonly link?: boolean
  readonly resolved?: string
  readonly os?: readonly string[]
  readonly cpu?: readonly string[]
  readonly dependencies?: { readonly [name: string]: string }
  readonly optionalDependencies?: { readonly [name: string]: string }
}

export type LockPackages = { readonly [folder: string]: LockEntry }

export interface RuntimePackage {
  readonly name: string
  readonly version: string
  readonly license: string
  /** its folder inside the repository */
  readonly folder: string
  /** made for some platforms only, so that it may not be on this machine */
  readonly platformBound: boolean
}

const nameOf = (folder: string): string => folder.slice(folder.lastIndexOf('node_modules/') + 'node_modules/'.length)

/** The folder that a package finds a dependency in: its own `node_modules`, then those above it. */
function resolveFrom(packages: LockPackages, folder: string, name: string): string | null {
  const parts = folder === '' ? [] : folder.split('/node_modules/')
  for (let depth = parts.length; depth >= 0; depth--) {
    const above = parts.slice(0, depth).join('/node_modules/')
    const candidate = above === '' ? `node_modules/${name}` : `${above}/node_modules/${name}`
    if (packages[candidate] !== undefined) return candidate
  }
  return null
}

/**
 * Everything that runs when Thrum runs: what our packages depend on, what those depend on, and the Node binaries of every
 * platform. Development tools are not among them.
 *
 * Reads the lock file alone, so the list is the same on every machine. In order of name, then version.
 */
export function runtimePackages(packages: LockPackages): readonly RuntimePackage[] {
  const found = new Map<string, RuntimePackage>()
  const visit = (folder: string): void => {
    const entry = packages[folder]
    if (entry === undefined) return
    // A workspace: its link names the folder that holds its own entry.
    if (entry.link === true) return
    if (folder.includes('node_modules/')) {
      if (found.has(folder)) return
      found.set(folder, {
        name: nameOf(folder),
        version: entry.version ?? '',
        license: entry.license ?? '',
        folder,
        platformBound: entry.os !== undefined || entry.cpu !== undefined,
      })
    }
    for (const name of Object.keys({ ...entry.dependencies, ...entry.optionalDependencies })) {
      const dependency = resolveFrom(packages, folder, name)
      if (dependency !== null) visit(dependency)
    }
  }
  // The root brings the Node binaries; its development tools are not followed.
  visit('')
  for (const folder of Object.keys(packages))
    if (folder.startsWith('packages/') && !folder.includes('node_modules/')) visit(folder)
  const key = (one: RuntimePackage): string => `${one.name}@${one.version}`
  return [...found.values()].sort((a, b) => (key(a) < key(b) ? -1 : 1))
}
