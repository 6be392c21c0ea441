import { type ChildProcess, spawn } from 'node:child_process'

/** The service as a process of its own. */
export interface ServiceProcess {
  readonly url: string
  readonly child: ChildProcess
  /** Sends a signal and gives the exit code, null when the signal itself ended it. */
  end(signal: 'SIGKILL' | 'SIGTERM'): Promise<number | null>
}

/** Starts the service on a free port and resolves once it says that it is up. */
export async function startProcess(environment: Record<string, string>): Promise<ServiceProcess> {
  const child = spawn(process.execPath, ['src/cli/frondline.mjs', 'serve', '--port', '0'], {
    stdio: ['ignore', 'pipe', 'pipe'],
    env: { ...process.env, FRONDLINE_CASES_PER_MINUTE: '1000000', FRONDLINE_SIGN_INS_PER_MINUTE: '1000000', ...environment },
  })
  let said = ''
  const ended = new Promise<number | null>((resolve) => { child.once('exit', (code) => { resolve(code) }) })
  const url = await new Promise<string>((resolve, reject) => {
    child.stderr.on('data', (chunk: Buffer) => { said += chunk.toString() })
    child.stdout.on('data', (chunk: Buffer) => {
      said += chunk.toString()
      const found = /running at (http:\S+)/.exec(said)?.[1]
      if (found !== undefined) resolve(found)
    })
    child.once('exit', (code) => { reject(new Error(`The service ended with ${String(code)}: ${said}`)) })
  })
  return {
    url, child,
    end(signal) {
      child.kill(signal)
      return ended
    },
  }
}
