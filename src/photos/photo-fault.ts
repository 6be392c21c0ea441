/** Why a file is not taken as a photo. */
export type PhotoFaultReason =
  /** Not the first bytes of any kind that is taken. */
  | 'not a picture'
  /** HEIC or AVIF. */
  | 'phone format'
  /** Begins as a picture and cannot be decoded to its end. */
  | 'broken'
  | 'too many pixels'
  | 'too slow'
  /** So many photos are being worked on that another would wait too long. */
  | 'busy'

/** A file that is not taken as a photo. */
export class PhotoFault extends Error {
  readonly reason: PhotoFaultReason

  constructor(reason: PhotoFaultReason, options?: ErrorOptions) {
    super(`The photo is not taken: ${reason}.`, options)
    this.name = 'PhotoFault'
    this.reason = reason
  }
}
