// Builds the pages of the desk where their sources changed since they were built: npm run build:desk [-- --to FOLDER]
// One commit gives the same bytes. The stamp in the built folder says what it was built from.
// --to builds into another folder, in any case.
import { createHash } from 'node:crypto'
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { parseArgs } from 'node:util'

const root = join(import.meta.dirname, '..')
const desk = join(root, 'packages', 'desk')
const { values } = parseArgs({ options: { to: { type: 'string' } } })
const built = values.to ?? join(desk, 'dist')
const stamp = join(built, 'built-from.txt')

/** Files that may be built in: sources of packages that pages hold, faces, and what the lock file pins. */
function sourceFiles(): readonly string[] {
  const folders = ['desk', 'report', 'questions', 'survey', 'biology', 'stats', 'model', 'exchange', 'server'].flatMap((name) => [
    join('packages', name, 'src'),
    join('packages', name, 'fonts'),
  ])
  const inside = folders
    .filter((folder) => existsSync(join(root, folder)))
    .flatMap((folder) =>
      readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
        .filter((entry) => entry.isFile())
        .map((entry) => join(entry.parentPath, entry.name)),
    )
  const single = ['package-lock.json', 'packages/desk/index.html', 'packages/desk/vite.config.ts', 'packages/desk/package.json']
  return [...inside, ...single.map((file) => join(root, file))].sort()
}

function sourcesHash(): string {
  const hash = createHash('sha256')
  for (const file of sourceFiles()) {
    hash.update(`${file.slice(root.length).replaceAll('\\', '/')}\n`)
    hash.update(readFileSync(file))
  }
  return hash.digest('hex')
}

const now = sourcesHash()
if (values.to === undefined && existsSync(stamp) && readFileSync(stamp, 'utf8').trim() === now)
  process.stdout.write('The desk is built.\n')
else {
  // Whatever the caller is for (tests have a mode of their own), what is served is the same.
  process.env.NODE_ENV = 'production'
  const { build } = await import('vite')
  await build({
    root: desk,
    mode: 'production',
    configFile: join(desk, 'vite.config.ts'),
    logLevel: 'warn',
    build: { outDir: built, emptyOutDir: true },
  })
  writeFileSync(stamp, `${now}\n`)
  process.stdout.write('The desk has been built.\n')
}
