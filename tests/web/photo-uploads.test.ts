import { describe, expect, it } from 'vitest'
import type { CaseView, PhotoKept } from '../../shared/index.js'
import { createPhotoUploads, onTheWay, type PhotoUploads } from '../../src/web/case/photo-uploads.js'
import type { Reply } from '../../src/web/wire/reply.js'

const leaf = new File(['leaf'], 'leaf.jpg')
const kept = { ok: true, value: { case: { revision: 7 } as CaseView } as PhotoKept } as const
const lost = { ok: false, trouble: { kind: 'lost', detail: null } } as const
const refused = { ok: false, trouble: { kind: 'refused', status: 400, code: 'NOT_A_PHOTO', detail: 'This file is not a photo we can open.' } } as const

/** Uploads to a service that answers with these replies, one after the other; the last one again and again. */
function uploadsTo(replies: readonly Reply<PhotoKept>[]): { photos: PhotoUploads, keys: string[], views: CaseView[] } {
  const keys: string[] = []
  const views: CaseView[] = []
  let at = 0
  const photos = createPhotoUploads({
    addPhoto: async (_link, key) => {
      keys.push(key)
      const reply = replies[Math.min(at++, replies.length - 1)]
      if (reply === undefined) throw new Error('no reply was prepared')
      return reply
    },
  }, 'a-link', view => views.push(view), async () => undefined)
  return { photos, keys, views }
}
const settled = () => new Promise(resolve => setTimeout(resolve))

describe('photos on their way', () => {
  it('go again by themselves under the same key, and bring the case with them', async () => {
    const { photos, keys, views } = uploadsTo([lost, lost, kept])
    photos.add([leaf])
    expect(onTheWay(photos.uploads())).toEqual({ underWay: 1, failed: 0, share: 0 })
    await settled()
    expect(new Set(keys).size).toBe(1)
    expect(keys).toHaveLength(3)
    expect(views.map(({ revision }) => revision)).toEqual([7])
    expect(onTheWay(photos.uploads())).toEqual({ underWay: 0, failed: 0, share: 1 })
  })

  it('stay to be tried again when the network does not come back, and go then', async () => {
    const { photos, keys } = uploadsTo([lost, lost, lost, lost, lost, kept])
    photos.add([leaf])
    await settled()
    expect(onTheWay(photos.uploads())).toMatchObject({ underWay: 0, failed: 1 })
    photos.again(keys[0] ?? '')
    await settled()
    expect(photos.uploads()).toEqual([])
  })

  it('say what the service said against them, and leave when told', async () => {
    const { photos, keys } = uploadsTo([refused])
    photos.add([leaf])
    await settled()
    expect(photos.uploads()[0]).toMatchObject({ state: 'failed', said: 'This file is not a photo we can open.' })
    photos.leaveOut(keys[0] ?? '')
    expect(photos.uploads()).toEqual([])
  })

  it('are never sent when they are too large, and nothing waits for them', async () => {
    const { photos, keys } = uploadsTo([kept])
    const huge = new File([new Uint8Array(12 * 1024 * 1024 + 1)], 'huge.jpg')
    photos.add([huge])
    await settled()
    expect(keys).toEqual([])
    expect(photos.uploads()[0]?.state).toBe('too large')
    expect(onTheWay(photos.uploads())).toEqual({ underWay: 0, failed: 0, share: 1 })
  })
})
