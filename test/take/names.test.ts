/** Names of handed-in files. That every system must take them is common practice, no source. */
import { describe, expect, it } from 'vitest'
import { caseDoubles, isLitter, nameFault } from '../../src/take/names.ts'

describe('a name', () => {
  it.each([
    'a.jpg',
    'photos/a-1.jpg',
    'records/runs/2026-03/2026-03-04-0912-tank-leak.md',
    'Fotos vom Tank/für.jpg',
    '.DS_Store',
    'folder/',
    'a..b.jpg',
    'console.log',
  ])('%j may be taken', (name) => {
    expect(nameFault(name)).toBeNull()
  })

  it.each([
    ['../a.md', 'leads out'],
    ['records/../../a.md', 'leads out'],
    ['..', 'leads out'],
    ['/etc/passwd', 'a place on a machine'],
    ['C:/a.md', 'a place on a machine'],
    ['C:a.md', 'a place on a machine'],
    ['..\\a.md', 'backslash'],
    ['a\\b.md', 'backslash'],
    ['a\0.md', 'cannot be seen'],
    ['a\n.md', 'cannot be seen'],
    ['a\u202egpj.md', 'cannot be seen'],
    ['a//b.md', 'empty step'],
    ['./a.md', 'empty step'],
    ['ab:c.md', 'not every system'],
    ['what?.md', 'not every system'],
    ['con.md', 'device'],
    ['x/NUL', 'device'],
    ['a./b.md', 'ends with a dot'],
    ['a /b.md', 'ends with a dot'],
    [`${'long'.repeat(60)}.md`, 'too long'],
  ])('%j is refused: %s', (name, why) => {
    expect(nameFault(name)).toMatch(why)
  })

  it('of a file manager is no concern', () => {
    expect(['__MACOSX/._a.md', 'x/.DS_Store', 'Thumbs.db', 'x/desktop.ini'].every(isLitter)).toBe(true)
    expect(['a.md', 'x/thumbs.dbx', '_a.md', '../a.md', './a.md', '..'].some(isLitter)).toBe(false)
  })

  it('and another that differ by case only are found, and equal ones too', () => {
    expect(caseDoubles(['a.jpg', 'b.jpg', 'A.JPG'])).toEqual([['a.jpg', 'A.JPG']])
    expect(caseDoubles(['fu\u0308r', 'FÜR'])).toHaveLength(1)
    expect(caseDoubles(['x', 'x'])).toEqual([['x', 'x']])
    expect(caseDoubles(['a', 'b'])).toEqual([])
  })
})
