import type { ListObjectsV2Command, S3Client } from '@aws-sdk/client-s3'
import { isContentHash } from './content-hash.js'
import type { KeptPicture, PhotoHome } from './photo-home.js'

/** Where an S3-compatible bucket is. Its keys come from AWS_ACCESS_KEY_ID and AWS_SECRET_ACCESS_KEY, or what else the SDK reads. */
export interface BucketSettings {
  readonly bucket: string
  readonly region: string
  /** Address of the service, or null for the one that the region implies. */
  readonly endpoint: string | null
}

/** A bucket as a home, with an end to it. */
export interface BucketHome extends PhotoHome {
  close(): void
}

/** Most tries of one request; between them the SDK waits longer each time. */
const MOST_TRIES = 4

/** Pictures in an S3-compatible bucket, each an object ab/abcd….jpg. */
export async function openBucketHome({ bucket: Bucket, region, endpoint }: BucketSettings): Promise<BucketHome> {
  // Loading it takes a second that a service without a bucket need not spend.
  const { DeleteObjectCommand, GetObjectCommand, HeadObjectCommand, ListObjectsV2Command, PutObjectCommand, S3Client } = await import('@aws-sdk/client-s3')
  const client = new S3Client({
    region, maxAttempts: MOST_TRIES,
    // Compatible services know buckets by path, and not every one knows the newer checksums.
    ...(endpoint === null ? {} : { endpoint, forcePathStyle: true }),
    requestChecksumCalculation: 'WHEN_REQUIRED', responseChecksumValidation: 'WHEN_REQUIRED',
  })
  const putAt = async (hash: string): Promise<string | null> => {
    const found = await orNothing(client.send(new HeadObjectCommand({ Bucket, Key: keyOf(hash) })))
    return found?.LastModified?.toISOString() ?? null
  }
  return {
    name: `the bucket ${Bucket}`,
    async put(hash, bytes) {
      await client.send(new PutObjectCommand({
        Bucket, Key: keyOf(hash), Body: bytes, ContentLength: bytes.length, ContentType: 'image/jpeg',
      }))
    },
    async get(hash) {
      const found = await orNothing(client.send(new GetObjectCommand({ Bucket, Key: keyOf(hash) })))
      return await found?.Body?.transformToByteArray() ?? null
    },
    has: async (hash) => await putAt(hash) !== null,
    putAt,
    async remove(hash) {
      await client.send(new DeleteObjectCommand({ Bucket, Key: keyOf(hash) }))
    },
    list: () => objectsIn(client, (from) => new ListObjectsV2Command({ Bucket, ContinuationToken: from })),
    close: () => { client.destroy() },
  }
}

function keyOf(hash: string): string {
  if (!isContentHash(hash)) throw new Error(`"${hash}" is not a content hash.`)
  return `${hash.slice(0, 2)}/${hash}.jpg`
}

async function* objectsIn(
  client: S3Client, page: (from: string | undefined) => ListObjectsV2Command,
): AsyncGenerator<KeptPicture> {
  let from: string | undefined
  do {
    const { Contents = [], IsTruncated, NextContinuationToken } = await client.send(page(from))
    for (const { Key = '', LastModified } of Contents) {
      const hash = /^[0-9a-f]{2}\/([0-9a-f]{64})\.jpg$/.exec(Key)?.[1]
      if (hash !== undefined && LastModified !== undefined) yield { hash, putAt: LastModified.toISOString() }
    }
    from = IsTruncated === true ? NextContinuationToken : undefined
  } while (from !== undefined)
}

async function orNothing<Value>(asking: Promise<Value>): Promise<Value | null> {
  try {
    return await asking
  } catch (fault) {
    if (fault instanceof Error && (fault.name === 'NoSuchKey' || fault.name === 'NotFound')) return null
    throw fault
  }
}
