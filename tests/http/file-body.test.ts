import { createServer, request as send, type ClientRequest, type Server } from 'node:http'
import type { AddressInfo } from 'node:net'
import express from 'express'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { type FileReader, fileReader } from '../../src/http/file-body.js'
import { RequestFault } from '../../src/http/request-fault.js'

const LIMITS = { mostBytes: 1000, silenceMs: 1000, mostUnderWay: 2500 }

let server: Server
let files: FileReader
/** What came of each request, in order of their ends: the size of the file or the code of the fault. */
let ends: (number | string)[]
beforeEach(async () => {
  files = fileReader(LIMITS)
  ends = []
  const app = express()
  app.put('/', async (request, response) => {
    try {
      ends.push((await files.read(request)).length)
    } catch (fault) {
      ends.push(fault instanceof RequestFault ? fault.code : String(fault))
    }
    response.end()
  })
  server = createServer(app)
  await new Promise<void>((resolve) => { server.listen(0, '127.0.0.1', resolve) })
})
afterEach(() => new Promise<void>((resolve) => {
  server.closeAllConnections()
  server.close(() => { resolve() })
}))

/** Begins to send without saying how much will come. */
function begin(bytes: number): ClientRequest {
  const { port } = server.address() as AddressInfo
  const asking = send({ port, host: '127.0.0.1', method: 'PUT', path: '/' })
  asking.on('error', () => undefined)
  asking.write(Buffer.alloc(bytes))
  return asking
}
const ended = (count: number) => expect.poll(() => ends.length, { timeout: 5000 }).toBe(count)

describe('reading a file that is being sent', () => {
  it('gives the whole file, however it is cut into pieces', async () => {
    const asking = begin(300)
    asking.write(Buffer.alloc(400))
    asking.end(Buffer.alloc(300))
    await ended(1)
    expect(ends).toEqual([1000])
  })

  it('stops at the first byte too many of a file whose size was not announced', async () => {
    begin(1001)
    await ended(1)
    expect(ends).toEqual(['FILE_TOO_LARGE'])
  })

  it('gives up a sender who has gone, and one who has fallen silent', async () => {
    const gone = begin(300)
    await new Promise((resolve) => setTimeout(resolve, 50))
    gone.destroy()
    await ended(1)
    begin(300)
    await ended(2)
    expect(ends).toEqual(['BAD_REQUEST', 'BAD_REQUEST'])
  })

  it('waits as long as something comes now and then', async () => {
    const asking = begin(100)
    // Longer in all than the silence that is borne, and each wait far shorter, so that a busy machine does not end it.
    for (let piece = 0; piece < 6; piece++) {
      await new Promise((resolve) => setTimeout(resolve, 200))
      asking.write(Buffer.alloc(100))
    }
    asking.end()
    await ended(1)
    expect(ends).toEqual([700])
  })

  it('sends away what would be too much at once, and takes it when the others are done', async () => {
    const some = [begin(900), begin(900)]
    await new Promise((resolve) => setTimeout(resolve, 50))
    begin(900)
    await ended(1)
    expect(ends).toEqual(['TOO_MANY'])
    for (const one of some) one.end()
    await ended(3)
    begin(900).end()
    await ended(4)
    expect(ends).toEqual(['TOO_MANY', 900, 900, 900])
  })

  it('keeps its limit however many senders broke off before', async () => {
    for (let sender = 0; sender < 5; sender++) {
      const gone = begin(900)
      await new Promise((resolve) => setTimeout(resolve, 50))
      gone.destroy()
      await ended(sender + 1)
    }
    const some = [begin(900), begin(900)]
    await new Promise((resolve) => setTimeout(resolve, 50))
    begin(900)
    await ended(6)
    expect(ends.slice(5)).toEqual(['TOO_MANY'])
    for (const one of some) one.end()
    await ended(8)
  })
})
