import type { Route } from '../route.js'
import { administrationRoutes } from './administration-routes.js'
import { callRoutes } from './call-routes.js'
import { caseRoutes } from './case-routes.js'
import { guideRoutes } from './guide-routes.js'
import { mailRoutes } from './mail-routes.js'
import { peopleRoutes } from './people-routes.js'
import { photoRoutes } from './photo-routes.js'
import { seasonRoutes } from './season-routes.js'
import { serviceRoutes } from './service-routes.js'
import { ticketRoutes } from './ticket-routes.js'

/** Every route of the service, once; those asked most come first, since they are tried in this order. */
export const routes: readonly Route[] = [
  ...caseRoutes, ...serviceRoutes, ...guideRoutes, ...photoRoutes, ...callRoutes, ...ticketRoutes, ...seasonRoutes, ...mailRoutes, ...peopleRoutes,
  ...administrationRoutes,
]
