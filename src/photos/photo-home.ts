/** One picture that a home holds. */
export interface KeptPicture {
  readonly hash: string
  /** When it was last put, ISO time in UTC. */
  readonly putAt: string
}

/** Where pictures are kept, each under the hash of its content. */
export interface PhotoHome {
  /** For titles and logs; holds no secret. */
  readonly name: string
  /** Keeps a picture. It is there for good once this resolves; putting it again only makes `putAt` new. */
  put(hash: string, bytes: Uint8Array): Promise<void>
  /** The picture, or null when it is not here. */
  get(hash: string): Promise<Uint8Array | null>
  has(hash: string): Promise<boolean>
  /** When the picture was last put, or null when it is not here. */
  putAt(hash: string): Promise<string | null>
  /** Takes a picture away; one that is not here is no fault. */
  remove(hash: string): Promise<void>
  /** Every picture, in no order. */
  list(): AsyncIterable<KeptPicture>
}
