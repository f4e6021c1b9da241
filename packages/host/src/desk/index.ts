// What a desk asks of a project beside what every edge asks

export { type AskingState, askingState } from './asking-state.ts'
export { isDemonstration } from './is-demonstration.ts'
export { type PinAsked, pinQuestion } from './pin-question.ts'
