/** While developing: open pages are loaded again when their views were written anew. */
import type { AstroIntegration } from 'astro'
import { viewsFile } from './load.ts'

export const followViews = (): AstroIntegration => ({
  name: 'follow-views',
  hooks: {
    'astro:server:setup': ({ server }) => {
      const file = viewsFile()
      server.watcher.add(file)
      server.watcher.on('change', (changed) => {
        if (changed === file) server.ws.send({ type: 'full-reload' })
      })
    },
  },
})
