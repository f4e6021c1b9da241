import { ThrumError } from '@thrum/model/ground'
import { withTexts } from '@thrum/report'
import { hasZodFastifySchemaValidationErrors } from 'fastify-type-provider-zod'
import type { Failure } from '../api/told.ts'
import { say } from '../words/speakers.ts'

/** Status of a failure by the beginning of its code; the first that fits. What is not here was asked for in vain: 422. */
const statuses: readonly (readonly [code: string, status: number])[] = [
  ['server/door/path', 400],
  ['server/door/token', 401],
  ['server/door/', 403],
  ['server/no-such-route', 404],
  ['server/table/gone', 404],
  ['server/open/no-such-file', 404],
  ['server/no-project', 409],
  ['server/request/media-type', 415],
  ['server/request/too-large', 413],
  ['server/request/', 400],
  ['server/table/name', 400],
  ['server/cancelled', 499],
  ['host/stopped', 499],
  ['server/thread-ended', 503],
  ['server/mishap', 500],
  ['model/options/', 400],
  ['host/no-such-question', 404],
  ['host/row/unknown', 404],
  ['host/read-only', 409],
  ['store/read-only', 409],
  ['store/exists', 409],
  ['store/busy', 503],
]

export function statusOf(code: string): number {
  return statuses.find(([start]) => code === start || (start.endsWith('/') && code.startsWith(start)))?.[1] ?? 422
}

/** A failure as every reply of an error tells it. */
export function failureTold(error: ThrumError): Failure {
  return {
    code: error.code,
    values: withTexts(error.values, say) as Failure['values'],
    text: say(error.saying),
    remedy: say(error.remedy),
  }
}

/** Failures of the HTTP library, by its codes. */
const ofLibrary: { readonly [code: string]: string } = {
  FST_ERR_CTP_INVALID_MEDIA_TYPE: 'server/request/media-type',
  FST_ERR_CTP_BODY_TOO_LARGE: 'server/request/too-large',
  FST_ERR_CTP_EMPTY_JSON_BODY: 'server/request/not-json',
  FST_ERR_CTP_INVALID_JSON_BODY: 'server/request/not-json',
  FST_ERR_CTP_INVALID_CONTENT_LENGTH: 'server/request/not-json',
}

/** Whatever went wrong, as a failure that a person can act on. */
export function asFailure(error: unknown): ThrumError {
  if (error instanceof ThrumError) return error
  if (hasZodFastifySchemaValidationErrors(error)) {
    const first = error.validation[0]
    const where = [error.validationContext, first?.instancePath.replace(/^\//u, '').replaceAll('/', '.')]
      .filter(Boolean)
      .join('.')
    return new ThrumError('server/request/misshapen', { where, what: first?.message ?? '' }, { cause: error })
  }
  const { code, statusCode, name, message } = error as { code?: string; statusCode?: number; name?: string; message?: string }
  const known = code === undefined || !Object.hasOwn(ofLibrary, code) ? undefined : ofLibrary[code]
  if (known !== undefined) return new ThrumError(known, {}, { cause: error })
  if (error instanceof SyntaxError && statusCode === 400) return new ThrumError('server/request/not-json', {}, { cause: error })
  return new ThrumError('server/mishap', { what: `${name ?? 'Error'}: ${message ?? String(error)}` }, { cause: error })
}
