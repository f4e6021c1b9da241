/** Letters, digits and signs that mean themselves in a shell; a tilde does where it does not begin a word. */
const meansItself = /^(?!~)[\p{L}\p{M}\p{N}_.,:/@%+=~-]+$/u
/** What still means something between double quotes. */
const meansMoreInDoubleQuotes = /["$`!]|\\(?:\\|$)/u

/**
 * One word of a command as it can be copied into a shell: as it is, between double quotes where it holds blanks, and between
 * single quotes where it holds signs that a shell would act on, so that a name from a file can never become a command.
 */
export function commandWord(text: string, shell: 'posix' | 'windows' = 'posix'): string {
  if (shell === 'windows') return windowsWord(text)
  if (meansItself.test(text)) return text
  if (!meansMoreInDoubleQuotes.test(text)) return `"${text}"`
  return `'${text.replaceAll("'", String.raw`'\''`)}'`
}

/** What means itself in the shells of Windows: a path among it, but no variable. */
const meansItselfThere = /^[\p{L}\p{M}\p{N}_.,:/\\@+=~-]+$/u

/** Between double quotes; a sign that acts even there cuts the name, whose beginning is known by its ellipsis. */
function windowsWord(text: string): string {
  if (meansItselfThere.test(text)) return text
  const [safe = '', ...rest] = text.split(/["%!`$]/u)
  return rest.length === 0 ? `"${text}"` : `"${safe}…"`
}

/** A line that begins so is a command to be copied. */
const commandLine = /^ {4}.*$/gmu
/** A blank, between quotes or not: how it is quoted depends on what stands in it. */
const blank = /"\{(\w+)\}"|\{(\w+)\}/gu

/** The name under which a value is known as a word of a command. */
export const typedBlank = (name: string): string => `${name}_typed`

/** A message text whose blanks in commands ask for words of a command. */
export function withCommandWords(text: string): string {
  return text.replace(commandLine, (line) =>
    line.replace(blank, (_, quoted: string | undefined, bare: string | undefined) => `{${typedBlank(quoted ?? bare ?? '')}}`),
  )
}
