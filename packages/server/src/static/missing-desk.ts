import { saying } from '@thrum/model/ground'
import { say } from '../words/speakers.ts'

const command = 'npm run build:desk'

/** A plain page for a desk that was never built: no script, no style, nothing to load. */
export function missingDesk(): string {
  const [title, what, how] = ['title', 'not-built', 'how'].map((id) => say(saying(`server/desk/${id}`)))
  return `<!doctype html>
<html lang="${say.language}">
<head><meta charset="utf-8"><title>${title}</title></head>
<body><h1>${title}</h1><p>${what}</p><p>${how}</p><pre>${command}</pre></body>
</html>
`
}
