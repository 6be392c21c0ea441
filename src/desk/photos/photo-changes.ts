import type { CaseChange } from '../cases/case-change.js'

/** A photo was added. The evidence stays: what a photo shows is a finding only once a person has read it off. */
export function photoAdded(photo: number, hash: string): CaseChange {
  return { kind: 'photo', content: { photo, hash }, apply: (now) => now }
}

/** A photo was removed. */
export function photoRemoved(photo: number): CaseChange {
  return { kind: 'photo-removed', content: { photo }, apply: (now) => now }
}

/** Whether a kept change of this kind leaves everything alone that other changes read, so that it can pass them. */
export function isPhotoKind(kind: string): boolean {
  return kind === 'photo' || kind === 'photo-removed'
}
