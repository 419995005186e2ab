/** What the commands share: arguments with a clear complaint, the version, the root. */
import { existsSync, readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { type ParseArgsConfig, parseArgs } from 'node:util'

type Options = NonNullable<ParseArgsConfig['options']>

/** Exit status of a wrong call. */
export const WRONG_CALL = 2

export const home = resolve(import.meta.dirname, '..')

const packageFile: unknown = JSON.parse(readFileSync(resolve(home, 'package.json'), 'utf8'))

/** Name of the tool and its version, as it stands in readiness records. */
export const tool =
  typeof packageFile === 'object' && packageFile && 'version' in packageFile
    ? String(packageFile.version)
    : 'unknown'

/** Prints the help or the complaint and gives null where the command should end. */
export const readCall = <T extends Options>(options: T, help: string) => {
  if (process.argv.slice(2).includes('--help')) {
    process.stdout.write(help)
    return null
  }
  try {
    return parseArgs({ args: process.argv.slice(2), options, allowPositionals: true, strict: true })
  } catch (error) {
    const [message = ''] = (error instanceof Error ? error.message : String(error)).split('. To specify')
    complain(`${message}\n\n${help}`)
    return null
  }
}

/** The same for a command that takes options only. */
export const readArguments = <T extends Options>(options: T, help: string) => {
  const call = readCall(options, help)
  const [extra] = call?.positionals ?? []
  if (extra === undefined) return call
  complain(`${extra} is not understood here.\n\n${help}`)
  return null
}

export const complain = (message: string): void => {
  process.stderr.write(`${message}\n`)
  process.exitCode = WRONG_CALL
}

const DAY = /^\d{4}-\d{2}-\d{2}$/

/** A day such as 30 February is taken for another one by the clock, and is none. */
export const isDay = (text: string): boolean => {
  const time = DAY.test(text) ? Date.parse(`${text}T00:00Z`) : Number.NaN
  return !Number.isNaN(time) && new Date(time).toISOString().startsWith(text)
}

/** Whether `--as-of` names a day to judge by; not given, it is today. Complains where it does not. */
export const canJudgeBy = (asOf: string | undefined): boolean => {
  if (asOf === undefined || isDay(asOf)) return true
  complain(`--as-of ${asOf} is no day; write YYYY-MM-DD.`)
  return false
}

/** The folder of `--root`, else this repository. */
export const rootOf = (folder: string | undefined): string => (folder ? resolve(folder) : home)

/** The same; null after the complaint where it holds no campaign, so that nothing is looked for in the wrong place. */
export const campaignRoot = (folder: string | undefined, help: string): string | null => {
  const root = rootOf(folder)
  if (['shared', 'records'].some((part) => existsSync(resolve(root, part)))) return root
  complain(`${folder ?? root} holds neither records/ nor shared/.\n\n${help}`)
  return null
}
