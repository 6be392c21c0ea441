import { describe, expect, it } from 'vitest'
import { program } from '../../src/cli/program.js'
import { COMMAND_TIMEOUT_MS, runFrondline } from './run-frondline.js'

describe('frondline --help', { timeout: 2 * COMMAND_TIMEOUT_MS }, () => {
  it('lists every command, and each has help of its own', async () => {
    const { exit, out, err } = await runFrondline(['--help'])
    expect({ exit, err }).toEqual({ exit: 0, err: '' })
    const commands = [...out.slice(out.indexOf('Commands:')).matchAll(/^ {2}([a-z]+)\b/gm)].map(([, name]) => name ?? '').filter((name) => name !== 'help')
    expect(commands).toEqual(expect.arrayContaining(['proof', 'ask', 'match', 'replay']))
    // One is started as people start it; the others are asked here, since a start of each takes seconds.
    const started = await runFrondline(['proof', '--help'])
    expect(started).toMatchObject({ exit: 0, err: '' })
    expect(started.out.startsWith(helpOf('proof'))).toBe(true)
    for (const command of commands) {
      expect(helpOf(command)).toMatch(new RegExp(`^Usage: frondline ${command} `))
      expect(helpOf(command)).toMatch(/\n\n[A-Z][^]+?\.\n/)
    }
  })

  it('points to the help for a command or an option that does not exist', async () => {
    const [command, option] = await Promise.all([runFrondline(['prooof']), runFrondline(['replay', '--fail'])])
    expect(command).toMatchObject({ exit: 1, out: '' })
    expect(command.err).toContain('(Did you mean proof?)')
    expect(option).toMatchObject({ exit: 1, out: '' })
    expect(option.err).toContain('(run with --help to see what is expected)')
  })
})

function helpOf(command: string): string {
  return program().commands.find((one) => one.name() === command)?.helpInformation() ?? ''
}
