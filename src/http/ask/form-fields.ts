import express, { type Request, type RequestHandler } from 'express'
import { RequestFault } from '../request-fault.js'

/** Largest form taken, in bytes: 4,000 characters may need twelve bytes each as a browser spells them. */
const MOST_BYTES = 64 * 1024

const parse = express.text({ type: 'application/x-www-form-urlencoded', limit: MOST_BYTES, inflate: false })

/** Reads the body of a form that a browser sent. Its fields are had by `fieldsOf`. */
export function readForm(): RequestHandler {
  return parse
}

/** The fields of a form by name, each as text; the last one where a name stands twice. A form without any has none. */
export function fieldsOf(request: Request): Readonly<Record<string, string>> {
  const body: unknown = request.body
  const fields: Record<string, string> = Object.fromEntries(new URLSearchParams(typeof body === 'string' ? body : ''))
  // Marks for 'unreadable' stand where the bytes were no UTF-8; PostgreSQL cannot keep NUL, and nobody types it.
  if (Object.values(fields).some((value) => value.includes('\u0000') || value.includes('\uFFFD'))) throw new RequestFault('UNREADABLE_TEXT')
  // Browsers send line breaks as two characters.
  return Object.fromEntries(Object.entries(fields).map(([name, value]) => [name, value.replaceAll('\r\n', '\n')]))
}

/** The revision that a form was drawn from; NaN, which no schema takes, when it does not say. */
export function revisionOf(fields: Readonly<Record<string, string>>): number {
  return /^[0-9]{1,7}$/.test(fields['revision'] ?? '') ? Number(fields['revision']) : Number.NaN
}

/** The file in the field `name` of a form sent as multipart/form-data (RFC 7578), or null when none was chosen. */
export async function fileOf(request: Request, body: Uint8Array, name: string): Promise<Uint8Array | null> {
  const type = request.get('content-type') ?? ''
  if (!/^multipart\/form-data\b/i.test(type)) throw new RequestFault('BAD_REQUEST')
  const form = await new Response(Buffer.from(body), { headers: { 'content-type': type } }).formData().catch(() => {
    throw new RequestFault('BAD_REQUEST')
  })
  const field = form.get(name)
  if (field === null || typeof field === 'string' || field.size === 0) return null
  return new Uint8Array(await field.arrayBuffer())
}
