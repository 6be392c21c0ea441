import express from 'express'
import { describe, expect, it } from 'vitest'
import { listen } from '../../src/http/listen.js'

const HERE = { host: '127.0.0.1', port: 0 }

/** An app with one address that answers only when it is let go. */
function slowApp() {
  const app = express()
  let letGo: () => void = () => undefined
  let arrived: () => void = () => undefined
  const gate = new Promise<void>((resolve) => { letGo = resolve })
  const underWay = new Promise<void>((resolve) => { arrived = resolve })
  app.get('/slow', async (_request, response) => {
    arrived()
    await gate
    response.send('done')
  })
  app.get('/quick', (_request, response) => {
    response.send('done')
  })
  return { app, underWay, letGo: () => { letGo() } }
}

describe('the open port', () => {
  it('finishes what is under way when it closes, takes nothing new, and does not wait for idle connections', async () => {
    const { app, underWay, letGo } = slowApp()
    const port = await listen(app, HERE)
    expect(await (await fetch(`${port.url}/quick`)).text()).toBe('done')
    const slow = fetch(`${port.url}/slow`).then((reply) => reply.text())
    await underWay

    const start = performance.now()
    let isClosed = false
    const closed = port.close().then(() => { isClosed = true })
    await expect(fetch(`${port.url}/quick`)).rejects.toThrow()
    expect(isClosed).toBe(false)
    letGo()
    expect(await slow).toBe('done')
    await closed
    expect(performance.now() - start).toBeLessThan(5000)
  })

  it('says in a sentence that another program has the port', async () => {
    const { app } = slowApp()
    const one = await listen(app, HERE)
    const port = Number(new URL(one.url).port)
    await expect(listen(app, { host: '127.0.0.1', port })).rejects.toThrow(
      `Port ${port} on 127.0.0.1 cannot be opened: another program has it; set FRONDLINE_PORT to another.`)
    await one.close()
  })

  it('writes an IPv6 address as an address', async () => {
    const { app } = slowApp()
    const port = await listen(app, { host: '::1', port: 0 })
    expect(port.url).toMatch(/^http:\/\/\[::1\]:\d+$/)
    expect((await fetch(`${port.url}/quick`)).status).toBe(200)
    await port.close()
  })
})
