import type { Words } from '@thrum/model/ground'

const strange: { readonly [letter: string]: string } = {
  a: 'á',
  b: 'ƀ',
  c: 'ç',
  d: 'đ',
  e: 'é',
  f: 'ƒ',
  g: 'ğ',
  h: 'ħ',
  i: 'í',
  j: 'ĵ',
  k: 'ķ',
  l: 'ł',
  m: 'ɱ',
  n: 'ñ',
  o: 'ó',
  p: 'þ',
  q: 'ɋ',
  r: 'ř',
  s: 'š',
  t: 'ŧ',
  u: 'ú',
  v: 'ṽ',
  w: 'ŵ',
  x: 'ẋ',
  y: 'ý',
  z: 'ž',
}

const estrange = (text: string): string => text.replace(/[a-z]/giu, (letter) => strange[letter.toLowerCase()] ?? letter)

/** End of the argument that begins at `{`. */
function closing(text: string, open: number): number {
  let depth = 0
  for (let k = open; k < text.length; k++) {
    if (text[k] === '{') depth += 1
    if (text[k] === '}') depth -= 1
    if (depth === 0) return k
  }
  return text.length - 1
}

/** An argument of a message: its name and form stay, the sub-messages of plural and select become strange. */
function argument(text: string): string {
  const form = /^\{\s*\w+\s*,\s*(?:plural|select)\s*,/u.exec(text)?.[0]
  if (form === undefined) return text
  let out = form
  let rest = text.slice(form.length, -1)
  for (let open = rest.indexOf('{'); open >= 0; open = rest.indexOf('{')) {
    const end = closing(rest, open)
    out += `${rest.slice(0, open)}{${strangeMessage(rest.slice(open + 1, end))}}`
    rest = rest.slice(end + 1)
  }
  return `${out}${rest}}`
}

/** An ICU message in a made-up language: every plain letter becomes a strange one, every blank stays. */
export function strangeMessage(text: string): string {
  let out = ''
  let rest = text
  for (let open = rest.indexOf('{'); open >= 0; open = rest.indexOf('{')) {
    const end = closing(rest, open)
    out += estrange(rest.slice(0, open)) + argument(rest.slice(open, end + 1))
    rest = rest.slice(end + 1)
  }
  return out + estrange(rest)
}

export function pseudo(words: Words): Words {
  return Object.fromEntries(Object.entries(words).map(([id, text]) => [id, strangeMessage(text)]))
}
