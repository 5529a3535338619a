/** What a video file says of itself. */
export interface VideoFormat {
  /** of the container, for the sentence */
  readonly type: string;
  /** with the codec as far as it is known, for asking the player whether it can play it */
  readonly playableAs: string;
}

/** Boxes of a codec's own name in QuickTime and MP4 files, with a usual profile, which players want to hear. */
const MP4_CODECS: Readonly<Record<string, string>> = {
  avc1: 'avc1.42E01E',
  avc3: 'avc3.42E01E',
  hvc1: 'hvc1.1.6.L93.B0',
  hev1: 'hev1.1.6.L93.B0',
  dvh1: 'dvh1.08.01',
  dvhe: 'dvhe.08.01',
  av01: 'av01.0.04M.08',
  vp09: 'vp09.00.10.08',
  mp4v: 'mp4v.20.8',
  apcn: 'apcn',
  apch: 'apch',
  apcs: 'apcs',
  jpeg: 'jpeg',
};

/** Codec IDs of Matroska and WebM files. */
const MATROSKA_CODECS: Readonly<Record<string, string>> = {
  V_VP8: 'vp8',
  V_VP9: 'vp9',
  V_AV1: 'av01.0.04M.08',
  'V_MPEG4/ISO/AVC': 'avc1.42E01E',
  'V_MPEGH/ISO/HEVC': 'hvc1.1.6.L93.B0',
};

/** Formats that browsers hardly play, so that their name can be told. */
const OTHER_FORMATS: readonly { readonly offset: number; readonly mark: string; readonly type: string }[] = [
  { offset: 8, mark: 'AVI ', type: 'video/x-msvideo' },
  { offset: 0, mark: 'OggS', type: 'video/ogg' },
  { offset: 0, mark: 'FLV\x01', type: 'video/x-flv' },
  { offset: 0, mark: '\x30\x26\xb2\x75', type: 'video/x-ms-wmv' },
  { offset: 0, mark: '\0\0\x01\xba', type: 'video/mpeg' },
];

const HEAD_BYTES = 16;
/** Enough for the head of a WebM file, and for the table of contents of an MP4 file up to its codec. */
const TEXT_BYTES = 256 * 1024;
/** An MP4 file has few boxes outside of its table of contents; one cut into fragments has it near its beginning. */
const BOX_LIMIT = 64;

/**
 * The format of a video file by its bytes, never by its name; null where it is none of the formats that people try. The codec of
 * an MP4 file that was cut off before its table of contents is not known. Sources: ISO/IEC 14496-12 (boxes), RFC 9559 (Matroska).
 */
export async function readVideoFormat(file: Blob): Promise<VideoFormat | null> {
  const head = textOf(await bytesOf(file, 0, HEAD_BYTES));
  if (head.startsWith('\x1a\x45\xdf\xa3')) {
    const text = textOf(await bytesOf(file, 0, TEXT_BYTES));
    const codec = Object.entries(MATROSKA_CODECS).find(([id]) => text.includes(id))?.[1];
    const type = text.slice(0, 64).includes('webm') ? 'video/webm' : 'video/x-matroska';
    return { type, playableAs: withCodec('video/webm', codec) };
  }
  if (head.slice(4, 8) === 'ftyp') {
    const contents = await tableOfContents(file);
    const codec = Object.entries(MP4_CODECS).find(([box]) => contents?.includes(box))?.[1];
    const type = head.slice(8, 10) === 'qt' ? 'video/quicktime' : 'video/mp4';
    return { type, playableAs: withCodec('video/mp4', codec) };
  }
  const other = OTHER_FORMATS.find(({ offset, mark }) => head.slice(offset, offset + mark.length) === mark);
  return other === undefined ? null : { type: other.type, playableAs: other.type };
}

function withCodec(type: string, codec: string | undefined): string {
  return codec === undefined ? type : `${type}; codecs="${codec}"`;
}

/** Walks over the outermost boxes of the file to the one called `moov`, and returns its beginning; null where it is not whole. */
async function tableOfContents(file: Blob): Promise<string | null> {
  let at = 0;
  for (let count = 0; count < BOX_LIMIT; count++) {
    const bytes = await bytesOf(file, at, HEAD_BYTES);
    if (bytes.length < 8) return null;
    const view = new DataView(bytes.buffer);
    let size = view.getUint32(0);
    // 1: the size stands behind the name, in 8 bytes; 0: the box goes on to the end of the file
    if (size === 1 && bytes.length >= 16) size = Number(view.getBigUint64(8));
    else if (size === 0) size = file.size - at;
    if (size < 8 || at + size > file.size) return null;
    if (textOf(bytes).slice(4, 8) === 'moov') return textOf(await bytesOf(file, at, Math.min(size, TEXT_BYTES)));
    at += size;
  }
  return null;
}

/** Fewer bytes where the file ends before; none where it cannot be read any more. */
async function bytesOf(file: Blob, from: number, count: number): Promise<Uint8Array<ArrayBuffer>> {
  try {
    return new Uint8Array(await file.slice(from, from + count).arrayBuffer());
  } catch {
    return new Uint8Array(0);
  }
}

function textOf(bytes: Uint8Array): string {
  return Array.from(bytes, (byte) => String.fromCharCode(byte)).join('');
}
