import { createHash, randomBytes, timingSafeEqual } from 'node:crypto'

/** A key for one run of the server: 32 bytes of the platform's randomness, as letters that an address can hold. */
export function makeToken(): string {
  return randomBytes(32).toString('base64url')
}

const digestOf = (text: string): Buffer => createHash('sha256').update(text).digest()

/** Compares a key that was handed in with the right one, in a time that tells nothing of where they differ. */
export function isToken(token: string, found: unknown): boolean {
  return typeof found === 'string' && timingSafeEqual(digestOf(token), digestOf(found))
}
