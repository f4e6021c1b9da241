// Words

// Plain text and the machine form
export { answerJson, withTexts } from './print/answer-json.ts'
export { columnsOf, pageWidth, table, wrap } from './print/layout.ts'
export { type Detail, printAnswer } from './print/print-answer.ts'
export { english } from './say/english.ts'
export { createSpeaker, plainText, type Speaker } from './say/say.ts'
