/** A problem as a workflow command, which GitHub Actions shows at its line of the change. */
import type { Problem } from '../types.ts'

/**
 * `::error file=…,line=…,col=…,endColumn=…,title=…::message`. Per cent sign and line ends are escaped everywhere,
 * colon and comma in properties, as the toolkit of GitHub Actions does (`escapeData`, `escapeProperty`).
 */
export function printAnnotation(problem: Problem): string {
  const { at, severity, code } = problem
  const properties = [
    `file=${property(at.file)}`,
    `line=${at.line}`,
    ...(at.endLine > at.line ? [`endLine=${at.endLine}`] : []),
    `col=${at.column}`,
    ...(at.endLine === at.line ? [`endColumn=${Math.max(at.endColumn, at.column + 1)}`] : []),
    `title=${property(code)}`,
  ]
  const said = [problem.message, problem.why, problem.hint].filter((text) => text !== undefined)
  return `::${severity} ${properties.join(',')}::${data(said.join('\n'))}`
}

const data = (text: string) => text.replaceAll('%', '%25').replaceAll('\r', '%0D').replaceAll('\n', '%0A')

const property = (text: string) => data(text).replaceAll(':', '%3A').replaceAll(',', '%2C')
