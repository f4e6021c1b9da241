export { words } from './words.en.ts'
