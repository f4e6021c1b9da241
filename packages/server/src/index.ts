// The local server

export { usualPort } from './door/listen.ts'
export { type Serving, servingNow } from './lock/lock-file.ts'
export { type Server, type ServerAsked, startServer } from './start-server.ts'
