/** The five verdicts of a contrast. Estimates carry none, unless the audit blocks. */
export const verdicts = ['design-blocks', 'alike', 'shown', 'leaning', 'unsettled'] as const
export type Verdict = (typeof verdicts)[number]
