import { describe, expect, it } from 'vitest'
import { COMMAND_TIMEOUT_MS, runFrondline } from './run-frondline.js'

// Every command is started once, one after the other.
describe('frondline --help', { timeout: 4 * COMMAND_TIMEOUT_MS }, () => {
  it('lists every command, and each has help of its own', async () => {
    const { exit, out, err } = await runFrondline(['--help'])
    expect({ exit, err }).toEqual({ exit: 0, err: '' })
    const commands = [...out.slice(out.indexOf('Commands:')).matchAll(/^ {2}([a-z]+)\b/gm)].map(([, name]) => name ?? '').filter((name) => name !== 'help')
    expect(commands).toEqual(expect.arrayContaining(['proof', 'ask', 'match', 'replay']))
    for (const command of commands) {
      const help = await runFrondline([command, '--help'])
      expect(help).toMatchObject({ exit: 0, err: '' })
      expect(help.out).toMatch(new RegExp(`^Usage: frondline ${command} `))
      expect(help.out).toMatch(/\n\n[A-Z][^]+?\.\n/)
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
