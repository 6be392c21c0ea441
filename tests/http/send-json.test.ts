import express from 'express'
import supertest from 'supertest'
import { describe, expect, it } from 'vitest'
import { sendJson } from '../../src/http/send-json.js'

const answering = (reply: () => unknown) => express().get('/', (_request, response) => { sendJson(response, reply()) })

describe('a reply in JSON', () => {
  it('says its kind and its length in bytes, whatever letters are in it', async () => {
    const { headers, body } = await supertest(answering(() => ({ leaf: 'grün 🍃' }))).get('/').expect(200)
    expect(body).toEqual({ leaf: 'grün 🍃' })
    expect(headers).toMatchObject({ 'content-type': 'application/json; charset=utf-8', 'content-length': '21' })
    expect(headers['etag']).toBeUndefined()
  })

  it('has no body where only the head was asked for', async () => {
    const { headers, text } = await supertest(answering(() => ({ leaf: 'green' }))).head('/').expect(200)
    expect(headers['content-length']).toBe('16')
    expect(text).toBeUndefined()
  })

  it('is written out once as long as it is frozen, and each time where it may have changed', async () => {
    let written = 0
    const counting = { toJSON: () => ({ written: ++written }) }
    const frozen = answering(() => lasting)
    const lasting = Object.freeze({ ...counting })
    expect((await supertest(frozen).get('/')).body).toEqual({ written: 1 })
    expect((await supertest(frozen).get('/')).body).toEqual({ written: 1 })
    const open = answering(() => counting)
    expect((await supertest(open).get('/')).body).toEqual({ written: 2 })
    expect((await supertest(open).get('/')).body).toEqual({ written: 3 })
  })
})
