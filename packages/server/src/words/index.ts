// What the local server says, for whoever gathers all words. Imports nothing but them.

export { words } from './words.en.ts'
export { words as wordsEs } from './words.es.ts'
