export interface Import {
  readonly specifier: string
  /** counted from 1 */
  readonly line: number
  /** `export * from`, which hides what a package gives out. `export * as name from` says it. */
  readonly star: boolean
}

const blank = (text: string): string => text.replace(/[^\n]/g, ' ')

/** Comments and templates turned into spaces of the same length, so that lines stay where they are. Plain strings stay. */
function withoutComments(source: string): string {
  return source.replace(/\/\*[\s\S]*?\*\/|\/\/[^\n]*|`(?:\\[\s\S]|[^`\\])*`|'(?:\\.|[^'\\\n])*'|"(?:\\.|[^"\\\n])*"/g, (part) =>
    part.startsWith("'") || part.startsWith('"') ? part : blank(part),
  )
}

const statement = /(?:^|[;}\n])[ \t]*(import|export)\b([^'"`;()=]*?)\bfrom\s*(['"])([^'"\n]+)\3/g
const bare = /(?:^|[;}\n])[ \t]*import\s*(['"])([^'"\n]+)\1/g
const dynamic = /\bimport\s*\(\s*(['"])([^'"\n]+)\1/g

/**
 * Every import of a TypeScript source: `import ... from`, `export ... from`, `import '...'`, `import('...')`, types with them.
 *
 * Reads text, not syntax: an `import` written inside a plain string over several words would be taken for one. The type check,
 * which knows syntax, guards the same edges; this tells who broke which and what to do.
 */
export function readImports(source: string): readonly Import[] {
  const code = withoutComments(source)
  const lineOf = (offset: number): number => code.slice(0, offset).split('\n').length
  const found: { readonly at: number; readonly specifier: string; readonly star: boolean }[] = []
  for (const match of code.matchAll(statement)) {
    const star = match[1] === 'export' && /^\s*(type\s+)?\*\s*$/.test(match[2] ?? '')
    found.push({ at: match.index + match[0].length - 1, specifier: match[4] ?? '', star })
  }
  for (const match of code.matchAll(bare))
    found.push({ at: match.index + match[0].length - 1, specifier: match[2] ?? '', star: false })
  for (const match of code.matchAll(dynamic))
    found.push({ at: match.index + match[0].length - 1, specifier: match[2] ?? '', star: false })
  return found.sort((a, b) => a.at - b.at).map(({ at, specifier, star }) => ({ specifier, line: lineOf(at), star }))
}
