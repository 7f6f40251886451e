/**
 * How large the object is: the physical dimensions service.
 *
 * References
 * - IIIF, Linking to External Services, section 3.3 (physdim). The annex requires `@context`
 *   and defines no type; Presentation 3 wants a type in every service. All are given.
 */
import type { PlateResult } from '../../records/result.ts';
import type { Json } from './view-body.ts';

/** The service, or none where the scale of the base frame is not known. */
export function physicalScale({ frame }: PlateResult): readonly Json[] {
  if (frame.pixelsPerMillimetre === null) return [];
  return [
    {
      '@context': 'http://iiif.io/api/annex/services/physdim/1/context.json',
      '@id': 'http://iiif.io/api/annex/services/physdim',
      '@type': 'PhysicalDimensions',
      profile: 'http://iiif.io/api/annex/services/physdim',
      physicalScale: 1 / frame.pixelsPerMillimetre,
      physicalUnits: 'mm',
    },
  ];
}
