import { createInterface } from 'node:readline'

/** Asks a person, or a pipe, for one line at a time. */
export interface LinePrompt {
  /** The next line, or null when the input has ended. */
  ask(text: string): Promise<string | null>
  close(): void
}

/** Reads lines one by one; lines that come before they are asked for wait their turn, so that a script can be piped in. */
export function openLinePrompt(input: NodeJS.ReadableStream, output: NodeJS.WritableStream): LinePrompt {
  const reader = createInterface({ input, crlfDelay: Infinity })
  const lines = reader[Symbol.asyncIterator]()
  return {
    async ask(text) {
      output.write(text)
      const { value, done } = await lines.next()
      return done === true ? null : value
    },
    close() {
      reader.close()
    },
  }
}
