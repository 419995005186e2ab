import module from 'node:module'
import { fileURLToPath } from 'node:url'

// Entry of every command: plain JavaScript, so that an old Node still reads it and says what is missing.
const [major = 0, minor = 0] = process.versions.node.split('.').map(Number)

if (major < 22 || (major === 22 && minor < 18)) {
  console.error(
    `This needs Node 24, and Node ${process.versions.node} is running.\n` +
      'The package `node` brings it along: run `npm ci` without --ignore-scripts, then start again with `npm run`.',
  )
  process.exitCode = 1
} else {
  // Compiled code is kept for the next call, which then starts some tenths of a second sooner.
  module.enableCompileCache?.(fileURLToPath(new URL('../node_modules/.cache/compiled', import.meta.url)))
  const [command = ''] = process.argv.splice(2, 1)
  await import(new URL(`./${command}.ts`, import.meta.url).href)
}
