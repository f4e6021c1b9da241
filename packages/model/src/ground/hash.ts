import { sha256 } from '@noble/hashes/sha2.js'
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js'

/** SHA-256 of bytes or of text in UTF-8, as 64 lower-case hexadecimal digits. */
export function sha256Hex(content: Uint8Array | string): string {
  return bytesToHex(sha256(typeof content === 'string' ? utf8ToBytes(content) : content))
}

/** SHA-256 over a stream of parts. */
export function sha256Stream(): { update(part: Uint8Array): void; hex(): string } {
  const state = sha256.create()
  return {
    update: (part) => {
      state.update(part)
    },
    hex: () => bytesToHex(state.digest()),
  }
}
