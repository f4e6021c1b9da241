/** Names of what this page asks to be done: by them its progress is told, and it is stopped. */
const ours = `desk-${Date.now()}-${Math.floor(Math.random() * 1e6)}-`
let jobs = 0

export function newJob(): string {
  jobs += 1
  return `${ours}${jobs}`
}

export const isOurJob = (job: string): boolean => job.startsWith(ours)
