import type { FastifyHelmetOptions } from '@fastify/helmet'

/** What a page of ours may load: its own files and nothing else. Figures are drawn with styles of their own. */
export const contentPolicy = {
  'default-src': ["'none'"],
  'script-src': ["'self'"],
  'style-src': ["'self'", "'unsafe-inline'"],
  'img-src': ["'self'", 'data:', 'blob:'],
  'font-src': ["'self'"],
  'connect-src': ["'self'"],
  'worker-src': ["'self'"],
  'manifest-src': ["'self'"],
  'base-uri': ["'none'"],
  'form-action': ["'none'"],
  'frame-ancestors': ["'none'"],
} as const

/** Every header is named here; none is left to what a library takes for usual. */
export const helmetSettings: FastifyHelmetOptions = {
  global: true,
  contentSecurityPolicy: {
    useDefaults: false,
    directives: Object.fromEntries(Object.entries(contentPolicy).map(([name, sources]) => [name, [...sources]])),
  },
  xContentTypeOptions: true,
  referrerPolicy: { policy: 'no-referrer' },
  crossOriginOpenerPolicy: { policy: 'same-origin' },
  crossOriginEmbedderPolicy: { policy: 'require-corp' },
  crossOriginResourcePolicy: { policy: 'same-origin' },
  xFrameOptions: { action: 'deny' },
  originAgentCluster: true,
  xDnsPrefetchControl: { allow: false },
  xPermittedCrossDomainPolicies: { permittedPolicies: 'none' },
  xDownloadOptions: false,
  xXssProtection: false,
  xPoweredBy: true,
  // It would bind a name of this machine to a certificate that nobody has.
  strictTransportSecurity: false,
}
