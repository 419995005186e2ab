import { defineConfig } from 'astro/config'
import { offlineForms } from './src/form/node/offline.ts'
import { followViews } from './src/views/follow.ts'
import { recordFiles } from './src/views/record-files.ts'

const base = (process.env.BASE_PATH || '/').replace(/\/*$/, '/')

/**
 * A static site under a strict content policy: no inline style, no inline script, nothing from elsewhere.
 * BASE_PATH is the folder under which the site will be served, `/` where it has a host of its own.
 */
export default defineConfig({
  site: process.env.SITE_URL || undefined,
  base,
  outDir: process.env.OUT_DIR || './dist',
  publicDir: './src/public',
  trailingSlash: 'always',
  build: { format: 'directory', inlineStylesheets: 'never', assets: 'assets' },
  markdown: { syntaxHighlight: false },
  devToolbar: { enabled: false },
  // Not import.meta.env.BASE_URL: a variable BASE_URL in somebody's shell would win over the setting.
  vite: {
    build: { assetsInlineLimit: 0 },
    // Within the scope of the service worker: a worker is held by the one that its own address belongs to.
    worker: {
      format: 'es',
      rolldownOptions: {
        output: {
          entryFileNames: 'record/code/[name]-[hash].js',
          chunkFileNames: 'record/code/[name]-[hash].js',
        },
      },
    },
    define: { SITE_BASE: JSON.stringify(base) },
  },
  integrations: [recordFiles(), followViews(), offlineForms(base)],
})
