/** Writes lines to standard output. Commands print through this so that lint can forbid stray printing elsewhere. */
export function print(...lines: readonly string[]): void {
  for (const line of lines) process.stdout.write(`${line}\n`)
}

/** Writes lines to standard error: notices and faults, out of the way of piped output. */
export function notice(...lines: readonly string[]): void {
  for (const line of lines) process.stderr.write(`${line}\n`)
}

/** Today's date in ISO form, in the machine's own time zone. */
export function today(): string {
  const now = new Date()
  return `${now.getFullYear()}-${String(now.getMonth() + 1).padStart(2, '0')}-${String(now.getDate()).padStart(2, '0')}`
}

/** Ends the program quietly once nobody reads its output any more, as after `frondline match | head -1`. */
export function endWhenNobodyReads(): void {
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error
    process.exit()
  })
}
