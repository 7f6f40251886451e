/** Where the pictures of a pyramid go: to JPEG files, or to whoever wants to look at the bytes. */

export interface PictureSink {
  /** Room for at least `bytes` bytes, used again after it has been given back. */
  room(bytes: number): Uint8Array;
  /**
   * Take one picture, sRGB bytes with channels interleaved; `data` now belongs to the sink.
   *
   * @param address Folder relative to the service, such as `0,0,512,512/512,512/0`.
   */
  take(address: string, data: Uint8Array, width: number, height: number): void;
  /** Resolves when there is room for more; rejects when a picture could not be written. */
  ready(): Promise<void>;
  /** Whether `ready` has to be waited for. */
  readonly full: boolean;
  /** Resolves when everything taken has been written. */
  finish(): Promise<void>;
}
