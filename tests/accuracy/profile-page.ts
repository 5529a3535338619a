import type { BoardFailure, BoardView } from '../../src/core/camera/board.js';
import type { CameraProfile } from '../../src/core/camera/camera-profile.js';
import type { Result } from '../../src/core/result.js';
import { createPictures } from '../../src/devices/pictures.js';
import { createVision } from '../../src/devices/vision.js';
import type { DeviceFailure, MeasuringFailure } from '../../src/session/ports.js';

/** What the profile command asks of its page. */
export interface ProfileBench {
  /** Finds the sheet in the file that was put into the page's input, as the app does. */
  findBoard(): Promise<Result<BoardView, BoardFailure | MeasuringFailure>>;
  /** Makes a profile of the views, as the app does. */
  makeProfile(views: readonly BoardView[]): Promise<Result<CameraProfile, BoardFailure | DeviceFailure>>;
}

declare global {
  interface Window {
    profileBench?: ProfileBench;
  }
}

// this page lies two folders below the one that the app would have in its place
const vision = createVision({ pageAddress: new URL('../../', document.baseURI).href });
const pictures = createPictures();
const NO_SIGNAL = new AbortController().signal;

window.profileBench = {
  findBoard: async () => {
    const file = document.querySelector('input')?.files?.[0];
    if (file === undefined) throw new Error('No file was put into the input.');
    const opened = await pictures.open(file, file.name);
    if (!opened.ok) return opened;
    const found = await vision.findBoard(opened.value, NO_SIGNAL);
    opened.value.bitmap.close();
    return found;
  },
  makeProfile: (views) => vision.makeProfile(views, NO_SIGNAL),
};
