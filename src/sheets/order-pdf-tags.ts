import type { PDFDict, PDFDocument, PDFObject, PDFOperator, PDFPage, PDFRef } from '@cantoo/pdf-lib';
import { PDFHexString, PDFName, PDFOperator as Operator, PDFOperatorNames, endMarkedContent } from '@cantoo/pdf-lib';

/** What a piece of the page is, for whoever has it read aloud (ISO 32000-1, 14.8.4). */
export interface Tag {
  readonly role: 'Document' | 'H1' | 'H2' | 'P' | 'L' | 'LI' | 'LBody' | 'Table' | 'TR' | 'TH' | 'TD';
  /** of a heading in a table: what it heads; null elsewhere */
  readonly scope: 'Row' | 'Column' | null;
  /** 1 where a cell does not reach over several rows */
  readonly rowSpan: number;
  readonly colSpan: number;
  /** read in the place of what is written; null where that is read as it stands */
  readonly spoken: string | null;
  /** in the order of reading */
  readonly parts: Tag[];
}

export function tag(role: Tag['role'], more: Partial<Omit<Tag, 'role' | 'parts'>> = {}): Tag {
  return { scope: null, rowSpan: 1, colSpan: 1, spoken: null, ...more, role, parts: [] };
}

/** Adds a part to a tag and gives that part. */
export function within(whole: Tag, part: Tag): Tag {
  whole.parts.push(part);
  return part;
}

interface MarkedPlace {
  readonly page: PDFPage;
  readonly id: number;
}

/** Marks what is drawn by its tag, and writes the tree of tags into the document at the end. */
export class TagWriter {
  private readonly places = new Map<Tag, MarkedPlace[]>();
  private readonly tagsOfPages = new Map<PDFPage, Tag[]>();

  constructor(private readonly document: PDFDocument) {}

  /** The drawing as a part of the text, or, without a tag, as mere decoration that is not read. */
  marked(page: PDFPage, tagOfDrawing: Tag | null, drawing: readonly PDFOperator[]): readonly PDFOperator[] {
    if (tagOfDrawing === null) {
      return [
        Operator.of(PDFOperatorNames.BeginMarkedContent, [PDFName.of('Artifact')]),
        ...drawing,
        endMarkedContent(),
      ];
    }
    const onPage = this.tagsOfPages.get(page) ?? [];
    this.tagsOfPages.set(page, onPage);
    const id = onPage.push(tagOfDrawing) - 1;
    const places = this.places.get(tagOfDrawing) ?? [];
    this.places.set(tagOfDrawing, places);
    places.push({ page, id });
    return [
      Operator.of(PDFOperatorNames.BeginMarkedContentSequence, [PDFName.of(tagOfDrawing.role), `<< /MCID ${id} >>`]),
      ...drawing,
      endMarkedContent(),
    ];
  }

  /** Call once, when all is drawn. */
  write(root: Tag): void {
    const { context, catalog } = this.document;
    const rootRef = context.nextRef();
    const refs = new Map<Tag, PDFRef>();
    const element = this.element(root, rootRef, refs);
    const pages = [...this.tagsOfPages];
    const parents = pages.flatMap(([, tags], index): PDFObject[] => [
      context.obj(index),
      context.obj(tags.map((one) => refs.get(one) ?? element)),
    ]);
    for (const [index, [page]] of pages.entries()) {
      page.node.set(PDFName.of('StructParents'), context.obj(index));
      // The order of the tags is also that of the tabulator.
      page.node.set(PDFName.of('Tabs'), PDFName.of('S'));
    }
    const tree = context.obj({
      Type: 'StructTreeRoot',
      K: [element],
      ParentTree: context.register(context.obj({ Nums: parents })),
      ParentTreeNextKey: pages.length,
    });
    context.assign(rootRef, tree);
    catalog.set(PDFName.of('StructTreeRoot'), rootRef);
    catalog.set(PDFName.of('MarkInfo'), context.obj({ Marked: true }));
  }

  private element(one: Tag, parent: PDFRef, refs: Map<Tag, PDFRef>): PDFRef {
    const { context } = this.document;
    const ref = context.nextRef();
    refs.set(one, ref);
    const own = (this.places.get(one) ?? []).map(({ page, id }) =>
      context.obj({ Type: 'MCR', Pg: page.ref, MCID: id }),
    );
    const kids: PDFObject[] = [...own, ...one.parts.map((part) => this.element(part, ref, refs))];
    const dictionary: PDFDict = context.obj({ Type: 'StructElem', S: one.role, P: parent, K: kids });
    if (one.scope !== null || one.rowSpan > 1 || one.colSpan > 1) {
      const attributes = context.obj({ O: 'Table' });
      if (one.scope !== null) attributes.set(PDFName.of('Scope'), PDFName.of(one.scope));
      if (one.rowSpan > 1) attributes.set(PDFName.of('RowSpan'), context.obj(one.rowSpan));
      if (one.colSpan > 1) attributes.set(PDFName.of('ColSpan'), context.obj(one.colSpan));
      dictionary.set(PDFName.of('A'), attributes);
    }
    if (one.spoken !== null) dictionary.set(PDFName.of('ActualText'), PDFHexString.fromText(one.spoken));
    context.assign(ref, dictionary);
    return ref;
  }
}
