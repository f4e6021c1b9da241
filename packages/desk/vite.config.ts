import react from '@vitejs/plugin-react'
import { defineConfig } from 'vite'

/** One commit gives the same bytes: names hang on contents, and nothing of the machine or the moment is built in. */
export default defineConfig({
  plugins: [react()],
  build: { target: 'es2024', assetsInlineLimit: 0, sourcemap: false, reportCompressedSize: true, chunkSizeWarningLimit: 700 },
  worker: { format: 'es' },
})
