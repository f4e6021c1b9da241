export * from './ground/index.ts'
