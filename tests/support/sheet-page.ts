import type { Locator, Page } from 'playwright-core';
import { definitionOfReading } from '../../src/core/catalogue/definitions.js';
import type { ReadingName } from '../../src/core/catalogue/measurement.js';
import type { ImagePoint } from '../../src/core/geometry/vector.js';
import { english } from '../../src/ui/languages/en.js';
import type { PictureFile } from './picture-file.js';

/** How each field is called by whoever hears or sees the sheet: by the measurement's short name, and its side. */
export function fieldName(field: ReadingName): string {
  const { id, fields } = definitionOfReading(field);
  const { shortName } = english.measurements[id];
  const side = fields.find(({ name }) => name === field)?.side ?? null;
  return side === null ? shortName : `${shortName}, ${side === 'R' ? 'right' : 'left'}`;
}

function unitName(field: ReadingName): string {
  return definitionOfReading(field).unit === 'mm' ? 'mm' : 'degrees';
}

export const CARD_CORNERS = ['top left', 'top right', 'bottom right', 'bottom left'] as const;

/** An estimate as the sheet shows it, in mm. */
export interface ShownEstimate {
  readonly valueMm: number;
  /** half of the 95 % interval */
  readonly halfWidthMm: number;
}

/** The screen of the app, by the names and roles that its users meet. */
export class SheetPage {
  constructor(readonly page: Page) {}

  button(name: string): Locator {
    return this.page.getByRole('button', { name, exact: true });
  }

  /** The field of a hand reading. */
  field(field: ReadingName): Locator {
    return this.page.getByRole('textbox', {
      name: `${fieldName(field)}, hand reading in ${unitName(field)}`,
      exact: true,
    });
  }

  /** The row of the sheet in which that field stands. */
  row(field: ReadingName): Locator {
    return this.page.getByRole('row').filter({ has: this.field(field) });
  }

  /** What the camera says beside that field; not there while it is covered. */
  camera(field: ReadingName): Locator {
    return this.page.getByLabel(`${fieldName(field)}, camera`, { exact: true });
  }

  async estimate(field: ReadingName): Promise<ShownEstimate> {
    const text = await this.camera(field).innerText();
    const match = /^(\d+\.\d)\s*±\s*(\d+\.\d)$/.exec(text.trim());
    if (match === null) throw new Error(`The camera's value of ${fieldName(field)} reads “${text}”.`);
    return { valueMm: Number(match[1]), halfWidthMm: Number(match[2]) };
  }

  /** Types a reading and goes on from it. */
  async enter(field: ReadingName, text: string): Promise<void> {
    await this.field(field).fill(text);
    await this.field(field).press('Enter');
  }

  /** Shows the camera's values without hand readings beside them, from now on. */
  async uncoverAll(): Promise<void> {
    await this.button('Settings').click();
    await this.page.getByRole('checkbox', { name: /^Keep the camera’s value covered/ }).uncheck();
    await this.button('Close').click();
  }

  get fileInput(): Locator {
    return this.page.getByRole('region', { name: 'Picture' }).locator('input[type=file]');
  }

  /** Hands a picture file over and waits until it was measured or refused. */
  async choosePicture(file: PictureFile): Promise<void> {
    await this.bringPicture(() => this.fileInput.setInputFiles(file));
  }

  /** Puts a picture away if there is one, brings another one in, and waits until that was measured or refused. */
  async bringPicture(bring: () => Promise<void>): Promise<void> {
    const putAway = this.button('Put the picture away');
    if (await putAway.isVisible()) await putAway.click();
    await this.button('Take a picture').waitFor();
    await bring();
    await this.failure.or(this.facts).waitFor();
  }

  /** What the picture says besides the rows; there as soon as a picture was measured. */
  get facts(): Locator {
    return this.page.getByLabel('What this picture says besides', { exact: true });
  }

  /** Why the picture was refused, and the way out. */
  get failure(): Locator {
    return this.page.getByRole('region', { name: 'Picture' }).locator('.note-failure');
  }

  corner(name: (typeof CARD_CORNERS)[number]): Locator {
    return this.page.getByRole('slider', { name: `Card corner, ${name}`, exact: true });
  }

  /** Where a handle stands in the picture, as it is told to screen readers. */
  async positionOf(handle: Locator): Promise<ImagePoint> {
    const text = (await handle.getAttribute('aria-valuetext')) ?? '';
    const match = /^(−?[\d.]+) pixels across, (−?[\d.]+) pixels down$/.exec(text);
    if (match === null) throw new Error(`A handle stands at “${text}”.`);
    const [xPx = NaN, yPx = NaN] = match.slice(1).map((number) => Number(number.replace('−', '-')));
    return { xPx, yPx };
  }

  /** Where a handle stands on the screen, in CSS pixels of the viewport. */
  async screenPositionOf(handle: Locator): Promise<{ readonly x: number; readonly y: number }> {
    const box = await handle.boundingBox();
    if (box === null) throw new Error('A handle is not on the screen.');
    return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  }
}
