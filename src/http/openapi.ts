import { z } from 'zod'
import { createDocument, type ZodOpenApiContentObject, type ZodOpenApiOperationObject, type ZodOpenApiPathsObject } from 'zod-openapi'
import { ProblemDocument } from '../../shared/index.js'
import { accessTo } from './roles.js'
import { partNames, parts, type Route } from './route.js'

/** The OpenAPI 3.1 document of these routes, whose sessions are held by a cookie of this name. */
export function describeRoutes(routes: readonly Route[], cookie: string): object {
  const paths: ZodOpenApiPathsObject = {}
  for (const route of routes) {
    const path = route.path.replaceAll(/:([a-z]+)/g, '{$1}')
    paths[path] = { ...paths[path], [route.method.toLowerCase()]: operation(route) }
  }
  return createDocument({
    openapi: '3.1.0',
    info: { title: 'Frondline', version: '0.1.0', description: 'A plant-health helpline in one service.' },
    paths,
    components: { securitySchemes: { session: { type: 'apiKey', in: 'cookie', name: cookie } } },
  })
}

function operation(route: Route): ZodOpenApiOperationObject {
  const access = accessTo(route)
  const names = partNames(route.path)
  const path = z.object(Object.fromEntries(names.map((name) => [name, parts[name].shape])))
  return {
    summary: route.summary,
    ...(access === 'anyone' ? {} : {
      security: [{ session: [] }],
      description: access === 'signed in' || access === null ? 'For anyone signed in.' : `For roles: ${access.join(', ')}.`,
    }),
    requestParams: {
      ...(names.length === 0 ? {} : { path }), ...(route.query === null ? {} : { query: route.query }),
    },
    ...(route.body === null ? {} : { requestBody: { required: true, content: bodyContent(route.body) } }),
    responses: {
      [`${route.status as 200}`]: {
        description: 'Done.', ...(route.reply === null ? {} : { content: replyContent(route.reply) }),
      },
      default: {
        description: 'Refused; nothing was changed.', content: { 'application/problem+json': { schema: ProblemDocument } },
      },
    },
  }
}

function bodyContent(body: NonNullable<Route['body']>): ZodOpenApiContentObject {
  return body === 'file' ? { 'application/octet-stream': {} } : { 'application/json': { schema: body } }
}

function replyContent(reply: NonNullable<Route['reply']>): ZodOpenApiContentObject {
  if (typeof reply === 'object' && 'events' in reply) return { 'text/event-stream': { schema: reply.events } }
  return reply === 'picture' ? { 'image/jpeg': {} } : { 'application/json': { schema: reply } }
}
