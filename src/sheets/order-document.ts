/**
 * An order as it stands on paper: all its words in one language and in their order, without any place on the page. The print page
 * and the PDF are both made from it, so that they say the same.
 */
export interface OrderDocument {
  /** language of all words, BCP 47 */
  readonly language: string;
  readonly title: string;
  /** what nobody may miss; null where there is nothing of the kind */
  readonly notice: string | null;
  readonly facts: readonly OrderFact[];
  readonly prescription: OrderPrescription;
  /** in two columns beside each other where there is room */
  readonly tables: readonly OrderTable[];
  /** said in the place of the tables where nothing is ordered */
  readonly missing: readonly string[];
  /** in the order of the page; the notes before the open points */
  readonly sections: readonly OrderSection[];
  /** what stands below the line to sign on */
  readonly signature: string;
  readonly cautions: OrderSection;
  readonly footer: (page: number, pages: number) => string;
  /** heads a table that goes on in another column or on another page */
  readonly continued: (caption: string) => string;
  /** said where a font lacks letters that are written; `mark` stands for each of them */
  readonly lettersMissing: (mark: string) => string;
}

/** Such as the wearer's name, or who confirmed what when. */
export interface OrderFact {
  readonly label: string;
  /** each on a line of its own */
  readonly values: readonly string[];
}

export interface OrderPrescription {
  readonly heading: string;
  /** R above L; empty where none is ordered */
  readonly eyes: readonly { readonly side: string; readonly sideName: string; readonly notation: string }[];
  readonly notes: readonly string[];
}

export interface OrderTable {
  readonly caption: string;
  readonly head: OrderTableHead;
  readonly groups: readonly OrderGroup[];
  readonly notes: readonly string[];
}

/** What the columns are called; `doubt` and `confirmed` null where no row has one. */
export interface OrderTableHead {
  readonly measurement: string;
  readonly side: string;
  readonly value: string;
  readonly doubt: string | null;
  readonly confirmed: string | null;
}

/** What stands under one heading. */
export interface OrderGroup {
  readonly heading: string;
  /** R above L */
  readonly rows: readonly OrderRow[];
}

export interface OrderRow {
  /** `R`, `L`, or null where the measurement has no side */
  readonly side: string | null;
  readonly sideName: string | null;
  /** with its unit */
  readonly value: string;
  /** such as `± 0.5 mm`; null where it is not a measured value */
  readonly doubt: string | null;
  /** the mark under which the facts tell who confirmed it and when; null where one entry of the facts holds for all */
  readonly confirmed: string | null;
}

export interface OrderSection {
  readonly heading: string;
  readonly sentences: readonly string[];
  /** each sentence with a mark before it */
  readonly isList: boolean;
}
