import { CaseView, PhotoKept } from '../../../shared/index.js'
import { defineFileRoute, definePictureRoute, defineRoute, type Route } from '../route.js'

/** The photos of a case. Whoever holds the case's link may see them, as they may see the case. */
export const photoRoutes: readonly Route[] = [
  defineFileRoute('PUT', '/api/cases/:link/photos/:upload', {
    summary: 'Adds a photo: the file itself is the body. The client chooses the upload key, and may send again with it.',
    reply: PhotoKept, limit: 'send photo',
    handle: ({ desk, part, file, who }) => desk.addPhoto(part('link'), part('upload'), file, who),
  }),
  definePictureRoute('/api/cases/:link/photos/:photo/large', {
    summary: 'A photo, at most 4000 pixels a side.',
    handle: ({ desk, part }) => desk.showPhoto(part('link'), part('photo'), 'large'),
  }),
  definePictureRoute('/api/cases/:link/photos/:photo/small', {
    summary: 'A photo, at most 480 pixels a side.',
    handle: ({ desk, part }) => desk.showPhoto(part('link'), part('photo'), 'small'),
  }),
  defineRoute('POST', '/api/cases/:link/photos/:photo/remove', {
    summary: 'Removes a photo: anyone with the link before hand-over, a specialist always. A repeat changes nothing.',
    reply: CaseView, limit: 'change case',
    handle: ({ desk, part, who }) => desk.removePhoto(part('link'), part('photo'), who),
  }),
]
