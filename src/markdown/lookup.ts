/** What a text may refer to: plates, their spots and guided looks, the pages of the exhibit. */
import type { Region } from '../records/fields.ts';
import type { PlateRecord } from '../records/plate.ts';
import { veiledParts, withoutVeiled } from '../records/veiled-parts.ts';

export interface KnownPlate {
  readonly title: string;
  readonly spots: readonly {
    readonly id: string;
    readonly title: string;
    readonly region: Region;
    readonly view?: string | undefined;
  }[];
  readonly looks: readonly { readonly id: string; readonly title: string }[];
  /** Covered until asked for, so never shown in another page. */
  readonly covered: boolean;
}

/** A whole picture of a view that lies in the plate's frame. */
export interface KnownPicture {
  readonly view: string;
  /** Under the site's base path: `plates/harbour/views/normal/full/1200,900/0/default.jpg`. */
  readonly path: string;
  /** Size of the plate's frame, the unit of all regions. */
  readonly frame: { readonly width: number; readonly height: number };
}

export interface MarkdownLookup {
  /** @param language Of a translation that asks; none for an original. */
  readonly plate: (slug: string, language?: string | null) => KnownPlate | null;
  readonly plates: () => readonly string[];
  readonly picture: (slug: string, view: string | undefined) => KnownPicture | null;
}

/** What shows a withheld capture is not there for a text either. */
export function knownPlate(record: PlateRecord): KnownPlate {
  const { title, spots, looks, advisory } = withoutVeiled(record, veiledParts(record));
  return { title, spots, looks, covered: advisory !== undefined };
}
