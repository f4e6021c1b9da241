// Figures
export { type DrawnAnswer, drawAnswer, hasFigure } from './figure/draw-answer.ts'
export { type DrawnFigure, drawFigure, type FigureSettings, marginOf as figureMargin, narrowest } from './figure/draw-figure.ts'
export { type Theme, themes } from './figure/ink.ts'
export type { TableView } from './figure/plate.ts'
// Plain text and the machine form
export { answerJson, withTexts } from './print/answer-json.ts'
export { columnsOf, pageWidth, table, wrap } from './print/layout.ts'
export { intervalText, limitWords, valueWords } from './print/numbers.ts'
export { type Detail, printAnswer } from './print/print-answer.ts'
export { printTableFit } from './print/print-table-fit.ts'
// Words
export { commandWord } from './say/command-word.ts'
export { english } from './say/english.ts'
export { dayLocale, type Language, languages, spokenLanguage } from './say/languages.ts'
export { createSpeaker, plainText, type Speaker } from './say/say.ts'
export { spanish } from './say/spanish.ts'
