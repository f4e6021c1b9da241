import { v7 } from 'uuid'
import type { z } from 'zod'
import { ThrumError } from '../ground/index.ts'
import type { Fact, FactBody } from './fact.ts'
import type { FactKind } from './kinds.ts'
import type { LogicalClock } from './logical-clock.ts'

/** Who writes, on what, at which moment. */
export interface Author {
  readonly by: string
  readonly device: string
  readonly clock: LogicalClock
}

/**
 * A new fact, its body checked by the shape of its kind.
 *
 * @param options.id given for what a file brings (a hash, so that the same file is the same fact); else a UUID v7
 * @throws ThrumError model/fact/misshapen, naming the kind and what is wrong
 */
export function makeFact<S extends z.ZodType>(
  kind: FactKind<S>,
  body: z.infer<S>,
  author: Author,
  options: { readonly id?: string; readonly subject?: string; readonly data?: Uint8Array } = {},
): Fact {
  const checked = kind.shape.safeParse(body)
  if (!checked.success) {
    const first = checked.error.issues[0]
    throw new ThrumError('model/fact/misshapen', {
      kind: kind.kind,
      where: first?.path.join('.') ?? '',
      what: first?.message ?? '',
    })
  }
  return {
    id: options.id ?? v7(),
    kind: kind.kind,
    v: kind.v,
    subject: options.subject ?? null,
    at: author.clock.next(),
    by: author.by,
    device: author.device,
    body: checked.data as FactBody,
    data: options.data ?? null,
  }
}
