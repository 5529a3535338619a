/** An attribute of the DICOM data dictionary (PS3.6). */
export interface DicomAttribute {
  /** group and element, eight hexadecimal digits */
  readonly tag: string;
  readonly keyword: string;
  /** value representation: a 64-bit float */
  readonly vr: 'FD';
}

/**
 * Both eyes' pupil distances in the Subjective Refraction Measurements Module (DICOM PS3.3, C.8.25.11), mm. The module means them as
 * set at a phoropter, and it has none for one eye alone.
 */
export const DICOM_DISTANCES = {
  distance: { tag: '00460060', keyword: 'DistancePupillaryDistance', vr: 'FD' },
  near: { tag: '00460062', keyword: 'NearPupillaryDistance', vr: 'FD' },
} as const satisfies Record<string, DicomAttribute>;

/** One value in the JSON model of DICOM (PS3.18, F.2). */
export interface DicomValue {
  readonly vr: 'FD';
  readonly Value: readonly [number];
}

export type DicomDistances = {
  readonly [Tag in (typeof DICOM_DISTANCES)[keyof typeof DICOM_DISTANCES]['tag']]?: DicomValue;
};

/** Pupil distances of both eyes together, mm; null where one is not known. */
export interface BinocularDistances {
  readonly distanceMm: number | null;
  readonly nearMm: number | null;
}

/** The pupil distances in the JSON model of DICOM; what is not known is left out. */
export function dicomDistances({ distanceMm, nearMm }: BinocularDistances): DicomDistances {
  const { distance, near } = DICOM_DISTANCES;
  return {
    ...(distanceMm === null ? {} : { [distance.tag]: valueOf(distance, distanceMm) }),
    ...(nearMm === null ? {} : { [near.tag]: valueOf(near, nearMm) }),
  };
}

function valueOf({ vr }: DicomAttribute, mm: number): DicomValue {
  return { vr, Value: [mm] };
}
