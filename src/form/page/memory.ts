/** Where the browser keeps nothing at all: for as long as the page lives. */
import type { KeptRun, Store } from './store.ts'

export const memoryStore = (): Store => {
  const runs = new Map<string, KeptRun>()
  const files = new Map<string, Blob>()
  return {
    all: async () => [...runs.values()],
    get: async (key) => runs.get(key),
    put: async (run) => {
      const next = { ...run, version: run.version + 1 }
      runs.set(run.key, next)
      return next
    },
    remove: async (key) => {
      runs.delete(key)
    },
    putFile: async (key, name, blob) => {
      files.set(`${key}/${name}`, blob)
    },
    addFile: async (key, name, blob) => {
      if (files.has(`${key}/${name}`)) return false
      files.set(`${key}/${name}`, blob)
      return true
    },
    file: async (key, name) => files.get(`${key}/${name}`),
    removeFile: async (key, name) => {
      files.delete(`${key}/${name}`)
    },
  }
}
