import { spawn } from 'node:child_process'
import { join } from 'node:path'

const program = new URL('../../src/cli/frondline.mjs', import.meta.url).pathname

/** What a command wrote and how it ended. */
export interface Run {
  readonly exit: number | null
  readonly out: string
  readonly err: string
}

/** Runs `frondline` as a child process, the way a person would. */
export function runFrondline(args: readonly string[], { input = '', cwd = join(program, '../../..'), environment = {} }: { input?: string; cwd?: string; environment?: Record<string, string> } = {}): Promise<Run> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [program, ...args], { cwd, env: { ...process.env, ...environment } })
    let out = ''
    let err = ''
    child.stdout.setEncoding('utf8').on('data', (text: string) => { out += text })
    child.stderr.setEncoding('utf8').on('data', (text: string) => { err += text })
    // A command may end before it has read everything.
    child.stdin.on('error', () => undefined)
    child.stdin.end(input)
    child.on('error', reject)
    child.on('close', (exit) => { resolve({ exit, out, err }) })
  })
}

/** Runs `frondline` with a reader that takes the first line of output and then goes away, as `head -1` does. */
export function runAndReadOneLine(args: readonly string[], input: string): Promise<Run> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [program, ...args])
    let out = ''
    let err = ''
    child.stdout.setEncoding('utf8').on('data', (text: string) => {
      out += text
      if (out.includes('\n')) child.stdout.destroy()
    })
    child.stderr.setEncoding('utf8').on('data', (text: string) => { err += text })
    child.stdin.on('error', () => undefined)
    child.stdin.end(input)
    child.on('error', reject)
    child.on('close', (exit) => { resolve({ exit, out: out.slice(0, out.indexOf('\n')), err }) })
  })
}

/** The JSON values of an output with one a line. */
export function jsonLines(text: string): unknown[] {
  return text.split('\n').filter((line) => line !== '').map((line): unknown => JSON.parse(line))
}

/** Starting the program takes a moment on a busy machine. */
export const COMMAND_TIMEOUT_MS = 60_000
