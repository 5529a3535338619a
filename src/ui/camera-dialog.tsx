import { useEffect, useEffectEvent, useMemo, useState } from 'react';
import type { SheetSettings } from '../core/record/typed-sheet.js';
import { measuringSettings } from '../session/measuring-settings.js';
import type { Picture } from '../session/ports.js';
import type { LiveCamera } from '../session/profile-choice.js';
import { CameraFailure, DeviceChoice } from './camera-parts.js';
import { useEquipment } from './equipment.js';
import { Holding } from './holding.js';
import { words } from './language.js';
import { liveCameraOf } from './live-camera.js';
import { LiveHintLine, LiveReadout, LiveStage, liveText, LiveTrouble } from './live-parts.js';
import { Modal } from './modal.js';
import { useCamera } from './use-camera.js';
import { useLiveView } from './use-live-view.js';
import { useProfiles } from './use-profiles.js';
import { useShutter } from './use-shutter.js';
import { useSpokenAtRest } from './use-spoken-at-rest.js';

/**
 * Leads the wearer before a camera and takes a picture, by itself once all is right. The camera is released as soon as the dialog
 * closes, whatever the reason.
 */
export function CameraDialog(props: {
  readonly settings: SheetSettings;
  /** the sheet shows what the camera says of the PD, or would: nothing is read by hand any more that should not be seen before */
  readonly isPdTold: boolean;
  readonly onCameraChosen: (id: string) => void;
  /** `camera` is what took the picture; null where it cannot be told any more */
  readonly onTaken: (picture: Picture, camera: LiveCamera | null) => void;
  readonly onClose: () => void;
}) {
  const { settings, onTaken, onClose } = props;
  const { gaze } = settings;
  const { shutter: shutterStore } = useEquipment();
  const { shelf } = useProfiles();
  const { state, devices, wantedId, openAgain, fail } = useCamera(settings.cameraId);
  const camera = state.kind === 'live' ? state.camera : null;
  const [way, setWay] = useState(() => shutterStore.load());
  const measuring = useMemo(
    () =>
      measuringSettings(settings, shelf.profiles, {
        kind: 'camera',
        camera: camera === null ? null : liveCameraOf(camera),
      }),
    [settings, shelf.profiles, camera],
  );
  const shutter = useShutter({
    camera,
    around: () => {
      const between = view.betweenEyes();
      const size = camera === null ? null : liveCameraOf(camera);
      if (between === null || size === null) return null;
      return { xPx: between.xPx * size.widthPx, yPx: between.yPx * size.heightPx };
    },
    onTaken: (picture, from) => {
      onTaken(picture, liveCameraOf(from));
      onClose();
    },
    onFailure: fail,
  });
  const { left } = shutter;
  const view = useLiveView(camera, measuring, () => {
    if (way === 'by-itself' && left === null) shutter.takeNow();
  });
  useShutterKeys(shutter.takeNow);
  const context = { gaze, shutter: way };
  const hint = useSpokenAtRest(camera === null ? '' : liveText(view, context));

  return (
    <Modal heading={words.camera.heading} closeLabel={words.camera.close} onClose={onClose} wide>
      <div className="camera camera-live">
        <div className="camera-view">
          <LiveHintLine text={camera === null ? '' : liveText(view, context)} view={view} shutter={way} />
          <div className="live-place">
            <LiveStage camera={camera} view={view} />
            {left !== null && (
              <div className="countdown" aria-hidden="true">
                {left > 0 ? left : words.camera.hold}
              </div>
            )}
          </div>
          <p className={state.kind === 'opening' ? 'camera-status' : 'visually-hidden'} role="status">
            {state.kind === 'opening' && words.camera.opening}
            {left !== null && (left > 0 ? words.camera.inSeconds(left) : words.camera.hold)}
            {left === null && hint}
          </p>
          {state.kind === 'failed' && <CameraFailure failure={state.failure} />}
          {camera !== null && (
            <>
              <LiveReadout view={view} isPdTold={props.isPdTold} />
              <LiveTrouble view={view} />
            </>
          )}
        </div>
        <div className="camera-side">
          <p>
            <strong>{words.camera.gaze[gaze]}</strong>
          </p>
          <div className="actions">
            {camera !== null && left === null && (
              <>
                <button type="button" className="main-action" onClick={shutter.takeNow}>
                  {words.live.shutter}
                </button>
                <button type="button" onClick={shutter.takeInSeconds}>
                  {words.camera.start}
                </button>
              </>
            )}
            {left !== null && (
              <button type="button" onClick={shutter.stop}>
                {words.camera.stop}
              </button>
            )}
            {state.kind === 'failed' && (
              <button
                type="button"
                className="main-action"
                onClick={() => {
                  openAgain(wantedId);
                }}
              >
                {words.camera.again}
              </button>
            )}
          </div>
          <label className="check">
            <input
              type="checkbox"
              checked={way === 'by-itself'}
              onChange={(event) => {
                const next = event.currentTarget.checked ? 'by-itself' : 'by-hand';
                shutterStore.save(next);
                setWay(next);
              }}
            />
            {words.live.byItself}
          </label>
          {devices.length > 0 && (
            <DeviceChoice
              devices={devices}
              chosen={camera?.deviceId ?? wantedId}
              onChoose={(id) => {
                props.onCameraChosen(id);
                openAgain(id);
              }}
            />
          )}
          <Holding />
          <p className="note">
            {words.live.keys} {words.camera.mirrored} {words.live.sides}
          </p>
        </div>
      </div>
    </Modal>
  );
}

/** What does something of its own when it is pressed. */
const PRESSED = 'a, button, input, select, textarea, summary';

/** Space and Enter take the picture wherever they do not press something else. */
function useShutterKeys(onPress: () => void): void {
  const press = useEffectEvent(onPress);
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent): void => {
      const { altKey, ctrlKey, defaultPrevented, key, metaKey, repeat, target } = event;
      if (defaultPrevented || repeat || altKey || ctrlKey || metaKey || (key !== ' ' && key !== 'Enter')) return;
      if (target instanceof Element && target.closest(PRESSED) !== null) return;
      event.preventDefault();
      press();
    };
    document.addEventListener('keydown', onKeyDown);
    return () => {
      document.removeEventListener('keydown', onKeyDown);
    };
  }, []);
}
